package gauges

import (
	"fmt"
	"math"
	"strings"

	"scalepair/data"
	"scalepair/data/fault"
	"scalepair/data/odd"
)

// lightKgM3 parts plastics and gut from metals (judgement: the lightest metal
// of strings is titanium, 4500 kg/m3).
const lightKgM3 = 3500

// OddReadings watches what single rows say, apart from the linear density that
// they stand for; that is Stock.Odd's. Materials that the rows themselves
// describe are among it, so that rows are to be given as they were read.
func OddReadings(rows []Reading) odd.List {
	var out odd.List
	for i := range rows {
		rows[i].odd(&out)
	}
	return out
}

func (r *Reading) odd(out *odd.List) {
	look := func(row int, x float64) {
		if x != 0 && !watched[row].Holds(x) {
			out.Look(&watched[row], r.Place, "of gauge "+r.Gauge, x)
		}
	}
	look(r.outerRow(), 1e3*r.OuterM)
	if !r.plain() && r.OuterM > 0 {
		look(watchCoreShare, r.CoreM/r.OuterM)
	}
	look(watchWinding, 1e3*r.WindingM)
	look(watchPieceLength, 1e3*r.LengthM)
	look(watchPieces, float64(r.Pieces))
	look(watchRulerResolution, 1e3*r.LengthStepM)
	look(watchBalanceResolution, 1e3*r.MassStepKg)
	look(watchHungMass, r.HungKg)
	look(watchHungResolution, 1e3*r.HungResolutionKg)
	look(watchSpeaking, 1e3*r.SpeakingM)
	look(watchHungPitch, r.FreqHz)
	look(watchPitchCents, r.PitchCents)
	look(watchDensity, r.DensityKgM3/1e3)
	metal := r.DensityKgM3 == 0 || r.DensityKgM3 >= lightKgM3
	look(modulusRow(metal), r.YoungsPa/1e9)
	look(strengthRow(metal), r.StrengthPa/1e6)
}

// plain is isPlain without building a key, since there are many rows.
func (r *Reading) plain() bool { return strings.EqualFold(strings.TrimSpace(r.Construction), Plain) }

// outerRow is the row that an outer diameter is watched by. Materials are
// looked up only where a metal's would be odd.
func (r *Reading) outerRow() int {
	if r.Construction != "" && !r.plain() {
		return watchWoundOuter
	}
	if r.Construction == "" && watched[watchWoundOuter].Holds(1e3*r.OuterM) {
		return watchWoundOuter // the kind stands in another row of the gauge
	}
	if watched[watchWireOuter].Holds(1e3*r.OuterM) || r.Material == "" && r.DensityKgM3 == 0 {
		return watchWireOuter
	}
	if m, err := material(r); err == nil && m.DensityKgM3 > 0 && m.DensityKgM3 < lightKgM3 {
		return watchPlasticOuter
	}
	return watchWireOuter
}

func modulusRow(metal bool) int {
	if metal {
		return watchMetalModulus
	}
	return watchPlasticModulus
}

func strengthRow(metal bool) int {
	if metal {
		return watchMetalStrength
	}
	return watchPlasticStrength
}

// Odd watches the densities that the readings of whole gauges stand for: of a
// plain string against its material's, of the wrap where the core is known, of
// the whole string where it is not. A gauge without a reading has none.
func (s Stock) Odd() odd.List {
	var out odd.List
	for i := range s.Gauges {
		g := &s.Gauges[i]
		if g.Readings == 0 || len(g.Rows) == 0 {
			continue
		}
		u := g.usualDensity()
		if x := g.ImpliedKgM3 / 1e3; !u.Holds(x) {
			u.Check = g.densityCheck(x/u.middle()) + g.isIt()
			out.Look(&u.Usual, g.Rows[0].Place, "of gauge "+g.Label, x)
		}
	}
	return out
}

// usualRange is a usual range that was fitted to one gauge.
type usualRange struct{ odd.Usual }

func (u usualRange) middle() float64 { return (u.Low + u.High) / 2 }

// widen moves both bounds outwards, the lower one no further than 0.
func (u *usualRange) widen(by float64) { u.Low, u.High = max(0, u.Low-by), u.High+by }

// usualDensity is what the gauge's ImpliedKgM3 should be, in g/cm3: of a plain
// string its material's, with densityRoom, of a wound one a row of the table. Both
// are widened by three standard uncertainties of what was read:
//
//	(u(y))^2 = (k_w u(w)/w)^2 + (k_d u(d)/d)^2 + (k_c u(c)/c)^2,  y = ln of the density
//
// with FitKind.leans on weight, outer and core diameter. Errors that
// they share are taken as independent.
func (g *Gauge) usualDensity() usualRange {
	if g.Family != Plain {
		return g.usualWound()
	}
	rho, x := g.DensityKgM3/1e3, g.ImpliedKgM3/1e3
	u := usualRange{watched[watchWireDensity]}
	if rho == 0 {
		u.Low, u.High = watched[watchDensity].Low, watched[watchDensity].High
		return u
	}
	u.Low, u.High = rho*(1-densityRoom), rho*(1+densityRoom)
	if !u.Holds(x) {
		u.widen(3 * (rho*g.relDensityU(OneDensity) + g.densityU()/1e3))
	}
	return u
}

func (g *Gauge) usualWound() usualRange {
	u, kind := usualRange{watched[watchWrapDensity]}, WrapDensity
	if g.Core == 0 || g.DensityKgM3 == 0 {
		u, kind = usualRange{watched[watchStringDensity]}, OneDensity
	}
	if x := g.ImpliedKgM3 / 1e3; !u.Holds(x) {
		u.widen(3 * u.middle() * g.relDensityU(kind))
	}
	return u
}

// relDensityU is the relative standard uncertainty of the implied density.
func (g *Gauge) relDensityU(kind FitKind) float64 {
	by := kind.leans(g, g.LinearDensity, 0)
	u := RootSum(by.byWeight*g.RelU(), by.byOuter*g.UOuter/g.Outer)
	if kind == WrapDensity {
		u = RootSum(u, by.byCore*g.UCore/g.Core)
	}
	return u
}

// densityU is the standard uncertainty of the material's density, kg/m3.
func (g *Gauge) densityU() float64 {
	if m, err := data.LookupMaterial(g.Material); err == nil && m.DensityKgM3 == g.DensityKgM3 {
		return m.DensityU
	}
	return ownDensityU * g.DensityKgM3
}

// nearSlip is how near a density must come to a slip's for the slip to be
// named (judgement).
const nearSlip = 0.1

// densityCheck asks after the slip that makes a density so many times what it
// should be.
func (g *Gauge) densityCheck(times float64) string {
	near := func(want float64) bool { return math.Abs(math.Log(times/want)) < nearSlip }
	if g.Rows[0].Kind == Hung {
		switch {
		case near(1.0 / 4):
			return "is the pitch an octave higher? " + checkPitch
		case near(1 / 2.2046):
			return "is the hung mass in pounds? " + checkPitch
		case near(2.2046):
			return "is the hung mass in kilograms? " + checkPitch
		}
		return checkPitch
	}
	for n := 2; n <= 9; n++ {
		switch {
		case near(float64(n)):
			return fmt.Sprintf("were %d times as many pieces weighed as are entered? %s", n, checkWeight)
		case near(1 / float64(n)):
			return fmt.Sprintf("is the length of the piece %d times too long, or its mass that of one of %d? %s", n, n, checkWeight)
		}
	}
	return checkWeight
}

// isIt asks after the material of a plain string.
func (g *Gauge) isIt() string {
	if g.Family != Plain {
		return ""
	}
	return "; is it " + g.Material + "?"
}

// Odd watches a construction. The places are the keys within its entry.
func (c Construction) Odd() odd.List {
	var out odd.List
	about := "of gauge " + c.Gauge
	at := func(key string) fault.Place { return fault.Place{Input: key} }
	outer := c.Shape.seat(c.CoreM)
	for i, w := range c.Wraps {
		outer += 2 * w.WireM
		out.Look(&watched[watchWrapWire], at(fmt.Sprintf("wraps[%d].wire", i)), about, 1e3*w.WireM)
		if w.Packing != 0 {
			out.Look(&watched[watchPacking], at(fmt.Sprintf("wraps[%d].packing", i)), about, w.Packing)
		}
	}
	if len(c.Wraps) > 0 {
		out.Look(&watched[watchCoreShare], at("core"), about, c.CoreM/outer)
		out.Look(&watched[watchWoundOuter], at("wraps"), about, 1e3*outer)
	} else {
		r := Reading{Construction: Plain, Material: c.CoreMaterial, OuterM: c.CoreM}
		out.Look(&watched[r.outerRow()], at("core"), about, 1e3*c.CoreM)
	}
	if c.WindingM != 0 {
		out.Look(&watched[watchWinding], at("winding"), about, 1e3*c.WindingM)
	}
	return out
}

// OddMaterial watches a material of the builder's own: density in kg/m3,
// modulus and strength in Pa, 0 where not given. The places are the keys within
// its entry.
func OddMaterial(m data.Material) odd.List {
	var out odd.List
	look := func(row int, key string, x float64) {
		if x != 0 {
			out.Look(&watched[row], fault.Place{Input: key}, "of "+m.Name, x)
		}
	}
	metal := m.DensityKgM3 == 0 || m.DensityKgM3 >= lightKgM3
	look(watchDensity, "density_g_cm3", m.DensityKgM3/1e3)
	look(modulusRow(metal), "youngs_gpa", m.YoungsPa/1e9)
	look(strengthRow(metal), "strength_mpa", m.StrengthPa/1e6)
	return out
}

// Odd watches balance, ruler, calipers and scales. Places name the build file's
// keys; a 0 that stands for 'not given' is left alone.
func (t Instruments) Odd() odd.List {
	var out odd.List
	look := func(row int, key string, x float64) {
		if x != 0 {
			out.Look(&watched[row], fault.Place{Input: "measuring." + key}, "", x)
		}
	}
	look(watchBalanceResolution, "balance_resolution", 1e3*t.BalanceResolutionKg)
	look(watchBalanceBound, "balance_accuracy", 1e3*t.BalanceAccuracyKg)
	look(watchRulerResolution, "ruler_resolution", 1e3*t.RulerResolutionM)
	look(watchRulerBound, "ruler_accuracy", 1e3*t.RulerAccuracyM)
	look(watchCaliperResolution, "caliper_resolution", 1e3*t.CaliperResolutionM)
	look(watchCaliperBound, "caliper_accuracy", 1e3*t.CaliperAccuracyM)
	look(watchHungResolution, "hung_resolution", 1e3*t.HungResolutionKg)
	look(watchPitchCents, "pitch_uncertainty_cents", t.PitchCents)
	return out
}
