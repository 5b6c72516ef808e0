package choice

import (
	"errors"
	"math"

	"scalepair/data/unit"
	"scalepair/tension"
)

// ErrBehindCapo says why there is no bend at a fret: the capo lies there or
// nearer to the bridge, or less than a fret behind it.
var ErrBehindCapo = errors.New("the capo leaves no room to bend there")

// capo is what a capo at a fret does to every string.
//
// The string sounds from the capo's fret, so its length shrinks and its pitch
// rises by the same steps, and the tension is that of the open string:
//
//	L' = L 2^(-c/12), f' = f 2^(c/12), w (2 L' f')^2 = w (2 L f)^2
//
// The piece L k(c) between nut and capo is assumed to slide under it, and so
// joins the string beyond the nut. What the capo itself stretches the string
// is not counted. Equal temperament, as in fan.K; the rest follows from it.
// Without a capo every factor is exactly 1 or 0, so that nothing changes.
type capo struct {
	fret   float64
	sounds float64 // L'/L
	hidden float64 // k(c), the part of the length between nut and capo
	raise  float64 // f'/f
}

func capoAt(fret int) capo {
	n := float64(fret) / 12
	return capo{fret: float64(fret), sounds: math.Exp2(-n), hidden: -math.Expm1(-n * math.Ln2), raise: math.Exp2(n)}
}

// hides reports whether the capo leaves no room to bend at a fret.
func (c capo) hides(fret float64) bool { return fret-c.fret < 1 }

// bendOf gives a bend seen from the capo: fret, length and pitch count from it.
// The slant and the reach stay those of the real fret.
func (c capo) bendOf(at tension.BendAt) tension.BendAt {
	at.Tails.Nut += unit.Length(at.Length.M() * c.hidden)
	at.Length = unit.Length(at.Length.M() * c.sounds)
	at.Pitch = unit.Frequency(at.Pitch.Hz() * c.raise)
	at.Fret -= c.fret
	return at
}
