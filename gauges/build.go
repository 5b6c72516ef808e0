package gauges

import (
	"math"

	"scalepair/data"
	"scalepair/data/fault"
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
	shape   Shape
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

// lookUp checks a construction and finds its materials and uncertainties; false
// where a fault was added.
func (t Instruments) lookUp(c Construction, faults *fault.List) (wound, bool) {
	before := len(*faults)
	c.check(faults)
	core, err := material(&Reading{Material: c.Material, Construction: Plain, OuterM: float64(c.Core)})
	faults.Include(c.Place, err)
	w := wound{core: t.wire(float64(c.Core), c.Diameters), shape: c.Shape, coreMat: core, packing: 1, uPack: packingU}
	for _, wrap := range c.Wraps {
		m, err := data.LookupMaterial(wrap.Material)
		faults.Include(c.Place, err)
		w.layers = append(w.layers, layer{wire: t.wire(float64(wrap.Wire), c.Diameters), mat: m, packing: float64(wrap.Packing)})
	}
	if len(w.layers) == 0 {
		w.uPack = 0
	}
	if c.Diameters == Measured && t.CaliperResolution <= 0 {
		faults.Add(c.Place, "the step of the calipers is not known", "", "state the step they read to")
	}
	return w, len(*faults) == before
}

// outer is the outside diameter, m.
//
//	D = D_shelf + 2 sum(d_w)
func (w wound) outer() float64 {
	d := w.shape.seat(w.core.d)
	for _, l := range w.layers {
		d += 2 * l.wire.d
	}
	return d
}

// coreWeight is the core's share of the linear density, kg/m.
func (w wound) coreWeight() float64 { return w.coreMat.DensityKgM3 * w.shape.area(w.core.d) }

// weight is the linear density of core and wraps.
//
//	w = rho_c A_c + sum p rho pi/4 (D_out^2 - D_in^2),  D_out = D_in + 2 d_w
//
// kg/m; wraps from the inside out, the first on the core's seat. Source: mass
// per length by geometry; p from roundPacking or as stated.
func (w wound) weight() float64 {
	total := w.coreWeight()
	w.rings(func(l layer, din, ring float64) {
		p := l.packing
		if p == 0 {
			p = roundPacking(l.wire.d, din)
		}
		total += w.packing * p * ring
	})
	return total
}

// fills is the share of the wraps' rings that a linear density fills with metal;
// 0 without wraps.
func (w wound) fills(linearDensity float64) float64 {
	solid := 0.0
	w.rings(func(_ layer, _, ring float64) { solid += ring })
	if solid == 0 {
		return 0
	}
	return (linearDensity - w.coreWeight()) / solid
}

// rings visits the layers from the inside out, with the diameter that each lies
// on (m) and what its ring would weigh if it were solid (kg/m).
func (w wound) rings(visit func(l layer, din, ring float64)) {
	din := w.shape.seat(w.core.d)
	for _, l := range w.layers {
		dout := din + 2*l.wire.d
		visit(l, din, l.mat.DensityKgM3*math.Pi/4*(dout-din)*(dout+din))
		din = dout
	}
}

// value is the linear density with its uncertainty. Sensitivities are differences
// over a change small enough for the curvature not to show (a thousandth), and
// large enough for rounding not to. What calipers, a density or a family's
// packing share goes into the common parts; the core's own error is kept apart
// by the name of the gauge, since the drawn core shares it.
func (w wound) value(label, family string) value {
	v := value{w: w.weight()}
	core := w.slope(&w.core.d)
	v.common = v.common.plus(1, within(coreSource(label), core*w.core.own)).
		plus(1, within(sourceCalipers, core*w.core.common)).
		plus(1, one(densitySource(w.coreMat), w.slope(&w.coreMat.DensityKgM3)*w.coreMat.DensityU))
	for i := range w.layers {
		l := &w.layers[i]
		wire := w.slope(&l.wire.d)
		v.indep, v.bounded = RootSum(v.indep, wire*l.wire.own), fourthSum(v.bounded, wire*l.wire.own)
		v.common = v.common.plus(1, within(sourceCalipers, wire*l.wire.common)).
			plus(1, one(densitySource(l.mat), w.slope(&l.mat.DensityKgM3)*l.mat.DensityU))
	}
	v.common = v.common.plus(1, one("packing of "+family, w.slope(&w.packing)*w.packing*w.uPack))
	return v
}

// slope is the change of the linear density per change of one of its inputs.
func (w *wound) slope(x *float64) float64 {
	at := *x
	h := at * 1e-3
	*x = at + h
	up := w.weight()
	*x = at - h
	down := w.weight()
	*x = at
	return (up - down) / (2 * h)
}

func coreSource(label string) string       { return "core of " + label }
func densitySource(m data.Material) string { return "density of " + m.Name }
