package gauges

import (
	"math/rand/v2"
	"slices"

	"scalepair/data/unit"
)

// Drawn is one gauge in one draw.
type Drawn struct {
	LinearDensity unit.LinearDensity // above 0
	Core          unit.Length        // above 0; 0 where the core is unknown
}

// Drawer draws stocks at random; it is made once for many draws and may be
// used by several goroutines at once with a rng each.
//
// A draw puts a standard normal value on every source of error and adds it up:
//
//	w = LinearDensity + Indep z_own + sum(Common_k z_k)
//	core = Core + sum(CoreParts_k z_k) + CoreByDensity (w - LinearDensity)
//
// so gauges that share a balance, a ruler, calipers, gravity, a density, a
// packing or a fit move together, and an estimated or built gauge moves with
// its own core. Not drawn together: an estimate and the very readings that its
// fit was made of (only what those readings share with others is), and the
// scatter of a family. Errors are drawn normal whatever their true shape.
type Drawer struct {
	sources []string
	gauges  []Gauge
	common  [][]float64 // by gauge, then source
	parts   [][]float64
}

// NewDrawer prepares gauges for drawing. Sources keep the order in which the
// gauges name them.
func NewDrawer(list []Gauge) *Drawer {
	d := &Drawer{gauges: list}
	for _, g := range list {
		for _, p := range slices.Concat(g.Common, g.CoreParts) {
			if !slices.Contains(d.sources, p.Source) {
				d.sources = append(d.sources, p.Source)
			}
		}
	}
	bySource := func(parts Parts) (out []float64) {
		for _, s := range d.sources {
			out = append(out, parts.Of(s))
		}
		return out
	}
	for _, g := range list {
		d.common, d.parts = append(d.common, bySource(g.Common)), append(d.parts, bySource(g.CoreParts))
	}
	return d
}

// leastShare keeps a draw above 0: no draw goes below this share of the value.
// It is thirty standard uncertainties away for any reading worth the name.
const leastShare = 0.1

// Draw fills dst, which is as long as the list of gauges and in its order, with one
// draw. Equal states of rng give equal draws, and
// every draw takes the same number of values from rng.
func (d *Drawer) Draw(rng *rand.Rand, dst []Drawn) {
	z := make([]float64, len(d.sources))
	for k := range z {
		z[k] = rng.NormFloat64()
	}
	for i, g := range d.gauges {
		w0, core0 := g.LinearDensity.KgPerM(), g.Core.M()
		w := w0 + g.Indep.KgPerM()*rng.NormFloat64()
		for k, u := range d.common[i] {
			w += u * z[k]
		}
		core := core0 + g.CoreByDensity*(w-w0)
		for k, u := range d.parts[i] {
			core += u * z[k]
		}
		dst[i] = Drawn{LinearDensity: unit.LinearDensity(max(w, leastShare*w0)), Core: unit.Length(max(core, leastShare*core0))}
	}
}
