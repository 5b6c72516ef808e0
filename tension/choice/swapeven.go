package choice

import "math"

// evenSearch tries every set of few swaps for the least variance of the
// logarithms of tension, case by case, about the set's own mean.
type evenSearch struct {
	p       *Plan
	options [][]option
	pick    []int
	sums    []spreadSum // by case
	least   float64
	best    []int
}

// spreadSum gathers values for their variance. It counts from the first value
// on, so that no digits are lost to the level.
type spreadSum struct {
	count, first, sum, squares float64
}

func (s spreadSum) with(x float64) spreadSum {
	if s.count == 0 {
		s.first = x
	}
	x -= s.first
	return spreadSum{s.count + 1, s.first, s.sum + x, s.squares + x*x}
}

// apart is the sum of squared distances from the mean. It never falls when a
// value is added, which bounds what a set begun can come to.
func (s spreadSum) apart() float64 { return s.squares - s.sum*s.sum/s.count }

// evenBySwaps is leastBySwaps where the target is the set's own mean, up to
// mostEvenSwaps, by trying every set that the bound leaves in.
func (p *Plan) evenBySwaps(options [][]option) [][]int {
	most := min(mostEvenSwaps, len(options))
	out := make([][]int, most+1)
	for swaps := range out {
		e := &evenSearch{p: p, options: options, pick: make([]int, len(options)), sums: make([]spreadSum, len(p.share)), least: math.Inf(1)}
		e.from(0, swaps)
		out[swaps] = e.best
	}
	return out
}

// from tries string i and those after it with so many swaps left.
func (e *evenSearch) from(i, swaps int) {
	if i == len(e.options) {
		if v := e.blended(); swaps == 0 && v < e.least {
			e.least, e.best = v, append([]int(nil), e.pick...)
		}
		return
	}
	before := append([]spreadSum(nil), e.sums...)
	for o, opt := range e.options[i] {
		left := swaps
		if !opt.kept {
			left--
		}
		if left < 0 || left > len(e.options)-1-i || i > 0 && !mayNeighbour(e.options[i-1][e.pick[i-1]], opt, e.p.req.Ordering) {
			continue
		}
		for c := range e.sums {
			e.sums[c] = before[c].with(opt.logs[c])
		}
		if e.blended() < e.least {
			e.pick[i] = o
			e.from(i+1, left)
		}
	}
	copy(e.sums, before)
}

// blended puts the cases together as the score does.
func (e *evenSearch) blended() float64 {
	b := blend{by: e.p.req.By}
	for c, s := range e.sums {
		b.add(e.p.share[c], s.apart())
	}
	return b.v
}
