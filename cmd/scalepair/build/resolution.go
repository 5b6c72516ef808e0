package build

import (
	"math"
	"strings"

	"scalepair/data/unit"
	"scalepair/fan/mark"
)

// Fineness is how finely what is set out is printed, and on whose word.
type Fineness struct {
	mark.Resolution
	// From is the section that states the calipers' resolution, "--calipers" where
	// the command line does, "" where nobody does; Stated is that resolution.
	From   string
	Stated unit.Length
}

// Finest is the least that a scribed or pencilled mark can be set to
// (judgement), and what common calipers show: 0.01 mm or 0.001 in. Calipers may
// show less.
func Finest(u unit.LengthUnit) mark.Resolution {
	if u == unit.Millimetres {
		return mark.Resolution{Unit: u, PerUnit: 100}
	}
	return mark.Resolution{Unit: unit.DecimalInches, PerUnit: 1000}
}

// Calipers is what marks are rounded to where the lengths of u are printed:
// the resolution of the build's calipers, since calipers set them; 0.01 mm or
// 0.001 in where none is stated or a finer one is. So it goes in decimals
// where lengths go in fractions of an inch, unless the calipers themselves
// show such fractions. What [marking] says of drawn marks comes first.
func (r *Run) Calipers(u unit.LengthUnit) Fineness {
	f := Fineness{Resolution: Finest(u)}
	if f.Stated, f.From = r.caliperResolution(); f.From != "" {
		f.Resolution = printed(f.Stated, u)
	}
	return f
}

// stated is the resolution of a tool and the section that states it: [marking],
// what it shows on drawn marks, before [measuring]; 0 and "" where neither does.
func stated(b *Build, key string, marking, measuring unit.Length) (unit.Length, string) {
	switch {
	case marking > 0:
		return marking, "[marking]"
	case b.Given("measuring." + key):
		return measuring, "[measuring]"
	}
	return 0, ""
}

// printed is the resolution that is printed for a tool's: its own where that is a
// whole part of the unit and no finer than a mark can be set, else the round one
// next below it.
func printed(tool unit.Length, u unit.LengthUnit) mark.Resolution {
	if r, ok := exactly(tool, u); ok && r.Length() >= Finest(u).Length()*(1-1e-9) {
		return r
	}
	best := Finest(u)
	for _, divide := range []int64{2, 5, 10, 20, 50} {
		// A twentieth lets 0.002 in stand for 0.05 mm.
		if r := (mark.Resolution{Unit: best.Unit, PerUnit: Finest(u).PerUnit / divide}); r.Length() <= 1.05*tool {
			best = r
		}
	}
	return best
}

// exactly gives a resolution as a whole part of its unit. Fractions of an inch are
// kept where lengths go in them too.
func exactly(tool unit.Length, u unit.LengthUnit) (mark.Resolution, bool) {
	var text string
	switch fraction := unit.InchFractions.Format(tool, 0); {
	case u == unit.Millimetres:
		text = unit.Fixed(tool.MM(), 7) + " mm"
	case u == unit.InchFractions && strings.Contains(fraction, "/") && math.Abs(64*tool.Inches()-math.Round(64*tool.Inches())) < 1e-9:
		text = fraction + " in"
	default:
		text = unit.Fixed(tool.Inches(), 7) + " in"
	}
	r, err := mark.ParseResolution(text)
	return r, err == nil
}

// ResolutionsFrom names the sections that state the resolutions of ruler and
// calipers for CheckOptions: "[marking]", else "[measuring]"; "" where neither
// does, and package mark's default holds.
func (r *Run) ResolutionsFrom() (ruler, calipers string) {
	_, ruler = r.rulerResolution()
	_, calipers = r.caliperResolution()
	return ruler, calipers
}

func (r *Run) rulerResolution() (unit.Length, string) {
	l, from := stated(r.Build, "ruler_resolution", r.Build.Marking.RulerResolution, r.Build.Measuring.RulerResolution)
	if from == "[measuring]" && l > mostRulerResolution {
		return 0, ""
	}
	return l, from
}

// mostRulerResolution is the coarsest of [measuring] that is taken for marks too:
// what is coarser measures no mark (judgement).
const mostRulerResolution unit.Length = 5 * unit.Millimetre

func (r *Run) caliperResolution() (unit.Length, string) {
	return stated(r.Build, "caliper_resolution", r.Build.Marking.CaliperResolution, r.Build.Measuring.CaliperResolution)
}
