package choice

import "math"

// seatCosts holds, for every string, the contribution of every gauge that may
// be chosen; +Inf marks a gauge that a limit has removed. Gauges stand in the
// order of a ladder.
type seatCosts [][]float64

// ladder is the stock that may be chosen, sorted by linear density, lightest
// first, equal weights by label.
type ladder struct {
	stock []int     // index into the request's stock
	w     []float64 // linear density, kg/m
	plain []bool
	// end[k] is one past the last rung of the same linear density as rung k.
	end []int
}

// ordered says whether a set keeps the ordering rule: going towards the bass
// no string is lighter than its neighbour, and no plain string follows a
// wound one.
func (l *ladder) ordered(set []int) bool {
	for i := 1; i < len(set); i++ {
		a, b := set[i-1], set[i]
		if l.w[b] < l.w[a] || l.plain[b] && !l.plain[a] {
			return false
		}
	}
	return true
}

// ladderSearch is the memory of bestOrdered, kept between pairs so that the
// search does not allocate.
type ladderSearch struct {
	sum  []float64 // least total of strings 1..i with string i on rung k
	from [][]int32 // rung of string i-1 on that least way
}

func newLadderSearch(strings, rungs int) *ladderSearch {
	s := &ladderSearch{sum: make([]float64, rungs), from: make([][]int32, strings)}
	for i := range s.from {
		s.from[i] = make([]int32, rungs)
	}
	return s
}

// bestOrdered puts the set of least total contribution that keeps the
// ordering rule into set, and says whether there is one. It is the exact
// optimum: string by string from the treble, the least total with this string
// on rung k is its own contribution plus the least total of the string before
// over all rungs that may stand on its treble side, and those are the rungs no
// heavier than k, only the plain ones of them when k is plain. The running
// minima over rungs sorted by linear density give each in one step. Of equal
// totals the lighter rung is taken.
//
// Source: ours, Bellman's principle of optimality on a chain.
func (l *ladder) bestOrdered(costs seatCosts, s *ladderSearch, set []int) bool {
	rungs := len(l.w)
	copy(s.sum, costs[0])
	for i := 1; i < len(costs); i++ {
		least, leastPlain := math.Inf(1), math.Inf(1)
		at, atPlain := int32(-1), int32(-1)
		taken := 0
		next := costs[i]
		from := s.from[i]
		for k := 0; k < rungs; {
			// All rungs of one weight may stand beside each other, so take
			// the whole group into the minima before any of it is served.
			for ; taken < l.end[k]; taken++ {
				if s.sum[taken] < least {
					least, at = s.sum[taken], int32(taken)
				}
				if l.plain[taken] && s.sum[taken] < leastPlain {
					leastPlain, atPlain = s.sum[taken], int32(taken)
				}
			}
			for group := l.end[k]; k < group; k++ {
				before, rung := least, at
				if l.plain[k] {
					before, rung = leastPlain, atPlain
				}
				s.sum[k] = before + next[k]
				from[k] = rung
			}
		}
	}
	last, total := -1, math.Inf(1)
	for k, v := range s.sum[:rungs] {
		if v < total {
			last, total = k, v
		}
	}
	if last < 0 {
		return false
	}
	for i := len(costs) - 1; i >= 0; i-- {
		set[i] = last
		if i > 0 {
			last = int(s.from[i][last])
		}
	}
	return true
}
