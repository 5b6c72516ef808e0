package fit_test

import (
	"math"
	"os"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"scalepair/data/testutil"
	"scalepair/gauges"
	"scalepair/gauges/fit"
	"scalepair/gauges/reading"
)

// Readings that read are taken or refused: a stock of finite numbers above 0, or
// faults with place and words.
func FuzzCombine(f *testing.F) {
	for _, file := range []string{"data/demo/readings.csv", "testdata/builds/seven/readings.csv", "testdata/builds/eight_inch/readings.csv", "testdata/builds/bass_five/readings.csv"} {
		text, err := os.ReadFile("../../" + file)
		require.NoError(f, err)
		f.Add(string(text))
	}
	for _, text := range []string{
		"gauge,construction,outer_mm,core_mm,core_shape,kind,hung_mass_kg,speaking_length_mm,pitch\na,w,1,0.4,hex,hung,6,600,110\n",
		"gauge,construction,outer_mm,kind,hung_mass_kg,hung_resolution,speaking_length_mm,pitch_hz,pitch_cents\na,plain,0.25,hung,6,5 g,600,330,1\na,plain,0.25,hung,6.1,5 g,600,333,1\n",
		"gauge,construction,outer_mm,core_mm,length_mm,mass_g\na,w,1,0.4,500,2.5\nb,w,1.2,0.4,500,3.6\nc,w,1.4,0.5,500,4.8\nd,w,1.3,,,\n",
	} {
		f.Add(text)
	}
	f.Fuzz(func(t *testing.T, text string) {
		rows, err := reading.Read(strings.NewReader(text), "r.csv", nil)
		if err != nil {
			return
		}
		s, err := fit.Combine(gauges.Input{Readings: rows, Instruments: outside(gauges.DefaultInstruments())})
		if err != nil {
			assert.Empty(t, s.Gauges)
			testutil.CheckFaults(t, err, "r.csv", text)
			return
		}
		require.LessOrEqual(t, len(s.Gauges), len(rows))
		for _, g := range s.Gauges {
			w, u := g.LinearDensity.KgPerM(), float64(g.U)
			require.True(t, w > 0 && u > 0 && !math.IsInf(w+u, 0), g.Label)
			// Between a hair of nylon and a rod of tungsten, 25 g/cm3 at 6 mm.
			require.Less(t, w, 25000*math.Pi/4*0.006*0.006*1.01)
			near(t, u*u, float64(g.Indep*g.Indep)+sumSquares(g.Common), 1e-9, g.Label)
		}
		testutil.CheckFinite(t, s.Gauges)
	})
}
