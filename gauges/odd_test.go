package gauges_test

import (
	"math"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"scalepair/data/odd"
	"scalepair/gauges"
)

// wire is a weighing of one piece of plain wire with a density in kg/m3, to be
// read with these tools.
func wire(mm, rho float64, material string) gauges.Reading {
	const length = 0.5
	return gauges.Reading{
		Gauge: "x", Construction: gauges.Plain, Material: material, OuterM: mm / 1e3, OuterFrom: gauges.Measured,
		LengthM: length, MassKg: rho * math.Pi / 4 * mm * mm * 1e-6 * length,
	}
}

func oddOf(t *testing.T, tools gauges.Instruments, rows ...gauges.Reading) odd.List {
	t.Helper()
	s, err := gauges.Combine(rows, nil, tools, gauges.Options{})
	require.NoError(t, err)
	return s.Odd()
}

// A material's own density is usual, and one a ninth off is not where the
// tools can tell: 0.406 mm to 0.001 mm and 0.5 g to 0.001 g are 0.3 %.
func TestOddDensityIsTheMaterials(t *testing.T) {
	fine := gauges.Instruments{BalanceResolutionKg: 1e-6, RulerResolutionM: 1e-4, CaliperResolutionM: 1e-6}
	for material, rho := range map[string]float64{"": 7850, "nylon": 1080, "phosphor bronze": 8850, "stainless steel 302/304": 7916} {
		assert.Empty(t, oddOf(t, fine, wire(0.406, rho, material)), material)
		for _, off := range []float64{1.0 / 9, 1, -1.0 / 9, -0.5} {
			found := oddOf(t, fine, wire(0.406, rho*(1+off), material))
			if material == "nylon" && math.Abs(off) < 0.2 {
				assert.Empty(t, found, "nylons differ by as much")
				continue
			}
			if assert.Len(t, found, 1, "%s %v", material, off) {
				assert.InDelta(t, rho*(1+off)/1e3, found[0].X, 1e-9, "the value as it stands")
			}
		}
	}
}

// Calipers that hardly show the wrap leave it any density, but none below 0.
func TestOddDensityIsNeverBelowNothing(t *testing.T) {
	const outer, core, length = 0.52e-3, 0.42e-3, 0.5
	r := gauges.Reading{Gauge: "w", Construction: "wound", OuterM: outer, CoreM: core, Shape: gauges.Round,
		OuterFrom: gauges.Measured, CoreFrom: gauges.Measured, LengthM: length}
	r.MassKg = length * math.Pi / 4 * (7850*core*core + 26000*(outer*outer-core*core))
	found := oddOf(t, gauges.Instruments{BalanceResolutionKg: 1e-6, RulerResolutionM: 1e-4, CaliperResolutionM: 6e-5}, r)
	require.Len(t, found, 1)
	assert.Zero(t, found[0].Low)
	assert.Greater(t, found[0].High, 9.0)
}

// Coarse tools make a wide range: 0.03 g to 0.01 g is 10 %, three times that is
// no slip.
func TestOddDensityHeedsTheTools(t *testing.T) {
	coarse := gauges.Instruments{BalanceResolutionKg: 1e-5, RulerResolutionM: 1e-3, CaliperResolutionM: 1e-6}
	short := wire(0.254, 7850*1.2, "")
	short.MassKg, short.LengthM = short.MassKg/6, short.LengthM/6
	assert.Empty(t, oddOf(t, coarse, short))
	assert.Len(t, oddOf(t, coarse, wire(0.254, 7850*1.2, "")), 1)
}

// The slip that explains the number is asked after.
func TestOddDensityAsksAfterTheSlip(t *testing.T) {
	hung := gauges.Reading{Gauge: "x", Construction: gauges.Plain, OuterM: 0.33e-3, Kind: gauges.Hung, HungKg: 6.16, SpeakingM: 0.6, FreqHz: 250}
	octave := hung
	octave.FreqHz *= 2
	pounds := hung
	pounds.HungKg *= 2.2046
	tools := gauges.DefaultInstruments()
	assert.Empty(t, oddOf(t, tools, hung))
	for asks, r := range map[string]gauges.Reading{
		"were 2 times as many pieces weighed": wire(0.406, 2*7850, ""),
		"were 3 times as many pieces weighed": wire(0.406, 3*7850, ""),
		"its mass that of one of 4?":          wire(0.406, 7850/4, ""),
		"is the hung mass in pounds?":         scaled(hung, 1/2.2046),
		"is the hung mass in kilograms?":      pounds,
		"is it music wire?":                   wire(0.406, 1.3*7850, ""),
	} {
		found := oddOf(t, tools, r)
		if assert.Len(t, found, 1, asks) {
			assert.True(t, strings.Contains(found[0].Check, asks), "%s: %s", asks, found[0].Check)
		}
	}
	assert.Contains(t, oddOf(t, tools, octave)[0].Check, "is the pitch an octave higher?")
}

func scaled(r gauges.Reading, by float64) gauges.Reading {
	r.HungKg *= by
	return r
}

// A gauge that was not weighed has no density of its own.
func TestOddLeavesEstimatesAlone(t *testing.T) {
	listed := wire(0.33, 7850, "")
	listed.Gauge, listed.Kind, listed.MassKg, listed.LengthM = "y", gauges.Listed, 0, 0
	a, b := wire(0.254, 7850, ""), wire(0.432, 7850, "")
	b.Gauge = "z"
	assert.Empty(t, oddOf(t, gauges.DefaultInstruments(), a, listed, b))
}

// A size that was not given is not told.
func TestOddReadingsOfNothing(t *testing.T) {
	assert.Empty(t, gauges.OddReadings([]gauges.Reading{{Gauge: "x"}, {Gauge: "y", Construction: "wound"}}))
	assert.Empty(t, gauges.Instruments{}.Odd())
}
