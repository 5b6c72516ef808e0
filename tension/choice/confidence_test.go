package choice_test

import (
	"math"
	"math/rand/v2"
	"runtime"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"scalepair/data/unit"
	"scalepair/gauges"
	"scalepair/tension"
	"scalepair/tension/choice"
)

func confidence(t *testing.T, req choice.Request, draws int) (*choice.Result, *choice.Confidence) {
	t.Helper()
	p, r := search(t, req)
	stock := req.Stock
	return r, p.Confidence(r, gauges.NewDrawer(stock), draws, 7)
}

// withU sets the standard uncertainty of every linear density, as a share, and of
// every core.
func withU(req choice.Request, share float64) choice.Request {
	for i := range req.Stock {
		g := &req.Stock[i]
		g.U = unit.LinearDensity(share) * g.LinearDensity
		g.Indep = g.U
		g.UCore, g.CoreParts = 0, nil
	}
	return req
}

func TestConfidenceAddsUp(t *testing.T) {
	r, c := confidence(t, withU(baritone(), 0.01), 500)
	wins := 0.0
	for j, s := range c.Standing {
		wins += s.Wins
		assert.LessOrEqual(t, s.Wins, max(s.BeatsBest, c.Standing[0].Wins), "a pair that wins beats the best")
		if j < len(r.Best) {
			assert.Equal(t, r.Best[j], s.Candidate)
		}
	}
	assert.InDelta(t, 1, wins, 1e-9)
	assert.False(t, c.Standing[0].Told)
	for k := 1; k < len(c.Tie); k++ {
		a, b := c.Standing[c.Tie[k-1]], c.Standing[c.Tie[k]]
		assert.LessOrEqual(t, math.Abs(a.DifferenceMM()), math.Abs(b.DifferenceMM()))
	}
	for _, j := range c.Tie {
		s := c.Standing[j]
		assert.True(t, c.BassMM[0] <= s.BassMM && s.BassMM <= c.BassMM[1])
		assert.True(t, c.TrebleMM[0] <= s.TrebleMM && s.TrebleMM <= c.TrebleMM[1])
	}
}

func TestPerfectWeighingTellsAllApart(t *testing.T) {
	_, c := confidence(t, withU(baritone(), 0), 50)
	assert.Equal(t, []int{0}, c.Tie)
	assert.Equal(t, 1.0, c.Standing[0].Wins)
}

func TestWorseWeighingTellsLessApart(t *testing.T) {
	_, fine := confidence(t, withU(baritone(), 0.001), 400)
	_, coarse := confidence(t, withU(baritone(), 0.03), 400)
	assert.Less(t, len(fine.Tie), len(coarse.Tie))
	assert.Greater(t, fine.Standing[0].Wins, coarse.Standing[0].Wins)
}

func TestConfidenceDoesNotDependOnProcessors(t *testing.T) {
	_, many := confidence(t, withU(baritone(), 0.01), 200)
	defer runtime.GOMAXPROCS(runtime.GOMAXPROCS(1))
	_, one := confidence(t, withU(baritone(), 0.01), 200)
	assert.Equal(t, one, many)
}

func TestConfidenceIsTheStraightforwardOne(t *testing.T) {
	for name, req := range map[string]choice.Request{
		"baritone": withU(baritone(), 0.01), "workload": withU(workload(10), 0.02), "three tunings": withU(threeTunings(workload(10)), 0.02),
	} {
		t.Run(name, func(t *testing.T) {
			p, r := search(t, req)
			stock := req.Stock
			wins, beats := p.CountPlainly(r, gauges.NewDrawer(stock), 100, 3)
			c := p.Confidence(r, gauges.NewDrawer(stock), 100, 3)
			for j, s := range c.Standing {
				assert.Equal(t, wins[j], int(math.Round(100*s.Wins)))
				assert.Equal(t, beats[j], int(math.Round(100*s.BeatsBest)))
			}
		})
	}
}

// First-order propagation and draws of the stock must agree where both apply:
// on the tension of one string and on the total, with a balance's error common
// to all.
func TestFirstOrderAgreesWithDraws(t *testing.T) {
	req := withU(baritone(), 0.004)
	for i := range req.Stock {
		g := &req.Stock[i]
		g.Common = gauges.Parts{{Source: "balance", U: float64(0.006 * g.LinearDensity)}}
		g.U = unit.LinearDensity(math.Hypot(float64(g.Indep), g.Common[0].U))
	}
	p, r := search(t, req)
	best := r.Best[0]
	d, err := p.Detail(best.BassMM, best.TrebleMM, best.Gauges)
	require.NoError(t, err)

	stock := req.Stock
	drawer := gauges.NewDrawer(stock)
	dst := make([]gauges.Drawn, len(req.Stock))
	rng := rand.New(rand.NewPCG(11, 12))
	const draws = 20000
	var one, total []float64
	for range draws {
		drawer.Draw(rng, dst)
		sum := 0.0
		for i, s := range d.Strings {
			w := choice.WireOf(req.Stock[s.Gauge])
			w.LinearDensity = float64(dst[s.Gauge].LinearDensity)
			tn := tension.Open(w, s.LengthM, baritoneB[i])
			sum += tn
			if i == 2 {
				one = append(one, tn)
			}
		}
		total = append(total, sum)
	}
	// A standard deviation of n normal draws has the relative standard error
	// 1/sqrt(2n), 0.5 % here; four of those, and 0.5 % for the second order.
	assert.InEpsilon(t, deviation(one), d.Strings[2].Cases[0].UTensionN, 0.025)
	assert.InEpsilon(t, deviation(total), d.Totals[0].UTensionN, 0.025)
}

func deviation(x []float64) float64 {
	mean := 0.0
	for _, v := range x {
		mean += v / float64(len(x))
	}
	sum := 0.0
	for _, v := range x {
		sum += (v - mean) * (v - mean)
	}
	return math.Sqrt(sum / float64(len(x)-1))
}

// A bend that a capo leaves no room for must not keep a draw from being scored.
func TestConfidenceUnderACapo(t *testing.T) {
	req := withU(baritone(), 0.02)
	req.Cases[0].CapoFret = 7 // fret 5 lies behind it
	_, c := confidence(t, req, 200)
	assert.Less(t, c.Standing[0].Wins, 1.0, "with such weighing another pair wins now and then")
}
