package fit_test

import (
	"math"
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"gonum.org/v1/gonum/stat"

	"scalepair/gauges"
	"scalepair/gauges/fit"
	"scalepair/gauges/reading"
)

// mixedStock has weighed, hung, built and estimated gauges that share a
// balance, a ruler, calipers and a fit.
func mixedStock(t *testing.T) fit.Stock {
	tools := caseTools()
	rows := read(t, "gauge,construction,outer_mm,core_mm,core_shape,diameters,kind,length_mm,mass_g,hung_mass_kg,speaking_length_mm,pitch\n"+
		"a,plain,0.25,,,measured,,500,0.19,,,\n"+
		"b,plain,0.30,,,measured,,500,0.28,,,\nb,,,,,,hung,,,7.0,600,293\n"+
		"c,plain,0.40,,,measured,,400,0.40,,,\n"+
		"d,plain,0.33,,,measured,listed,,,,,\n"+
		"e,plain,0.36,,,measured,listed,,,,,\n"+
		"w,wound,1.06,0.40,hex,,,500,2.9,,,\n")
	c := wrapped("v")
	c.Diameters = reading.Measured
	s := stockOf(t, gauges.Input{Readings: rows, Constructions: []gauges.Construction{c}, Instruments: tools})
	return s
}

// Trials have the stated means and uncertainties, and the covariances of what is
// shared; 40,000 draws leave 1.5 % on a correlation and 1 % on a deviation.
func TestDrawsHaveTheStatedCovariance(t *testing.T) {
	s := mixedStock(t)
	const n = 40000
	d, rng := s.Drawer(), rand.New(rand.NewPCG(9, 20))
	drawn := make([]gauges.Drawn, len(s.Gauges))
	w, core := make([][]float64, len(s.Gauges)), make([][]float64, len(s.Gauges))
	for range n {
		d.Draw(rng, drawn)
		for i, x := range drawn {
			w[i], core[i] = append(w[i], float64(x.LinearDensity)), append(core[i], float64(x.Core))
		}
	}
	for i, g := range s.Gauges {
		mean, sd := stat.MeanStdDev(w[i], nil)
		within(t, float64(g.LinearDensity), mean, 0.03*float64(g.U), g.Label)
		near(t, float64(g.U), sd, 0.02, g.Label)
		_, sd = stat.MeanStdDev(core[i], nil)
		near(t, float64(g.UCore), sd, 0.02, g.Label)
		within(t, (shared(g.Common, g.CoreParts)+g.CoreByDensity*float64(g.U*g.U))/(float64(g.U)*float64(g.UCore)), stat.Correlation(w[i], core[i], nil), 0.02, g.Label)
		for j, h := range s.Gauges[:i] {
			want := shared(g.Common, h.Common) / (float64(g.U) * float64(h.U))
			within(t, want, stat.Correlation(w[i], w[j], nil), 0.02, "%s %s", g.Label, h.Label)
		}
	}
	e := gauge(t, s, "e")
	assert.Greater(t, shared(e.Common, gauge(t, s, "d").Common)/(float64(e.U)*float64(e.U)), 0.05, "two estimates share the fit")
	assert.Greater(t, shared(e.Common, e.CoreParts)/(float64(e.U)*float64(e.UCore)), 0.2, "an estimate follows its own diameter")
}

func shared(a, b gauges.Parts) float64 {
	sum := 0.0
	for _, p := range a {
		for _, q := range b {
			if p.Source == q.Source {
				sum += p.U * q.U
			}
		}
	}
	return sum
}

// However uncertain, no draw reaches zero, and an unknown core stays unknown.
func TestDrawsStayAboveZero(t *testing.T) {
	s := fit.Stock{Gauges: []gauges.Gauge{{Label: "a", LinearDensity: 1e-3, U: 1e-2, Indep: 1e-2}}}
	d, rng, dst := s.Drawer(), rand.New(rand.NewPCG(1, 2)), make([]gauges.Drawn, 1)
	for range 1000 {
		d.Draw(rng, dst)
		require.Greater(t, float64(dst[0].LinearDensity), 0.0)
		require.Zero(t, float64(dst[0].Core))
		require.False(t, math.IsNaN(float64(dst[0].LinearDensity)))
	}
}
