package gauges

import (
	"fmt"
	"strings"

	"scalepair/data/fault"
	"scalepair/data/unit"
)

// placer gives the place of a column in the row that is checked.
type placer func(column string) fault.Place

// sized is one size of a row and the range that it can have on a string.
// Judgement: the ranges are wider than any string, so that only a wrong unit or
// a slip falls outside.
type sized struct {
	column   string
	x        float64 // SI; 0 not given
	low, top float64
	written  func(*Given) told       // nil where a size has one unit only
	usual    func(si float64) string // prints that one
}

// plainly tells a size that has one unit only.
func plainly(usual func(si float64) string) told { return told{usual: usual} }

// told says how the size is printed, which only a fault asks for.
func (s sized) told(g *Given) told {
	if s.written == nil {
		return plainly(s.usual)
	}
	return s.written(g)
}

func (r *Reading) sizes() [15]sized {
	const longest = 5.0
	return [15]sized{
		{"outer", r.OuterM, 0.05e-3, 6e-3, (*Given).outer, nil},
		{"core", r.CoreM, 0.05e-3, 3e-3, (*Given).core, nil},
		{"winding", r.WindingM, 0.1, longest, (*Given).winding, nil},
		{"length", r.LengthM, 2e-3, longest, (*Given).length, nil},
		{"length_resolution", r.LengthStepM, 1e-6, 0.05, (*Given).lengthStep, nil},
		{"mass", r.MassKg, 1e-7, 1, (*Given).mass, nil},
		{"mass_resolution", r.MassStepKg, 1e-9, 0.1, (*Given).massStep, nil},
		{"hung_mass", r.HungKg, 0.05, 100, (*Given).hung, nil},
		{"hung_resolution", r.HungResolutionKg, 1e-7, 1, (*Given).hungStep, nil},
		{"speaking_length", r.SpeakingM, 0.05, longest, (*Given).speaking, nil},
		{"pitch", r.FreqHz, 10, 5000, nil, showHz},
		{"pitch_cents", r.PitchCents, 0.01, 100, nil, showCents},
		{"density_kg_m3", r.DensityKgM3, 500, 25000, nil, finelyDensity},
		{"youngs_gpa", r.YoungsPa, 0.1e9, 1000e9, nil, finelyGPa},
		{"strength_mpa", r.StrengthPa, 10e6, 10000e6, nil, finelyMPa},
	}
}

// check reports everything that one row alone shows to be wrong. A row that is
// not sound, with a fault in its cells or its headings, is not told what is
// missing as well.
func (r *Reading) check(place placer, sound bool, faults *fault.List) {
	before := len(*faults)
	if sound && strings.TrimSpace(r.Gauge) == "" {
		faults.Add(place("gauge"), "a row without a gauge", "", "give every gauge a label of its own")
	}
	sizes := r.sizes()
	for i := range sizes {
		sizes[i].check(place, &r.Given, faults)
	}
	if !sound || len(*faults) > before {
		return
	}
	switch r.Kind {
	case Weighed:
		r.checkWeighed(place, faults)
	case Hung:
		r.checkHung(place, faults)
	case Listed:
		r.checkListed(place, faults)
	}
	r.checkCore(place, faults)
}

// What a weighing may lack.
const (
	withoutMass   = "a weighing without mass"
	withoutLength = "a weighing without length"
)

func (r *Reading) checkWeighed(place placer, faults *fault.List) {
	switch {
	case r.HungKg > 0 || r.SpeakingM > 0 || r.FreqHz > 0:
		faults.Add(place("kind"), "a weighing with a hung mass, speaking length or pitch", r.Kind.String(), "write the kind as hung, and weigh in a row of its own")
	case r.MassKg == 0 && r.LengthM == 0:
		faults.Add(place("gauge"), "a weighing without mass and length", r.Gauge,
			"give both, or write the kind as listed for a gauge that was not weighed")
	case r.MassKg == 0:
		faults.Add(place("mass"), withoutMass, "", "give the mass, as "+exampleMass(r.Given.Mass(), "g", 0.43e-3))
	case r.LengthM == 0:
		faults.Add(place("length"), withoutLength, "", "give the length of the piece, as "+r.Given.exampleLength(r.Given.Length(), 0.3))
	}
}

func (r *Reading) checkHung(place placer, faults *fault.List) {
	if r.MassKg > 0 || r.LengthM > 0 {
		faults.Add(place("mass"), "a hung test with the mass or length of a weighed piece", "", "a weighing has a row of its own")
	}
	lacks := func(column, how string) { faults.Add(place(column), "a hung test without "+words(column), "", how) }
	if r.HungKg == 0 {
		lacks("hung_mass", "weigh all that hangs, lower clamp and hook included, as "+exampleMass(r.Given.Hung(), "kg", 6.5))
	}
	if r.SpeakingM == 0 {
		lacks("speaking_length", "measure from clamp to clamp, as "+r.Given.exampleLength(r.Given.Speaking(), 0.6))
	}
	if r.FreqHz == 0 {
		lacks("pitch", "give the pitch that sounded, as 196 Hz or G3-4c")
	}
}

func (r *Reading) checkListed(place placer, faults *fault.List) {
	if r.MassKg > 0 || r.LengthM > 0 || r.HungKg > 0 || r.SpeakingM > 0 || r.FreqHz > 0 {
		faults.Add(place("kind"), "a listed gauge with a reading in the same row", r.Kind.String(), "write the kind as weighed or hung; listed is for a gauge without a reading")
	}
}

func (r *Reading) checkCore(place placer, faults *fault.List) {
	if r.CoreM == 0 || r.OuterM == 0 {
		return
	}
	switch {
	case isPlain(r.Construction) && r.CoreM != r.OuterM:
		faults.Add(place("core"), "a plain gauge with a core of another diameter", r.Given.core().text(r.CoreM), "leave the core empty, or name the wound kind under construction")
	case !isPlain(r.Construction) && r.Construction != "" && r.Shape.seat(r.CoreM) >= r.OuterM:
		faults.Add(place("core"), "the core is as thick as the whole string", r.Given.core().text(r.CoreM),
			"it must be less than the outer diameter of "+r.Given.outer().text(r.OuterM)+" with room for the wrap")
	}
}

// checkSteps reports readings that are no larger than the step they were read
// to, which needs the file's instruments.
func (t Instruments) checkSteps(r *Reading, place placer, faults *fault.List) {
	against := func(column string, x, step float64, written func(*Given) told, tool string) {
		switch {
		case x == 0:
		case step <= 0:
			faults.Add(place(column), "the step of the "+tool+" is not known", "", "state the step it reads to")
		case x < step:
			told := written(&r.Given)
			faults.Add(place(column), fmt.Sprintf("%s is less than one step of the %s, %s", words(column), tool, told.short(step, step/3)), told.text(x),
				"look at its unit; else use a longer piece, several together, or correct the step")
		}
	}
	ruler := first(r.LengthStepM, float64(t.RulerResolution))
	against("mass", r.MassKg, first(r.MassStepKg, float64(t.BalanceResolution)), (*Given).mass, "balance")
	against("length", r.LengthM, ruler, (*Given).length, "ruler")
	against("speaking_length", r.SpeakingM, ruler, (*Given).speaking, "ruler")
	if r.OuterFrom == Measured {
		against("outer", r.OuterM, float64(t.CaliperResolution), (*Given).outer, "calipers")
	}
	if r.CoreFrom == Measured {
		against("core", r.CoreM, float64(t.CaliperResolution), (*Given).core, "calipers")
	}
	against("hung_mass", r.HungKg, first(r.HungResolutionKg, float64(t.HungResolution)), (*Given).hung, "scales")
}

// These show a size of one unit as it is likely to have been written.
func finelyDensity(kgM3 float64) string { return decimals(kgM3, 3) + " kg/m3" }
func finelyGPa(pa float64) string       { return decimals(pa/1e9, 3) + " GPa" }
func finelyMPa(pa float64) string       { return decimals(pa/1e6, 3) + " MPa" }

func showMM(m float64) string         { return decimals(m*1e3, 2) + " mm" }
func showG(kg float64) string         { return decimals(kg*1e3, 3) + " g" }
func showKg(kg float64) string        { return decimals(kg, 3) + " kg" }
func showHz(x float64) string         { return decimals(x, 2) + " Hz" }
func showCents(x float64) string      { return decimals(x, 2) + " cents" }
func showGPa(pa float64) string       { return decimals(pa/1e9, 1) + " GPa" }
func showMPa(pa float64) string       { return decimals(pa/1e6, 0) + " MPa" }
func showDensity(kgM3 float64) string { return decimals(kgM3, 0) + " kg/m3" }
func showDiameter(m float64) string   { return decimals(m*1e3, 3) + " mm" }

// decimals prints x with at most that many decimals, without trailing zeros.
func decimals(x float64, n int) string {
	s := unit.Fixed(x, n)
	if strings.Contains(s, ".") {
		s = strings.TrimRight(strings.TrimRight(s, "0"), ".")
	}
	return s
}
