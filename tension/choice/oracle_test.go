package choice_test

import (
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"scalepair/data/unit"
	"scalepair/tension/choice"
)

// Search against the straightforward evaluation, to the bit, on grids where
// each of its short cuts must work.
func TestSearchIsTheStraightforwardOne(t *testing.T) {
	coarse := func() choice.Request {
		req := workload(7)
		return req
	}
	for _, c := range []struct {
		name   string
		change func(r *choice.Request)
		check  func(t *testing.T, r *choice.Result)
	}{
		{"the workload", func(*choice.Request) {}, func(t *testing.T, r *choice.Result) { assert.Positive(t, r.Kept) }},
		{"three tunings, mean", func(r *choice.Request) { *r = threeTunings(*r) }, nil},
		{"three tunings, worst", func(r *choice.Request) { *r = threeTunings(*r); r.By = choice.Worst }, nil},
		{"no limits", func(r *choice.Request) { r.Limits = choice.Limits{} }, nil},
		{"no ordering", func(r *choice.Request) { r.Ordering = false }, nil},
		{"saddle travel at the need of the middle of the grid", func(r *choice.Request) {
			// An inner string needs most, since its length also falls, at the
			// start of every row of the grid.
			r.Limits.SaddleTravelM, r.ActionM[3] = 0, 0.009
			p, err := choice.Prepare(*r)
			require.NoError(t, err)
			d, err := p.Detail(690, 640, p.Search().Best[0].Gauges)
			require.NoError(t, err)
			r.Limits.SaddleTravelM = d.Strings[3].CompensationM[1] + 0.002
		}, func(t *testing.T, r *choice.Result) {
			assert.Positive(t, r.Kept)
		}},
		{"a lowest string tuned up, so that the rule binds", func(r *choice.Request) {
			r.Cases[0].FreqsHz = hz(64, 59, 55, 50, 45, 40, 35, 44)
			r.Limits = choice.Limits{}
		}, func(t *testing.T, r *choice.Result) {
			assert.Equal(t, r.Tried, r.Kept+r.Dropped[0].Pairs)
		}},
		{"a rule that binds, and three tunings", func(r *choice.Request) {
			*r = threeTunings(*r)
			r.Cases[0].FreqsHz = hz(64, 51, 55, 50, 45, 40, 35, 30)
			r.Limits.BreakingOpen = 0.6
		}, nil},
		{"tight breaking limits", func(r *choice.Request) { r.Limits.BreakingOpen, r.Limits.BreakingBent = 0.5, 0.6 }, nil},
		{"only heavy gauges, so that the rule binds", func(r *choice.Request) {
			r.Usable = []int{4, 9, 20, 21, 22, 23, 24, 25, 26, 27, 28, 29, 40, 50, 59}
			r.Limits = choice.Limits{}
		}, nil},
		{"a bending force ceiling that empties strings", func(r *choice.Request) { r.Limits.MostBendingForceN = 8 }, nil},
		{"bending force alone", func(r *choice.Request) { r.Feel.Tension = choice.Target{}; r.Feel.Overtone = choice.Target{} }, nil},
		{"weights of one term", func(r *choice.Request) { r.Feel.Weights = choice.Weights{Tension: 2} }, nil},
		{"weighed and measured stock, no two stretch speeds alike", scatter, nil},
		{"the same, three tunings", func(r *choice.Request) { scatter(r); *r = threeTunings(*r) }, nil},
		{"unknown cores", func(r *choice.Request) {
			r.Limits = choice.Limits{}
			for i := 30; i < 60; i += 2 {
				g := &r.Stock[i]
				g.Core, g.AreaM2, g.EA, g.EI = 0, 0, 0, 0
			}
		}, nil},
	} {
		t.Run(c.name, func(t *testing.T) {
			req := coarse()
			c.change(&req)
			r := choice.RequireSameAsPlain(t, req)
			if c.check != nil {
				c.check(t, r)
			}
		})
	}
}

// scatter gives every gauge the small errors of a balance and of calipers.
func scatter(r *choice.Request) {
	rng := rand.New(rand.NewPCG(8, 5))
	for i := range r.Stock {
		g := &r.Stock[i]
		g.LinearDensity *= unit.LinearDensity(1 + 0.02*rng.NormFloat64())
		d := 1 + 0.01*rng.NormFloat64()
		g.Core *= unit.Length(d)
		g.AreaM2 *= d * d
		g.EA *= unit.Force(d * d)
		g.EI *= d * d * d * d
	}
}
