package gauges_test

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"scalepair/gauges"
)

// A gauge that is not in stock is answered with its neighbour in size, not with a
// label that merely looks alike.
func TestLookupSuggestsTheNeighbour(t *testing.T) {
	var stock []gauges.Gauge
	for _, label := range []string{"p10", "p105", "p11", "p12", "p20", "w20", "w38", "w46", "w50", "w80", "042c"} {
		stock = append(stock, gauges.Gauge{Label: label})
	}
	for _, c := range []struct{ given, want string }{
		{"w47", `this gauge is not in stock ("w47"); did you mean "w46"? if not, weigh it, or add a row of kind listed`},
		{"W 49", `did you mean "w50"?`},
		{"w58", `did you mean "w50"?`},
		{"w90", `did you mean "w80"?`},
		{"p13", `did you mean "p12"?`},
		{"p1l", `did you mean "p10"?`},
		{"044c", `did you mean "042c"?`},
		{"w", `in stock are p10, p105, `},
		{"0.3 in", `in stock are p10, p105, `},
	} {
		_, err := gauges.Lookup(stock, c.given)
		assert.ErrorContains(t, err, c.want, c.given)
	}
	_, err := gauges.Lookup([]gauges.Gauge{{Label: "w50"}, {Label: "=w46"}}, "w46")
	assert.ErrorContains(t, err, `did you mean "=w46"?`, "a slip in a label, not the neighbour in size")
	_, err = gauges.Lookup(nil, "w46")
	assert.ErrorContains(t, err, "no gauges are in stock")
}
