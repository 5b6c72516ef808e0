package fit_test

import (
	"fmt"
	"math"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"scalepair/data/unit"
	"scalepair/gauges"
	"scalepair/gauges/fit"
	"scalepair/gauges/reading"
)

func fixed(x float64, n int) string { return strconv.FormatFloat(x, 'f', n, 64) }

const fitHead = "gauge,construction,outer_in,core_in,core_shape,kind,length_mm,mass_g,mass_resolution_g\n"

// ideal writes rows of plain wire of 7800 kg/m3, weighed on a balance that
// shows a hundredth of a milligram.
func ideal(inches ...float64) string {
	text := fitHead
	for _, d := range inches {
		w := 7800 * math.Pi / 4 * math.Pow(d*0.0254, 2)
		text += fmt.Sprintf("%03.0f,plain,%g,,,,800,%s,0.00001\n", d*1000, d, fixed(w*0.8*1e3, 5))
	}
	return text
}

func TestOneDensityIsFound(t *testing.T) {
	s := combine(t, ideal(0.009, 0.010, 0.012, 0.013, 0.016, 0.018))
	require.Len(t, s.Fits, 1)
	f := s.Fits[0]
	assert.Equal(t, fit.OneDensity, f.Law)
	near(t, 7800.0, float64(f.Density), 1e-4)
	assert.Len(t, f.Used, 6)
	within(t, 0.009*0.0254, f.MinOuter, 1e-12)
	within(t, 0.018*0.0254, f.MaxOuter, 1e-12)
	assert.False(t, f.ScatterAssumed)
	w := f.LinearDensity(0.0003, 0, reading.Round)
	near(t, 7800*math.Pi/4*0.0003*0.0003, w, 1e-4)
	for _, g := range s.Gauges {
		assert.Less(t, math.Abs(float64(g.Judged.Deviation)), 1e-3)
	}
}

// An estimate has the law's weight, and at least its own diameter's
// uncertainty: twice +-0.0003 in.
func TestEstimatedPlainGauge(t *testing.T) {
	g := gauge(t, combine(t, ideal(0.009, 0.010, 0.012, 0.013, 0.016, 0.018)+"017,plain,0.017,,,listed\n"), "017")
	assert.True(t, g.Estimated)
	assert.Nil(t, g.Judged)
	assert.Contains(t, g.Flags(), "estimated")
	near(t, 7800*math.Pi/4*math.Pow(0.017*0.0254, 2), float64(g.LinearDensity), 1e-4)
	diameter := 2 * 0.3 / 17 / math.Sqrt(3)
	assert.Greater(t, g.RelU(), diameter)
	assert.Less(t, g.RelU(), 1.25*diameter)
	within(t, float64(g.U)*float64(g.U), float64(g.Indep)*float64(g.Indep)+sumSquares(g.Common), 1e-9*float64(g.U)*float64(g.U))
}

// wrapRow is a hex-cored string whose wrap, on the core's corners, has the
// effective density rho.
func wrapRow(label string, d, core, rho float64, known bool) string {
	do, dc := d*0.0254, core*0.0254
	w := 7850*math.Sqrt(3)/2*dc*dc + rho*math.Pi/4*(do*do-4.0/3*dc*dc)
	cells := fmt.Sprintf("%g,hex", core)
	if !known {
		cells = ","
	}
	return fmt.Sprintf("%s,wound,%g,%s,,800,%s,0.0001\n", label, d, cells, fixed(w*0.8*1e3, 4))
}

func TestWrapDensityIsFoundWhereCoresAreKnown(t *testing.T) {
	text := fitHead + wrapRow("024", 0.024, 0.013, 6500, true) + wrapRow("032", 0.032, 0.014, 6500, true) +
		wrapRow("042", 0.042, 0.016, 6500, true) + wrapRow("056", 0.056, 0.018, 6500, true)
	s := combine(t, text+"050,wound,0.050,0.016,hex,listed\n")
	require.Len(t, s.Fits, 1)
	f := s.Fits[0]
	assert.Equal(t, fit.WrapDensity, f.Law)
	near(t, 6500.0, float64(f.Density), 1e-4)
	dc, do := 0.016*0.0254, 0.050*0.0254
	want := 7850*math.Sqrt(3)/2*dc*dc + 6500*math.Pi/4*(do*do-4.0/3*dc*dc)
	g := gauge(t, s, "050")
	near(t, want, float64(g.LinearDensity), 1e-4)
	near(t, 6500.0, g.Implied, 1e-4)
	w := f.LinearDensity(unit.Length(do), unit.Length(dc), reading.Hex)
	near(t, want, w, 1e-4)
	w = f.LinearDensity(unit.Length(do), 0, reading.Hex)
	assert.Zero(t, w, "a wrap density needs the core")
}

// Where one core is missing the family falls back on a power law. Weights of
// exactly d^1.9 give that exponent.
func TestPowerLawWhereACoreIsUnknown(t *testing.T) {
	text := fitHead
	for _, d := range []float64{0.026, 0.032, 0.042, 0.05, 0.06} {
		w := 5.2e-3 * math.Pow(d*25.4, 1.9)
		text += fmt.Sprintf("%g,wound,%g,,,,800,%s,0.0001\n", d, d, fixed(w*0.8*1e3, 4))
	}
	s := combine(t, text+"x,wound,0.046,,,listed\n")
	f := s.Fits[0]
	assert.Equal(t, fit.PowerLaw, f.Law)
	near(t, 1.9, f.Exponent, 1e-3)
	assert.Greater(t, f.UExponent, 0.005)
	near(t, 5.2e-3*math.Pow(0.046*25.4, 1.9), float64(gauge(t, s, "x").LinearDensity), 1e-3)
	assert.Zero(t, float64(f.Density))
	mixed := combine(t, fitHead+wrapRow("a", 0.024, 0.013, 6500, true)+wrapRow("b", 0.032, 0.014, 6500, false)+wrapRow("c", 0.042, 0.016, 6500, true))
	assert.Equal(t, fit.PowerLaw, mixed.Fits[0].Law)
}

// Two gauges make a fit without a scatter of their own: 2 % stands for it, and
// nothing judges them.
func TestTwoGaugesTakeTwoPerCent(t *testing.T) {
	text := fitHead
	for _, d := range []float64{0.03, 0.05} {
		text += fmt.Sprintf("%g,wound,%g,,,,800,%s,0.0001\n", d, d, fixed(5.2e-3*math.Pow(d*25.4, 1.9)*800, 4))
	}
	s := combine(t, text+"x,wound,0.04,,,listed\n")
	assert.True(t, s.Fits[0].ScatterAssumed)
	within(t, 0.02, s.Fits[0].Scatter, 0.0005)
	assert.Nil(t, gauge(t, s, "0.03").Judged)
	x := gauge(t, s, "x")
	assert.Greater(t, x.RelU(), 0.02)
	assert.Less(t, x.RelU(), 0.05)
}

func TestEstimateBeyondTheFitOnlyWhenAsked(t *testing.T) {
	rows := read(t, ideal(0.009, 0.010, 0.012)+"017,plain,0.017,,,listed\n")
	s := stockOf(t, gauges.Input{Readings: rows, Instruments: gauges.DefaultInstruments()})
	require.ErrorContains(t, s.LeftOut[0].Why, "r.csv:5:1: gauge \"017\" has no reading and lies outside the fitted diameters, 0.009 in to 0.012 in")
	s = stockOf(t, gauges.Input{Readings: rows, Instruments: outside(gauges.DefaultInstruments())})
	assert.Contains(t, strings.Join(gauge(t, s, "017").Notes, ";"), "estimated beyond the fitted diameters")
}

// Plain wires of two materials have a density each.
func TestEachMaterialHasItsOwnDensity(t *testing.T) {
	s := combine(t, "gauge,construction,outer_mm,material,length_mm,mass_g\n"+
		"a,plain,0.3,,1000,0.555\nb,plain,0.4,,1000,0.986\nc,plain,0.7,nylon,1000,0.42\nd,plain,0.8,nylon,1000,0.54\n")
	require.Len(t, s.Fits, 2)
	within(t, 7850.0, float64(s.Fits[0].Density), 150)
	within(t, 1085.0, float64(s.Fits[1].Density), 30)
}
