package build

import "scalepair/data/unit"

// Neutral is the fret that stands square to the centreline.
type Neutral struct {
	// Fret may lie between two frets: 7.5. It is 0 to the last fret.
	Fret float64
	// Bridge puts the square line at the bridge; Fret is then 0.
	Bridge bool
}

// SpacingRule says how strings are spread along the nut or the saddles.
type SpacingRule int

// The spacing rules.
const (
	// EqualCentres: equal steps from centre to centre.
	EqualCentres SpacingRule = iota
	// EqualGaps: equal gaps between the strings' sides.
	EqualGaps
	// ListedSteps: as listed.
	ListedSteps
	// LikeNut, at the saddles only: the fractions that hold at the nut.
	LikeNut
)

// Spacing of the strings along the nut line or the saddle line.
type Spacing struct {
	Rule SpacingRule
	// Fractions, with ListedSteps only: 0 at string 1, rising to 1 at the last.
	// The file lists the steps from centre to centre, bass side first; only
	// their proportions count.
	Fractions []float64
}

// Widths are board widths given in place of spans.
type Widths struct {
	// Nut is the board's width at the nut, Other at fret AtFret, each square to
	// the centreline where that line crosses it.
	Nut, Other unit.Length
	// AtFret is 1 to the last fret; the last unless given.
	AtFret float64
}

// Neck is the neck and its board.
type Neck struct {
	// Frets: 1 to 36.
	Frets int
	// Neutral is 7 unless given, and the last fret where that is lower.
	Neutral Neutral
	// ZeroFret puts a fret on the nut line.
	ZeroFret bool
	// NutSpan and SaddleSpan are between the outer strings' ends, square to the
	// centreline. Either NutSpan and SaddleSpan are given, or Widths is not nil.
	NutSpan, SaddleSpan unit.Length
	Widths              *Widths
	// BassMargin and TrebleMargin are from the outer string lines to the
	// board's edges: 3.5 mm unless given.
	BassMargin, TrebleMargin unit.Length
	// NutSpacing and SaddleSpacing are EqualCentres unless given.
	NutSpacing, SaddleSpacing Spacing
	// NutSlotClearance is what a nut slot is wider than its string: 0.05 mm
	// unless given (judgement).
	NutSlotClearance unit.Length
	// NutSeat is the board left behind the nut line for the nut to sit on.
	NutSeat unit.Length
	// HeelOverhang is the board beyond the last fret: 6 mm unless given.
	HeelOverhang unit.Length
	// HeelSquare cuts the heel end square; else it runs along the last fret.
	HeelSquare bool
	// SawAllowance is on every side of the blank: 2 mm unless given.
	SawAllowance unit.Length
	// RadiusNut and RadiusLast are the board's radii where nut line and last
	// fret cross the centreline; both 0 for a flat board, alike for a single
	// radius.
	RadiusNut, RadiusLast unit.Length
}
