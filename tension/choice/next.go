package choice

import (
	"scalepair/data/unit"
	"slices"
)

// surelyGood is the part of the trials below which weighing aims at a pick's
// error, and not at its tension (judgement).
const surelyGood unit.Ratio = 0.95

// Next says what a further weighing would be for: a quantity, how well it is
// known, and how it leans on the strings in stock.
type Next struct {
	// OfError says that the quantity is the feel error (a part of 1); else it is
	// the total tension in the first tuning (N).
	OfError bool
	// Value is the quantity, U its standard uncertainty from the readings.
	Value, U float64
	// Density and Core give, by stock index, the change of the quantity per
	// relative change of the linear density (with what of the core follows from
	// it) and of the core's diameter by itself.
	Density, Core []float64
	// Parts is the budget of U, the largest first.
	Parts []Part
}

// NextOf says what to weigh for, for the set of a pick that stays good in a part
// of the trials (1 where that is not known): its total tension, or, below 95 %,
// its error. What the error leans on is found by small changes of each gauge, the
// reference's among them.
func (p *Plan) NextOf(d *Detail, good unit.Ratio) Next {
	n := Next{OfError: good < surelyGood, Density: make([]float64, len(p.wires)), Core: make([]float64, len(p.wires))}
	result := func(q *Plan) float64 {
		other := q.drawn(d.Bass, d.Treble, d.Gauges)
		if n.OfError {
			return float64(other.Error)
		}
		return other.Totals[0].Tension.Value.N()
	}
	n.Value = result(p)
	leans := map[int]influence{}
	for _, g := range p.inPlay(d) {
		by := influence{density: p.slope(result, func(q *Plan, r float64) { q.wires[g].LinearDensity *= unit.LinearDensity(r) })}
		if p.wires[g].CoreDia > 0 {
			by.core = p.slope(result, func(q *Plan, r float64) {
				q.wires[g].EA *= unit.Force(r * r)
				q.wires[g].CoreArea *= r * r
			})
		}
		leans[g] = by
		n.Density[g], n.Core[g] = p.perDensity(g, by)*p.req.Stock[g].LinearDensity.KgPerM(), by.core
	}
	n.U = p.spread(leans)
	for _, x := range p.parts(leans) {
		if x.U != 0 {
			x.Share = unit.Ratio(x.U * x.U / (n.U * n.U))
			n.Parts = append(n.Parts, x)
		}
	}
	return n
}

// inPlay lists the gauges that a detail and the reference have, each once.
func (p *Plan) inPlay(d *Detail) []int {
	out := slices.Clone(d.Gauges)
	if p.ref != nil {
		out = append(out, p.ref.Gauges...)
	}
	slices.Sort(out)
	return slices.Compact(out)
}

// slope is the change of a result per relative change of something, by a central
// difference; the targets move with the reference's gauges. Steps are far too
// small to make a bend impossible unless it is so already.
func (p *Plan) slope(result func(*Plan) float64, change func(q *Plan, r float64)) float64 {
	const step = 1e-5
	end := func(r float64) float64 {
		q := *p
		q.wires = slices.Clone(p.wires)
		change(&q, r)
		q.targets = q.wanted(q.wires)
		return result(&q)
	}
	return (end(1+step) - end(1-step)) / (2 * step)
}
