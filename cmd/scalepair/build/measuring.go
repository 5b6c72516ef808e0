package build

import (
	"scalepair/data/unit"
)

// Measuring says how good balance, ruler and calipers are. Steps are what the
// instrument rounds to; repeatability is a standard deviation; accuracies are
// the maker's or a check weight's plus or minus, common to all readings.
// 0 means not given, except where a default is named.
type Measuring struct {
	// BalanceResolution is 0.01 g and RulerResolution 1 mm unless given; a reading's own
	// step in the readings file comes first.
	BalanceResolution, BalanceRepeatability, BalanceAccuracy unit.Mass
	RulerResolution, RulerAccuracy                           unit.Length
	// CaliperResolution is 0.01 mm unless given.
	CaliperResolution, CaliperAccuracy unit.Length
	// HungResolution and HungAccuracy are of the scales for a hung weight; the step
	// is 1 g unless given.
	HungResolution, HungAccuracy unit.Mass
	// GravityMS2 is the local gravity for hung weights: 9.76 to 9.84; 0 when
	// not given. GravityAccuracyMS2 is its plus or minus.
	GravityMS2, GravityAccuracyMS2 float64
	// PitchUncertaintyCents is the standard uncertainty of a pitch that was
	// heard or read off a tuner: 2 unless given.
	PitchUncertaintyCents float64
	// OutsideFit allows estimates outside the diameters that were weighed.
	OutsideFit bool
}

// Marking is how a marked board is measured and what it is held to. 0 means
// not given.
type Marking struct {
	// Of Tolerance and ToleranceCents one at most is given.
	Tolerance      unit.Length
	ToleranceCents float64
	// NutOffsetTolerance is for the treble nut beside the bass nut.
	NutOffsetTolerance unit.Length
	// Steps are what ruler and calipers can tell apart on drawn marks; zeros
	// how far their zero may be off, plus or minus.
	RulerResolution, RulerZero, CaliperResolution, CaliperZero unit.Length
}

// Confidence sets the draws behind the advice's confidence.
type Confidence struct {
	// Trials: 0 (none) to 1000000, 2000 unless given.
	Trials int
	// Seed of the draws: 1 unless given.
	Seed uint64
}

func readMeasuring(s *section) Measuring {
	v := Measuring{BalanceResolution: unit.Grams(0.01), RulerResolution: unit.MM(1),
		CaliperResolution: unit.MM(0.01), HungResolution: unit.Grams(1), PitchUncertaintyCents: 2}
	gram, kilogram := unit.Grams(1), unit.Grams(1000)
	s.mass("balance_resolution", &v.BalanceResolution, unit.Grams(1e-6), 10*gram)
	s.mass("balance_repeatability", &v.BalanceRepeatability, 0, 10*gram)
	s.mass("balance_accuracy", &v.BalanceAccuracy, 0, 10*gram)
	s.length("ruler_resolution", &v.RulerResolution, unit.MM(0.001), unit.MM(20))
	s.length("ruler_accuracy", &v.RulerAccuracy, 0, unit.MM(20))
	s.length("caliper_resolution", &v.CaliperResolution, unit.MM(0.0001), unit.MM(1))
	s.length("caliper_accuracy", &v.CaliperAccuracy, 0, unit.MM(1))
	s.mass("hung_resolution", &v.HungResolution, 0, kilogram)
	s.mass("hung_accuracy", &v.HungAccuracy, 0, kilogram)
	s.number("gravity_m_s2", &v.GravityMS2, 9.76, 9.84)
	s.number("gravity_accuracy_m_s2", &v.GravityAccuracyMS2, 0, 0.1)
	s.number("pitch_uncertainty_cents", &v.PitchUncertaintyCents, 0, 100)
	s.truth("estimate_outside", &v.OutsideFit)
	return v
}

func readMarking(s *section) Marking {
	var v Marking
	s.length("tolerance", &v.Tolerance, unit.MM(0.001), unit.MM(10))
	s.number("tolerance_cents", &v.ToleranceCents, 0.01, 100)
	s.length("nut_offset_tolerance", &v.NutOffsetTolerance, unit.MM(0.001), unit.MM(20))
	s.length("ruler_resolution", &v.RulerResolution, unit.MM(0.001), unit.MM(20))
	s.length("ruler_zero", &v.RulerZero, 0, unit.MM(20))
	s.length("caliper_resolution", &v.CaliperResolution, unit.MM(0.0001), unit.MM(5))
	s.length("caliper_zero", &v.CaliperZero, 0, unit.MM(5))
	if s.has("tolerance") && s.has("tolerance_cents") {
		s.faults.Add(s.place(s.find("tolerance_cents").key), "the tolerance is given twice", "", "keep tolerance or tolerance_cents")
	}
	return v
}

func readConfidence(s *section) Confidence {
	v := Confidence{Trials: 2000, Seed: 1}
	s.whole("trials", &v.Trials, 0, 1_000_000)
	seed := 1
	s.whole("seed", &seed, 0, 1_000_000_000)
	v.Seed = uint64(seed)
	return v
}
