package gauges

import (
	"fmt"
	"math"
	"strings"
)

// byChange stands for a part that is found by working out once more with the
// input moved by its standard uncertainty.
const byChange = "by changing that input"

// construction shows the linear density of core and wraps.
func (k *works) construction(g Gauge, e *entry) named {
	b := e.built
	v := b.value(e.r.Gauge, e.r.Construction)
	rho := k.given("rho", "density of "+b.coreMat.Name, b.coreMat.DensityKgM3, "kg/m3", b.coreMat.Source)
	terms := []string{k.step("wc", "weight of the core", rho+" A", b.coreWeight(), "kg/m", "definition")}
	seat := "d"
	if b.shape == Hex {
		seat = "2/sqrt(3) d"
	}
	k.step("D0", "what the first wrap lies on", seat, b.shape.seat(b.core.d), "m", fromShape)
	kappa := ""
	if b.packing != 1 {
		kappa = k.given("kap", "factor on the packing, from weighed gauges of the kind", b.packing, "", "mean of weighed over reckoned wraps") + " "
	}
	i := 0
	b.rings(func(l layer, din, ring float64) {
		i++
		terms = append(terms, k.layer(l, i, din, ring, b.packing, kappa))
	})
	w := k.step("wC", "linear density of core and wraps", strings.Join(terms, " + "), v.w, "kg/m", "definition")
	out := named{value: v, wSym: w, ownSym: k.step("oC", "standard uncertainty from the wrap wires' diameters", byChange, v.indep, "kg/m", guideSum)}
	if v.bounded > 0 {
		out.boundedSym = k.step("bC", "the same, by fourth powers, since tolerances and roundings have bounds", byChange, v.bounded, "kg/m", fromShapes)
	}
	k.listShared(&out, "C")
	return out
}

// layer shows one wrap and gives the symbol of its weight.
func (k *works) layer(l layer, i int, din, ring, packing float64, kappa string) string {
	d := k.given(fmt.Sprintf("dw%d", i), "wire of the wrap", l.wire.d, "m", "the build file")
	rho := k.once("rhow", "density of "+l.mat.Name, l.mat.DensityKgM3, "kg/m3", l.mat.Source)
	inner := fmt.Sprintf("D%d", i-1)
	outer := k.step(fmt.Sprintf("D%d", i), "outside of the wrap", fmt.Sprintf("%s + 2 %s", inner, d), din+2*l.wire.d, "m", fromShape)
	p := fmt.Sprintf("k%d", i)
	filled := l.packing
	if filled > 0 {
		k.given(p, "share of its ring that it fills", filled, "", "the build file")
	} else {
		filled = roundPacking(l.wire.d, din)
		k.step(p, "share of its ring that it fills", fmt.Sprintf("pi/4 sqrt(1 + (%s/(pi (%s + %s)))^2)", d, inner, d), filled, "", fromPacking)
	}
	return k.step(fmt.Sprintf("x%d", i), "weight of the wrap", fmt.Sprintf("%s%s %s pi/4 (%s^2 - %s^2)", kappa, p, rho, outer, inner), packing*filled*ring, "kg/m", "definition")
}

// listShared lists the shared parts of a value, each as found by working out
// once more.
func (k *works) listShared(n *named, kind string) {
	for _, p := range n.common.dropZeros() {
		symbol := k.stem(p.Source) + kind
		k.step(symbol, "standard uncertainty from the "+p.Source+", shared", byChange, p.U, "kg/m", guideSum)
		n.shared = append(n.shared, sharedSym{p.Source, symbol})
	}
}

// estimate shows a linear density that comes from the fit of its kind.
func (k *works) estimate(g Gauge, fits []Fit) named {
	out := named{value: g.value()}
	for _, f := range fits {
		if labelKey(f.Family) == labelKey(g.Family) && (g.Family != Plain || f.Material == g.Material) {
			out.wSym = k.fromLaw(g, f)
		}
	}
	out.ownSym = k.given("own", "standard uncertainty from the scatter of its kind and its own outside",
		float64(g.Indep), "kg/m", "prediction from the fit, widened where few gauges make it")
	if g.bounded > 0 {
		out.boundedSym = k.given("bo", "of that, from its own outside, which lies within bounds", g.bounded, "kg/m", fromFit)
	}
	k.listShared(&out, "")
	return out
}

// fromLaw shows the law of a fit at a gauge's size.
func (k *works) fromLaw(g Gauge, f Fit) string {
	gauges := fmt.Sprintf("%s, %d gauges", fromFit, len(f.Used))
	switch f.Kind {
	case OneDensity:
		k.given("rho", "density of "+g.Family+" wire", f.DensityKgM3, "kg/m3", gauges)
		return k.step("w", "linear density, estimated", "rho pi/4 d^2", float64(g.LinearDensity), "kg/m", fromFit)
	case PowerLaw:
		k.given("D", "outer diameter", float64(g.Outer), "m", "the readings")
		k.given("Dm", "middle diameter of the fit", math.Exp(f.law.centre), "m", gauges)
		k.given("wm", "linear density there", math.Exp(f.law.level), "kg/m", gauges)
		k.given("p", "power", f.Exponent, "", gauges)
		return k.step("w", "linear density, estimated", "wm (D/Dm)^p", float64(g.LinearDensity), "kg/m", fromFit)
	}
	k.given("D", "outer diameter", float64(g.Outer), "m", "the readings")
	seat := "d"
	if g.Shape == Hex {
		seat = "2/sqrt(3) d"
	}
	k.step("D0", "what the wrap lies on", seat, g.Shape.seat(float64(g.Core)), "m", fromShape)
	k.given("rho", "density of the core", g.DensityKgM3, "kg/m3", "the material list")
	k.given("rhow", "density of the wrap, air included", f.DensityKgM3, "kg/m3", gauges)
	return k.step("w", "linear density, estimated", "rho A + rhow pi/4 (D^2 - D0^2)", float64(g.LinearDensity), "kg/m", fromFit)
}
