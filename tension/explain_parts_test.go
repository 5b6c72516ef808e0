package tension_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"scalepair/data/trace"
	"scalepair/data/unit"
	"scalepair/tension"
)

func TestTheWorkOfTheCompensation(t *testing.T) {
	w := steel(0.43e-3)
	tails := ends{Nut: 0.07, Saddle: 0.025}
	lo, hi, err := compensation(w, 0.66, 196, 0.0018, tails)
	require.NoError(t, err)
	var tr trace.Trace
	_, _, err = tension.Compensation(&tr, *w.real(), 0.66, 196, 0.0018, tails.real())
	steps := tr.Steps
	require.NoError(t, err)
	assert.Equal(t, lo, valueOf(t, steps, "s"))
	assert.InDelta(t, hi, valueOf(t, steps, "most"), 1e-15)
	assert.InDelta(t, 2, valueOf(t, steps, "ratio"), 1e-9)
	for _, s := range steps {
		assert.NotEmpty(t, s.Source, s.Name)
		assert.Positive(t, s.Digits)
	}
	_, _, err = compensation(wire{LinearDensity: 1e-3}, 0.66, 196, 0.0018, tails)
	assert.ErrorIs(t, err, tension.ErrNoStiffness)
}

func explainStrength(dia float64) []trace.Step {
	var tr trace.Trace
	tension.MinStrength(&tr, unit.Length(dia))
	return tr.Steps
}

func TestTheWorkOfTheStrength(t *testing.T) {
	for _, d := range []float64{0.05e-3, 0.102e-3, 0.2e-3, 0.254e-3, 0.43e-3, 0.762e-3, 1.2e-3} {
		steps := explainStrength(d)
		pa, _ := minStrength(d)
		assert.Equal(t, pa, valueOf(t, steps, "S"))
		if len(steps) == 1 {
			continue
		}
		dl, dh, sl, sh := valueOf(t, steps, "dlo"), valueOf(t, steps, "dhi"), valueOf(t, steps, "Slo"), valueOf(t, steps, "Shi")
		assert.InEpsilon(t, pa, sl+(sh-sl)*(d-dl)/(dh-dl), 1e-12)
		if pa < sh || d <= dh {
			assert.LessOrEqual(t, dl, d)
		}
	}
	assert.Empty(t, explainStrength(0))
	assert.Empty(t, explainStrength(math.NaN()))
}
