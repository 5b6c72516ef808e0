package choice_test

import (
	"math"
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"scalepair/tension/choice"
)

// trio is a baritone's three highest strings with seven gauges to choose from.
func trio() (choice.Request, []string) {
	req := baritone()
	req.Cases[0].FreqsHz = hz(59, 54, 50)
	req.Tails, req.ActionM = sameTails(3), heights(3)
	names := []string{"p11", "p13", "p15", "p17", "p20", "w24", "w26"}
	req.Usable = indexes(req.Stock, names...)
	req.BassMM, req.TrebleMM = []float64{690}, []float64{650}
	return req, names
}

// The whole route against working out every set of the stock in full.
func TestWaysAgainstEverySetInFull(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		req, names := trio()
		req.Ordering = rapid.Bool().Draw(rt, "ordering")
		req.Limits.BreakingOpen = rapid.Float64Range(0.25, 0.75).Draw(rt, "open")
		even := rapid.Bool().Draw(rt, "even")
		pick := rapid.SliceOfN(rapid.SampledFrom(names), 3, 3).Draw(rt, "set")
		set := indexes(req.Stock, pick...)
		req.Given = set
		if even {
			req.Feel.Tension = choice.Target{Source: choice.OwnMean}
		}
		p, err := choice.Prepare(req)
		require.NoError(rt, err)
		d, err := p.Detail(690, 650, set)
		require.NoError(rt, err)

		const within = 4.0
		want := leastInFull(rt, p, req, d)
		ways, err := p.Ways(d, within)
		require.NoError(rt, err)
		require.Equal(rt, d, ways[0].Detail)
		best := math.Inf(1)
		next := 0
		for swaps, least := range want {
			if least >= best && swaps > 0 || next == len(ways) && ways[next-1].Within {
				continue
			}
			if swaps == 0 {
				next++
				best = least
				require.Equal(rt, least <= within, ways[0].Within)
				continue
			}
			require.Less(rt, next, len(ways), "%d swaps come to %v", swaps, least)
			w := ways[next]
			next++
			best = least
			require.Len(rt, w.Swaps, swaps)
			require.InDelta(rt, least, w.Detail.TensionMisfit, 1e-9)
			require.Equal(rt, least <= within, w.Within)
		}
		require.Equal(rt, len(ways), next, "no way more than there is to gain")
	})
}

// leastInFull is the least tension misfit by number of swaps over all sets
// whose strings keep the limits that they could keep.
func leastInFull(rt *rapid.T, p *choice.Plan, req choice.Request, from *choice.Detail) []float64 {
	want := []float64{math.Inf(1), math.Inf(1), math.Inf(1), math.Inf(1)}
	mendable := map[int]bool{}
	for _, g := range req.Usable {
		d, err := p.Detail(690, 650, []int{g, g, g})
		require.NoError(rt, err)
		for n := 1; n <= 3; n++ {
			mendable[n] = mendable[n] || !slices.ContainsFunc(d.Broken, func(m choice.Miss) bool { return m.String == n })
		}
	}
	for _, a := range req.Usable {
		for _, b := range req.Usable {
			for _, c := range req.Usable {
				set := []int{a, b, c}
				d, err := p.Detail(690, 650, set)
				require.NoError(rt, err)
				swaps := 0
				for i := range set {
					if set[i] != from.Gauges[i] {
						swaps++
					}
				}
				if !keepsWhatItCan(d, from, mendable) || req.Ordering && !swappedKeepRule(req, set, from.Gauges) {
					continue
				}
				want[swaps] = min(want[swaps], d.TensionMisfit)
			}
		}
	}
	return want
}

// keepsWhatItCan says that a string breaks a limit only where no gauge would
// keep them, and then has its own gauge still.
func keepsWhatItCan(d, from *choice.Detail, mendable map[int]bool) bool {
	for _, m := range d.Broken {
		if m.String > 0 && (mendable[m.String] || d.Gauges[m.String-1] != from.Gauges[m.String-1]) {
			return false
		}
	}
	return true
}

func swappedKeepRule(req choice.Request, set, from []int) bool {
	for i := 1; i < len(set); i++ {
		if set[i] == from[i] && set[i-1] == from[i-1] {
			continue
		}
		if !keepsRule(req, set[i-1:i+1]) {
			return false
		}
	}
	return true
}

func TestASetThatIsWithinNeedsNoSwap(t *testing.T) {
	req := baritone()
	p, r := search(t, req)
	best := r.Best[0]
	d, err := p.Detail(best.BassMM, best.TrebleMM, best.Gauges)
	require.NoError(t, err)
	ways, err := p.Ways(d, d.TensionMisfit+0.1)
	require.NoError(t, err)
	require.Len(t, ways, 1)
	assert.True(t, ways[0].Within)
	assert.Empty(t, ways[0].Swaps)
}

func TestNoWaysWithoutAWantedTension(t *testing.T) {
	req := baritone()
	req.Feel.Tension = choice.Target{}
	p, r := search(t, req)
	d, err := p.Detail(r.Best[0].BassMM, r.Best[0].TrebleMM, r.Best[0].Gauges)
	require.NoError(t, err)
	ways, err := p.Ways(d, 3)
	require.NoError(t, err)
	assert.Nil(t, ways)
}

// A string past its breaking limit must go, however near its tension is.
func TestAGaugeThatBreaksALimitMustGo(t *testing.T) {
	req := baritone()
	req.Limits = choice.Limits{}
	p, r := search(t, req)
	best := r.Best[0]
	d, err := p.Detail(best.BassMM, best.TrebleMM, best.Gauges)
	require.NoError(t, err)
	req.Limits.BreakingOpen = d.Strings[0].Cases[0].ShareOpen - 1e-6
	p, err = choice.Prepare(req)
	require.NoError(t, err)
	d, err = p.Detail(best.BassMM, best.TrebleMM, best.Gauges)
	require.NoError(t, err)
	ways, err := p.Ways(d, 100)
	require.NoError(t, err)
	require.Len(t, ways, 2)
	assert.False(t, ways[0].Within, "within the misfit, but past a limit")
	require.Len(t, ways[1].Swaps, 1)
	assert.Equal(t, 1, ways[1].Swaps[0].String)
	assert.Empty(t, ways[1].Detail.Broken)
	assert.True(t, ways[1].Within)
}

// BenchmarkWays takes a set far off even tension, eight strings, sixty gauges.
func BenchmarkWays(b *testing.B) {
	for name, source := range map[string]choice.Source{"like the reference": choice.LikeReference, "even": choice.OwnMean} {
		b.Run(name, func(b *testing.B) {
			req := workload(20)
			req.Given = make([]int, 8)
			for i := range req.Given {
				req.Given[i] = 5 + 5*i
			}
			req.Feel.Tension.Source = source
			req.Limits = choice.Limits{}
			p, err := choice.Prepare(req)
			require.NoError(b, err)
			d, err := p.Detail(680, 640, req.Given)
			require.NoError(b, err)
			for b.Loop() {
				_, err = p.Ways(d, 0.1)
				require.NoError(b, err)
			}
		})
	}
}
