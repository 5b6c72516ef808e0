package gauges_test

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"scalepair/data/unit"
	"scalepair/gauges"
)

// stockOf makes gauges of those labels and diameters in thousandths of an inch.
func stockOf(labels map[string]float64, order ...string) []gauges.Gauge {
	var out []gauges.Gauge
	for _, l := range order {
		out = append(out, gauges.Gauge{Label: l, Outer: unit.Inches(labels[l] / 1000), LinearDensity: 1})
	}
	return out
}

// A gauge that is not in stock is answered with its neighbours in size, not
// with a label that merely looks alike.
func TestLookupSuggestsTheNeighbours(t *testing.T) {
	sizes := map[string]float64{"p10": 10, "p105": 10.5, "p11": 11, "p12": 12, "p20": 20, "w20": 20, "w38": 38, "w46": 46, "w50": 50, "w80": 80}
	s := stockOf(sizes, "p10", "p105", "p11", "p12", "p20", "w20", "w38", "w46", "w50", "w80")
	for _, c := range []struct{ given, want string }{
		{"w48", `did you mean "w46" or "w50"?`},
		{"w47", `did you mean "w46" or "w50"?`},
		{"W 49", `did you mean "w46" or "w50"?`},
		{"w58", `did you mean "w50"?`},
		{"w90", `did you mean "w80"?`},
		{"p13", `did you mean "p12"?`},
		{"p1l", `did you mean "p10"?`},
		{"w", `in stock are p10, p105, `},
		{"nothing", `in stock are p10, p105, `},
		{"0.3 in", `in stock are p10, p105, `},
	} {
		_, err := gauges.Lookup(s, c.given)
		assert.ErrorContains(t, err, c.want, c.given)
	}
	close := stockOf(map[string]float64{"w46": 46, "w48": 48, "w38": 38}, "w38", "w46", "w48")
	_, err := gauges.Lookup(close, "w47")
	assert.EqualError(t, err, `this gauge is not in stock ("w47"); did you mean "w46" or "w48"? if not, weigh it, or add a row of kind listed`)
	behind := stockOf(map[string]float64{"042w": 42, "046w": 46}, "042w", "046w")
	_, err = gauges.Lookup(behind, "044w")
	assert.ErrorContains(t, err, `did you mean "042w" or "046w"?`)
	_, err = gauges.Lookup(nil, "w46")
	assert.ErrorContains(t, err, "no gauges are in stock")
}
