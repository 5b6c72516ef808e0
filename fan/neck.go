package fan

import (
	"math"

	"scalepair/data/suggest"
	"scalepair/data/unit"
)

// Neck is the neck and its board, as a builder states it.
type Neck struct {
	// Frets is the number of the last fret.
	Frets int `toml:"frets" range:"1, 36"`
	// Neutral is the fret that stands square to the centreline.
	Neutral Neutral `toml:"neutral_fret" range:"0, 36"`
	// ZeroFret puts a fret, with its slot, on the nut line; the nut behind it
	// then only spaces the strings. It wants a nut shelf of at least
	// LeastZeroShelf, since its slot would fall on the board's end.
	ZeroFret bool `toml:"zero_fret"`

	// NutSpread and SaddleSpread are the distances of the two outer strings,
	// square to the centreline, where the nut line and the saddle line cross it.
	NutSpread    unit.Length `toml:"string_spread_at_nut" range:"5 mm, 300 mm"`
	SaddleSpread unit.Length `toml:"string_spread_at_saddle" range:"5 mm, 400 mm"`
	// NutWidth and OtherWidth may be given in their place: the board's widths,
	// edge to edge and square to the centreline, where the nut line crosses it
	// and where the fret WidthAtFret does, the last where that is 0.
	NutWidth    unit.Length `toml:"nut_width" range:"10 mm, 300 mm"`
	OtherWidth  unit.Length `toml:"other_width" range:"10 mm, 400 mm"`
	WidthAtFret float64     `toml:"other_width_at_fret" range:"1, 36"`
	// EdgeMargin goes from an outer string line to the board's edge, square to
	// the centreline, where BassMargin or TrebleMargin does not say otherwise.
	EdgeMargin   unit.Length  `toml:"edge_margin" range:"0 mm, 50 mm"`
	BassMargin   *unit.Length `toml:"bass_margin" range:"0 mm, 50 mm"`
	TrebleMargin *unit.Length `toml:"treble_margin" range:"0 mm, 50 mm"`

	// NutSpacing and SaddleSpacing say where the inner strings end.
	NutSpacing    Spacing `toml:"nut_spacing" range:"1 mm, 100 mm"`
	SaddleSpacing Spacing `toml:"saddle_spacing" range:"1 mm, 100 mm"`
	// NutSlotClearance is what a nut slot is wider than its string.
	NutSlotClearance unit.Length `toml:"nut_slot_clearance" range:"0 mm, 1 mm"`

	// NutShelf is the depth of the ledge behind the nut line that the nut
	// stands on, measured square to the nut line; 0 for none.
	NutShelf unit.Length `toml:"nut_shelf" range:"0 mm, 30 mm"`
	// BodyEnd says what the board's other end runs along, and BodyEndOverhang
	// how far behind the last fret, measured square to that end. A square end
	// lies behind the rearmost point of the last fret.
	BodyEnd         BodyEnd     `toml:"body_end"`
	BodyEndOverhang unit.Length `toml:"body_end_overhang" range:"0 mm, 200 mm"`
	// SawAllowance is added on every side of the board for the blank.
	SawAllowance unit.Length `toml:"saw_allowance" range:"0 mm, 50 mm"`

	// Radius is the fretboard radius, 0 for a flat board. A compound radius has
	// RadiusNut and RadiusLast, where the nut line and the last fret cross the
	// centreline.
	Radius     unit.Length `toml:"radius" range:"50 mm, 10000 mm"`
	RadiusNut  unit.Length `toml:"radius_nut" range:"50 mm, 10000 mm"`
	RadiusLast unit.Length `toml:"radius_last" range:"50 mm, 10000 mm"`
}

// DefaultNeck has the small choices made: 24 frets, neutral fret 7, edge margins
// of 3.5 mm, equal centres, nut slots 0.05 mm wider than their strings, no nut
// shelf, a body end parallel to the last fret and 6 mm behind it, 2 mm of saw
// allowance (all judgement). Spreads or widths are left to be filled in.
func DefaultNeck() Neck {
	return Neck{
		Frets: 24, Neutral: Neutral{Fret: 7}, EdgeMargin: 3.5 * unit.Millimetre,
		NutSlotClearance: 0.05 * unit.Millimetre, BodyEndOverhang: 6 * unit.Millimetre, SawAllowance: 2 * unit.Millimetre,
	}
}

// LeastZeroShelf is the least board behind a zero fret, square to it: less
// breaks out beside the slot when the tang goes in (judgement). The nut wants
// its own room beside that.
const LeastZeroShelf unit.Length = 3 * unit.Millimetre

// Margins are the edge margins on the bass and the treble side.
func (n Neck) Margins() (bass, treble unit.Length) {
	bass, treble = n.EdgeMargin, n.EdgeMargin
	if n.BassMargin != nil {
		bass = *n.BassMargin
	}
	if n.TrebleMargin != nil {
		treble = *n.TrebleMargin
	}
	return bass, treble
}

// Widths reports whether widths of the board are given in place of spreads.
func (n Neck) Widths() bool { return n.NutWidth != 0 || n.OtherWidth != 0 }

// widthFret is the fret that OtherWidth holds at.
func (n Neck) widthFret() float64 {
	if n.WidthAtFret == 0 {
		return float64(n.Frets)
	}
	return n.WidthAtFret
}

// Radii are the fretboard radii at nut and last fret; both 0 for a flat board.
func (n Neck) Radii() (nut, last unit.Length) {
	if n.RadiusNut != 0 || n.RadiusLast != 0 {
		return n.RadiusNut, n.RadiusLast
	}
	return n.Radius, n.Radius
}

// BodyEnd says what the board's end behind the last fret runs along.
type BodyEnd int

// The body ends.
const (
	AlongLastFret BodyEnd = iota
	SquareEnd
)

var bodyEnds = []string{"along the last fret", "square"}

func (e BodyEnd) String() string { return bodyEnds[e] }

// UnmarshalText reads one of the words.
func (e *BodyEnd) UnmarshalText(text []byte) error { return suggest.Word(e, string(text), bodyEnds) }

// K is the fraction of a string's length from the nut to fret n:
//
//	k(n) = 1 - 2^(-n/12)
//
// n is real, 0 or more; k(0) = 0 and k(12) = 1/2 exactly. Equal temperament:
// frequency goes as 1/length and twelve equal steps make an octave (the length
// law from OpenStax, University Physics 1, section 16.6).
func K(n float64) float64 { return 1 - math.Exp2(-n/12) }
