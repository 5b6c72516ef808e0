package choice

import "math"

// inOrder reports whether a set keeps the ordering rule: going towards the bass
// no string is lighter than its neighbour, and no plain string follows a wound
// one.
func (p *Plan) inOrder(set []int) bool {
	for i := 1; i < len(set); i++ {
		a, b := p.wires[set[i-1]], p.wires[set[i]]
		if b.LinearDensity < a.LinearDensity || b.Plain && !a.Plain {
			return false
		}
	}
	return true
}

// reorder finds the least set that keeps the ordering rule, and reports whether
// there is one.
//
// A set known to keep the rule bounds the least total from above. A gauge that
// is in the least set then costs no more than that bound less the least of all
// other strings, so the rest may be left out of the dynamic programme.
func (c *chooser) reorder() bool {
	if c.costs == nil {
		c.costs = make([][]float64, c.p.strings)
		for i := range c.costs {
			c.costs[i] = make([]float64, len(c.p.sorted))
		}
	}
	most, least := c.knownOrdered(), 0.0
	for _, e2 := range c.e2 {
		least += e2
	}
	for i := range c.costs {
		c.fill(i, (most-least+c.e2[i])/slack)
	}
	if !c.p.leastOrdered(c.costs, &c.steps, c.set) {
		return false
	}
	c.ordered = append(c.ordered[:0], c.set...)
	for i, g := range c.set {
		c.e2[i] = c.costs[i][c.p.rank[g]]
	}
	return true
}

// knownOrdered is what the last ordered set costs on this pair, infinite where
// there is none or one of its gauges is not allowed here.
func (c *chooser) knownOrdered() float64 {
	if c.ordered == nil {
		return math.Inf(1)
	}
	total := 0.0
	for i, g := range c.ordered {
		e2, ok := c.admit(i, g, math.Inf(1))
		if !ok || c.kept[i] != either && c.kept[i] != c.p.kindOf(g) {
			return math.Inf(1)
		}
		total += e2
	}
	return total
}

// fill works out the gauges that cost no more than most as string i; the others
// count as removed.
func (c *chooser) fill(i int, most float64) {
	row := c.costs[i]
	for r, g := range c.p.sorted {
		row[r] = math.Inf(1)
		if c.kept[i] != either && c.kept[i] != c.p.kindOf(g) {
			continue
		}
		if at := &c.places[i]; c.p.heavier(i, g, at) > most || c.p.lighter(i, g, at) > most {
			continue
		}
		if e2, ok := c.admit(i, g, most); ok {
			row[r] = e2
		}
	}
}

// chain is the memory of leastOrdered, kept between pairs.
type chain struct {
	sum  []float64 // least total of strings 1..i with string i at a rank
	from [][]int32 // rank of string i-1 on that least way
}

// leastOrdered puts the set of least total that keeps the ordering rule into
// set, and reports whether there is one. It is the exact optimum: string by
// string from the treble, the least total with this string at rank k is its own
// cost plus the least total of the string before over all ranks that may stand
// on its treble side, and those are the gauges no heavier than it, only the plain
// ones of them where it is plain. The running minima over gauges sorted by linear
// density give each in one step. Of equal totals the lighter gauge is taken.
//
// Source: ours, Bellman's principle of optimality on a chain.
func (p *Plan) leastOrdered(costs [][]float64, s *chain, set []int) bool {
	ranks := len(p.sorted)
	if s.sum == nil {
		s.sum, s.from = make([]float64, ranks), make([][]int32, len(costs))
		for i := range s.from {
			s.from[i] = make([]int32, ranks)
		}
	}
	density := func(r int) float64 { return float64(p.wires[p.sorted[r]].LinearDensity) }
	copy(s.sum, costs[0])
	for i := 1; i < len(costs); i++ {
		least, leastPlain := math.Inf(1), math.Inf(1)
		at, atPlain := int32(-1), int32(-1)
		for k := 0; k < ranks; {
			// All gauges of one weight may stand beside each other, so the
			// whole group goes into the minima before any of it is looked at.
			end := k
			for ; end < ranks && density(end) == density(k); end++ {
				if s.sum[end] < least {
					least, at = s.sum[end], int32(end)
				}
				if p.wires[p.sorted[end]].Plain && s.sum[end] < leastPlain {
					leastPlain, atPlain = s.sum[end], int32(end)
				}
			}
			for ; k < end; k++ {
				before, rank := least, at
				if p.wires[p.sorted[k]].Plain {
					before, rank = leastPlain, atPlain
				}
				s.sum[k], s.from[i][k] = before+costs[i][k], rank
			}
		}
	}
	last, total := -1, math.Inf(1)
	for k, v := range s.sum {
		if v < total {
			last, total = k, v
		}
	}
	if last < 0 {
		return false
	}
	for i := len(costs) - 1; i >= 0; i-- {
		set[i] = p.sorted[last]
		last = int(s.from[i][last])
	}
	return true
}
