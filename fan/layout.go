package fan

import "scalepair/data/unit"

// Layout is the whole fan of one scale pair as plain data. Build it with
// [New]; its slices are not to be changed.
type Layout struct {
	Spec    Spec         // what was asked
	Frame                // the settled geometry; its methods agree with the fields here to the bit
	Strings []StringLine // string 1 first
	Frets   []Fret       // index is the fret number: 0 the nut line, then 1 to the last
	Nut     Across       // the nut line; the same as Frets[0].Line
	Saddle  Across       // the saddle line, where the strings leave the saddles before any compensation

	// NutOffset is how far the treble nut end lies nearer the bridge than
	// the bass nut end, along the centreline: g = p_t - p_b. Negative on a
	// reverse fan.
	NutOffset unit.Length
	Neutral   NeutralLine // the line square to the centreline
	Parallel  bool        // equal lengths: every slant is 0 and the neutral fret has no effect

	NutPositions, SaddlePositions []Position // the strings along the nut line and the saddle line, string 1 first

	DiagonalBassNut   unit.Length // bass nut end to the last mark on the treble line
	DiagonalTrebleNut unit.Length // treble nut end to the last mark on the bass line
}

// StringLine is one string from nut to saddle.
type StringLine struct {
	Number      int         // 1 is the highest
	Nut, Saddle Point       // end points
	Length      unit.Length // along the line
}

// At gives the point at fraction u of the string's length from the nut.
func (s StringLine) At(u float64) Point {
	return between(s.Nut, s.Saddle, u)
}

// Across is a straight line across the strings: the nut line, a fret, the
// saddle line, an end of the board, a pickup.
type Across struct {
	Bass, Treble Point       // where it meets the two outer string lines
	Cross        unit.Length // x where it crosses the centreline
	TanSlant     float64     // tangent of the slant from square, positive where the bass end is nearer the bridge
	Slant        unit.Angle  // the slant, radians
}

// Fret is one fret line with its two marks and its slot. Fret 0 is the nut
// line.
type Fret struct {
	Number       int
	Line         Across
	Bass, Treble Mark
	Slot         Slot
	CentsSharp   []unit.Cents // error of every string on this fret by geometry, string 1 first; 0 where exact
}

// Mark is the centre of a slot on one outer string line. Both measures go
// along that line.
type Mark struct {
	FromNut unit.Length // from the nut end of that line
	Step    unit.Length // from the mark before; 0 at the nut
	OneCent unit.Length // how much of a shift makes one cent: (L - x) ln2/1200
}

// Slot is where a fret line runs on the board, edge to edge.
type Slot struct {
	Bass, Treble Point       // end points on the board's edges
	Length       unit.Length // along the slot
}

// NeutralLine is the line square to the centreline, and how the treble nut end
// is set out from it: square across from the bass line to the treble line, then
// back along the treble line.
type NeutralLine struct {
	Neutral
	X             unit.Length // where it crosses the centreline
	BassFromNut   unit.Length // along the bass line, from the bass nut end
	TrebleFromNut unit.Length // along the treble line: the treble nut end lies this far back towards the head
}

// CentsError is how far one inner string is out of tune on one fret because
// nut and saddle have different fractions.
type CentsError struct {
	String, Fret int
	Cents        unit.Cents // positive = sharp
}

// Slotted are the frets that a slot is sawn for, the lowest first: from 1, or
// with Spec.ZeroFret from 0, whose slot lies on the nut line.
func (l *Layout) Slotted() []Fret {
	if l.Spec.ZeroFret {
		return l.Frets
	}
	return l.Frets[1:]
}

// Last is the last fret.
func (l *Layout) Last() Fret { return l.Frets[l.Spec.Frets] }

// WorstCents is the greatest tuning error of the geometry; ok is false when
// every string is exactly in tune. The cure is the spacing LikeNut.
func (l *Layout) WorstCents() (worst CentsError, ok bool) {
	for i := range l.Strings {
		for _, fret := range l.Frets {
			if cents := fret.CentsSharp[i]; abs(cents) > abs(worst.Cents) {
				worst, ok = CentsError{String: i + 1, Fret: fret.Number, Cents: cents}, true
			}
		}
	}
	return worst, ok
}
