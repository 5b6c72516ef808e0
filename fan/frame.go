package fan

import (
	"math"

	"scalepair/data/unit"
)

// Frame is the geometry of one scale pair in the few numbers everything else
// follows from. It is a value; copying it is cheap, and no method allocates.
type Frame struct {
	base               *Base
	bass, treble, diff float64 // lengths and their difference, m
	m, c               float64 // taper, and the cosine of an outer line's angle
	pb, pt             float64 // x of the bass and treble nut ends, m
	perNut, perSaddle  float64 // 1/width of the outer ends at nut and saddle
}

// NewFrame checks a whole spec and settles its scale pair. The error is a
// fault.List.
func NewFrame(spec Spec) (Frame, error) {
	base, err := NewBase(spec)
	if err != nil {
		return Frame{}, err
	}
	f, reason := base.Frame(spec.Bass, spec.Treble)
	return f, reason.fault(spec)
}

// Difference is bass length minus treble length, to the picometre: pairs of one
// difference in the shop's units have the same float64.
func (f Frame) Difference() unit.Length { return unit.Length(math.Round(f.diff*1e12) / 1e12) }

// Length is the length of string i (0 = string 1), nut to saddle along
// its line. The outer strings have exactly the lengths asked for.
func (f Frame) Length(i int) unit.Length {
	switch i {
	case 0:
		return unit.Length(f.treble)
	case f.base.spec.Strings - 1:
		return unit.Length(f.bass)
	}
	nut, saddle := f.ends(i)
	dx, dy := (saddle.X - nut.X).M(), (saddle.Y - nut.Y).M()
	return unit.Length(math.Sqrt(float64(dx*dx) + float64(dy*dy)))
}

// TanSlant is the tangent of a fret's slant from square, positive where the
// bass end is nearer the bridge. The fret is real; 0 is the nut line.
//
//	tan = (L_bass - L_treble) c (k(n) - k(N)) / (s + m (x_b + x_t))
//
// x_b, x_t  the fret's marks on the outer lines, m; the rest as in the
// package comment. Exactly 0 at the neutral fret and for equal lengths. Ours.
func (f Frame) TanSlant(fret float64) float64 { return f.tan(K(fret)) }

// SaddleTan is the tangent of the saddle line's slant.
func (f Frame) SaddleTan() float64 { return f.tan(1) }

// NutToFret1 is the step from the nut to fret 1 along the bass line.
func (f Frame) NutToFret1() unit.Length { return unit.Length(f.bass * K(1)) }

// Reach is how far sideways string i (0 = string 1) can go on a fret before
// it comes to the board's edge on the bass or the treble side: the distance,
// square to the centreline, between the string's place on the crown and the
// crown's end at that edge. Never negative.
func (f Frame) Reach(i int, fret float64, towardsBass bool) unit.Length {
	k := K(fret)
	y := f.contact(i, k).Y
	t := f.tan(k)
	bassY, trebleY := f.edges(f.cross(k), t)
	if towardsBass {
		return max(0, unit.Length(bassY)-y)
	}
	return max(0, y-unit.Length(trebleY))
}

// HalfSpread is how far out from the centreline either outer string line stands
// at a place along it.
func (f Frame) HalfSpread(x unit.Length) unit.Length { return unit.Length(f.half(x.M())) }

// AlongLine is the way along an outer string line, or along an edge, between two
// places so far apart along the centreline.
func (f Frame) AlongLine(x unit.Length) unit.Length { return x / unit.Length(f.c) }

// bassX and trebleX are where the line at fraction k meets the outer lines.
func (f *Frame) bassX(k float64) float64   { return f.pb + float64(f.bass*f.c*k) }
func (f *Frame) trebleX(k float64) float64 { return f.pt + float64(f.treble*f.c*k) }

// half is half the outer strings' distance at x.
func (f *Frame) half(x float64) float64 { return f.base.halfSpread + float64(f.m*x) }

// tan is TanSlant at fraction k of the length.
func (f *Frame) tan(k float64) float64 {
	width := f.base.spread + float64(f.m*(f.bassX(k)+f.trebleX(k)))
	return plain(f.diff * f.c * (k - f.base.neutralK) / width)
}

// cross is where the line at fraction k crosses the centreline; the nut line
// does so at 0 by the choice of origin.
func (f *Frame) cross(k float64) float64 {
	if k == 0 {
		return 0
	}
	x := f.bassX(k)
	return x - float64(f.half(x)*f.tan(k))
}

// edges gives y where a line that crosses the centreline at cross with slant
// tangent t meets the board's bass and treble edges y = s/2 + M_b + m x and
// y = -(s/2 + M_t + m x). 1 ∓ m t is half the strings' distance at the crossing
// over that at the outer string, so it is positive where strings do not cross.
func (f *Frame) edges(cross, t float64) (bassY, trebleY float64) {
	half := f.half(cross)
	bassY = (half + f.base.marginBass) / (1 - float64(f.m*t))
	trebleY = -(half + f.base.marginTreble) / (1 + float64(f.m*t))
	return bassY, trebleY
}

// fractions tells where string i ends along the nut and the saddle line.
func (f *Frame) fractions(i int) (nut, saddle float64) {
	n := f.base.nut[i]
	nut = n.even + float64(n.extra*f.perNut)
	if f.base.evenEnds {
		return nut, nut
	}
	s := f.base.saddle[i]
	return nut, s.even + float64(s.extra*f.perSaddle)
}

// ends gives the nut and saddle end of string i.
func (f *Frame) ends(i int) (nut, saddle Point) {
	a, b := f.fractions(i)
	return f.along(0, a), f.along(1, b)
}

// along is the point at a fraction of the line at k, 0 on the treble outer
// string and 1 on the bass outer string.
func (f *Frame) along(k, fraction float64) Point {
	xb, xt := f.bassX(k), f.trebleX(k)
	yb, yt := f.half(xb), -f.half(xt)
	switch fraction {
	case 0:
		return at(xt, yt)
	case 1:
		return at(xb, yb)
	}
	return at(xt+float64(fraction*(xb-xt)), yt+float64(fraction*(yb-yt)))
}

// contact is where string i meets the line at fraction k of the outer lengths.
// With equal fractions at both ends that is the same fraction of the line:
// both are the same bilinear mixture of the four outer ends.
func (f *Frame) contact(i int, k float64) Point {
	a, b := f.fractions(i)
	if a == b {
		return f.along(k, a)
	}
	nut, saddle := f.along(0, a), f.along(1, b)
	return between(nut, saddle, meets(nut, saddle, f.cross(k), f.tan(k)))
}

// meets is the fraction of the way from a to b at which the line
// x = cross + y t is met.
func meets(a, b Point, cross, t float64) float64 {
	dx, dy := (b.X - a.X).M(), (b.Y - a.Y).M()
	return (cross + float64(a.Y.M()*t) - a.X.M()) / (dx - float64(t*dy))
}

// between is the point at fraction u of the way from a to b.
func between(a, b Point, u float64) Point {
	return at(a.X.M()+float64(u*(b.X-a.X).M()), a.Y.M()+float64(u*(b.Y-a.Y).M()))
}
