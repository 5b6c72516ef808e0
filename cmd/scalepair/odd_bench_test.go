package main

import (
	"testing"

	"github.com/stretchr/testify/require"

	"scalepair/cmd/scalepair/job"
	"scalepair/gauges"
)

// What the watch costs a run of tension on the demo, where nothing is odd.
func BenchmarkWatchDemo(b *testing.B) {
	b.Chdir(b.TempDir())
	j, err := job.Load("", job.Overrides{})
	require.NoError(b, err)
	plan, err := j.Plan()
	require.NoError(b, err)
	best, _, ok := plan.SearchBest()
	require.True(b, ok)
	d, err := plan.Detail(best.BassMM, best.TrebleMM, best.Gauges)
	require.NoError(b, err)
	b.ReportAllocs()
	for b.Loop() {
		n := len(gauges.OddReadings(j.Readings)) + len(j.Odd()) + len(plan.Odd()) + len(oddDetail(plan, d))
		if n > 0 {
			b.Fatal("the demo is sound")
		}
	}
}
