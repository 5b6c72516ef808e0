package fit_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"scalepair/gauges"
	"scalepair/gauges/fit"
	"scalepair/gauges/reading"
)

func read(t testing.TB, text string) []reading.Reading {
	t.Helper()
	r, err := reading.Read(strings.NewReader(text), "r.csv", nil)
	require.NoError(t, err)
	return r
}

func stockOf(t require.TestingT, in gauges.Input) fit.Stock {
	s, err := fit.Combine(in)
	require.NoError(t, err)
	return s
}

// combine makes a stock of a readings file with the usual tools.
func combine(t *testing.T, text string) fit.Stock {
	t.Helper()
	return stockOf(t, gauges.Input{Readings: read(t, text), Instruments: gauges.DefaultInstruments()})
}

func gauge(t *testing.T, s fit.Stock, label string) gauges.Gauge {
	t.Helper()
	g, err := s.Lookup(label)
	require.NoError(t, err)
	return g
}

// outside lets gauges be estimated outside the fitted diameters.
func outside(t gauges.Instruments) gauges.Instruments {
	t.EstimateOutside = true
	return t
}

// near and within are testify's InEpsilon and InDelta for quantities.
func near[A, B ~float64](t assert.TestingT, want A, got B, epsilon float64, message ...any) {
	assert.InEpsilon(t, float64(want), float64(got), epsilon, message...)
}

func within[A, B ~float64](t assert.TestingT, want A, got B, delta float64, message ...any) {
	assert.InDelta(t, float64(want), float64(got), delta, message...)
}
