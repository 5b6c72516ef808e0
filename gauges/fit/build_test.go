package fit_test

import (
	"math"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"scalepair/gauges"
	"scalepair/gauges/fit"
	"scalepair/gauges/reading"
)

// wrapped is a hex core of 0.40 mm with one round steel wrap of 0.30 mm.
func wrapped(label string) gauges.Construction {
	return gauges.Construction{Gauge: label, Family: "wound", Core: 0.4e-3, Shape: reading.Hex,
		Wraps: []gauges.Wrap{{Wire: 0.3e-3, Material: "nickel"}}}
}

func built(t *testing.T, text string, list ...gauges.Construction) fit.Stock {
	t.Helper()
	var rows []reading.Reading
	if text != "" {
		rows = read(t, text)
	}
	s := stockOf(t, gauges.Input{Readings: rows, Constructions: list, Instruments: gauges.DefaultInstruments()})
	return s
}

// Core and wrap by hand: the wrap sits on the hex core's corners, and close
// round wire fills pi/4 of its ring and a little more for its slope.
func TestConstructionByHand(t *testing.T) {
	g := gauge(t, built(t, "", wrapped("w")), "w")
	core := 7850 * math.Sqrt(3) / 2 * 0.4e-3 * 0.4e-3
	din := 2 / math.Sqrt(3) * 0.4e-3
	dout := din + 0.6e-3
	turn := math.Pi * (din + 0.3e-3)
	p := math.Pi / 4 * math.Hypot(turn, 0.3e-3) / turn
	wrap := p * 8854 * math.Pi / 4 * (dout*dout - din*din)
	near(t, core+wrap, float64(g.LinearDensity), 1e-12)
	near(t, dout, float64(g.Outer), 1e-12)
	near(t, p, float64(g.Packing), 1e-12)
	near(t, 203.4e9*math.Sqrt(3)/2*0.16e-6, float64(g.EA), 1e-12)
	near(t, 203.4e9*5*math.Sqrt(3)/144*math.Pow(0.4e-3, 4), g.EI, 1e-12)
	assert.True(t, g.Built)
	assert.False(t, g.Estimated)
	// Packing 2 %, wire +-0.0003 in and density: between 2 and 4 % of the wrap.
	assert.Greater(t, float64(g.U), 0.02*wrap)
	assert.Less(t, float64(g.U), 0.04*wrap)
	within(t, float64(g.U)*float64(g.U), float64(g.Indep)*float64(g.Indep)+sumSquares(g.Common), 1e-9*float64(g.U)*float64(g.U))
}

func sumSquares(parts gauges.Parts) float64 {
	sum := 0.0
	for _, p := range parts {
		sum += p.U * p.U
	}
	return sum
}

func TestPlainConstructionIsWire(t *testing.T) {
	c := gauges.Construction{Gauge: "p", Family: "Plain", Core: 0.254e-3}
	g := gauge(t, built(t, "", c), "p")
	near(t, 7850*math.Pi/4*0.254e-3*0.254e-3, float64(g.LinearDensity), 1e-12)
	assert.Equal(t, reading.Plain, g.Family)
	assert.Equal(t, float64(g.Outer), float64(g.Core))
	// +-0.0002 in, and 8 kg/m3.
	near(t, math.Hypot(2*0.2/10/math.Sqrt(3), 8.0/7850), float64(g.RelU()), 1e-3)
}

const woundHead = "gauge,construction,outer_mm,core_mm,core_shape,length_mm,mass_g\n"

func TestConstructionFarFromItsWeighingIsNamed(t *testing.T) {
	s := built(t, woundHead+"v,wound,1.0619,0.4,hex,900,7.9", wrapped("v"))
	g := gauge(t, s, "v")
	assert.True(t, g.Disagrees)
	require.Len(t, s.Suspects(), 1)
	assert.Contains(t, s.Suspects()[0].Why, "a reading and a construction further apart")
	assert.Contains(t, strings.Join(g.Notes, ";"), "more than their uncertainties allow")
}

func TestConstructionFaults(t *testing.T) {
	for _, c := range []struct {
		name, want string
		change     func(*gauges.Construction)
	}{
		{"no core", "the core's diameter is missing", func(c *gauges.Construction) { c.Core = 0 }},
		{"no wire", "the wrap wire's diameter is missing", func(c *gauges.Construction) { c.Wraps[0].Wire = 0 }},
		{"no label", "a construction without a gauge", func(c *gauges.Construction) { c.Gauge = "" }},
		{"plain with wrap", "is plain and has a wrap", func(c *gauges.Construction) { c.Family = "plain" }},
		{"wound without wrap", "has no wrap", func(c *gauges.Construction) { c.Wraps = nil }},
		{"hex plain", "is plain and hexagonal", func(c *gauges.Construction) { c.Family, c.Wraps = "plain", nil }},
		{"flat without packing", "a flat wrap needs its packing", func(c *gauges.Construction) { c.Wraps[0].Form = gauges.FlatWire }},
		{"unknown wrap", `no material of that name ("nickle")`, func(c *gauges.Construction) { c.Wraps[0].Material = "nickle" }},
		{"unknown core", "no material of that name", func(c *gauges.Construction) { c.Material = "cheese" }},
		{"other diameter", "another outer diameter", func(c *gauges.Construction) { c.Wraps[0].Wire = 0.5e-3 }},
		{"other core", "another core", func(c *gauges.Construction) { c.Core = 0.38e-3 }},
	} {
		t.Run(c.name, func(t *testing.T) {
			v := wrapped("v")
			c.change(&v)
			_, err := fit.Combine(gauges.Input{Readings: read(t, woundHead+"v,wound,1.06,0.4,hex,900,5.9"), Constructions: []gauges.Construction{v}, Instruments: gauges.DefaultInstruments()})
			assert.ErrorContains(t, err, c.want)
		})
	}
	_, err := fit.Combine(gauges.Input{Constructions: []gauges.Construction{wrapped("v"), wrapped("V")}, Instruments: gauges.DefaultInstruments()})
	assert.ErrorContains(t, err, "a second construction of the same gauge")
}
