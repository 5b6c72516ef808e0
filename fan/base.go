package fan

import (
	"math"

	"scalepair/data/unit"
)

// Base holds everything of a spec that does not depend on the scale pair,
// checked once. It is safe for concurrent use.
type Base struct {
	spec       Spec
	spread     float64 // string spread at the nut
	halfSpread float64
	wideSpread float64 // spread on the second line that has a stated spread: the saddle line, or a fret
	wideK      float64 // that line's fraction of the length; 1 is the saddle line
	neutralK   float64
	lastK      float64
	nut        []place
	saddle     []place
	nutThick   float64 // equal gaps: what the strings take of the spread; 0 under another rule
	sadThick   float64

	marginBass, marginTreble float64
	evenEnds                 bool // nut and saddle fractions are the same to the bit
}

// NewBase checks a spec without its scale pair (Bass and Treble are not
// read). Every fault comes at once as a fault.List, each place naming the
// build file's key ("neck.zero_fret").
func NewBase(spec Spec) (*Base, error) {
	if err := checkNeck(spec).Err(); err != nil {
		return nil, err
	}
	b := &Base{spec: spec, neutralK: spec.Neutral.K(), lastK: K(float64(spec.Frets))}
	bass, treble := spec.Margins()
	b.marginBass, b.marginTreble = bass.M(), treble.M()
	b.spread, b.wideSpread, b.wideK = spec.NutSpread.M(), spec.SaddleSpread.M(), 1
	if spec.Widths() {
		b.spread, b.wideSpread, b.wideK = (spec.NutWidth - bass - treble).M(), (spec.OtherWidth - bass - treble).M(), K(spec.widthFret())
	}
	b.halfSpread = b.spread / 2
	b.nut, b.nutThick = places(spec, spec.NutSpacing)
	b.saddle, b.sadThick = places(spec, spec.SaddleSpacing)
	if b.evenEnds = sameWhateverTheSpread(b.nut, b.saddle); spec.SaddleSpacing.Rule == LikeNut {
		b.saddle, b.sadThick, b.evenEnds = b.nut, 0, true
	}
	return b, nil
}

// Frame settles one scale pair. It allocates nothing. The
// reason is Fits when the pair makes an instrument; otherwise the Frame is the
// zero value.
func (b *Base) Frame(bass, treble unit.Length) (Frame, Reason) {
	if bass < treble && !b.spec.AllowReverse {
		return Frame{}, ReverseUnasked
	}
	f := Frame{base: b, bass: bass.M(), treble: treble.M(), diff: (bass - treble).M()}
	if !f.settle() {
		return Frame{}, NotSettled
	}
	if reason := f.sound(); reason != Fits {
		return Frame{}, reason
	}
	return f, Fits
}

const (
	settled  = 1e-15 // change of the taper that no longer moves anything by 1e-12 mm on a 2 m string
	maxTurns = 60    // a real neck takes four or five
)

// settle finds the taper m by a fixed point over the place where the second
// line of stated spread crosses the centreline:
//
//	m = (S - s)/(2 x_S(m))
//
// s  string spread at the nut; S  spread on that line; x_S  its crossing, from the taper before.
// For any real neck a turn makes the error some thousand times smaller
// (d x_S/dm is about the outer ends' offset squared over S, against x_S^2).
// False when it does not settle.
func (f *Frame) settle() bool {
	b := f.base
	f.take(0)
	if b.wideSpread == b.spread {
		return true
	}
	m := (b.wideSpread - b.spread) / ((f.bass + f.treble) * b.wideK)
	for range maxTurns {
		f.take(m)
		next := (b.wideSpread - b.spread) / (2 * f.cross(b.wideK))
		if math.Abs(next-m) <= settled {
			f.take(next)
			return true
		}
		m = next
	}
	return false
}

// take sets a taper and what follows from it: c = 1/sqrt(1 + m^2), and the
// outer strings' nut ends, offset by g and with the nut line crossing at 0:
//
//	g = p_t - p_b = (L_bass - L_treble) c k(N)
//	p_b = -g s/((s + 2 m g) + sqrt(s^2 + 4 m^2 g^2))
//
// s  string spread at the nut; k(N)  the neutral line's fraction; all in m. The second is the
// root of 2 m p_b^2 + (s + 2 m g) p_b + s g/2 = 0 that stays small, in the form
// that loses no digits. Ours, follows from the mirror lines y = ±(s/2 + m x).
func (f *Frame) take(m float64) {
	b := f.base
	f.m = m
	f.c = 1 / math.Sqrt(1+float64(m*m))
	g := float64(f.diff * f.c * b.neutralK)
	u := float64(2 * m * g)
	f.pb = plain(-g * b.spread / ((b.spread + u) + math.Sqrt(float64(b.spread*b.spread)+float64(u*u))))
	f.pt = f.pb + g
}
