package choice_test

import (
	"math"
	"runtime"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"scalepair/fan"
	"scalepair/tension/choice"
)

func search(t *testing.T, req choice.Request) (*choice.Plan, *choice.Result) {
	t.Helper()
	p, err := choice.Prepare(req)
	require.NoError(t, err)
	return p, p.Search()
}

func TestTheReferenceItselfScoresNothing(t *testing.T) {
	req := baritone()
	req.Cases[0].FreqsHz = standardE
	req.BassMM, req.TrebleMM = []float64{625, 635, 650}, []float64{625, 635}
	p, r := search(t, req)
	require.NotEmpty(t, r.Best)
	assert.Equal(t, 635.0, r.Best[0].BassMM)
	assert.Equal(t, 635.0, r.Best[0].TrebleMM)
	assert.Zero(t, r.Best[0].Score)
	assert.Equal(t, []string{"p10", "p13", "p17", "w26", "w36", "w46"}, labels(p.Stock(), r.Best[0].Gauges))
}

// The whole route (targets, feel, limits, ordering) against trying every set
// of a small stock through Detail, which reports limits instead of searching.
func TestSearchTakesTheBestOfAllSets(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		req := baritone()
		req.Cases[0].FreqsHz = hz(59, 54, 50)
		req.Tails, req.ActionM = sameTails(3), heights(3)
		req.Ordering = rapid.Bool().Draw(rt, "ordering")
		req.Usable = rapid.Permutation(indexesOf(len(req.Stock))).Draw(rt, "stock")[:6]
		req.BassMM, req.TrebleMM = []float64{rapid.Float64Range(640, 720).Draw(rt, "bass")}, []float64{630}
		req.Limits.BreakingOpen = rapid.Float64Range(0.3, 0.8).Draw(rt, "open")
		p, err := choice.Prepare(req)
		require.NoError(rt, err)
		r := p.Search()

		least, found := math.Inf(1), false
		for _, a := range req.Usable {
			for _, b := range req.Usable {
				for _, c := range req.Usable {
					set := []int{a, b, c}
					if req.Ordering && !keepsRule(req, set) {
						continue
					}
					d, err := p.Detail(req.BassMM[0], 630, set)
					require.NoError(rt, err)
					if len(d.Broken) == 0 {
						least, found = min(least, d.Score), true
					}
				}
			}
		}
		require.Equal(rt, found, len(r.Best) == 1)
		if found {
			require.InEpsilon(rt, least, r.Best[0].Score, 1e-12)
		}
	})
}

func indexesOf(n int) []int {
	out := make([]int, n)
	for i := range out {
		out[i] = i
	}
	return out
}

func keepsRule(req choice.Request, set []int) bool {
	for i := 1; i < len(set); i++ {
		a, b := req.Stock[set[i-1]], req.Stock[set[i]]
		if b.LinearDensity < a.LinearDensity || b.Family == "plain" && a.Family != "plain" {
			return false
		}
	}
	return true
}

func TestSearchDoesNotDependOnProcessors(t *testing.T) {
	req := baritone()
	req.Limits.DifferenceMM = 40
	_, many := search(t, req)
	defer runtime.GOMAXPROCS(runtime.GOMAXPROCS(1))
	_, one := search(t, req)
	assert.Equal(t, one, many)
}

func TestSearchScoresLikeDetail(t *testing.T) {
	p, r := search(t, baritone())
	require.NotEmpty(t, r.Best)
	require.NotEmpty(t, r.Front)
	for _, c := range append(r.Best, r.Front...) {
		d, err := p.Detail(c.BassMM, c.TrebleMM, c.Gauges)
		require.NoError(t, err)
		assert.InDelta(t, c.Score, d.Score, 1e-12)
		assert.Equal(t, c.SaddleSlantRad, d.SaddleSlantRad)
		assert.Empty(t, d.Broken)
	}
	assert.Equal(t, r.Tried, len(p.Request().BassMM)*len(p.Request().TrebleMM))
}

func TestBestPairsAreDistinctAndInOrder(t *testing.T) {
	req := baritone()
	req.BassMM, req.TrebleMM = span(660, 720, 1), span(640, 690, 1)
	req.ApartMM = 8
	_, r := search(t, req)
	require.Len(t, r.Best, choice.DefaultListed)
	for i, a := range r.Best {
		for _, b := range r.Best[:i] {
			assert.GreaterOrEqual(t, a.Score, b.Score)
			assert.True(t, math.Abs(a.BassMM-b.BassMM) >= 8 || math.Abs(a.TrebleMM-b.TrebleMM) >= 8 ||
				math.Abs(a.DifferenceMM()-b.DifferenceMM()) >= 8)
		}
	}
}

func TestGivenGaugesAreKept(t *testing.T) {
	req := baritone()
	req.Given = indexes(req.Stock, "p13", "p17", "w26", "w36", "w46", "w62")
	_, r := search(t, req)
	require.NotEmpty(t, r.Best)
	for _, c := range r.Best {
		assert.Equal(t, req.Given, c.Gauges)
	}
}

func TestOwnMeanWantsEvenness(t *testing.T) {
	req := baritone()
	req.Reference = nil
	req.Feel.Tension = choice.Target{Source: choice.OwnMean}
	req.Feel.BendingForce, req.Feel.Overtone = choice.Target{}, choice.Target{}
	req.Given = indexes(req.Stock, "p13", "p17", "w26", "w36", "w46", "w62")
	p, r := search(t, req)
	require.NotEmpty(t, r.Best)
	best := r.Best[0]
	d, err := p.Detail(best.BassMM, best.TrebleMM, best.Gauges)
	require.NoError(t, err)

	logs, sum := []float64{}, 0.0
	for _, s := range d.Strings {
		logs = append(logs, math.Log(s.Cases[0].TensionN))
		sum += math.Log(s.Cases[0].TensionN)
	}
	square := 0.0
	for _, l := range logs {
		square += (l - sum/6) * (l - sum/6) / 6
	}
	assert.InDelta(t, 100*math.Sqrt(square), best.TensionMisfit, 1e-9)
	assert.InDelta(t, math.Exp(sum/6), d.Strings[0].TargetN, 1e-9)
	assert.Len(t, p.LeftOut(), 2)
}

func TestEqualTensionOnEqualStringsIsReached(t *testing.T) {
	req := baritone()
	req.Reference = nil
	req.Feel.Tension = choice.Target{Source: choice.Stated, Values: []float64{75}}
	req.Feel.BendingForce, req.Feel.Overtone = choice.Target{}, choice.Target{}
	p, r := search(t, req)
	require.NotEmpty(t, r.Best)
	best := r.Best[0]
	d, err := p.Detail(best.BassMM, best.TrebleMM, best.Gauges)
	require.NoError(t, err)
	for _, s := range d.Strings {
		assert.InEpsilon(t, 75, s.Cases[0].TensionN, 0.15, "string %d", s.Number)
	}
}

func TestSeveralTunings(t *testing.T) {
	req := baritone()
	low := hz(59, 54, 50, 45, 40, 33) // the lowest string dropped
	req.Cases = []choice.Case{{Name: "B", FreqsHz: baritoneB, Weight: 3}, {Name: "dropped", FreqsHz: low, Weight: 1}}
	alone := func(freqs []float64, c choice.Candidate) *choice.Detail {
		one := baritone()
		one.Cases[0].FreqsHz = freqs
		p, err := choice.Prepare(one)
		require.NoError(t, err)
		d, err := p.Detail(c.BassMM, c.TrebleMM, c.Gauges)
		require.NoError(t, err)
		return d
	}
	_, r := search(t, req)
	best := r.Best[0]
	a, b := alone(baritoneB, best), alone(low, best)
	assert.InEpsilon(t, 0.75*a.Score+0.25*b.Score, best.Score, 1e-9, "the weighted mean of the cases' scores")

	req.By = choice.Worst
	_, r = search(t, req)
	best = r.Best[0]
	a, b = alone(baritoneB, best), alone(low, best)
	assert.GreaterOrEqual(t, best.Score*(1+1e-12), max(a.Score, b.Score))
	assert.LessOrEqual(t, best.Score, a.Score+b.Score)
}

func TestReverseFanOnlyWhenAskedFor(t *testing.T) {
	req := baritone()
	req.BassMM, req.TrebleMM = []float64{640}, []float64{630, 650}
	_, r := search(t, req)
	require.Len(t, r.Dropped, 1)
	assert.Equal(t, choice.ReverseFan, r.Dropped[0].Reason)
	req.Neck.AllowReverse = true
	_, r = search(t, req)
	assert.Equal(t, 2, r.Kept)
}

func TestEqualGapsFollowTheChosenSet(t *testing.T) {
	req := baritone()
	req.Neck.NutSpacing = fan.Spacing{Rule: fan.EqualGaps}
	p, r := search(t, req)
	best := r.Best[0]
	d, err := p.Detail(best.BassMM, best.TrebleMM, best.Gauges)
	require.NoError(t, err)
	frame, err := fan.NewFrame(d.Spec)
	require.NoError(t, err)
	for i, s := range d.Strings {
		assert.Equal(t, frame.Length(i).M(), s.LengthM)
		assert.InDelta(t, req.Stock[best.Gauges[i]].Outer.M(), d.Spec.Diameters[i].M(), 1e-12)
	}
}

func TestSearchBestIsTheFirstOfBest(t *testing.T) {
	p, r := search(t, baritone())
	best, dropped, ok := p.SearchBest()
	assert.True(t, ok)
	assert.Empty(t, dropped)
	assert.Equal(t, r.Best[0], best)

	req := baritone()
	req.Limits.MostTensionN = 10
	p, r = search(t, req)
	_, dropped, ok = p.SearchBest()
	assert.False(t, ok)
	assert.Equal(t, r.Dropped, dropped)
}

// A set written the wrong way round has bends that cannot be made: they are
// reported, and every number stays finite.
func TestASetTheWrongWayRoundStaysFinite(t *testing.T) {
	p, err := choice.Prepare(baritone())
	require.NoError(t, err)
	d, err := p.Detail(700, 650, indexes(p.Stock(), "w68", "w62", "w46", "w36", "w26", "p17"))
	require.NoError(t, err)
	failed := 0
	for _, s := range d.Strings {
		for _, b := range s.Cases[0].Bends {
			if b.Err != nil {
				failed++
				assert.Zero(t, b.Bend)
			}
		}
	}
	assert.Positive(t, failed)
	assert.NotEmpty(t, d.Broken)
	for _, x := range []float64{d.Score, d.TensionMisfit, d.BendingForceMisfit, d.OvertoneMisfit} {
		assert.False(t, math.IsInf(x, 0) || math.IsNaN(x))
	}
}
