package choice

import (
	"math"

	"scalepair/tension"
)

// strung is what one gauge does as one string of a pair, by note.
type strung struct {
	tension []float64 // N
	logs    []float64 // ln(T/T*), or ln T where no tension is wanted
	squares []float64 // e squared
	bends   [][]tension.BendShape
	made    [][]bool // the bend can be made
}

func (p *Plan) newStrung(i int) *strung {
	n := len(p.tuned[i].notes)
	s := &strung{tension: make([]float64, n), logs: make([]float64, n), squares: make([]float64, n),
		bends: make([][]tension.BendShape, n), made: make([][]bool, n)}
	for k, note := range p.tuned[i].notes {
		s.bends[k], s.made[k] = make([]tension.BendShape, len(note.bends)), make([]bool, len(note.bends))
	}
	return s
}

// misses takes the limits that a gauge breaks; nil looks at none. With first
// set it is full after one, so that measuring stops there.
type misses struct {
	first bool
	list  []Miss
	// loose lets a gauge pass a limit on breaking strength that cannot be looked
	// at, since its core or its strength is not known.
	loose bool
}

// over notes a value beyond its bound, and reports whether to stop.
func (m *misses) over(l Limit, fret, value, bound float64) bool {
	if m == nil {
		return false
	}
	m.list = append(m.list, Miss{Limit: l, BendFret: fret, Value: value, Bound: bound})
	return m.first
}

// windingSpare is how much winding must lie beyond the nut, m (the string's
// length, what lies behind the saddle, and 10 mm; judgement).
const windingSpare = 0.010

// measure works out what gauge g does as string i at a place, and its squared
// error e^2 (the tension's part aside where the candidate's own mean is
// wanted), which is not known where a bend cannot be made. It stops early, with
// known false, at the first limit that fills m, and once e^2 is above most; with
// an infinite most, and misses that never fill, it works out everything.
//
//	e^2 = (ln T/T*)^2 + b mean over the bend frets of (h(F/F*)^2 + h(D/D*)^2)/2
//	h(r) = ln r, or max(0, ln r) where only harder bends count
//
// T: tension; F: bending force; D: bend distance; *: wanted. With a stated force
// there is no D*, and h(F/F*)^2 stands alone. Of several tunings the mean by
// weight, or the worst. Ours.
func (p *Plan) measure(i, g int, at *place, most float64, s *strung, m *misses) (e2 float64, known bool) {
	w := &p.wires[g]
	if m != nil && p.wireLimits(i, g, at, m) {
		return 0, false
	}
	want, soft := p.targets.tension[i], w.Compliance()
	for k := range at.notes {
		t := tension.Stretched(w.LinearDensity.KgPerM()*at.notes[k].speed2, soft)
		s.tension[k], s.squares[k] = t, 0
		if m != nil && p.tensionLimits(w, t, m) {
			return 0, false
		}
		if want > 0 {
			s.logs[k] = math.Log(t / want)
			s.squares[k] = s.logs[k] * s.logs[k]
		} else {
			s.logs[k] = math.Log(t)
		}
	}
	known = true
	if e2 = p.blend(i, s.squares); e2 > most || !p.isBend[i] {
		return e2, e2 <= most
	}
	for k := range at.notes {
		made, stop := p.bend(i, k, w, &at.notes[k], s, m)
		known = known && made
		if e2 = p.blend(i, s.squares); stop || e2 > most {
			return e2, false
		}
	}
	return e2, known
}

// wireLimits looks at the limits that do not depend on the note.
func (p *Plan) wireLimits(i, g int, at *place, m *misses) bool {
	need := p.req.Tails[i].Saddle.M() + at.length + windingSpare
	if p.winding[g] > 0 && need > p.winding[g] && m.over(WindingLength, 0, p.winding[g], need) {
		return true
	}
	return !m.loose && p.strengthUnknown(g) && m.over(StrengthUnknown, 0, 0, 0)
}

// strengthUnknown reports whether a limit on breaking strength cannot be looked
// at for a gauge.
func (p *Plan) strengthUnknown(g int) bool {
	return p.req.Limits.BreakingOpen > 0 && (p.wires[g].CoreArea == 0 || p.wires[g].Strength == 0)
}

func (p *Plan) tensionLimits(w *tension.Wire, t float64, m *misses) bool {
	lim := &p.req.Limits
	if least := lim.LeastTension.N(); least > 0 && t < least && m.over(LeastTension, 0, t, least) {
		return true
	}
	if most := lim.MostTension.N(); most > 0 && t > most && m.over(MostTension, 0, t, most) {
		return true
	}
	if lim.BreakingOpen == 0 || w.CoreArea == 0 || w.Strength == 0 {
		return false
	}
	share := t / w.CoreArea / w.Strength
	return share > float64(lim.BreakingOpen) && m.over(BreakingOpen, 0, share, float64(lim.BreakingOpen))
}

// bend makes the bends of one note and adds their part to its square; made is
// false where one cannot be made, stop where measuring is to end.
func (p *Plan) bend(i, k int, w *tension.Wire, at *noteAt, s *strung, m *misses) (made, stop bool) {
	note, lim := &p.tuned[i].notes[k], &p.req.Limits
	if len(note.bends) == 0 {
		return true, false
	}
	if w.EA == 0 {
		clear(s.made[k])
		return false, m == nil || m.over(StiffnessUnknown, 0, 0, 0)
	}
	made = true
	sum, ea, speed2 := 0.0, w.EA.N(), w.StretchSpeed2()
	force, dist := p.targets.force[i], p.targets.dist[i]
	for j, b := range note.bends {
		fret := float64(p.req.Feel.BendFrets[b.fret])
		shape, ok := at.contacts[j].Shape(speed2)
		share := 0.0
		if w.CoreArea > 0 && w.Strength > 0 {
			share = ea * shape.Strain / w.CoreArea / w.Strength
		}
		s.bends[k][j], s.made[k][j] = shape, ok && share <= 1
		if !s.made[k][j] {
			made = false
			if m == nil || m.over(BendUnreachable, fret, 0, 0) {
				return false, true
			}
			continue
		}
		bending := ea * shape.Strain * shape.Lever
		if m != nil {
			if most := float64(lim.BreakingBent); most > 0 && share > most && m.over(BreakingBent, fret, share, most) {
				return true, true
			}
			if most := lim.MostBendingForce.N(); most > 0 && bending > most && m.over(MostBendingForce, fret, bending, most) {
				return true, true
			}
		}
		if force != nil {
			part := p.harder(bending / force[b.fret])
			if dist != nil {
				part = (part + p.harder(shape.Distance/dist[b.fret])) / 2
			}
			sum += part
		}
	}
	s.squares[k] += p.req.Feel.BendWeight * sum / float64(len(note.bends))
	return made, false
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
