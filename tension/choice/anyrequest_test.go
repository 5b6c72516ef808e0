package choice_test

import (
	"math/rand/v2"
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"scalepair/data/unit"
	"scalepair/fan"
	"scalepair/tension"
	"scalepair/tension/choice"
)

// anyRequest draws a small search of any kind: strings in any order, any of them
// bent, any of its limits on, gauges free, over a grid of twelve pairs.
func anyRequest(seed uint64) choice.Request {
	r := rand.New(rand.NewPCG(seed, 3))
	one := func(in int) bool { return r.IntN(in) == 0 }
	within := func(lo, hi float64) float64 { return lo + (hi-lo)*r.Float64() }
	req := workload(7)
	req.Usable = r.Perm(len(req.Stock))[:6+r.IntN(20)]
	if one(2) {
		scatter(&req)
	}
	n := 3 + r.IntN(5)
	note := 50 + r.IntN(15)
	midi := make([]int, n)
	for i := range midi {
		midi[i] = note
		note -= 3 + r.IntN(3)
	}
	if one(3) { // so that the ordering rule binds
		midi[r.IntN(n)] += r.IntN(12) - 4
	}
	req.Cases[0].FreqsHz = hz(midi...)
	for range r.IntN(3) {
		lower := slices.Clone(midi)
		lower[r.IntN(n)] -= r.IntN(4)
		req.Cases = append(req.Cases, choice.Case{FreqsHz: hz(lower...), Weight: within(0.5, 2)})
	}
	for c := range req.Cases {
		req.Cases[c].CapoFret = r.IntN(8) * r.IntN(2)
	}
	req.By = choice.Combining(r.IntN(2))
	req.Ordering = !one(4)
	req.Neck.Strings, req.Neck.NutSpread, req.Neck.SaddleSpread = n, unit.MM(7*float64(n-1)), unit.MM(10.5*float64(n-1))
	req.Neck.Neutral = fan.Neutral{Fret: within(0, 24), Bridge: one(10)}
	req.BassMM, req.TrebleMM = span(within(640, 700), 720, 8)[:3], span(within(600, 640), 700, 6)[:4]
	req.Tails, req.ActionM = make([]tension.Tails, n), make([]float64, n)
	for i := range n {
		req.Tails[i] = tension.Tails{NutM: within(0, 0.1), SaddleM: within(0, 0.1)}
		req.ActionM[i] = within(0.001, 0.003)
	}
	f := &req.Feel
	f.BendCents, f.BendFrets = within(50, 250), []float64{float64(1 + r.IntN(8)), float64(9 + r.IntN(15))}
	f.BendStrings = []int{}
	for i := range n {
		if one(2) {
			f.BendStrings = append(f.BendStrings, i+1)
		}
	}
	f.Weights = choice.Weights{Tension: within(0.1, 2), BendingForce: within(0, 2), Overtone: within(0, 1)}
	if one(2) {
		f.Tension = choice.Target{Source: choice.Stated, Values: []float64{within(40, 110)}}
	}
	for _, limit := range []*float64{
		&req.Limits.InharmonicityCents, &req.Limits.LeastTensionN, &req.Limits.MostTensionN, &req.Limits.MostBendingForceN,
		&req.Limits.SaddleTravelM, &req.Limits.BreakingOpen, &req.Limits.BreakingBent,
	} {
		if one(2) {
			*limit = 0
		}
	}
	req.Limits.DifferenceMM, req.Limits.FretSlantRad, req.Limits.SaddleSlantRad, req.Limits.NutToFret1MM, req.Limits.Blanks = 0, 0, 0, 0, nil
	return req
}

// Any search is the straightforward one, to the bit, whatever is bent, bounded
// and out of order; and no more than half of them come to nothing.
func TestAnySearchIsTheStraightforwardOne(t *testing.T) {
	kept, tried := 0, 0
	rapid.Check(t, func(t *rapid.T) {
		r := choice.RequireSameAsPlain(t, anyRequest(rapid.Uint64().Draw(t, "request of seed")))
		tried++
		if r.Kept > 0 {
			kept++
		}
		for _, c := range append(r.Best, r.Front...) {
			require.Len(t, c.Gauges, len(r.Best[0].Gauges))
		}
	})
	if !t.Failed() {
		assert.Greater(t, 2*kept, tried)
	}
}
