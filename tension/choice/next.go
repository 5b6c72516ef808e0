package choice

import (
	"math"

	"scalepair/data/unit"
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
func (p *Plan) NextOf(d *Detail, good unit.Ratio) (Next, error) {
	n := Next{OfError: good < surelyGood, Density: make([]float64, len(p.wires)), Core: make([]float64, len(p.wires))}
	result := func(q *Plan) (float64, error) {
		other, err := q.Detail(d.Bass, d.Treble, d.Gauges)
		if err != nil {
			return 0, err
		}
		if n.OfError {
			return float64(other.Error), nil
		}
		return other.Totals[0].Tension.Value.N(), nil
	}
	var err error
	if n.Value, err = result(p); err != nil {
		return n, err
	}
	leans := map[int]influence{}
	for _, g := range p.inPlay(d) {
		var by influence
		if by.density, err = p.slope(g, result, func(q *Plan, r float64) { q.wires[g].LinearDensity *= unit.LinearDensity(r) }); err != nil {
			return n, err
		}
		if w := p.wires[g]; w.CoreDia > 0 {
			if by.core, err = p.slope(g, result, func(q *Plan, r float64) {
				q.wires[g].EA *= unit.Force(r * r)
				q.wires[g].CoreArea *= r * r
			}); err != nil {
				return n, err
			}
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
	return n, nil
}

// inPlay lists the gauges that a detail and the reference have, each once.
func (p *Plan) inPlay(d *Detail) []int {
	sets := [][]int{d.Gauges}
	if p.ref != nil {
		sets = append(sets, p.ref.Gauges)
	}
	var out []int
	seen := map[int]bool{}
	for _, set := range sets {
		for _, g := range set {
			if !seen[g] {
				seen[g] = true
				out = append(out, g)
			}
		}
	}
	return out
}

// slope is the change of a result per relative change of something of gauge g,
// by a central difference; the targets move with the reference's gauges. A bend
// that a change makes impossible would give no result; steps are far too small
// for that unless it is so already.
func (p *Plan) slope(g int, result func(*Plan) (float64, error), change func(q *Plan, r float64)) (float64, error) {
	const step = 1e-5
	var ends [2]float64
	for k, r := range []float64{1 - step, 1 + step} {
		q := *p
		q.wires = append(q.wires[:0:0], p.wires...)
		change(&q, r)
		q.targets = q.wanted(q.wires)
		var err error
		if ends[k], err = result(&q); err != nil || math.IsNaN(ends[k]) {
			return 0, err
		}
	}
	return (ends[1] - ends[0]) / (2 * step), nil
}
