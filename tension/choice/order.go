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

// reorder finds the set of least error that keeps the ordering rule, and reports
// whether there is one.
//
// String by string from the treble, the least total with this string at rank k is
// its own cost plus the least total of the string before over all ranks that may
// stand on its treble side: those up to k, only the plain ones of them where k is
// plain. Running minima over gauges sorted by linear density give each in one step.
// Of equal totals the lighter gauge is taken.
//
// Source: ours, Bellman's principle of optimality on a chain.
func (c *chooser) reorder() bool {
	p := c.p
	costs, from := make([][]float64, p.strings), make([][]int, p.strings)
	total := make([]float64, len(p.sorted)) // of strings 1..i with string i at a rank
	for i := range costs {
		costs[i], from[i] = make([]float64, len(p.sorted)), make([]int, len(p.sorted))
		least, leastPlain := math.Inf(1), math.Inf(1)
		at, atPlain := 0, 0
		for k, g := range p.sorted {
			costs[i][k] = c.cost(i, g)
			if total[k] < least {
				least, at = total[k], k
			}
			if p.wires[g].Plain && total[k] < leastPlain {
				leastPlain, atPlain = total[k], k
			}
			before := least
			if from[i][k] = at; p.wires[g].Plain {
				before, from[i][k] = leastPlain, atPlain
			}
			total[k] = before + costs[i][k]
		}
	}
	last := 0
	for k := range total {
		if total[k] < total[last] {
			last = k
		}
	}
	if math.IsInf(total[last], 1) {
		return false
	}
	for i := len(costs) - 1; i >= 0; i-- {
		c.set[i], c.e2[i] = p.sorted[last], costs[i][last]
		last = from[i][last]
	}
	return true
}

// cost is the squared error of gauge g as string i, infinite where it is not
// allowed.
func (c *chooser) cost(i, g int) float64 {
	if c.kept[i] == either || c.kept[i] == c.p.kindOf(g) {
		if e2, ok := c.admit(i, g, math.Inf(1)); ok {
			return e2
		}
	}
	return math.Inf(1)
}
