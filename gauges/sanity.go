package gauges

import (
	"fmt"

	"scalepair/data/fault"
)

// Every string material lies between these densities, kg/m3: nylon 1080, with
// room for its fit, and tungsten wire at 19300. Judgement.
const (
	leastDensity    = 1000
	greatestDensity = 25000
)

// nearGravity is near enough for a check, m/s2.
const nearGravity = 9.8

// checkDensity reports a reading that no string can give: the density it
// implies for the whole string is absurd, or a wound string is lighter than its
// core.
func (e *entry) checkDensity(r *Reading, faults *fault.List) {
	if e.r.OuterM == 0 {
		return
	}
	w := roughly(r)
	implied := w / Round.area(e.r.OuterM)
	least := leastDensity * 1.0
	if e.material.DensityKgM3 > 0 {
		least = min(least, e.material.DensityKgM3/2)
	}
	core := 0.0
	if e.r.Construction != Plain && e.r.CoreM > 0 {
		core = e.material.DensityKgM3 * e.r.Shape.area(e.r.CoreM)
	}
	switch {
	case implied < least || implied > greatestDensity:
		faults.Add(r.Place, "a density which nothing has", fmt.Sprintf("%s, %s, %s: %s g/cm3",
			r.Gauge, e.r.Given.outer().text(e.r.OuterM), e.entered(r), decimals(implied/1e3, 1)), e.otherUnits(r, implied))
	case w <= core:
		faults.Add(r.Place, fmt.Sprintf("gauge %q: %s is less than its core alone, %s", r.Gauge, r.perLength(w), r.perLength(core)),
			e.entered(r), "check the core's diameter, the mass and the length")
	}
}

// roughly is the linear density that a reading stands for, near enough for a check.
func roughly(r *Reading) (w float64) {
	tools := Instruments{Gravity: nearGravity}
	switch r.Kind {
	case Weighed:
		w, _ = tools.weighWork(r)
	case Hung:
		w, _ = tools.hangWork(r, 0, 0)
	}
	return w
}

// perLength shows a linear density in kg/m, by the inch where the length was
// given in inches.
func (r *Reading) perLength(w float64) string {
	if length := r.Given.length().form(); r.Kind == Weighed && length.Unit == "in" {
		return decimals(length.SI(w*1e3), 4) + " g/in"
	}
	return decimals(w*1e3, 4) + " g/m"
}

// entered shows what the reading rests on.
func (e *entry) entered(r *Reading) string {
	if r.Kind == Hung {
		return fmt.Sprintf("%s on %s at %s", r.Given.hung().text(r.HungKg), r.Given.speaking().text(r.SpeakingM), showHz(r.FreqHz))
	}
	pieces := ""
	if r.pieces() > 1 {
		pieces = fmt.Sprintf("%d pieces of ", r.pieces())
	}
	return fmt.Sprintf("%s in %s%s", r.Given.mass().text(r.MassKg), pieces, r.Given.length().text(r.LengthM))
}

// unitSlip is a slip that multiplies the density a reading implies; factor
// undoes it.
type unitSlip struct {
	factor float64
	asks   string
}

var (
	weighedSlips = []unitSlip{
		{1 / (25.4 * 25.4), "is the diameter in inches?"},
		{25.4 * 25.4, "is the diameter in millimetres?"},
		{1 / 25.4, "is the length in inches?"},
		{25.4, "is the length in millimetres?"},
		{1 / 10.0, "is the length in centimetres, or the decimal point one place off?"},
		{10.0, "is the length in millimetres, or the decimal point one place off?"},
		{1e-3, "is the mass in milligrams?"},
		{1e3, "is the mass in grams?"},
		{1e-2, "is the decimal point two places off?"},
		{1e2, "is the decimal point two places off?"},
	}
	hungSlips = []unitSlip{
		{1 / 4.0, "is the pitch an octave higher?"},
		{4, "is the pitch an octave lower?"},
		{1 / 2.2046, "is the hung mass in pounds?"},
		{1 / 10.0, "is the decimal point of the hung mass one place off?"},
		{10, "is the decimal point of the hung mass one place off?"},
		{1 / (25.4 * 25.4), "is the diameter or the speaking length in inches?"},
	}
)

// otherUnits asks after the slip that would make the density one of a string.
func (e *entry) otherUnits(r *Reading, implied float64) string {
	slips := weighedSlips
	if r.Kind == Hung {
		slips = hungSlips
	}
	for _, slip := range slips {
		if d := implied * slip.factor; d > e.usualDensity()*0.8 && d < e.usualDensity()*1.25 {
			return slip.asks
		}
	}
	return "check the diameter, the mass and the length, and their units"
}

// usualDensity is what the whole string should come near: its material's where
// plain, and about that of a wrapped steel string otherwise. Judgement.
func (e *entry) usualDensity() float64 {
	if e.r.Construction == Plain && e.material.DensityKgM3 > 0 {
		return e.material.DensityKgM3
	}
	return 6800
}
