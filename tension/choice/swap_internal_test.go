package choice

import (
	"math"
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// anyOptions are a few gauges a string, of few weights so that equal ones
// meet, with the first often the one that is.
func anyOptions(rng *rand.Rand, cases int) [][]option {
	out := make([][]option, 2+rng.IntN(3))
	for i := range out {
		for k := range 2 + rng.IntN(4) {
			o := option{gauge: k, w: float64(1 + rng.IntN(5)), plain: rng.IntN(2) == 0, cost: rng.Float64(), kept: k == 0 && rng.IntN(5) > 0}
			for range cases {
				o.logs = append(o.logs, 4+rng.Float64())
			}
			out[i] = append(out[i], o)
		}
	}
	return out
}

// everyPick visits every pick of options that the ordering rule allows.
func everyPick(options [][]option, ordered bool, visit func(pick []int, swaps int)) {
	pick := make([]int, len(options))
	var from func(i, swaps int)
	from = func(i, swaps int) {
		if i == len(options) {
			visit(pick, swaps)
			return
		}
		for o, opt := range options[i] {
			if i > 0 {
				a := options[i-1][pick[i-1]]
				bothStay := a.kept && opt.kept
				if ordered && !bothStay && (opt.w < a.w || opt.plain && !a.plain) {
					continue
				}
			}
			pick[i] = o
			more := 1
			if opt.kept {
				more = 0
			}
			from(i+1, swaps+more)
		}
	}
	from(0, 0)
}

// costOf adds up a pick in the order that the programme does.
func costOf(options [][]option, pick []int) float64 {
	sum := 0.0
	for i, o := range pick {
		sum += options[i][o].cost
	}
	return sum
}

func TestFewestSwapsAgainstEverySet(t *testing.T) {
	rng := rand.New(rand.NewPCG(11, 1))
	bound := 0
	for range 2000 {
		options, ordered := anyOptions(rng, 1), rng.IntN(3) > 0
		want := make([]float64, len(options)+1)
		for s := range want {
			want[s] = math.Inf(1)
		}
		all := 0
		everyPick(options, ordered, func(pick []int, swaps int) {
			all++
			want[swaps] = min(want[swaps], costOf(options, pick))
		})
		got := leastBySwaps(options, ordered)
		require.Len(t, got, len(want))
		for s, pick := range got {
			if pick == nil {
				require.True(t, math.IsInf(want[s], 1), "%d swaps", s)
				continue
			}
			require.Equal(t, want[s], costOf(options, pick), "%d swaps of %+v", s, options)
			swapped := 0
			for i, o := range pick {
				if !options[i][o].kept {
					swapped++
				}
			}
			require.Equal(t, s, swapped)
		}
		if ordered && all > 0 {
			bound++
		}
	}
	assert.Greater(t, bound, 1000)
}

func TestEvenSwapsAgainstEverySet(t *testing.T) {
	for name, by := range map[string]Combining{"mean": Mean, "worst": Worst} {
		t.Run(name, func(t *testing.T) {
			rng := rand.New(rand.NewPCG(12, 1))
			for range 500 {
				cases := 1 + rng.IntN(2)
				p := &Plan{share: []float64{0.3, 0.7}[:cases]}
				p.req.By, p.req.Ordering = by, rng.IntN(2) == 0
				options := anyOptions(rng, cases)
				want := map[int]float64{}
				everyPick(options, p.req.Ordering, func(pick []int, swaps int) {
					v := spreadOf(p, options, pick)
					if old, ok := want[swaps]; !ok || v < old {
						want[swaps] = v
					}
				})
				for s, pick := range p.evenBySwaps(options) {
					least, ok := want[s]
					require.Equal(t, ok, pick != nil, "%d swaps", s)
					if ok {
						require.InDelta(t, least, spreadOf(p, options, pick), 1e-12)
					}
				}
			}
		})
	}
}

// spreadOf is the blended sum of squares about each case's own mean, by the
// plain two passes.
func spreadOf(p *Plan, options [][]option, pick []int) float64 {
	b := blend{by: p.req.By}
	for c, share := range p.share {
		mean, sum := 0.0, 0.0
		for i, o := range pick {
			mean += options[i][o].logs[c] / float64(len(pick))
		}
		for i, o := range pick {
			sum += math.Pow(options[i][o].logs[c]-mean, 2)
		}
		b.add(share, sum)
	}
	return b.v
}
