package main

import (
	"bytes"
	"context"
	"encoding/json"
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"scalepair/cmd/scalepair/report"
)

// valuesOf runs a command line and reads its JSON.
func valuesOf[T any](t *testing.T, args ...string) T {
	t.Helper()
	var out, errOut bytes.Buffer
	require.Equal(t, exitDone, run(context.Background(), append(args, "--format", "json"), &out, &errOut), errOut.String())
	var v T
	require.NoError(t, json.Unmarshal(out.Bytes(), &v))
	return v
}

func buildOf(name string) []string {
	if name == "" {
		return nil
	}
	return []string{filepath.Join("../../testdata/builds", name, "build.toml")}
}

// The chance that weigh reckons to first order is the share of draws that
// advise counts. A share of a quarter in 4000 draws has a standard deviation of
// 0.7 %; four of them are allowed, for the score is no straight line either.
func TestChanceAgreesWithTheDraws(t *testing.T) {
	for _, name := range []string{"", "eight_inch"} {
		t.Run("build "+name, func(t *testing.T) {
			advice := valuesOf[report.AdviceJSON](t, append([]string{"advise", "--trials", "4000"}, buildOf(name)...)...)
			for _, rank := range []string{"2", "4", "7"} {
				w := valuesOf[report.WeighJSON](t, append([]string{"weigh", "--against", rank}, buildOf(name)...)...)
				require.NotNil(t, w.RivalBetter)
				drawn := *advice.Pairs[w.RivalRank-1].BeatsBestPercent
				assert.InDelta(t, drawn, *w.RivalBetter, 3, "rank %s", rank)
			}
		})
	}
}

// The uncertainty of the total tension is the one that tension prints, which
// goes by formula and not by differences. Cores are left out there, and bear
// next to nothing on it.
func TestTotalAgreesWithTension(t *testing.T) {
	set := []string{"--bass", "690mm", "--treble", "660mm", "--gauges", "w58 w44 w34 w24 p17 p13"}
	w := valuesOf[report.WeighJSON](t, append([]string{"weigh"}, set...)...)
	d := valuesOf[report.DetailJSON](t, append([]string{"tension"}, set...)...)
	require.NotNil(t, w.TotalUN)
	assert.Equal(t, "tension", w.Aim)
	assert.InDelta(t, d.Tunings[0].TotalN, *w.TotalN, 1e-9)
	assert.InEpsilon(t, d.Tunings[0].TotalUN, *w.TotalUN, 0.002)
}

// The parts make up the whole, and a weighing takes away no more than its
// gauge's own part and what it shares.
func TestPartsAddUp(t *testing.T) {
	for _, args := range [][]string{{"weigh"}, {"weigh", "--for", "tension"}} {
		w := valuesOf[report.WeighJSON](t, args...)
		sum := 0.0
		for _, p := range w.Parts {
			sum += p.SharePercent
		}
		assert.InDelta(t, 100, sum, 1e-6)
		for i, n := range w.Next {
			assert.Positive(t, n.RemovedPercent, n.Gauge)
			assert.Less(t, n.RemovedPercent, 100.0, n.Gauge)
			if i > 0 {
				assert.LessOrEqual(t, n.RemovedPercent, w.Next[i-1].RemovedPercent, "best first: %s", n.Gauge)
			}
		}
	}
}
