package build

import "scalepair/data/unit"

// Limits are the bounds that a pair or a gauge must keep. 0 leaves a limit
// off; the breaking shares are always on.
type Limits struct {
	// Difference is the greatest difference between bass and treble length.
	Difference unit.Length
	// FretSlantDeg is the greatest slant of nut and frets, SaddleSlantDeg of
	// the saddle line, in degrees.
	FretSlantDeg, SaddleSlantDeg float64
	// FirstStep is the longest step from nut to fret 1 on the bass line.
	FirstStep unit.Length
	// OvertoneRiseCents is the most of the lowest string.
	OvertoneRiseCents float64
	// BreakingOpenPercent is at most 85, 75 unless given; BreakingBentPercent
	// at most 95, 90 unless given.
	BreakingOpenPercent, BreakingBentPercent float64
	LeastTension, MostTension                unit.Force
	MostPush                                 unit.Force
	// SaddleTravel is how far a saddle can be moved along its string.
	SaddleTravel unit.Length
	// Blank: the board must come out of one of Build.Blanks.
	Blank bool
}
