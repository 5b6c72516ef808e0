package fit

import (
	"math"
	"slices"
	"strings"

	"scalepair/gauges"
	"scalepair/gauges/reading"
)

// family is the gauges that one law may tie together: the plain ones of one
// material, or the wound ones of one name.
type family struct {
	name, material string
	law            Law
	measured       []int // gauges with a reading, by index in the stock
	waiting        []int // gauges to be estimated
	sources        []string
	bounded        []bool // which of the sources have bounds in every gauge, see gauges.Part
	dots           []dot  // of the measured gauges
	slope          float64
	judged         []judged // in the order of dots
}

// families divides the stock into families, in order of first appearance.
func families(list []gauges.Gauge) []*family {
	var out []*family
	byKey := map[string]*family{}
	for i := range list {
		g := &list[i]
		key := reading.Key(g.Family)
		if g.IsPlain() {
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
		f.prepare(list)
	}
	return out
}

// prepare chooses the law and makes the dots: first with every gauge's own
// weight for the size of its uncertainty, then with the weight that a robust line
// gives it, lest a reading that is light by chance or slip pass for a precise or
// an imprecise one. A power law's dots also need its slope, since an error in
// the diameter counts by it.
func (f *family) prepare(list []gauges.Gauge) {
	f.law = f.lawKind(list)
	f.listSources(list)
	f.dots = make([]dot, len(f.measured))
	for k, i := range f.measured {
		d, g := &f.dots[k], &list[i]
		d.gauge = i
		d.x, d.y = f.law.see(g, g.LinearDensity.KgPerM())
		f.weigh(d, g, g.LinearDensity.KgPerM())
	}
	if len(f.dots) < 2 {
		return
	}
	level, slope := robustLine(f.dots, f.law == PowerLaw)
	f.slope = slope
	for k, i := range f.measured {
		d, g := &f.dots[k], &list[i]
		f.weigh(d, g, f.law.weightAt(g, level+slope*d.x))
	}
}

// form is the form of the family's law.
func (f *family) form() form {
	if f.law == OneDensity {
		return form{expected: plainScatter}
	}
	return form{sloped: f.law == PowerLaw, expected: woundScatter}
}

func (f *family) lawKind(list []gauges.Gauge) Law {
	if f.name == reading.Plain {
		return OneDensity
	}
	for _, i := range slices.Concat(f.measured, f.waiting) {
		if list[i].Core == 0 || list[i].DensityKgM3 == 0 {
			return PowerLaw
		}
	}
	return WrapDensity
}

// listSources lists the errors that several gauges share, sorted. A core's own
// error is not among them.
func (f *family) listSources(list []gauges.Gauge) {
	bounded := map[string]bool{gauges.SourceCalipers: true}
	for _, i := range f.measured {
		for _, p := range list[i].Common {
			if was, known := bounded[p.Source]; !strings.HasPrefix(p.Source, gauges.CoreSource("")) {
				bounded[p.Source] = p.Bounded && (was || !known)
			}
		}
	}
	for s := range bounded {
		f.sources = append(f.sources, s)
	}
	slices.Sort(f.sources)
	for _, s := range f.sources {
		f.bounded = append(f.bounded, bounded[s])
	}
}

// Law is the law that a family is fitted with.
type Law int

// The laws: one density over plain wire; one density of the wrap, where every
// core is known; ln w as a straight line in ln d.
const (
	OneDensity Law = iota
	WrapDensity
	PowerLaw
)

// String gives "one density", "one wrap density" or "power law".
func (k Law) String() string {
	return [...]string{"one density", "one wrap density", "power law"}[k]
}

// MarshalText gives the words of String.
func (k Law) MarshalText() ([]byte, error) { return []byte(k.String()), nil }

// leans are the derivatives of a family's y: by ln w, by ln of the outer and by
// ln of the core diameter.
type leans struct{ byWeight, byOuter, byCore float64 }

// see gives x and y of a gauge of linear density w.
//
//	plain, one density:  y = ln(w/A)
//	wrap density:        y = ln((w - a)/R),  a = rho_c A_c,  R = pi/4 (D^2 - D_bed^2)
//	power law:           y = ln w,  x = ln d, an error in d counts by the slope
//
// A = pi/4 D^2; A_c: the core's area, rho_c its density; D_bed: what the wrap
// lies on. All as ln of SI values.
func (k Law) see(g *gauges.Gauge, w float64) (x, y float64) {
	switch k {
	case OneDensity:
		return 0, math.Log(w / reading.Round.Area(g.Outer))
	case PowerLaw:
		return math.Log(g.Outer.M()), math.Log(w)
	}
	core, ring := g.CoreAndRing()
	return 0, math.Log((w - core) / ring)
}

// leans are those of a gauge of linear density w, symbols as in see.
func (k Law) leans(g *gauges.Gauge, w, slope float64) leans {
	switch k {
	case OneDensity:
		return leans{1, -2, 0}
	case PowerLaw:
		return leans{1, -slope, 0}
	}
	core, ring := g.CoreAndRing()
	wrap := w - core
	return leans{
		byWeight: w / wrap,
		byOuter:  -2 * reading.Round.Area(g.Outer) / ring,
		byCore:   2*reading.Round.Area(g.Shape.Bed(g.Core))/ring - 2*core/wrap,
	}
}

// weightAt is the linear density of a gauge at a given y: see, solved for w.
func (k Law) weightAt(g *gauges.Gauge, y float64) float64 {
	switch k {
	case OneDensity:
		return math.Exp(y) * reading.Round.Area(g.Outer)
	case PowerLaw:
		return math.Exp(y)
	}
	core, ring := g.CoreAndRing()
	return core + math.Exp(y)*ring
}

// weigh sets a gauge's dot down with its errors: its own in one figure, the
// shared ones by source, all relative to the linear density likely. A plain gauge's
// core is its outside and counts once.
func (f *family) weigh(d *dot, g *gauges.Gauge, likely float64) {
	by := f.law.leans(g, likely, f.slope)
	d.lean = 1 / by.byWeight
	d.shared = make([]float64, len(f.sources))
	d.u = by.byWeight * g.Indep.KgPerM() / likely
	add := func(scale float64, parts gauges.Parts) {
		for _, p := range parts {
			if k, ok := slices.BinarySearch(f.sources, p.Source); ok {
				d.shared[k] += scale * p.U
			} else {
				d.u = math.Hypot(d.u, scale*p.U)
			}
		}
	}
	add(by.byWeight/likely, g.Common)
	add(by.byOuter/g.Outer.M(), g.OuterParts)
	if by.byCore != 0 {
		add(by.byCore/g.Core.M(), g.CoreParts)
	}
}
