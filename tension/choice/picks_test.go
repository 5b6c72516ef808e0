package choice

import (
	"context"
	"math"
	"math/rand/v2"
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"scalepair/data/unit"
	"scalepair/fan"
)

func search(t testing.TB, req Request) (*Plan, *Result) {
	t.Helper()
	p := must(t, req)
	r, err := p.Search(context.Background())
	require.NoError(t, err)
	return p, r
}

// anyBuild is a choice over a grid with limits, equal gaps, a wanted
// inharmonicity and given gauges now and then.
func anyBuild(r *rand.Rand) Request {
	req := baritone()
	step := []float64{5, 7.5, 10}[r.IntN(3)]
	req.Bass, req.Treble = span(630+r.Float64()*30, 720, step), span(610+r.Float64()*20, 650, step)
	req.Limits.SaddleSlant = unit.Degrees(15 + 20*r.Float64())
	if r.IntN(3) == 0 {
		req.Neck.NutSpacing.Rule = fan.EqualGaps
	}
	if r.IntN(2) == 0 {
		req.Feel.Inharmonicity = unit.Cents(8 + 8*r.Float64())
	}
	if r.IntN(4) == 0 {
		req.Given = indexesOf(req.Stock, "p13", "p17", "p22", "w32", "w46", "w56")
	}
	if r.IntN(3) == 0 {
		req.Cases = append(req.Cases, Case{Name: "A", Pitches: hz(57, 52, 48, 43, 38, 33), Weight: 1})
	}
	req.Feel.Noticeable = unit.Ratio(0.01 + 0.03*r.Float64())
	return req
}

// The picks keep their definitions, whatever the build: every pair that is as
// good is looked at.
func TestPicksKeepTheirDefinitions(t *testing.T) {
	r := rand.New(rand.NewPCG(3, 9))
	for range 60 {
		p, res := search(t, anyBuild(r))
		f := res.field
		good := f.good()
		if f.best/5 > float64(p.req.Feel.Noticeable) {
			require.True(t, res.NoneNear || res.Kept == 0)
			require.Zero(t, res.AsGood, "nothing is as good where no pair comes near")
		} else {
			require.Equal(t, len(good), res.AsGood)
		}
		require.LessOrEqual(t, f.best, f.allowed)
		if len(good) == 0 {
			require.Empty(t, res.Picks)
			require.Nil(t, res.Preferred())
			continue
		}
		diff := func(pair Pair) float64 { return rounded(math.Abs(pair.Difference.M())) }
		small, middle, long := res.Pick(SmallestFan), res.Pick(MiddlePick), res.Pick(LongestBass)
		require.NotNil(t, small)
		require.NotNil(t, middle)
		require.NotNil(t, long)
		half := (small.Bass + long.Bass) / 2
		require.GreaterOrEqual(t, middle.Bass, half-1e-9)
		for _, at := range good {
			d, e := f.difference(at), f.errorOf(at)
			bass, _ := f.lengths(at)
			require.False(t, d < diff(small.Pair) || d == diff(small.Pair) && e < rounded(float64(small.Error)))
			require.LessOrEqual(t, bass, long.Bass)
			if bass == long.Bass {
				require.False(t, d < diff(long.Pair) || d == diff(long.Pair) && e < rounded(float64(long.Error)))
			}
			if bass >= half {
				require.False(t, d < diff(middle.Pair) || d == diff(middle.Pair) && e < rounded(float64(middle.Error)))
			}
			if k := res.Pick(ClearEnough); k != nil && res.ClearEnoughLacks == 0 && rounded(f.points[at].cents) <= rounded(p.req.Feel.Inharmonicity.Value()) {
				require.False(t, d < diff(k.Pair) || d == diff(k.Pair) && e < rounded(float64(k.Error)))
			} else if k != nil && res.ClearEnoughLacks > 0 {
				require.Greater(t, f.points[at].cents, p.req.Feel.Inharmonicity.Value())
				require.GreaterOrEqual(t, f.points[at].cents, k.Inharmonicity.Value()-1e-9)
			}
			if k := res.Pick(BestFeel); k != nil {
				require.GreaterOrEqual(t, e, rounded(float64(k.Error)))
			}
		}
		require.Equal(t, p.req.Given != nil, res.Pick(BestFeel) != nil)
		require.Equal(t, p.req.Feel.Inharmonicity > 0, res.Pick(ClearEnough) != nil)
		requireTradeOff(t, res)
		requireRising(t, res)
		requireDetails(t, p, res)
	}
}

// requireTradeOff holds the rows to what they are to be.
func requireTradeOff(t *testing.T, res *Result) {
	rows := res.TradeOff
	require.NotEmpty(t, rows)
	require.LessOrEqual(t, len(rows), mostSteps+len(res.Picks))
	require.Equal(t, res.Pick(SmallestFan).Bass, rows[0].Bass)
	for _, k := range res.Picks {
		require.True(t, slices.ContainsFunc(rows, func(s Step) bool { return s.Bass == k.Bass && s.Treble == k.Treble }), "each pick has a row")
	}
	for k := 1; k < len(rows); k++ {
		require.GreaterOrEqual(t, rounded(math.Abs(rows[k].Difference.M())), rounded(math.Abs(rows[k-1].Difference.M())))
		require.InDelta(t, float64(rows[k].Inharmonicity-rows[0].Inharmonicity), float64(rows[k].MoreInharmonicity), 1e-12)
	}
}

// requireRising holds the rows that are no picks to the rule: bass and difference
// grow from row to row.
func requireRising(t *testing.T, res *Result) {
	rows := slices.DeleteFunc(slices.Clone(res.TradeOff), func(s Step) bool {
		return slices.ContainsFunc(res.Picks, func(k Pick) bool { return s.Bass == k.Bass && s.Treble == k.Treble })
	})
	for k := 1; k < len(rows); k++ {
		require.Greater(t, rows[k].Bass, rows[k-1].Bass)
		require.Greater(t, rounded(math.Abs(rows[k].Difference.M())), rounded(math.Abs(rows[k-1].Difference.M())))
	}
}

// requireDetails holds every printed pair to the detail of the same pair, and
// to the limits, with equal gaps those of its own set.
func requireDetails(t *testing.T, p *Plan, res *Result) {
	pairs := []Pair{}
	for _, k := range res.Picks {
		pairs = append(pairs, k.Pair)
	}
	for _, s := range res.TradeOff {
		pairs = append(pairs, s.Pair)
	}
	require.True(t, res.Settled)
	for _, pair := range pairs {
		d := p.drawn(pair.Bass, pair.Treble, pair.Gauges)
		require.Empty(t, d.Broken)
		require.LessOrEqual(t, felt(float64(pair.Error)*float64(pair.Error), p.removed), res.field.allowed)
		require.GreaterOrEqual(t, pair.Bass, pair.BassFrom)
		require.LessOrEqual(t, pair.Bass, pair.BassTo)
		pair.BassFrom, pair.BassTo = 0, 0
		require.Equal(t, pair, d.Pair)
		if p.req.Given == nil {
			set, _ := p.Suggest(pair.Bass, pair.Treble)
			best := p.drawn(pair.Bass, pair.Treble, set)
			require.InDelta(t, float64(best.Error), float64(d.Error), 1e-12, "the best set for its own spacing")
		}
	}
}

func TestTasteIsARunWithThoseWeights(t *testing.T) {
	r := rand.New(rand.NewPCG(8, 1))
	moved := 0
	for range 15 {
		req := anyBuild(r)
		p, res := search(t, req)
		taste, err := p.Taste(context.Background(), res)
		require.NoError(t, err)
		require.Len(t, taste, 4)
		for _, one := range taste {
			changed := req
			if one.What == "bend_weight" {
				changed.Feel.BendWeight = one.Value
			} else {
				changed.Feel.Noticeable = unit.Ratio(one.Value)
			}
			_, other := search(t, changed)
			at := 0
			for _, k := range res.Picks {
				to := Pair{}
				if o := other.Pick(k.Kind); o != nil {
					to = o.Pair
				}
				if to.Bass == k.Bass && to.Treble == k.Treble {
					continue
				}
				require.Less(t, at, len(one.Moves))
				assert.Equal(t, Move{Kind: k.Kind, From: k.Pair, To: to}, one.Moves[at])
				at++
				moved++
			}
			assert.Len(t, one.Moves, at)
		}
	}
	assert.Greater(t, moved, 20)
}

// 686.7/671.1 and 686.8/671.2 have one difference, whatever their last bits.
func TestDifferencesAreComparedRounded(t *testing.T) {
	req := baritone()
	req.Bass = []unit.Length{unit.MM(686.7), unit.MM(686.8)}
	req.Treble = []unit.Length{unit.MM(671.1), unit.MM(671.2)}
	req.Feel.Noticeable = 0.5
	_, res := search(t, req)
	require.NotEqual(t, req.Bass[0]-req.Treble[0], req.Bass[1]-req.Treble[1], "or the test says nothing")
	small := res.Pick(SmallestFan)
	assert.InDelta(t, 15.5, small.Difference.MM(), 1e-9)
	rows := map[float64]int{}
	for _, s := range res.TradeOff {
		rows[rounded(s.Difference.M())]++
	}
	for d, n := range rows {
		assert.Equal(t, 1, n, "%v", d)
	}
}

func TestPreferred(t *testing.T) {
	req := baritone()
	_, r := search(t, req)
	assert.Equal(t, MiddlePick, r.Preferred().Kind)
	req.Feel.Inharmonicity = 10
	_, r = search(t, req)
	assert.Equal(t, ClearEnough, r.Preferred().Kind)
	req.Feel.Prefer = LongestBass
	_, r = search(t, req)
	assert.Equal(t, LongestBass, r.Preferred().Kind)
	req.Feel.Prefer, req.Given = NoPick, indexesOf(req.Stock, "p13", "p17", "p22", "w32", "w46", "w56")
	_, r = search(t, req)
	assert.Equal(t, BestFeel, r.Preferred().Kind)
}

// Every pair as good: only limits and range decide; none near: that is said.
func TestWhatDecides(t *testing.T) {
	req := baritone()
	req.Feel.Noticeable = 0.3
	_, r := search(t, req)
	assert.True(t, r.AllAsGood)
	assert.False(t, r.NoneNear)

	req = baritone()
	req.Usable = indexesOf(req.Stock, "p8", "p9", "p10", "w24", "w26", "w28")
	_, r = search(t, req)
	assert.True(t, r.NoneNear)
	assert.Zero(t, r.AsGood)
	assert.False(t, r.AllAsGood)
	pick := r.Preferred()
	require.NotEmpty(t, pick.StockDecides)
	low := pick.StockDecides[len(pick.StockDecides)-1]
	assert.Equal(t, 6, low.String)
	assert.True(t, low.Heaviest)
	assert.Less(t, low.Deviation, unit.Ratio(-0.5))
	d := r.plan.drawn(pick.Bass, pick.Treble, pick.Gauges)
	// The wanted density is what makes the deviation vanish, but for stretch.
	assert.InEpsilon(t, float64(1+low.Deviation), float64(req.Stock[low.Gauge].LinearDensity/low.Wanted), 0.01)
	assert.Equal(t, d.Strings[5].Wanted, low.Wanted)
}

func TestMap(t *testing.T) {
	_, r := search(t, baritone())
	all, thin := r.Map(1000)
	assert.Len(t, all, r.Kept)
	assert.False(t, thin)
	some, thin := r.Map(20)
	assert.LessOrEqual(t, len(some), 20)
	assert.True(t, thin)
	for _, p := range some {
		assert.Contains(t, all, p)
	}
	assert.Panics(t, func() { r.Map(0) })
}
