package gauges

import (
	"fmt"
	"math"

	"scalepair/data"
	"scalepair/data/fault"
	"scalepair/data/trace"
	"scalepair/gauges/reading"
)

// roundPacking is the share of a layer's ring that close round wire fills.
//
//	p = (pi/4) sqrt(1 + (d_w/(pi (D_in + d_w)))^2)
//
// d_w: wrap wire, m; D_in: what it lies on, m. The root is the length of one
// turn over its circle, one wire's width being the pitch of the helix. Source:
// geometry, ours; wire that is pressed flat by winding fills more, which
// packingU covers.
func roundPacking(dw, din float64) float64 {
	return math.Pi / 4 * math.Hypot(1, dw/(math.Pi*(din+dw)))
}

// packingU is the standard uncertainty of a packing as a fraction, where no
// weighed gauge of the family fixes it; neighbourU what is left when one does.
// Judgement.
const (
	packingU   = 0.02
	neighbourU = 0.01
)

// wound is a construction with everything looked up: sizes in m, densities in
// kg/m3.
type wound struct {
	core    diameter
	shape   reading.Shape
	coreMat data.Material
	layers  []layer
	packing float64 // factor on every layer's packing, from weighed neighbours; 1 without
	uPack   float64 // its standard uncertainty, relative
}

type layer struct {
	wire    diameter
	mat     data.Material
	packing float64 // stated; 0: close round wire
}

// diameter is a diameter in m with the parts of its uncertainty.
type diameter struct {
	d     float64
	parts Parts
}

// own names the error of a diameter that no other shares.
const own = "own"

// newWound checks a construction and finds its materials; false where a fault
// was added.
func (in Input) newWound(c Construction, faults *fault.List) (wound, bool) {
	before := len(*faults)
	c.check(faults)
	t := in.Instruments
	wire := func(x Wrap) diameter {
		return diameter{x.Wire.M(), t.diameterParts(own, c.Diameters, wireTolerance(x.Wire))}
	}
	core, err := materialOf(&reading.Reading{Material: c.Material, Construction: reading.Plain, Outer: c.Core}, in.Materials)
	faults.Include(c.Place, err)
	w := wound{core: wire(Wrap{Wire: c.Core}), shape: c.Shape, coreMat: core, packing: 1, uPack: packingU}
	for _, wrap := range c.Wraps {
		m, err := lookUp(wrap.Material, in.Materials)
		faults.Include(c.Place, err)
		w.layers = append(w.layers, layer{wire(wrap), m, float64(wrap.Packing)})
	}
	if len(w.layers) == 0 {
		w.uPack = 0
	}
	return w, len(*faults) == before
}

// outer is the outside diameter, m.
//
//	D = D_bed + 2 sum(d_w)
func (w wound) outer() float64 {
	d := w.bed()
	for _, l := range w.layers {
		d += 2 * l.wire.d
	}
	return d
}

func (w wound) bed() float64 { return w.shape.Bed(1).M() * w.core.d }
func (w wound) coreWeight() float64 {
	return w.coreMat.DensityKgM3 * w.shape.Area(1) * w.core.d * w.core.d
}

// weight is the linear density of core and wraps, kg/m, and what the wraps would
// weigh if they filled their rings.
//
//	w = rho_c A_c + sum p rho pi/4 (D_out^2 - D_in^2),  D_out = D_in + 2 d_w
//
// Wraps from the inside out, the first on the core's bed. Source: mass per
// length by geometry; p from roundPacking or as stated.
func (w wound) weight(tr *trace.Trace) (total, solid float64) {
	total = tr.Step("wc, weight of the core", "density of "+w.coreMat.Name+" times its area", w.coreWeight(), "kg/m", w.coreMat.Source)
	din := tr.Step("D0, what the first wrap lies on", "d, or 2/sqrt(3) d on a hex core", w.bed(), "m", "geometry")
	for i, l := range w.layers {
		dw := l.wire.d
		dout := din + 2*dw
		p := l.packing
		if p == 0 {
			p = roundPacking(dw, din)
		}
		ring := l.mat.DensityKgM3 * math.Pi / 4 * (dout - din) * (dout + din)
		if tr != nil {
			k := work{Trace: tr, number: fmt.Sprint(i + 1)}
			k.given("dw#, wire of the wrap", dw, "m", "the build file")
			k.step("D#, outside of the wrap", fmt.Sprintf("D%d + 2 dw#", i), dout, "m", "geometry")
			k.step("p#, share of its ring that it fills", fmt.Sprintf("pi/4 sqrt(1 + (dw#/(pi (D%d + dw#)))^2), or as stated", i), p, "", "geometry of close round wire, ours")
			k.step("x#, weight of the wrap", fmt.Sprintf("%v p# density of %s pi/4 (D#^2 - D%d^2)", w.packing, l.mat.Name, i), w.packing*p*ring, "kg/m", l.mat.Source)
		}
		total += w.packing * p * ring
		solid += ring
		din = dout
	}
	return total, solid
}

// fills is the share of the wraps' rings that a linear density fills with metal;
// 0 without wraps.
func (w wound) fills(linearDensity float64) float64 {
	if _, solid := w.weight(nil); solid > 0 {
		return (linearDensity - w.coreWeight()) / solid
	}
	return 0
}

// value is the linear density with its uncertainty. Sensitivities are differences
// over a change small enough for the curvature not to show (a thousandth), and
// large enough for rounding not to. What calipers, a density or a family's
// packing share goes into the common parts; the core's own error is kept apart
// by the name of the gauge, since the drawn core shares it.
func (w wound) value(label, family string, tr *trace.Trace) Value {
	v := Value{}
	v.W, _ = w.weight(tr)
	wire := func(d *diameter, name string) {
		slope := w.slope(&d.d)
		for _, p := range d.parts {
			source := p.Source
			if source == own {
				source = name
			}
			v.Add(Part{source, slope * p.U, p.Bounded})
		}
	}
	density := func(m *data.Material) {
		v.Add(Part{"density of " + m.Name, w.slope(&m.DensityKgM3) * m.DensityU, false})
	}
	wire(&w.core, CoreSource(label))
	density(&w.coreMat)
	for i := range w.layers {
		wire(&w.layers[i].wire, "")
		density(&w.layers[i].mat)
	}
	v.Add(Part{"packing of " + family, w.slope(&w.packing) * w.packing * w.uPack, false})
	tr.Step("wC, linear density of core and wraps", "their sum", v.W, "kg/m", "definition")
	tr.Step("oC, standard uncertainty from the wrap wires' diameters", "by changing each", v.Indep, "kg/m", guideSum)
	for _, p := range v.Common {
		tr.Step(", standard uncertainty from the "+p.Source+", shared", "by changing that input", p.U, "kg/m", guideSum)
	}
	return v
}

// slope is the change of the linear density per change of one of its inputs.
func (w *wound) slope(x *float64) float64 {
	at := *x
	h := at * 1e-3
	*x = at + h
	up, _ := w.weight(nil)
	*x = at - h
	down, _ := w.weight(nil)
	*x = at
	return (up - down) / (2 * h)
}
