package choice_test

import (
	"math"
	"math/rand/v2"
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"scalepair/data/unit"
	"scalepair/gauges"
	"scalepair/tension/choice"
)

// drawnRequest is a request as if the drawn weights and cores had been
// measured: areas go with the square of a core, the bending stiffness with its
// fourth power.
func drawnRequest(req choice.Request, drawn []gauges.Drawn) choice.Request {
	req.Stock = slices.Clone(req.Stock)
	for i := range req.Stock {
		g := &req.Stock[i]
		g.LinearDensity, g.Core = drawn[i].LinearDensity, drawn[i].Core
		g.AreaM2 = math.Pi / 4 * math.Pow(float64(g.Core), 2)
		g.EA = unit.Force(g.YoungsPa * g.AreaM2)
		g.EI = g.YoungsPa * math.Pi / 64 * math.Pow(float64(g.Core), 4)
	}
	return req
}

// unsure gives every gauge an error of its own, one of the balance and one of
// the calipers in its core.
func unsure(req choice.Request) choice.Request {
	for i := range req.Stock {
		g := &req.Stock[i]
		g.Indep, g.Common = 0.008*g.LinearDensity, gauges.Parts{{Source: "balance", U: float64(0.01 * g.LinearDensity)}}
		g.CoreParts = gauges.Parts{{Source: "calipers", U: 6e-6}, {Source: "core of " + g.Label, U: 4e-6}}
	}
	return req
}

// The confidence by a second route: every draw is asked for as a build of its
// own, reference and all, and every pair scored by its Detail.
func TestConfidenceByWholeBuilds(t *testing.T) {
	const draws, seed = 100, 5
	stated := choice.Target{Source: choice.Stated, Values: []float64{12}} // cents: above the open string's, below that under a capo
	for name, change := range map[string]func(r *choice.Request){
		"like the reference": func(*choice.Request) {},
		"a stated rise, under a capo": func(r *choice.Request) {
			r.Feel.Overtone, r.Feel.Weights.Overtone, r.Cases[0].CapoFret = stated, 1, 9
		},
		"two tunings, one under a capo": func(r *choice.Request) {
			r.Feel.Overtone, r.Feel.Weights.Overtone = stated, 3
			r.Cases = append(r.Cases, choice.Case{Name: "E", FreqsHz: standardE, CapoFret: 2, Weight: 2})
		},
	} {
		t.Run(name, func(t *testing.T) {
			req := unsure(baritone())
			change(&req)
			req.Limits, req.ApartMM = choice.Limits{}, 3
			req.BassMM, req.TrebleMM = span(676, 700, 3), span(640, 661, 3)
			p, r := search(t, req)
			drawer := gauges.NewDrawer(req.Stock)
			wins, beats := make([]float64, len(r.Compared)), make([]float64, len(r.Compared))
			for n := range draws {
				drawn := make([]gauges.Drawn, len(req.Stock))
				drawer.Draw(rand.New(rand.NewPCG(seed, uint64(n))), drawn)
				plan, err := choice.Prepare(drawnRequest(req, drawn))
				require.NoError(t, err)
				scores := make([]float64, len(r.Compared))
				for j, c := range r.Compared {
					d, err := plan.Detail(c.BassMM, c.TrebleMM, c.Gauges)
					require.NoError(t, err)
					if scores[j] = d.Score; scores[j] < scores[0] {
						beats[j] += 1.0 / draws
					}
				}
				wins[slices.Index(scores, slices.Min(scores))] += 1.0 / draws
			}
			c := p.Confidence(r, drawer, draws, seed)
			for j, s := range c.Standing {
				assert.InDelta(t, wins[j], s.Wins, 1e-9, "wins of rank %d", j+1)
				assert.InDelta(t, beats[j], s.BeatsBest, 1e-9, "how often rank %d beats the best", j+1)
				assert.Equal(t, j > 0 && beats[j] < 0.05-1e-9, s.Told, "rank %d told apart below one draw in twenty", j+1)
			}
			assert.Less(t, slices.Max(wins), 1.0, "draws that change nothing test nothing")
		})
	}
}

// Cores alone unsure, all by the calipers: what a total is unsure by is then
// how far it moves when every core is thicker by that much, in whole builds
// once more.
func TestATotalMovesWithItsCores(t *testing.T) {
	const u = 8e-6 // m
	req := baritone()
	for i := range req.Stock {
		g := &req.Stock[i]
		g.U, g.Indep, g.Common, g.CoreParts = 0, 0, nil, gauges.Parts{{Source: "calipers", U: u}}
	}
	set := indexes(req.Stock, "p13", "p17", "w26", "w36", "w46", "w62")
	total := func(shift float64) choice.Total {
		drawn := make([]gauges.Drawn, len(req.Stock))
		for i, g := range req.Stock {
			drawn[i] = gauges.Drawn{LinearDensity: g.LinearDensity, Core: g.Core + unit.Length(shift)}
		}
		p, err := choice.Prepare(drawnRequest(req, drawn))
		require.NoError(t, err)
		d, err := p.Detail(700, 650, set)
		require.NoError(t, err)
		return d.Totals[0]
	}
	// A central difference over a thousandth of the step is off by its square.
	const h = u / 1000
	moves := (total(h).TensionN - total(-h).TensionN) / (2 * h) * u
	assert.Positive(t, moves, "a thicker core stretches less")
	assert.InEpsilon(t, moves, total(0).UTensionN, 1e-6)
}
