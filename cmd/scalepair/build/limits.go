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
	// NutToFret1 is the longest step from nut to fret 1 on the bass line.
	NutToFret1 unit.Length
	// InharmonicityCents is the most of the lowest string.
	InharmonicityCents float64
	// BreakingOpenPercent is at most 85, 75 unless given; BreakingBentPercent
	// at most 95, 90 unless given.
	BreakingOpenPercent, BreakingBentPercent float64
	LeastTension, MostTension                unit.Force
	MostBendingForce                         unit.Force
	// SaddleTravel is how far a saddle can be moved along its string.
	SaddleTravel unit.Length
	// Blank: the board must come out of one of Build.Blanks.
	Blank bool
}

func readLimits(s *section, blanks int) Limits {
	v := Limits{BreakingOpenPercent: 75, BreakingBentPercent: 90}
	s.length("difference", &v.Difference, unit.MM(0.1), unit.MM(500))
	s.number("fret_slant_deg", &v.FretSlantDeg, 0.1, 60)
	s.number("saddle_slant_deg", &v.SaddleSlantDeg, 0.1, 60)
	s.length("nut_to_fret_1", &v.NutToFret1, unit.MM(5), unit.MM(150))
	s.number("inharmonicity_cents", &v.InharmonicityCents, 0.1, 1200)
	s.number("breaking_open_percent", &v.BreakingOpenPercent, 1, 85)
	s.number("breaking_bent_percent", &v.BreakingBentPercent, 1, 95)
	s.force("least_tension", &v.LeastTension, 1, 2000)
	s.force("most_tension", &v.MostTension, 1, 2000)
	s.force("most_bending_force", &v.MostBendingForce, 0.1, 1000)
	s.length("saddle_travel", &v.SaddleTravel, unit.MM(0.5), unit.MM(100))
	s.truth("blank", &v.Blank)
	if v.MostTension > 0 && v.LeastTension > v.MostTension {
		s.wrong(s.find("least_tension"), "the least tension is above the most, "+s.asWritten("most_tension"), "exchange them")
	}
	if v.Blank && blanks == 0 {
		s.wrong(s.find("blank"), "there is no blank to fit", "describe the blanks on offer under [[blanks]], or leave the line out")
	}
	return v
}
