package fan

import (
	"math"
)

// sound reports whether a settled frame is an instrument, and prepares the
// widths the inner strings need.
func (f *Frame) sound() Reason {
	nutB, nutT := f.half(f.pb), f.half(f.pt)
	sadB, sadT := f.half(f.bassX(1)), f.half(f.trebleX(1))
	if !(nutB > 0 && nutT > 0 && sadB > 0 && sadT > 0) {
		return StringsCross
	}
	f.perNut, f.perSaddle = 1/(nutB+nutT), 1/(sadB+sadT)
	if f.base.nutThick*f.perNut >= 1 || f.base.sadThick*f.perSaddle >= 1 {
		return StringsTouch
	}
	// The slant's tangent is a quotient of two linear functions of k, so that
	// nut and saddle have the extremes.
	steepest := max(math.Abs(f.tan(0)), math.Abs(f.tan(1)))
	if !(steepest <= maxTan) {
		return TooSteep
	}
	if f.fretsCross() {
		return FretsCross
	}
	if f.endAtSaddle() {
		return EndAtSaddle
	}
	return Fits
}

// fretsCross reports whether two lines of the family meet on the board. On the
// bass edge the line at k is at
//
//	x(k) = x_b + M (x_b - x_t)/(s + 2 m x_t)
//
// (M the margin: the line run on past the outer string by M parts of its
// width), and the treble edge has the mirror image. As x_b and x_t are linear
// in k, dx/dk is a constant plus another over a square of a linear function:
// it has its least value at k = 0 or 1, and the lines keep their order just
// when both are positive. Ours.
func (f *Frame) fretsCross() bool {
	b, t := float64(f.bass*f.c), float64(f.treble*f.c)
	return !advances(f.pb, b, f.pt, t, f.base.spread, f.m, f.base.marginBass) ||
		!advances(f.pt, t, f.pb, b, f.base.spread, f.m, f.base.marginTreble)
}

// advances reports whether the lines go forward on the edge beside the outer
// string whose mark is at near + nearStep k, the other's at far + farStep k.
func advances(near, nearStep, far, farStep, spread, m, margin float64) bool {
	atNut := spread + float64(2*m*far)
	bend := float64((nearStep-farStep)*atNut) - float64((near-far)*2*m*farStep)
	atSaddle := atNut + float64(2*m*farStep)
	return nearStep+float64(margin*bend/(atNut*atNut)) > 0 && nearStep+float64(margin*bend/(atSaddle*atSaddle)) > 0
}

// endAtSaddle reports whether the board's body end reaches the saddle line on
// either edge.
func (f *Frame) endAtSaddle() bool {
	cross, t := f.bodyEnd()
	endB, endT := f.edges(cross, t)
	saddle, st := f.cross(1), f.tan(1)
	sadB, sadT := f.edges(saddle, st)
	return cross+float64(endB*t) >= saddle+float64(sadB*st) || cross+float64(endT*t) >= saddle+float64(sadT*st)
}

// nutShelf is where the board's nut end crosses the centreline, with its slant:
// parallel to the nut line, the nut shelf behind it.
func (f *Frame) nutShelf() (cross, t float64) {
	t = f.tan(0)
	return plain(-f.base.spec.NutShelf.M() * math.Sqrt(1+float64(t*t))), t
}

// body end is where the board's body end crosses the centreline, with its slant.
func (f *Frame) bodyEnd() (cross, t float64) {
	k, over := f.base.lastK, f.base.spec.BodyEndOverhang.M()
	cross, t = f.cross(k), f.tan(k)
	if f.base.spec.BodyEnd == AlongLastFret {
		return cross + float64(over*math.Sqrt(1+float64(t*t))), t
	}
	bassY, trebleY := f.edges(cross, t)
	return cross + max(bassY*t, trebleY*t) + over, 0
}

// corners are the board's corners, in the order of Board.Corners.
func (f *Frame) corners() [4]Point {
	nut, nt := f.nutShelf()
	bodyEnd, ht := f.bodyEnd()
	nutB, nutT := f.edges(nut, nt)
	endB, endT := f.edges(bodyEnd, ht)
	return [4]Point{
		at(nut+float64(nutB*nt), nutB), at(bodyEnd+float64(endB*ht), endB),
		at(bodyEnd+float64(endT*ht), endT), at(nut+float64(nutT*nt), nutT),
	}
}
