package choice

import (
	"math"

	"scalepair/tension"
)

// This file finds the least contribution of a string without trying the whole
// stock. Nothing here changes a result: the walk leaves out only gauges that a
// lower bound shows to be worse, and what it keeps it works out with the same
// functions as fillCosts. A test holds both against each other, to the bit.

// leastOn puts the rung of least contribution as string i into w.rungs, the
// lighter one of equals, with its parts, and says whether any is admissible and
// costs no more than most.
//
// It starts from the rung that the pair before took, since lengths change
// little from pair to pair, and walks to both sides until the tension alone
// costs more than the best found: rungs are sorted by linear density, so tension
// rises with them but for the stretch, which is bounded.
func (w *searcher) leastOn(i int, most float64) bool {
	if !w.p.isBend[i] {
		if found, known := w.asBefore(i, most); known {
			return found
		}
	}
	found := w.walkFrom(i, most)
	w.before[i] = lastLeast{w.seats[i].lengthM, most, w.least[i], w.rungs[i], w.parts[i], found}
	return found
}

// lastLeast is what leastOn last found on a string: of all that a string without
// bends does, the length decides, and many pairs share the lowest one's.
type lastLeast struct {
	lengthM, most float64 // most: what a rung could cost
	cost          float64
	rung          int
	parts         squares
	found         bool
}

// asBefore takes over what was last found on a string without bends, where its
// length is the same and answers for what a rung may cost now.
func (w *searcher) asBefore(i int, most float64) (found, known bool) {
	b := &w.before[i]
	switch {
	case b.lengthM != w.seats[i].lengthM:
		return false, false
	case !b.found:
		return false, most <= b.most
	case b.cost > most:
		return false, true
	}
	w.least[i], w.rungs[i], w.parts[i] = b.cost, b.rung, b.parts
	return true, true
}

// walkFrom is leastOn by walking.
func (w *searcher) walkFrom(i int, most float64) bool {
	w.least[i] = most
	w.made.speed2 = 0
	from := w.rungs[i]
	w.rungs[i] = -1
	for k := from; k < len(w.p.rungs.w); k++ {
		if w.p.heavierCosts(i, k, &w.seats[i]) > w.least[i] {
			break
		}
		w.tryRung(i, k)
	}
	for k := from - 1; k >= 0; k-- {
		if w.p.lighterCosts(i, k, &w.seats[i]) > w.least[i] {
			break
		}
		w.tryRung(i, k)
	}
	found := w.rungs[i] >= 0
	if !found {
		w.rungs[i] = from
	}
	return found
}

// tryRung takes rung k as string i if it is admissible and costs less than the
// best so far, or as much and is lighter.
func (w *searcher) tryRung(i, k int) {
	part, ok := w.cheaper(i, k, w.least[i])
	if !ok {
		return
	}
	cost := part.score(w.p.req.Feel.Weights)
	if cost > w.least[i] || cost == w.least[i] && w.rungs[i] >= 0 && k > w.rungs[i] {
		return
	}
	if !w.fitsSaddle(i, k) {
		return
	}
	w.least[i], w.rungs[i], w.parts[i] = cost, k, part
	if w.p.isBend[i] {
		w.made.keep(&w.p.wires[w.p.rungs.stock[k]], w.feel)
	}
}

// cheaper is the contribution of a rung, but for the limit on compensation; false
// where a limit removes it or its tension alone costs more than most.
func (w *searcher) cheaper(i, k int, most float64) (squares, bool) {
	p, s, g := w.p, &w.seats[i], w.p.rungs.stock[k]
	w.misses.list = w.misses.list[:0]
	if p.measureTension(i, g, s, w.feel, &w.misses) {
		return squares{}, false
	}
	if p.tensionBound(i, w.feel) > most {
		return squares{}, false
	}
	part := squares{tension: p.tensionSquare(i, w.feel)}
	if part.score(p.req.Feel.Weights) > most {
		return squares{}, false
	}
	if p.isBend[i] {
		if !w.bendsBelow(i, g, part, most) {
			return squares{}, false
		}
		part.bendingForce = p.pushSquare(i, w.feel)
	}
	if i == p.strings-1 {
		if p.measureRise(i, g, s, w.feel, &w.misses) {
			return squares{}, false
		}
		part.overtone = p.overtoneSquare(g, w.feel)
	}
	return part, true
}

// bendsBelow makes the bends of gauge g as string i one by one, and stops with
// false where a limit removes the gauge or the bends made so far, with the rest
// of its part, already cost more than most.
func (w *searcher) bendsBelow(i, g int, part squares, most float64) bool {
	p, s, wire, lim := w.p, &w.seats[i], &w.p.wires[g], &w.p.req.Limits
	if wire.EA == 0 {
		return p.bendable() == 0
	}
	want := p.targets.bendingForce[i]
	if w.made.costsMore(p, i, wire, part, most) {
		return false
	}
	for at := range s.contacts {
		if w.feel.failed[at] = p.behind[at]; w.feel.failed[at] {
			continue
		}
		if made := p.alike[i][at]; made < at {
			w.feel.bends[at] = w.feel.bends[made]
		} else if b, share, ok := bendOn(&s.contacts[at], wire); !ok || lim.BreakingBent > 0 && share > lim.BreakingBent || lim.MostBendingForceN > 0 && b.BendingForceN > lim.MostBendingForceN {
			return false
		} else {
			w.feel.bends[at] = b
		}
		if k := at % len(want); want[k] > 0 {
			part.bendingForce = p.withBend(part.bendingForce, p.pushShare[at], boundLog(w.feel.bends[at].BendingForceN, want[k]))
		}
		if part.score(p.req.Feel.Weights)*(1-slackOfSum) > most {
			return false
		}
	}
	return true
}

// madeBends are the bends of the best rung of a string so far: what a newton of
// its stiffness pushed, and its stretch speed. They bound what other rungs bending force
// on the same string of the same pair.
//
// Bending force over EA falls steadily as the stretch speed rises: a stiffer string has
// less strain at pitch, so that the same way raises its pitch more; it reaches
// the bend sooner, and less strain and a flatter angle are left to bending force against.
// It falls by less than the fourth power of EA/w: strain falls with EA/w, and the
// angle with its root; with a little more where a slanted fret lowers the pitch
// first, and up to the power of 3.4 in all for wires strained far beyond breaking.
// (A test holds Shape to both.) So what one rung pushes bounds what another does
// from both sides.
type madeBends struct {
	speed2 float64   // EA/w, m2/s2; 0 for none yet
	perEA  []float64 // by case and bend fret
}

func (m *madeBends) keep(w *tension.Wire, f *strung) {
	m.speed2 = w.StretchSpeed2()
	for at := range m.perEA {
		m.perEA[at] = f.bends[at].BendingForceN / w.EA
	}
}

// slackOfBendingForce covers the rounding of a bend's root, whose relative error is
// below 1e-12, and of two equal stretch speeds.
const slackOfBendingForce = 1e-9

// costsMore says whether a wire's bends as string i surely cost more than most,
// without making one.
func (m *madeBends) costsMore(p *Plan, i int, w *tension.Wire, part squares, most float64) bool {
	if m.speed2 == 0 {
		return false
	}
	want, slower := p.targets.bendingForce[i], m.speed2/w.StretchSpeed2()
	fourth := slower * slower * slower * slower
	atLeast := w.EA * min(1, fourth) * (1 - 10*slackOfBendingForce)
	atMost := w.EA * max(1, fourth) * (1 + 10*slackOfBendingForce)
	for at, perEA := range m.perEA {
		target := want[at%len(want)]
		if target == 0 || p.behind[at] {
			continue
		}
		switch {
		case perEA*atLeast > target:
			part.bendingForce = p.withBend(part.bendingForce, p.pushShare[at], boundSquare(perEA*atLeast/target))
		case perEA*atMost < target:
			part.bendingForce = p.withBend(part.bendingForce, p.pushShare[at], boundSquare(target/(perEA*atMost)))
		}
	}
	return part.score(p.req.Feel.Weights)*(1-slackOfSum) > most
}

// withBend adds one bend's square to a bending force that is not complete: what comes
// of it is never more than the complete one, but for rounding.
func (p *Plan) withBend(bendingForce, share, square float64) float64 {
	if p.req.By == Worst {
		return max(bendingForce, square/float64(p.pushTerms))
	}
	return bendingForce + float64(share*square)/float64(p.pushTerms)
}

// slackOfSum covers the rounding of a sum whose terms come in another order:
// each addition is off by at most 2^-53 of it, and there are some hundreds at
// most.
const slackOfSum = 1e-12

// slackOfBound is taken off a bound's logarithm so that rounding can never
// make it greater than what it bounds: a tension and its logarithm carry a
// relative error of a few times 2^-53, which is below 1e-15.
const slackOfBound = 1e-13

// heavierCosts bounds from below what the tension of rung k, or of any heavier
// one, costs as string i. With q the textbook tension and c the greatest
// compliance of the stock, T >= 2q/(1 + sqrt(1 + 4cq)), which rises with q.
func (p *Plan) heavierCosts(i, k int, s *seat) float64 {
	want := p.targets.tension[i]
	if want == 0 {
		return 0
	}
	b := blend{by: p.req.By}
	for c, v := range s.speed2 {
		if p.tuned[i][c] < c {
			continue
		}
		least := tension.Stretched(p.rungs.w[k]*v, p.softest)
		if least > want {
			b.add(p.tunedShare[i][c], boundSquare(least/want))
		}
	}
	return p.req.Feel.Weights.Tension * (b.v / float64(p.tensionTerms))
}

// lighterCosts bounds from below what the tension of rung k, or of any lighter
// one, costs as string i, by T <= q.
func (p *Plan) lighterCosts(i, k int, s *seat) float64 {
	want := p.targets.tension[i]
	if want == 0 {
		return 0
	}
	b := blend{by: p.req.By}
	for c, v := range s.speed2 {
		if most := p.rungs.w[k] * v; most < want && p.tuned[i][c] == c {
			b.add(p.tunedShare[i][c], boundSquare(want/most))
		}
	}
	return p.req.Feel.Weights.Tension * (b.v / float64(p.tensionTerms))
}

// tensionBound bounds from below what the measured tensions cost as string i.
func (p *Plan) tensionBound(i int, f *strung) float64 {
	want := p.targets.tension[i]
	if want == 0 {
		return 0
	}
	b := blend{by: p.req.By}
	for c, t := range f.tensionN {
		if p.tuned[i][c] == c {
			b.add(p.tunedShare[i][c], boundLog(t, want))
		}
	}
	return p.req.Feel.Weights.Tension * (b.v / float64(p.tensionTerms))
}

// boundSquare bounds ln(ratio)^2 from below without a logarithm, for a ratio
// of 1 or more: ln r >= 2 (r - 1)/(r + 1), since both are 0 at 1 and the
// slopes differ by (r - 1)^2/(r (r + 1)^2) >= 0.
func boundSquare(ratio float64) float64 {
	l := max(0, 2*(ratio-1)/(ratio+1)-slackOfBound)
	return l * l
}

// boundLog is boundSquare of value and target, whichever is greater.
func boundLog(value, target float64) float64 {
	if value < target {
		return boundSquare(target / value)
	}
	return boundSquare(value / target)
}

// reorder finds the least set that keeps the ordering rule when the least
// rungs of all strings do not, and says whether there is one.
//
// Any set known to keep the rule bounds the least total from above. A rung
// that is in the least set then costs no more than that bound less the least
// of all other strings, so all dearer rungs may be left out of the dynamic
// programme. What the walk has made of the last string's bends bounds no other
// string's.
func (w *searcher) reorder() bool {
	w.withAll()
	w.made.speed2 = 0
	most, known := w.knownOrdered()
	for i := range w.costs {
		if !known {
			w.fillCosts(i)
			continue
		}
		others := 0.0
		for j, least := range w.least {
			if j != i {
				others += least
			}
		}
		w.fillBelow(i, (most-others)*(1+slackOfBound)+slackOfBound*most)
	}
	if !w.p.rungs.bestOrdered(w.costs, w.steps, w.rungs) {
		return false
	}
	w.ordered = append(w.ordered[:0], w.rungs...)
	for i, k := range w.rungs {
		w.parts[i], _ = w.cheaper(i, k, math.Inf(1))
	}
	return true
}

// knownOrdered is what the last ordered set costs on this pair; false where
// there is none or a limit removes one of its gauges here.
func (w *searcher) knownOrdered() (float64, bool) {
	if w.ordered == nil {
		return 0, false
	}
	total := 0.0
	for i, k := range w.ordered {
		part, ok := w.cheaper(i, k, math.Inf(1))
		if !ok || !w.fitsSaddle(i, k) {
			return 0, false
		}
		total += part.score(w.p.req.Feel.Weights)
	}
	return total, true
}

// fillBelow works out the rungs that cost no more than most as string i; the
// others count as removed.
func (w *searcher) fillBelow(i int, most float64) {
	row := w.costs[i]
	for k := range row {
		row[k] = math.Inf(1)
	}
	take := func(k int) {
		if part, ok := w.cheaper(i, k, most); ok && w.fitsSaddle(i, k) {
			row[k] = part.score(w.p.req.Feel.Weights)
		}
	}
	from := w.rungs[i]
	for k := from; k < len(row) && w.p.heavierCosts(i, k, &w.seats[i]) <= most; k++ {
		take(k)
	}
	for k := from - 1; k >= 0 && w.p.lighterCosts(i, k, &w.seats[i]) <= most; k-- {
		take(k)
	}
}

// travelMemo remembers, by string, rung and case, from which length on the
// compensation is known to fit the saddle and up to which it is known not to. The
// need falls as a string grows longer at its pitch: its tension grows with the
// square of the length, so both the stretch of pressing and the stiffness
// count for less (a test holds Compensation to it).
type travelMemo struct {
	rungs int
	fits  []float64
	not   []float64
}

func newTravelMemo(strings, rungs int) travelMemo {
	m := travelMemo{rungs: rungs, fits: make([]float64, strings*rungs), not: make([]float64, strings*rungs)}
	for i := range m.fits {
		m.fits[i] = math.Inf(1)
	}
	return m
}

// surely is how much shorter a string is tried at once when it fits, so that
// its neighbours in the grid need no root finding of their own.
const surely = 0.97

// fitsSaddle says whether the compensation of rung k as string i keeps within the
// saddle's travel in every case.
func (w *searcher) fitsSaddle(i, k int) bool {
	limit := w.p.req.Limits.SaddleTravelM
	if limit == 0 {
		return true
	}
	m, at, length := &w.travel, i*w.travel.rungs+k, w.seats[i].lengthM
	switch {
	case length >= m.fits[at]:
		return true
	case length <= m.not[at]:
		return false
	case !w.saddleFitsAt(i, k, length, limit):
		m.not[at] = length
		return false
	}
	m.fits[at] = length
	if shorter := surely * length; shorter > m.not[at] && w.saddleFitsAt(i, k, shorter, limit) {
		m.fits[at] = shorter
	}
	return true
}

func (w *searcher) saddleFitsAt(i, k int, lengthM, limit float64) bool {
	for c := range w.p.req.Cases {
		need, err := w.p.saddleNeed(i, w.p.rungs.stock[k], c, lengthM)
		if err != nil || need > limit {
			return false
		}
	}
	return true
}
