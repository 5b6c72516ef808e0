package gauges

import (
	"fmt"
	"math"
	"strings"

	"scalepair/data/fault"
	"scalepair/data/unit"
	"scalepair/gauges/reading"
)

// Every string material lies between these densities, kg/m3: nylon 1080, with
// room for its fit, and tungsten wire at 19300. Judgement.
const (
	leastDensity    = 1000
	greatestDensity = 25000
)

// checkDensity reports a reading that no string can give: the density it
// implies for the whole string is absurd, or a wound string is lighter than its
// core.
func (e *entry) checkDensity(r *reading.Reading, faults *fault.List) {
	if e.all.Outer == 0 {
		return
	}
	v, _ := Instruments{}.Value(*r, 0, 0)
	implied := v.W / reading.Round.Area(e.all.Outer)
	least := float64(leastDensity)
	if e.material.DensityKgM3 > 0 {
		least = min(least, e.material.DensityKgM3/2)
	}
	core := 0.0
	if !reading.IsPlain(e.all.Construction) {
		core = e.material.DensityKgM3 * e.all.Shape.Area(e.all.Core)
	}
	switch {
	case implied < least || implied > greatestDensity:
		faults.Add(r.Place, "a density which nothing has", fmt.Sprintf("%s, %s, %s: %s g/cm3",
			r.Gauge, e.all.OuterText(), entered(r), reading.Decimals(implied/1e3, 3)), e.unitSlip(r, implied))
	case v.W <= core:
		faults.Add(r.Place, fmt.Sprintf("gauge %q: %s g/m is less than its core alone, %s g/m", r.Gauge, reading.Decimals(1000*v.W, 4), reading.Decimals(1000*core, 4)),
			entered(r), "check the core's diameter, the mass and the length")
	}
}

// entered shows what a reading rests on.
func entered(r *reading.Reading) string {
	if r.Kind == reading.Hung {
		return fmt.Sprintf("%s on %s at %s Hz", r.MassText(), r.LengthText(), reading.Decimals(r.Pitch.Hz(), 2))
	}
	pieces := ""
	if r.NumPieces() > 1 {
		pieces = fmt.Sprintf("%d pieces of ", r.NumPieces())
	}
	return fmt.Sprintf("%s in %s%s", r.MassText(), pieces, r.LengthText())
}

// sized is a size that a density follows with a power, and the units it may have
// been measured in.
type sized struct {
	name  string
	si    float64
	form  unit.Written
	power float64
	units []unit.Written
}

var (
	lengthUnits = []unit.Written{unit.Form[unit.Length]("", "mm"), unit.Form[unit.Length]("", "in"), unit.Form[unit.Length]("", "cm")}
	massUnits   = []unit.Written{unit.Form[unit.Mass]("", "g"), unit.Form[unit.Mass]("", "oz"), unit.Form[unit.Mass]("", "mg"), unit.Form[unit.Mass]("", "kg"), unit.Form[unit.Mass]("", "lb")}
)

var unitNames = map[string]string{"mm": "millimetres", "in": "inches", "cm": "centimetres", "g": "grams", "oz": "ounces", "mg": "milligrams", "kg": "kilograms", "lb": "pounds"}

// mostTogether is how many pieces are asked after (judgement).
const mostTogether = 6

// unitSlip asks after the slips that would make the density one of a string:
// near its material's where plain, and that of a wrapped steel string otherwise
// (judgement: 6800 kg/m3, within a quarter).
func (e *entry) unitSlip(r *reading.Reading, implied float64) string {
	likely := 6800.0
	if reading.IsPlain(e.all.Construction) && e.material.DensityKgM3 > 0 {
		likely = e.material.DensityKgM3
	}
	var out []string
	ask := func(factor float64, format string, args ...any) {
		if d := implied * factor; d > likely*0.8 && d < likely*1.25 {
			out = append(out, fmt.Sprintf(format, args...))
		}
	}
	outer := sized{"diameter", e.all.Outer.M(), e.all.Written.Outer, -2, lengthUnits[:2]}
	sizes, what := []sized{outer, {"length", r.Length.M(), r.Written.Length, -1, lengthUnits}, {"mass", r.Mass.Kg(), r.Written.Mass, 1, massUnits}}, "length or mass"
	if r.Kind == reading.Hung {
		sizes, what = []sized{outer, {"speaking length", r.Speaking.M(), r.Written.Speaking, -2, lengthUnits}, {"hung mass", r.HungMass.Kg(), r.Written.HungMass, 1, massUnits}}, "hung mass"
	}
	for _, s := range sizes {
		for _, u := range s.units {
			if s.form.Known() && u.Unit != s.form.Unit {
				ask(math.Pow(u.SI(s.form.Value(s.si))/s.si, s.power), "is the %s in %s?", s.name, unitNames[u.Unit])
			}
		}
	}
	ask(10, "is the decimal point of %s one place off?", what)
	ask(0.1, "is the decimal point of %s one place off?", what)
	if r.Kind == reading.Hung {
		ask(0.25, "is the pitch an octave higher?")
		ask(4, "is the pitch an octave lower?")
	} else if n := math.Round(implied / likely * float64(r.NumPieces())); n >= 1 && n <= mostTogether {
		ask(float64(r.NumPieces())/n, "were %g pieces weighed together?", n)
	}
	if out == nil {
		return "check the diameter, the mass, the length and the pieces, and their units"
	}
	return strings.Join(out, " ")
}
