package choice

import (
	"cmp"
	"math"
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

// drawLadder makes a small stock with ties in weight and both kinds.
func drawLadder(t *rapid.T) ladder {
	rungs := rapid.IntRange(1, 6).Draw(t, "rungs")
	l := ladder{end: make([]int, rungs)}
	for k := range rungs {
		l.stock = append(l.stock, k)
		l.w = append(l.w, float64(rapid.IntRange(1, 5).Draw(t, "weight")))
		l.plain = append(l.plain, rapid.Bool().Draw(t, "plain"))
	}
	slices.Sort(l.w)
	for k := range l.end {
		l.end[k] = k + 1
		for l.end[k] < rungs && l.w[l.end[k]] == l.w[k] {
			l.end[k]++
		}
	}
	return l
}

// drawCosts gives whole numbers, so that sums compare exactly, and gauges that
// a limit has removed.
func drawCosts(t *rapid.T, strings, rungs int) seatCosts {
	costs := make(seatCosts, strings)
	for i := range costs {
		for range rungs {
			c := float64(rapid.IntRange(0, 12).Draw(t, "cost"))
			if c > 10 {
				c = math.Inf(1)
			}
			costs[i] = append(costs[i], c)
		}
	}
	return costs
}

// everySet calls visit with each way to put a rung on every string.
func everySet(strings, rungs int, visit func(set []int)) {
	set := make([]int, strings)
	for {
		visit(set)
		i := 0
		for ; i < strings; i++ {
			if set[i]++; set[i] < rungs {
				break
			}
			set[i] = 0
		}
		if i == strings {
			return
		}
	}
}

func totalOf(costs seatCosts, set []int) float64 {
	sum := 0.0
	for i, k := range set {
		sum += costs[i][k]
	}
	return sum
}

// keepsRule restates the ordering rule pair by pair, apart from ladder.ordered.
func keepsRule(l *ladder, set []int) bool {
	for i := range set {
		for j := range i {
			if l.w[set[i]] < l.w[set[j]] || l.plain[set[i]] && !l.plain[set[j]] {
				return false
			}
		}
	}
	return true
}

func TestBestOrderedIsTheExactOptimum(t *testing.T) {
	seen := map[string]int{}
	rapid.Check(t, func(t *rapid.T) {
		l := drawLadder(t)
		strings := rapid.IntRange(1, 4).Draw(t, "strings")
		costs := drawCosts(t, strings, len(l.w))
		least := math.Inf(1)
		everySet(strings, len(l.w), func(set []int) {
			if keepsRule(&l, set) {
				least = min(least, totalOf(costs, set))
			}
		})
		got := make([]int, strings)
		ok := l.bestOrdered(costs, newLadderSearch(strings, len(l.w)), got)
		require.Equal(t, !math.IsInf(least, 1), ok, "a set is found when there is one")
		if !ok {
			seen["no set"]++
			return
		}
		require.True(t, keepsRule(&l, got), "set %v", got)
		require.True(t, l.ordered(got), "set %v", got)
		require.Equal(t, least, totalOf(costs, got))
		free := make([]int, strings)
		if leastEach(costs, free) && totalOf(costs, free) < least {
			seen["the rule costs something"]++
		}
	})
	assert.Positive(t, seen["no set"], "the draws must reach stocks without a set")
	assert.Positive(t, seen["the rule costs something"], "the draws must reach stocks where the rule binds")
}

func TestOrderedAgreesWithThePairwiseRule(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		l := drawLadder(t)
		set := rapid.SliceOfN(rapid.IntRange(0, len(l.w)-1), 1, 5).Draw(t, "set")
		require.Equal(t, keepsRule(&l, set), l.ordered(set))
	})
}

func TestLeastEachTakesTheLighterOfEquals(t *testing.T) {
	set := make([]int, 2)
	require.True(t, leastEach(seatCosts{{3, 1, 1}, {math.Inf(1), 2, 2}}, set))
	assert.Equal(t, []int{1, 1}, set)
	assert.False(t, leastEach(seatCosts{{1}, {math.Inf(1)}}, set))
}

func TestRankingAndDistinctAgainstSortingEverything(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		step := rapid.SampledFrom([]float64{1, 2.5, 5, 7}).Draw(t, "step")
		var bass, treble []float64
		for i := range rapid.IntRange(1, 12).Draw(t, "bass") {
			bass = append(bass, 660+step*float64(i))
		}
		for i := range rapid.IntRange(1, 12).Draw(t, "treble") {
			treble = append(treble, 630+step*float64(i))
		}
		listed := rapid.IntRange(1, 5).Draw(t, "listed")
		r := ranking{room: roomFor(listed, 5, bass, treble)}
		var all []ranked
		for b := range bass {
			for u := range treble {
				p := ranked{float64(rapid.IntRange(0, 30).Draw(t, "score")), bass[b] - treble[u], b, u}
				all = append(all, p)
				r.offer(p)
			}
		}
		slices.SortFunc(all, ranked.compare)
		require.Equal(t, all[:len(r.heap)], r.sorted(), "the heap keeps the first of the ranking")
		require.Equal(t, distinct(all, listed, 5, bass, treble), distinct(r.sorted(), listed, 5, bass, treble))
	})
}

func TestFrontAgainstComparingEveryPair(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		var all []point
		f := front{}
		for i := range rapid.IntRange(1, 40).Draw(t, "pairs") {
			p := point{bass: i}
			p.tension = float64(rapid.IntRange(0, 6).Draw(t, "tension"))
			p.bendingForce = float64(rapid.IntRange(0, 6).Draw(t, "bending force"))
			p.difference = float64(rapid.IntRange(0, 6).Draw(t, "difference"))
			all = append(all, p)
			f.offer(p)
		}
		var want []point
		for _, p := range all {
			if !slices.ContainsFunc(all, func(q point) bool { return q.beats(p) }) {
				want = append(want, p)
			}
		}
		slices.SortFunc(want, func(a, b point) int {
			return cmp.Or(cmp.Compare(a.difference, b.difference), cmp.Compare(a.bass, b.bass))
		})
		require.Equal(t, want, f.sorted())
	})
}
