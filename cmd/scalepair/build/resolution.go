package build

import (
	"math"
	"reflect"
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
	if f.Stated, f.From = r.ResolutionOf("caliper"); f.From != "" {
		f.Resolution = printed(f.Stated, u)
	}
	return f
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

// ResolutionOf is the resolution of "ruler" or "caliper" and the section that
// states it: [marking], what it shows on drawn marks, before [measuring]; 0 and ""
// where neither does, and package mark's default holds.
func (r *Run) ResolutionOf(tool string) (resolution unit.Length, from string) {
	for _, section := range []string{"marking", "measuring"} {
		if key := section + "." + tool + "_resolution"; r.Given(key) {
			v, _, _ := reach(reflect.ValueOf(r.Build).Elem(), key)
			if l := v.Interface().(unit.Length); section == "marking" || l <= mostResolution {
				return l, "[" + section + "]"
			}
		}
	}
	return 0, ""
}

// mostResolution is the coarsest of [measuring] that is taken for marks too: what
// is coarser measures no mark (judgement).
const mostResolution unit.Length = 5 * unit.Millimetre
