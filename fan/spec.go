package fan

import "scalepair/data/unit"

// Spec is what was asked of a layout. The
// zero value is not usable; begin with [DefaultSpec].
type Spec struct {
	// Bass and Treble are the scale pair: the lengths of the two outer
	// strings, each along its own line, from 200 to 2000 mm.
	Bass, Treble unit.Length
	// Strings is the number of strings, 2 to 24.
	Strings int
	// Frets is the number of the last fret, 1 to 36.
	Frets int
	// Neutral is the fret that stands square to the centreline.
	Neutral Neutral
	// AllowReverse lets the bass be shorter than the treble.
	AllowReverse bool

	// NutSpread and SaddleSpread are the distances of the two outer strings,
	// square to the centreline, where the nut line and the saddle line cross
	// it. Both 0 when Board is given.
	NutSpread, SaddleSpread unit.Length
	// Board, when not nil, gives two widths of the board instead of the spans.
	Board *BoardWidths
	// MarginBass and MarginTreble go from an outer string line to the
	// board's edge, square to the centreline; 0 to 50 mm.
	MarginBass, MarginTreble unit.Length

	// NutSpacing and SaddleSpacing say where the inner strings end.
	NutSpacing, SaddleSpacing Spacing
	// Diameters are the outer diameters of the strings, string 1 first;
	// needed for EqualGaps only.
	Diameters []unit.Length

	// ZeroFret puts a fret, with its slot, on the nut line; the nut behind it
	// then only spaces the strings. It wants a nut shelf of at least
	// LeastZeroShelf, since its slot would fall on the board's end.
	ZeroFret bool
	// NutShelf is the depth of the ledge behind the nut line that the nut
	// stands on, measured square to the nut line; 0 for none.
	NutShelf unit.Length
	// BodyEndOverhang is how far the board goes on behind the last fret,
	// measured square to the body end.
	BodyEndOverhang unit.Length
	// BodyEndSquare makes the body end square to the centreline, the overhang
	// behind the rearmost point of the last fret; otherwise it is parallel to
	// the last fret.
	BodyEndSquare bool
	// SawAllowance is added on every side of the board for the blank.
	SawAllowance unit.Length
}

// BoardWidths gives the board's widths, edge to edge and square to the
// centreline, where two lines cross it: the nut line and a named fret.
type BoardWidths struct {
	Nut    unit.Length // width where the nut line crosses the centreline
	Width  unit.Length // width where the named fret crosses it
	AtFret float64     // the named fret, 1 to the last
}

// DefaultSpec gives a spec with the customary small choices made: six strings,
// 24 frets, neutral fret 7, edge margins of 3.5 mm, equal centres, no nut
// seat, a body end parallel to the last fret and 6 mm behind it, 2 mm of saw
// allowance (all judgement). Scale pair and spans are left to be filled in.
func DefaultSpec() Spec {
	return Spec{
		Strings: 6, Frets: 24, Neutral: Neutral{Fret: 7},
		MarginBass: 3.5 * unit.Millimetre, MarginTreble: 3.5 * unit.Millimetre,
		BodyEndOverhang: 6 * unit.Millimetre, SawAllowance: 2 * unit.Millimetre,
	}
}

// Neutral names the line that stands square to the centreline: a fret, which
// may lie between two frets (7.5), 0 for the nut, or the saddle line.
type Neutral struct {
	Fret   float64 // 0 to the last fret; not read when Bridge is set
	Bridge bool    // the saddle line is square
}

// LeastZeroShelf is the least board behind a zero fret, square to it: less
// breaks out beside the slot when the tang goes in (judgement). The nut wants
// its own room beside that.
const LeastZeroShelf unit.Length = 3 * unit.Millimetre

// K gives the neutral line's fraction of the length: k(Fret), or 1 for the
// bridge.
func (n Neutral) K() float64 {
	if n.Bridge {
		return 1
	}
	return K(n.Fret)
}

// SpacingRule says how the inner strings are spread between the outer ones.
type SpacingRule int

const (
	// EqualCentres puts equal distances between string centres.
	EqualCentres SpacingRule = iota
	// EqualGaps leaves equal free gaps between neighbouring strings: centre to
	// centre is the gap plus half of both diameters.
	EqualGaps
	// Listed takes Spacing.Fractions.
	Listed
	// LikeNut, at the saddle only, takes the fractions that hold at the nut,
	// so that every inner string is exactly in tune on every fret.
	LikeNut
)

// String names the rule in the builder's words.
func (r SpacingRule) String() string {
	switch r {
	case EqualCentres:
		return "equal centres"
	case EqualGaps:
		return "equal gaps"
	case Listed:
		return "a list"
	case LikeNut:
		return "like the nut"
	}
	return "unknown spacing"
}

// Spacing is the rule at one end of the strings. Fractions, for Listed only,
// go along the slanted line from string 1 (0) to the last string (1), string 1
// first and rising.
type Spacing struct {
	Rule      SpacingRule
	Fractions []float64
}

// FractionsOfSteps turns centre-to-centre steps, the step from string 1 to
// string 2 first, into the fractions that Listed wants: one more than there
// are steps, from 0 to 1. The steps' sum drops out. It gives nil when a step is
// not greater than 0.
func FractionsOfSteps[L ~float64](steps []L) []float64 {
	fractions := make([]float64, len(steps)+1)
	sum := 0.0
	for i, step := range steps {
		if !(step > 0) {
			return nil
		}
		sum += float64(step)
		fractions[i+1] = sum
	}
	for i := range fractions {
		fractions[i] /= sum
	}
	return fractions
}
