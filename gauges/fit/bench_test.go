package fit_test

import (
	"os"
	"testing"

	"github.com/stretchr/testify/require"

	"scalepair/gauges"
	"scalepair/gauges/fit"
)

// BenchmarkDemo makes the demo's stock of 44 gauges from 77 readings.
func BenchmarkDemo(b *testing.B) {
	text, err := os.ReadFile("../../data/demo/readings.csv")
	require.NoError(b, err)
	in := gauges.Input{Instruments: gauges.DefaultInstruments(), Readings: read(b, string(text))}
	for b.Loop() {
		_, err := fit.Combine(in)
		require.NoError(b, err)
	}
}
