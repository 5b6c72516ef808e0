package choice

import (
	"math"

	"scalepair/data/unit"
	"scalepair/tension"
)

// strung is what one gauge does as one string of a pair, by note.
type strung struct {
	tension []float64        // N
	logs    []float64        // ln(T/T*), 0 where no tension is wanted
	squares []float64        // e squared
	bends   [][]tension.Bend // of tension 0 where it cannot be made
}

func (p *Plan) newStrung(i int) *strung {
	n := len(p.tuned[i].notes)
	s := &strung{tension: make([]float64, n), logs: make([]float64, n), squares: make([]float64, n), bends: make([][]tension.Bend, n)}
	for k, note := range p.tuned[i].notes {
		s.bends[k] = make([]tension.Bend, len(note.bends))
	}
	return s
}

// misses takes the limits that a gauge breaks as a string; nil takes none.
type misses struct {
	list  []Miss
	loose bool // a gauge passes a limit on breaking strength that cannot be looked at, since its core or strength is not known

	string, gauge int // that are looked at
}

func (m *misses) add(l Limit, fret, value, bound float64) {
	if m != nil {
		m.list = append(m.list, Miss{Limit: l, String: m.string, Gauge: m.gauge, BendFret: fret, Value: value, Bound: bound})
	}
}

// over adds a value beyond a greatest one, 0 for none.
func (m *misses) over(l Limit, fret, value, bound float64) {
	if bound > 0 && value > bound {
		m.add(l, fret, value, bound)
	}
}

// windingSpare is how much winding must lie beyond the nut, m (the string's
// length, what lies behind the saddle, and 10 mm; judgement).
const windingSpare = 0.010

// measure works out what gauge g does as string i at a place, and its squared error
// e^2, which is not known where a bend cannot be made. The bends are left out, and
// known is false, where the tension alone makes e^2 more than most.
//
//	e^2 = (ln T/T*)^2 + b mean over the bend frets of (h(F/F*)^2 + h(D/D*)^2)/2
//	h(r) = ln r, or max(0, ln r) where only harder bends count
//
// T: tension; F: bending force; D: bend distance; *: wanted. With a stated force
// there is no D*, and h(F/F*)^2 stands alone. Of several tunings the mean by
// weight, or the worst. Ours.
func (p *Plan) measure(i, g int, at *place, most float64, s *strung, m *misses) (e2 float64, known bool) {
	w := &p.wires[g]
	if m != nil {
		m.string, m.gauge = i+1, g
		p.wireLimits(i, g, at, m)
	}
	soft := w.Compliance()
	for k := range at.notes {
		t := tension.Stretched(w.LinearDensity.KgPerM()*at.notes[k].speed2, soft)
		s.tension[k], s.squares[k] = t, 0
		if m != nil {
			p.tensionLimits(w, t, m)
		}
		if want := p.want(i, k); want > 0 {
			s.logs[k] = math.Log(t / want)
			s.squares[k] = s.logs[k] * s.logs[k]
		}
	}
	if e2 = p.blend(i, s.squares); e2 > most || !p.isBend[i] {
		return e2, e2 <= most
	}
	known = true
	for k := range at.notes {
		known = p.bend(i, k, w, &at.notes[k], s, m) && known
	}
	return p.blend(i, s.squares), known
}

// wireLimits looks at the limits that do not depend on the note.
func (p *Plan) wireLimits(i, g int, at *place, m *misses) {
	winding := p.req.Stock[g].Winding.M()
	if need := p.req.Tails[i].Saddle.M() + at.length + windingSpare; winding > 0 && need > winding {
		m.add(WindingLength, 0, winding, need)
	}
	if !m.loose && p.strengthUnknown(g) {
		m.add(StrengthUnknown, 0, 0, 0)
	}
}

// strengthUnknown reports whether a limit on breaking strength cannot be looked
// at for a gauge.
func (p *Plan) strengthUnknown(g int) bool {
	return p.req.Limits.BreakingOpen > 0 && (p.wires[g].CoreArea == 0 || p.wires[g].Strength == 0)
}

func (p *Plan) tensionLimits(w *tension.Wire, t float64, m *misses) {
	lim := &p.req.Limits
	if least := lim.LeastTension.N(); t < least {
		m.add(LeastTension, 0, t, least)
	}
	m.over(MostTension, 0, t, lim.MostTension.N())
	m.over(BreakingOpen, 0, float64(w.Breaking(unit.Force(t))), float64(lim.BreakingOpen))
}

// bend makes the bends of one note and adds their part to its square; false where
// one cannot be made.
func (p *Plan) bend(i, k int, w *tension.Wire, at *noteAt, s *strung, m *misses) bool {
	bends, lim := p.tuned[i].notes[k].bends, &p.req.Limits
	if len(bends) == 0 {
		return true
	}
	clear(s.bends[k])
	if w.EA == 0 {
		m.add(StiffnessUnknown, 0, 0, 0)
		return false
	}
	all, sum := true, 0.0
	force, dist := p.targets.force[i], p.targets.dist[i]
	for j, f := range bends {
		fret := float64(p.req.Feel.BendFrets[f])
		bend, ok := at.contacts[j].Bend(w)
		share := w.Breaking(bend.Tension)
		if !ok || share > 1 {
			all = false
			m.add(BendUnreachable, fret, 0, 0)
			continue
		}
		s.bends[k][j] = bend
		m.over(BreakingBent, fret, float64(share), float64(lim.BreakingBent))
		m.over(MostBendingForce, fret, bend.Force.N(), lim.MostBendingForce.N())
		if force != nil {
			part := p.harder(bend.Force.N() / force[f])
			if dist != nil {
				part = (part + p.harder(bend.Distance.M()/dist[f])) / 2
			}
			sum += part
		}
	}
	s.squares[k] += p.req.Feel.BendWeight * sum / float64(len(bends))
	return all
}

// harder is h(r) squared.
func (p *Plan) harder(r float64) float64 {
	if p.req.Feel.BendingForce.NoHarder && r <= 1 {
		return 0
	}
	l := math.Log(r)
	return l * l
}

// blend puts the squares of string i's notes together.
func (p *Plan) blend(i int, squares []float64) float64 {
	notes := p.tuned[i].notes
	if len(notes) == 1 {
		return squares[0]
	}
	sum := 0.0
	for k := range notes {
		if p.req.By == Worst {
			sum = max(sum, squares[k])
		} else {
			sum += float64(notes[k].weight * squares[k])
		}
	}
	return sum
}

// mean is the weighted mean of a string's notes.
func (p *Plan) mean(i int, values []float64) float64 {
	sum := 0.0
	for k, n := range p.tuned[i].notes {
		sum += n.weight * values[k]
	}
	return sum
}
