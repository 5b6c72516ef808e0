package gauges

import (
	"math/rand/v2"

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
	sources int
	gauges  []drawnGauge
}

type drawnGauge struct {
	w, indep, core, byDensity float64
	common, parts             []drawnPart
}

type drawnPart struct {
	source int
	u      float64
}

// NewDrawer prepares gauges for drawing. Sources keep the order in which the
// gauges name them.
func NewDrawer(list []Gauge) *Drawer {
	d := &Drawer{}
	index := map[string]int{}
	number := func(list Parts) []drawnPart {
		var out []drawnPart
		for _, p := range list {
			if _, ok := index[p.Source]; !ok {
				index[p.Source] = len(index)
			}
			out = append(out, drawnPart{index[p.Source], p.U})
		}
		return out
	}
	for _, g := range list {
		d.gauges = append(d.gauges, drawnGauge{
			w: float64(g.LinearDensity), indep: float64(g.Indep), core: float64(g.Core), byDensity: g.CoreByDensity,
			common: number(g.Common), parts: number(g.CoreParts),
		})
	}
	d.sources = len(index)
	return d
}

// leastShare keeps a draw above 0: no draw goes below this share of the value.
// It is thirty standard uncertainties away for any reading worth the name.
const leastShare = 0.1

// Draw fills dst, which is as long as the list of gauges and in its order, with one
// draw; any other length panics. Equal states of rng give equal draws, and
// every draw takes the same number of values from rng.
func (d *Drawer) Draw(rng *rand.Rand, dst []Drawn) {
	if len(dst) != len(d.gauges) {
		panic("gauges: a draw needs room for every gauge")
	}
	var few [64]float64
	z := few[:0]
	for range d.sources {
		z = append(z, rng.NormFloat64())
	}
	for i, g := range d.gauges {
		w := g.w + g.indep*rng.NormFloat64()
		for _, p := range g.common {
			w += p.u * z[p.source]
		}
		core := g.core + g.byDensity*(w-g.w)
		for _, p := range g.parts {
			core += p.u * z[p.source]
		}
		dst[i] = Drawn{LinearDensity: unit.LinearDensity(max(w, leastShare*g.w)), Core: unit.Length(max(core, leastShare*g.core))}
	}
}
