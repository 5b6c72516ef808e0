package tension

import (
	"math"

	"scalepair/data/trace"
	"scalepair/data/unit"
)

// Sensitivity is by how many percent the tension of an open string moves when
// an input moves by one percent.
type Sensitivity struct {
	LinearDensity float64 // of w
	CoreDia       float64 // of the core's diameter, through EA, at the same weight
}

// Sensitivities at a tension.
//
//	dlnT/dlnw = (1 + e)/(1 + 2 e), dlnT/dlnd = 2 e/(1 + 2 e), e = T/EA
//
// Ours: the differential of T (1 + T/EA) = w (2 L f)^2, with EA as d^2 for a
// round or hexagonal core. At e = 0 (EA not known) they are 1 and 0. Length and
// pitch are exact by choice; dlnT/dlnL = dlnT/dlnf = 2 dlnT/dlnw.
func (w Wire) Sensitivities(t unit.Force) Sensitivity {
	e := t.N() * w.Compliance()
	return Sensitivity{LinearDensity: (1 + e) / (1 + float64(2*e)), CoreDia: 2 * e / (1 + float64(2*e))}
}

// WithU gives a tension its standard uncertainty, to first order, from the
// linear density and the core's diameter, taken as independent.
//
//	u^2 = (T (1 + e)/(1 + 2 e) u(w)/w)^2 + (T 2 e/(1 + 2 e) u(d)/d)^2
//
// Source: JCGM 100:2008 (GUM), 5.1.
func (w Wire) WithU(tr *trace.Trace, t unit.Force) unit.Uncertain[unit.Force] {
	by := w.Sensitivities(t)
	density := t.N() * by.LinearDensity * w.ULinearDensity.KgPerM() / w.LinearDensity.KgPerM()
	core := 0.0
	if w.CoreDia != 0 {
		core = t.N() * by.CoreDia * w.UCoreDia.M() / w.CoreDia.M()
	}
	u := math.Sqrt(float64(density*density) + float64(core*core))
	if u > 0 {
		tr.Step("u, standard uncertainty of the tension", "root of the summed squares of its parts", u, "N", errorSum)
	}
	if u > 0 && w.CoreDia != 0 { // else all of it is from the linear density
		share := func(part float64) float64 { return 100 * (part / u) * (part / u) }
		tr.Step(", share of that from the linear density", "100 (T (1 + e)/(1 + 2 e) u(w)/w / u)^2", share(density), "%", errorSum)
		tr.Step(", share of that from the core diameter", "100 (T 2 e/(1 + 2 e) u(d)/d / u)^2", share(core), "%", errorSum)
	}
	return unit.Uncertain[unit.Force]{Value: t, U: unit.Force(u)}
}
