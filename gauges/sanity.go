package gauges

import (
	"fmt"

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
			r.Gauge, e.all.OuterText(), entered(r), reading.Decimals(implied/1e3, 1)), e.unitSlip(r, implied))
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

// slip multiplies the density that a reading implies; factor undoes it.
type slip struct {
	factor float64
	asks   string
}

var (
	weighedSlips = []slip{
		{1 / (25.4 * 25.4), "is the diameter in inches?"},
		{25.4 * 25.4, "is the diameter in millimetres?"},
		{1 / 25.4, "is the length in inches?"},
		{25.4, "is the length in millimetres?"},
		{1 / 10.0, "is the length in centimetres, or the decimal point one place off?"},
		{10.0, "is the length in millimetres, or the decimal point one place off?"},
		{1e-3, "is the mass in milligrams?"},
		{1e3, "is the mass in grams?"},
	}
	hungSlips = []slip{
		{1 / 4.0, "is the pitch an octave higher?"},
		{4, "is the pitch an octave lower?"},
		{unit.Pound, "is the hung mass in pounds?"},
		{1 / 10.0, "is the decimal point of the hung mass one place off?"},
		{10, "is the decimal point of the hung mass one place off?"},
		{1 / (25.4 * 25.4), "is the diameter or the speaking length in inches?"},
	}
)

// unitSlip asks after the slip that would make the density one of a string:
// near its material's where plain, and that of a wrapped steel string otherwise
// (judgement: 6800 kg/m3, within a quarter).
func (e *entry) unitSlip(r *reading.Reading, implied float64) string {
	slips, likely := weighedSlips, 6800.0
	if r.Kind == reading.Hung {
		slips = hungSlips
	}
	if reading.IsPlain(e.all.Construction) && e.material.DensityKgM3 > 0 {
		likely = e.material.DensityKgM3
	}
	for _, slip := range slips {
		if d := implied * slip.factor; d > likely*0.8 && d < likely*1.25 {
			return slip.asks
		}
	}
	return "check the diameter, the mass and the length, and their units"
}
