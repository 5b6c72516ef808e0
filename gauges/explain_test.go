package gauges_test

import (
	"bytes"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"scalepair/data"
	"scalepair/gauges"
)

// The work ends with the gauge's own numbers, whatever it rests on, and every
// symbol stands for one number. That each step follows from the printed ones
// above it is tested where they are printed.
func TestTheWorkEndsWithTheGauge(t *testing.T) {
	src, err := data.Demo("readings.csv")
	require.NoError(t, err)
	readings, err := gauges.ReadReadings(bytes.NewReader(src), "readings.csv", nil)
	require.NoError(t, err)
	tools := gauges.DefaultInstruments()
	tools.BalanceAccuracy, tools.RulerAccuracy = 5e-6, 2e-4
	stock, err := gauges.Combine(readings, nil, tools, gauges.Options{})
	require.NoError(t, err)
	for _, g := range stock.Gauges {
		steps, err := gauges.Explain(g.Label, readings, nil, tools, gauges.Options{})
		require.NoError(t, err)
		values, shares := map[string]float64{}, 0.0
		for _, s := range steps {
			assert.NotEmpty(t, s.Name, g.Label)
			assert.NotEmpty(t, s.Source, s.Name)
			if s.Symbol == "" {
				shares += s.Value
				continue
			}
			_, twice := values[s.Symbol]
			assert.False(t, twice, "%s: the symbol %s stands twice", g.Label, s.Symbol)
			values[s.Symbol] = s.Value
		}
		assert.InEpsilon(t, g.LinearDensity, values["w"], 1e-14, g.Label)
		assert.InEpsilon(t, g.U, values["u(w)"], 1e-14, g.Label)
		assert.InEpsilon(t, g.Within95(), values["U95"], 1e-14, g.Label)
		assert.InDelta(t, 100, shares, 1e-9, "%s: the shares make up the whole", g.Label)
		assert.Equal(t, g.EA, values["EA"], g.Label)
		assert.Equal(t, g.EI, values["EI"], g.Label)
		assert.InEpsilon(t, g.UCore, values["u(d)"], 1e-14, g.Label)
	}
	_, err = gauges.Explain("p101", readings, nil, tools, gauges.Options{})
	assert.ErrorContains(t, err, "this gauge is not in stock")
	_, err = gauges.Explain("p10", nil, nil, gauges.Instruments{BalanceResolution: -1}, gauges.Options{})
	assert.Error(t, err)
}
