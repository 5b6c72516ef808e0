package choice

import (
	"cmp"
	"maps"
	"math"
	"slices"

	"scalepair/data/unit"
	"scalepair/gauges"
)

// influence is by how much a result changes for a relative change of a gauge's
// linear density, and of its core's diameter.
type influence struct{ density, core float64 }

// spread is the standard uncertainty of a result that leans on gauges so: parts
// with one source are added before they are squared.
func (p *Plan) spread(leans map[int]influence) float64 {
	sum := 0.0
	for _, x := range p.parts(leans) {
		sum += x.U * x.U
	}
	return math.Sqrt(sum)
}

// Part is what one source of error adds to an uncertainty: one gauge by itself
// (index into the stock) or a source that gauges share (then -1).
type Part struct {
	Gauge  int
	Source string
	U      float64
	// Share is its part of the variance.
	Share unit.Ratio
}

// perDensity is the change of a result per kg/m of a gauge's linear density: a
// plain wire's core follows from its weighing too.
func (p *Plan) perDensity(g int, by influence) float64 {
	gauge := &p.req.Stock[g]
	per := by.density / gauge.LinearDensity.KgPerM()
	if gauge.Core > 0 {
		per += by.core * gauge.CoreByDensity / gauge.Core.M()
	}
	return per
}

// parts are all of them, the largest first.
func (p *Plan) parts(leans map[int]influence) []Part {
	var own []Part
	var shared gauges.Parts
	for _, g := range slices.Sorted(maps.Keys(leans)) {
		gauge, by := &p.req.Stock[g], leans[g]
		per := p.perDensity(g, by)
		own = append(own, Part{Gauge: g, U: per * gauge.Indep.KgPerM()})
		shared = shared.Plus(per, gauge.Common...)
		if gauge.Core > 0 {
			shared = shared.Plus(by.core/gauge.Core.M(), gauge.CoreParts...)
		}
	}
	for _, s := range shared {
		own = append(own, Part{Gauge: -1, Source: s.Source, U: s.U})
	}
	slices.SortStableFunc(own, func(a, b Part) int { return cmp.Compare(math.Abs(b.U), math.Abs(a.U)) })
	return own
}
