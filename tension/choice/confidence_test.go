package choice

import (
	"context"
	"math"
	"math/rand/v2"
	"runtime"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"scalepair/data/unit"
	"scalepair/gauges"
)

// known gives every gauge a standard uncertainty, as a part of its linear
// density.
func known(req Request, u float64) Request {
	for i := range req.Stock {
		g := &req.Stock[i]
		g.Indep = g.LinearDensity * unit.LinearDensity(u)
		g.U = g.Indep
	}
	return req
}

func TestConfidence(t *testing.T) {
	ctx := context.Background()
	req := known(baritone(), 0)
	p, r := search(t, req)
	c, err := p.Confidence(ctx, r, gauges.NewDrawer(req.Stock), 50, 1)
	require.NoError(t, err)
	require.Len(t, c.Picks, len(r.Picks))
	for k, pick := range c.Picks {
		assert.Equal(t, r.Picks[k].Kind, pick.Kind)
		assert.EqualValues(t, 1, *pick.Good, "nothing varies")
		assert.InDelta(t, float64(r.Picks[k].Error), float64(pick.Low), 1e-12)
		assert.InDelta(t, float64(r.Picks[k].Error), float64(pick.High), 1e-12)
	}

	last := 1.01
	for _, u := range []float64{0.002, 0.02, 0.08} {
		req := known(baritone(), u)
		p, r := search(t, req)
		c, err := p.Confidence(ctx, r, gauges.NewDrawer(req.Stock), 400, 1)
		require.NoError(t, err)
		good := float64(*c.Picks[0].Good)
		assert.LessOrEqual(t, good, last, "the less is known, the less surely a pick stays good")
		assert.Less(t, c.Picks[0].Low, c.Picks[0].High)
		assert.Equal(t, good < 0.5, c.Picks[0].Uncertain)
		last = good
	}
	assert.Less(t, last, 0.5)
}

// The trials by another route: a plan of its own for every drawn stock.
func TestTrialsAgainstPlansOfTheirOwn(t *testing.T) {
	req := known(baritone(), 0.03)
	req.Cases = append(req.Cases, Case{Name: "A", Pitches: hz(57, 52, 48, 43, 38, 33), Weight: 1})
	p, r := search(t, req)
	drawer := gauges.NewDrawer(req.Stock)
	const trials = 60
	c, err := p.Confidence(context.Background(), r, drawer, trials, 7)
	require.NoError(t, err)
	good, drawn := make([]int, len(r.Picks)), make([]gauges.Drawn, len(req.Stock))
	low := make([]float64, len(r.Picks))
	for k := range low {
		low[k] = math.Inf(1)
	}
	for n := range trials {
		drawer.Draw(rand.New(rand.NewPCG(7, uint64(n))), drawn)
		other := req
		other.Limits = Limits{}
		other.Stock = append([]gauges.Gauge(nil), req.Stock...)
		for g := range other.Stock {
			other.Stock[g].LinearDensity = drawn[g].LinearDensity
		}
		q := must(t, other)
		least := math.Inf(1)
		errorOf := func(pair Pair) float64 {
			d := q.drawn(pair.Bass, pair.Treble, pair.Gauges)
			return float64(d.Error)
		}
		all, _ := r.Map(1000)
		for _, pair := range all {
			e := errorOf(pair)
			least = min(least, felt(e*e, p.removed))
		}
		for k, pick := range r.Picks {
			e := errorOf(pick.Pair)
			low[k] = min(low[k], e)
			if felt(e*e, p.removed) <= max(least, 0.02)+1.5*0.02 {
				good[k]++
			}
		}
	}
	for k := range r.Picks {
		// Rivals are a sample of the good pairs, so that a trial may count as good
		// where one more rival would not have it so.
		assert.InDelta(t, float64(good[k])/trials, float64(*c.Picks[k].Good), 0.05)
		assert.InDelta(t, low[k], float64(c.Picks[k].Low), 0.01)
	}
}

// Neither search nor trials depend on the number of processors.
func TestTheResultDoesNotDependOnProcessors(t *testing.T) {
	req := known(workload(10), 0.02)
	p, r := search(t, req)
	many, err := p.Confidence(context.Background(), r, gauges.NewDrawer(req.Stock), 200, 3)
	require.NoError(t, err)
	defer runtime.GOMAXPROCS(runtime.GOMAXPROCS(1))
	_, alone := search(t, req)
	assert.Equal(t, r.field.points, alone.field.points)
	assert.Equal(t, r.Dropped, alone.Dropped)
	one, err := p.Confidence(context.Background(), r, gauges.NewDrawer(req.Stock), 200, 3)
	require.NoError(t, err)
	assert.Equal(t, many, one)
}

// Limits are not looked at again in a trial, but for a bend that cannot be made:
// that trial is not good.
func TestLimitsInTrials(t *testing.T) {
	req := known(baritone(), 0.01)
	req.Given = indexesOf(req.Stock, "p13", "p17", "p22", "w32", "w46", "w56")
	req.Bass, req.Treble = span(690, 690, 1), span(650, 650, 1)
	p := must(t, req)
	d := p.drawn(req.Bass[0], req.Treble[0], req.Given)
	req.Limits.MostTension = d.Strings[2].Tunings[0].Tension.Value + 1e-9
	for _, s := range d.Strings {
		req.Limits.MostTension = max(req.Limits.MostTension, s.Tunings[0].Tension.Value+1e-9)
	}
	p, r := search(t, req)
	require.Equal(t, 1, r.Kept)
	c, err := p.Confidence(context.Background(), r, gauges.NewDrawer(req.Stock), 100, 1)
	require.NoError(t, err)
	assert.EqualValues(t, 1, *c.Picks[0].Good, "half of the trials are above the limit")

	// The string just reaches its bend: where it is drawn heavier, it breaks.
	w := p.wires[req.Given[0]]
	bent := 0.0
	for _, b := range d.Strings[0].Tunings[0].Bends {
		bent = max(bent, b.Bend.Tension.N())
	}
	req.Limits, req.Stock[req.Given[0]].StrengthPa = Limits{}, bent*1.0001/w.CoreArea
	p, r = search(t, req)
	require.Equal(t, 1, r.Kept)
	c, err = p.Confidence(context.Background(), r, gauges.NewDrawer(req.Stock), 200, 1)
	require.NoError(t, err)
	assert.InDelta(t, 0.5, float64(*c.Picks[0].Good), 0.12)
}
