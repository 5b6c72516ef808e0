package gauges

import (
	"math"
	"slices"
	"strings"
)

// family is the gauges that one law may tie together: the plain ones of one
// material, or the wound ones of one name.
type family struct {
	name, material string
	kind           FitKind
	measured       []int // gauges with a reading, by index in the stock
	waiting        []int // gauges to be estimated
	sources        []string
	dots           []dot // of the measured gauges
	slope          float64
}

// families parts the stock into families, in order of first appearance.
func families(all []Gauge) []*family {
	var out []*family
	byKey := map[string]*family{}
	for i := range all {
		g := &all[i]
		key := labelKey(g.Family)
		if g.Family == Plain {
			key += "\x00" + g.Material
		}
		f := byKey[key]
		if f == nil {
			f = &family{name: g.Family, material: g.Material}
			byKey[key], out = f, append(out, f)
		}
		switch {
		case g.Readings > 0:
			f.measured = append(f.measured, i)
		case !g.Built:
			f.waiting = append(f.waiting, i)
		}
	}
	for _, f := range out {
		f.prepare(all)
	}
	return out
}

// prepare chooses the law and makes the dots: first with every gauge's own
// weight for the size of its uncertainty, then with the weight that a robust line
// gives it, lest a reading that is light by chance or slip pass for a precise or
// an imprecise one. A power law's dots also need its slope, since an error in
// the diameter counts by it.
func (f *family) prepare(all []Gauge) {
	f.kind = f.lawKind(all)
	f.sources = f.sharedSources(all)
	n := len(f.sources)
	f.dots = make([]dot, len(f.measured))
	shared := make([]float64, n*len(f.dots))
	for k, i := range f.measured {
		d, g := &f.dots[k], &all[i]
		d.gauge, d.shared = i, shared[k*n:(k+1)*n]
		d.x, d.y = f.kind.see(g, float64(g.LinearDensity))
		f.weigh(d, g, float64(g.LinearDensity))
	}
	if len(f.dots) < 2 {
		return
	}
	level, slope := robustLine(f.dots, f.kind == PowerLaw)
	f.slope = slope
	for k, i := range f.measured {
		d, g := &f.dots[k], &all[i]
		f.weigh(d, g, f.kind.weightAt(g, level+slope*d.x))
	}
}

// form is the form of the family's law.
func (f *family) form() form {
	if f.kind == OneDensity {
		return form{usual: plainScatter}
	}
	return form{sloped: f.kind == PowerLaw, usual: usualScatter}
}

func (f *family) lawKind(all []Gauge) FitKind {
	if f.name == Plain {
		return OneDensity
	}
	for _, i := range slices.Concat(f.measured, f.waiting) {
		if all[i].AreaM2 == 0 || all[i].DensityKgM3 == 0 {
			return PowerLaw
		}
	}
	return WrapDensity
}

// sharedSources lists the errors that several gauges share, sorted. A core's
// own error is not among them.
func (f *family) sharedSources(all []Gauge) []string {
	names := []string{sourceCalipers}
	for _, i := range f.measured {
		for _, p := range all[i].Common {
			if !strings.HasPrefix(p.Source, coreSource("")) && !slices.Contains(names, p.Source) {
				names = append(names, p.Source)
			}
		}
	}
	slices.Sort(names)
	return names
}

// bounds tells which of the shared errors have bounds: those that do in every
// gauge that carries them.
func (f *family) bounds(all []Gauge) []bool {
	out := slices.Repeat([]bool{true}, len(f.sources))
	for _, i := range f.measured {
		for _, p := range all[i].Common {
			if k, ok := slices.BinarySearch(f.sources, p.Source); ok && !p.Bounded {
				out[k] = false
			}
		}
	}
	return out
}

// leans are the derivatives of a family's y: by ln w, by ln of the outer and by
// ln of the core diameter.
type leans struct{ byWeight, byOuter, byCore float64 }

// see gives x and y of a gauge of linear density w.
//
//	plain, one density:  y = ln(w/A)
//	wrap density:        y = ln((w - a)/R),  a = rho_c A_c,  R = pi/4 (D^2 - D_shelf^2)
//	power law:           y = ln w,  x = ln d, an error in d counts by the slope
//
// A = pi/4 D^2; A_c: the core's area, rho_c its density; D_shelf: what the wrap
// lies on. All as ln of SI values.
func (k FitKind) see(g *Gauge, w float64) (x, y float64) {
	switch k {
	case OneDensity:
		return 0, math.Log(w / Round.area(float64(g.Outer)))
	case PowerLaw:
		return math.Log(float64(g.Outer)), math.Log(w)
	}
	core, ring := g.coreAndRing()
	return 0, math.Log((w - core) / ring)
}

// leans are those of a gauge of linear density w, symbols as in see.
func (k FitKind) leans(g *Gauge, w, slope float64) leans {
	switch k {
	case OneDensity:
		return leans{1, -2, 0}
	case PowerLaw:
		return leans{1, -slope, 0}
	}
	core, ring := g.coreAndRing()
	wrap := w - core
	return leans{
		byWeight: w / wrap,
		byOuter:  -2 * Round.area(float64(g.Outer)) / ring,
		byCore:   2*Round.area(g.Shape.seat(float64(g.Core)))/ring - 2*core/wrap,
	}
}

// weightAt is the linear density of a gauge at a given y: see, solved for w.
func (k FitKind) weightAt(g *Gauge, y float64) float64 {
	switch k {
	case OneDensity:
		return math.Exp(y) * Round.area(float64(g.Outer))
	case PowerLaw:
		return math.Exp(y)
	}
	core, ring := g.coreAndRing()
	return core + math.Exp(y)*ring
}

// coreAndRing is the core's share of the linear density, kg/m, and the
// cross-section of the ring that the wrap fills, m2.
func (g *Gauge) coreAndRing() (core, ring float64) {
	return g.DensityKgM3 * g.Shape.area(float64(g.Core)), Round.area(float64(g.Outer)) - Round.area(g.Shape.seat(float64(g.Core)))
}

// weigh sets a gauge's dot down with its errors: its own in one figure, the
// shared ones by source, all relative to the linear density likely. A plain gauge's
// core is its outside and counts once.
func (f *family) weigh(d *dot, g *Gauge, likely float64) {
	by := f.kind.leans(g, likely, f.slope)
	d.lean = 1 / by.byWeight
	clear(d.shared)
	own := make([]float64, 0, 4)
	own = append(own, by.byWeight*float64(g.Indep)/likely, by.byOuter*g.outer.relOwn())
	for _, p := range g.Common {
		if k, ok := slices.BinarySearch(f.sources, p.Source); ok {
			d.shared[k] += by.byWeight * p.U / likely
		} else {
			own = append(own, by.byWeight*p.U/likely)
		}
	}
	k, _ := slices.BinarySearch(f.sources, sourceCalipers)
	d.shared[k] += by.byOuter * g.outer.relCommon()
	if by.byCore != 0 {
		own = append(own, by.byCore*g.core.relOwn())
		d.shared[k] += by.byCore * g.core.relCommon()
	}
	d.u = RootSum(own...)
}
