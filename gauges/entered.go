package gauges

import (
	"math"
	"slices"

	"scalepair/data/unit"
)

// entered is one number as the builder wrote it down, and how the linear density
// of the reading, less that of the fit, follows it.
type entered struct {
	name  string
	x     float64      // in the unit of form
	form  unit.Written // as written
	step  float64      // how finely it is known, in SI; 0: as finely as written
	power float64      // d ln(w/w_fit)/d ln x
	ruler bool         // read off a ruler
}

// given prints the number as it was written.
func (e entered) given() string { return e.show(e.x) }

// show prints a value with the digits that were written.
func (e entered) show(x float64) string { return withUnit(e.form.Number(x), e.form.Unit) }

// reckoned prints a value that was not written but worked out: as finely as
// the step lets it be read, with four figures at most unless more were written.
func (e entered) reckoned(x float64) string {
	form := e.form.Finer(e.step)
	four := 3 - int(math.Floor(math.Log10(x)))
	form.Decimals = max(e.form.Decimals, min(form.Decimals, four))
	return withUnit(form.Number(x), form.Unit)
}

func withUnit(text, unit string) string {
	if unit == "" {
		return text
	}
	return text + " " + unit
}

// numbers lists what was entered for a reading. An outer diameter counts
// twice, against the fit: close enough for wound strings too.
func (t Instruments) numbers(r Reading, g Gauge) []entered {
	outer := g.outerEntered()
	if r.Kind == Hung {
		return []entered{
			massEntered("hung mass", r.HungKg, first(r.HungResolutionKg, float64(t.HungResolution)), massForm(r.Given.Hung()), "kg"),
			lengthEntered("speaking length", r.SpeakingM, t.lengthStep(&r), -2, r.Given.speaking().form()),
			{name: "pitch", x: r.FreqHz, form: unit.Written{Unit: "Hz", Decimals: 1}, power: -2},
			outer,
		}
	}
	return []entered{
		massEntered("mass", r.MassKg, t.massStep(&r), massForm(r.Given.Mass()), "g"),
		lengthEntered("length", r.LengthM, t.lengthStep(&r), -1, r.Given.length().form()),
		{name: "pieces", x: float64(r.pieces()), power: -1},
		outer,
	}
}

func massEntered(name string, kg, step float64, form unit.Written, usual string) entered {
	if !form.Known() {
		form = unit.Form[unit.Mass]("", usual)
		form.Decimals = places(form.Value(kg), form.Value(step))
	}
	return entered{name: name, x: form.Value(kg), form: form, step: step, power: 1}
}

func lengthEntered(name string, m, step, power float64, form unit.Written) entered {
	if !form.Known() {
		form = unit.Form[unit.Length]("", "mm")
		form.Decimals = places(form.Value(m), form.Value(step))
	}
	return entered{name: name, x: form.Value(m), form: form, step: step, power: power, ruler: true}
}

// outerEntered is the outer diameter as written. Where that is not known it is
// in inches when a round number of half thousandths, else in millimetres.
func (g Gauge) outerEntered() entered {
	form := unit.Written{}
	if i := slices.IndexFunc(g.Rows, func(r Reading) bool { return r.OuterM > 0 }); i >= 0 {
		form = lengthForm(g.Rows[i].Given.Outer())
	}
	if !form.Known() {
		form = unit.Form[unit.Length]("", "mm")
		if half := float64(g.Outer) / unit.Inch * 2000; math.Abs(half-math.Round(half)) < 1e-6 {
			form = unit.Form[unit.Length]("", "in")
		}
		form.Decimals = places(form.Value(float64(g.Outer)))
	}
	const mil, hundredth = 0.001 * unit.Inch, 0.01 * unit.Millimetre
	e := entered{name: "outer diameter", x: form.Value(float64(g.Outer)), form: form.Finer(hundredth), power: -2}
	if form.Unit == "in" {
		e.form = form.Finer(mil)
	}
	return e
}

// places is how many decimals it takes to show both a value and its step, at
// most five.
func places(values ...float64) int {
	for n := range 5 {
		whole := true
		for _, x := range values {
			y := x * math.Pow(10, float64(n))
			whole = whole && math.Abs(y-math.Round(y)) < 1e-6
		}
		if whole {
			return n
		}
	}
	return 5
}
