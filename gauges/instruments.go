package gauges

import (
	"math"

	"scalepair/data/fault"
	"scalepair/data/unit"
)

// Instruments are the builder's measuring tools, stated once for a file. A
// step is the least step of the display or scale; an accuracy a is a bound:
// the instrument may read off by up to +-a, the same way every time; a
// repeatability is a standard deviation. SI units.
type Instruments struct {
	BalanceResolutionKg float64
	BalanceRepeatKg     float64
	BalanceAccuracyKg   float64
	RulerResolutionM    float64
	RulerAccuracyM      float64
	CaliperResolutionM  float64
	CaliperAccuracyM    float64
	HungResolutionKg    float64 // of the scales for the hung weight
	HungAccuracyKg      float64
	PitchCents          float64 // standard uncertainty of a sounded pitch
	GravityMS2          float64
	UGravityMS2         float64 // standard uncertainty of gravity; 0: exact
}

// DefaultInstruments gives a kitchen table's tools where nothing was stated: a
// 0.01 g balance, a 1 mm ruler, 0.01 mm calipers, 1 g scales for the hung
// weight, pitch to 2 cents, and gravity anywhere on the ground. All but
// gravity are judgement and have to be printed with the result.
//
// Gravity runs from 9.780 m/s2 at the equator to 9.832 m/s2 at the poles;
// 9.80665 with 0.15 % covers it.
func DefaultInstruments() Instruments {
	return Instruments{
		BalanceResolutionKg: 0.01e-3,
		RulerResolutionM:    1e-3,
		CaliperResolutionM:  0.01e-3,
		HungResolutionKg:    1e-3,
		PitchCents:          2,
		GravityMS2:          unit.StandardGravity,
		UGravityMS2:         0.0015 * unit.StandardGravity,
	}
}

// filled puts in what has a sensible value for everybody: gravity, and the
// care taken with a pitch.
func (t Instruments) filled() Instruments {
	usual := DefaultInstruments()
	if t.GravityMS2 == 0 {
		t.GravityMS2, t.UGravityMS2 = usual.GravityMS2, usual.UGravityMS2
	}
	t.PitchCents = first(t.PitchCents, usual.PitchCents)
	return t
}

// check refuses instruments that cannot be.
func (t Instruments) check(faults *fault.List) {
	for _, v := range []struct {
		name   string
		x, top float64
		show   func(float64) string
	}{
		{"balance step", t.BalanceResolutionKg, 0.1, showG}, {"balance repeatability", t.BalanceRepeatKg, 0.1, showG},
		{"balance accuracy", t.BalanceAccuracyKg, 0.1, showG}, {"ruler step", t.RulerResolutionM, 0.05, showMM},
		{"ruler accuracy", t.RulerAccuracyM, 0.05, showMM}, {"caliper step", t.CaliperResolutionM, 0.5e-3, showMM},
		{"caliper accuracy", t.CaliperAccuracyM, 0.5e-3, showMM}, {"scales step", t.HungResolutionKg, 1, showG},
		{"scales accuracy", t.HungAccuracyKg, 1, showG}, {"pitch", t.PitchCents, 100, showCents},
	} {
		at := fault.Place{Input: "measuring, " + v.name}
		switch {
		case math.IsNaN(v.x) || math.IsInf(v.x, 0):
			faults.Add(at, "no number", "", "")
		case v.x < 0 || v.x > v.top:
			faults.Add(at, "must lie between 0 and "+v.show(v.top), v.show(v.x), "")
		}
	}
	if !(t.GravityMS2 >= 9.76 && t.GravityMS2 <= 9.84) || !(t.UGravityMS2 >= 0 && t.UGravityMS2 < 0.1) {
		faults.Add(fault.Place{Input: "measuring, gravity"}, "gravity on the ground lies between 9.76 and 9.84 m/s2, known to less than 0.1", "", "leave it out, or give your own as 9.81")
	}
}
