package report_test

import (
	"encoding/json"
	"math"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"scalepair/cmd/scalepair/document"
	"scalepair/cmd/scalepair/report"
	"scalepair/gauges/reading"
)

// asJSON is a result as programs read it.
func asJSON(t *testing.T, r document.Result) map[string]any {
	t.Helper()
	text, err := json.Marshal(r)
	require.NoError(t, err)
	var out map[string]any
	require.NoError(t, json.Unmarshal(text, &out))
	return out
}

// JSON has every gauge with the numbers of its readings, worked out here from
// mass, length and pieces; the table fits a terminal and has every label.
func TestGaugesArePrintedAsTheyWereWeighed(t *testing.T) {
	for _, file := range everyBuild() {
		in, _ := found(t, file)
		r, err := report.NewGauges(in, nil)
		require.NoError(t, err)
		rows := asJSON(t, r)["gauges"].([]any)
		require.Len(t, rows, len(in.Run.Stock.Gauges), file)
		for i, g := range in.Run.Stock.Gauges {
			row := rows[i].(map[string]any)
			assert.Equal(t, g.Label, row["gauge"])
			assert.InEpsilon(t, 1000*float64(g.LinearDensity), row["linear_density_g_per_m"], 1e-8)
			assert.InEpsilon(t, 100*float64(g.Within95()/g.LinearDensity), row["linear_density_95_percent_interval_half_width_percent"], 1e-8)
			readings := row["readings_in_full"].([]any)
			require.Len(t, readings, len(g.Rows))
			for k, one := range g.Rows {
				if one.Kind == reading.Weighed {
					want := one.Mass.G() / one.Length.M() / float64(max(one.Pieces, 1))
					assert.InEpsilon(t, want, readings[k].(map[string]any)["linear_density_g_per_m"], 1e-8)
				}
			}
		}
		text := strings.Join(printed80(t, r), "\n")
		for _, line := range printed80(t, r) {
			assert.LessOrEqual(t, len([]rune(line)), 80, line)
		}
		for _, g := range in.Run.Stock.Gauges {
			assert.Contains(t, text, "\n"+g.Label+" ")
		}
		for _, s := range in.Run.Stock.Suspects() {
			at := strings.Index(text, s.WouldFit[:10])
			assert.True(t, at > 0 && at < strings.Index(text, "linear density"), "suspects come first")
		}
	}
}

func TestNamedGauges(t *testing.T) {
	in, _ := found(t, demoFile)
	r, err := report.NewGauges(in, []string{"W46", "p10"})
	require.NoError(t, err)
	assert.Len(t, asJSON(t, r)["gauges"], 2)
	_, err = report.NewGauges(in, []string{"w46", "nothing", "p1l"})
	assert.ErrorContains(t, err, `("nothing")`)
	assert.ErrorContains(t, err, `("p1l")`)
}

// What a weighing takes off is what the uncertainty is without it and with it;
// the parts are no more than the whole, and a stock known for sure has nothing to
// weigh.
func TestNextAddsUp(t *testing.T) {
	for _, file := range everyBuild() {
		in, f := found(t, file)
		of := in.Plan.NextOf(f.Detail, 1)
		out := asJSON(t, report.NewNext(in, f.Detail, of, 1.5))
		list := in.Run.Stock.WhatToWeigh(of.Density, 1.5)
		for i, row := range out["next"].([]any) {
			s := list[i]
			left := math.Sqrt(max(0, of.U*of.U-s.Before*s.Before+s.After*s.After)) / of.U
			assert.InDelta(t, 100*(1-left), row.(map[string]any)["uncertainty_removed_percent"], 1e-6, file)
		}
		whole := 0.0
		for _, row := range out["parts"].([]any) {
			whole += row.(map[string]any)["of_the_variance_percent"].(float64)
		}
		assert.LessOrEqual(t, whole, 100+1e-6)
		assert.Greater(t, whole, 90.0, file)
		assert.InDelta(t, of.U, out["total_tension_standard_uncertainty_n"], 1e-6*of.U)
	}
}
