package fit_test

import (
	"math"
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/assert"
	"pgregory.net/rapid"

	"scalepair/data/testutil"
	"scalepair/data/unit"
	"scalepair/gauges"
	"scalepair/gauges/fit"
	"scalepair/gauges/reading"
)

var _ = testutil.Seed("1")

// anyWorld is a builder with tools and habits of any sort.
func anyWorld(t *rapid.T) *world {
	w := newWorld(rapid.Uint64().Draw(t, "seed"))
	w.measured, w.hung = rapid.Bool().Draw(t, "measured"), rapid.Bool().Draw(t, "hung")
	w.most = rapid.IntRange(1, 4).Draw(t, "most")
	w.scatter = rapid.Float64Range(0, 0.03).Draw(t, "scatter")
	w.shortest = rapid.Float64Range(0.4, 1).Draw(t, "shortest")
	return w
}

func byLabel(s fit.Stock) map[string]gauges.Gauge {
	m := map[string]gauges.Gauge{}
	for _, g := range s.Gauges {
		m[g.Label] = g
	}
	return m
}

// The parts make up the whole, for linear density and core, and every figure is
// finite.
func TestPartsMakeUpTheWhole(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		w := anyWorld(t)
		s := stockOf(t, gauges.Input{Readings: w.stock(), Instruments: w.tools})
		for _, g := range s.Gauges {
			near(t, float64(g.U)*float64(g.U), float64(g.Indep)*float64(g.Indep)+sumSquares(g.Common), 1e-9, g.Label)
			within(t, float64(g.UCore)*float64(g.UCore), sumSquares(g.CoreParts)+math.Pow(g.CoreByDensity*float64(g.U), 2), 1e-9*float64(g.UCore)*float64(g.UCore), g.Label)
			within(t, g.Within95(), g.Coverage95()*float64(g.U), 1e-12*float64(g.U), g.Label)
			assert.True(t, g.Coverage95() > 1.65 && g.Coverage95() <= 1.96, g.Label)
			for _, x := range []float64{float64(g.LinearDensity), float64(g.U), float64(g.UOuter), float64(g.Implied)} {
				assert.True(t, x > 0 && !math.IsInf(x, 0), g.Label)
			}
			if g.Judged != nil {
				near(t, float64(g.LinearDensity)/float64(g.Judged.Fit)-1, float64(g.Judged.Deviation), 1e-6)
				assert.GreaterOrEqual(t, float64(g.Judged.Limit), 0.02)
			}
		}
	})
}

// The order of the rows does not matter.
func TestOrderOfRowsDoesNotMatter(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		w := anyWorld(t)
		rows := w.stock()
		a := stockOf(t, gauges.Input{Readings: rows, Instruments: w.tools})
		mixed := append([]reading.Reading(nil), rows...)
		rand.New(rand.NewPCG(w.rng.Uint64(), 1)).Shuffle(len(mixed), func(i, j int) { mixed[i], mixed[j] = mixed[j], mixed[i] })
		b := stockOf(t, gauges.Input{Readings: mixed, Instruments: w.tools})
		other := byLabel(b)
		for _, g := range a.Gauges {
			h := other[g.Label]
			near(t, float64(g.LinearDensity), float64(h.LinearDensity), 1e-9, g.Label)
			near(t, float64(g.U), float64(h.U), 1e-6, g.Label)
			assert.Equal(t, g.Flags(), h.Flags(), g.Label)
		}
		assert.Len(t, b.Suspects(), len(a.Suspects()))
	})
}

// The same file in inches and in millimetres is the same stock.
func TestInchesAndMillimetresAgree(t *testing.T) {
	a := gauge(t, combine(t, "gauge,construction,outer_in,core_in,length_in,mass_g\nw,wound,0.042,0.016,12,1.95\n"), "w")
	b := gauge(t, combine(t, "gauge,construction,outer_mm,core_mm,length_mm,mass_mg\nw,wound,1.0668,0.4064,304.8,1950\n"), "w")
	assert.Equal(t, a.Value(), b.Value())
	assert.Equal(t, []unit.Length{a.Outer, a.Core, a.UCore}, []unit.Length{b.Outer, b.Core, b.UCore})
	assert.Equal(t, a.EA, b.EA)
}
