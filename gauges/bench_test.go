package gauges_test

import (
	"testing"

	"github.com/stretchr/testify/require"

	"scalepair/gauges"
)

// BenchmarkCombine makes a stock of forty gauges in three families.
func BenchmarkCombine(b *testing.B) {
	w := newWorld(1)
	rows := w.stock()
	b.ReportAllocs()
	for b.Loop() {
		_, err := gauges.Combine(rows, nil, w.tools, gauges.Options{})
		require.NoError(b, err)
	}
}
