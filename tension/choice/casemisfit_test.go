package choice_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"scalepair/tension/choice"
)

func TestMisfitsTuningByTuning(t *testing.T) {
	for _, source := range []choice.Source{choice.LikeReference, choice.OwnMean} {
		req := baritone()
		req.Cases = append(req.Cases, choice.Case{Name: "dropped", FreqsHz: hz(59, 54, 50, 45, 40, 33), Weight: 3})
		req.Given = indexes(req.Stock, "p13", "p17", "w26", "w36", "w46", "w62")
		req.Feel.Tension.Source, req.Feel.BendingForce.Source = source, source
		p, err := choice.Prepare(req)
		require.NoError(t, err)
		both, err := p.Detail(700, 650, req.Given)
		require.NoError(t, err)
		sum := 0.0
		for c, share := range []float64{0.25, 0.75} {
			one := req
			one.Cases = req.Cases[c : c+1]
			p, err := choice.Prepare(one)
			require.NoError(t, err)
			alone, err := p.Detail(700, 650, req.Given)
			require.NoError(t, err)
			assert.InEpsilon(t, alone.TensionMisfit, both.Totals[c].TensionMisfit, 1e-12)
			assert.InEpsilon(t, alone.BendingForceMisfit, both.Totals[c].BendingForceMisfit, 1e-12)
			sum += share * math.Pow(both.Totals[c].TensionMisfit, 2)
		}
		assert.InEpsilon(t, both.TensionMisfit, math.Sqrt(sum), 1e-12, "the weighted mean of the squares")
	}
}

func TestNoMisfitWithoutATarget(t *testing.T) {
	req := baritone()
	req.Feel.Tension, req.Feel.BendingForce = choice.Target{}, choice.Target{}
	p, err := choice.Prepare(req)
	require.NoError(t, err)
	d, err := p.Detail(700, 650, indexes(req.Stock, "p13", "p17", "w26", "w36", "w46", "w62"))
	require.NoError(t, err)
	assert.Zero(t, d.Totals[0].TensionMisfit)
	assert.Zero(t, d.Totals[0].BendingForceMisfit)
}
