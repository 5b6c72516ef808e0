package choice_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"scalepair/data/unit"
	"scalepair/fan"
	"scalepair/tension/choice"
)

// Without strings the limits of a pair are those that its detail names for the
// pair as a whole.
func TestPairLimits(t *testing.T) {
	req := baritone()
	req.Limits = choice.Limits{DifferenceMM: 20, FretSlantRad: 0.02, SaddleSlantRad: 0.05, NutToFret1MM: 30,
		Blanks: []fan.Blank{{Length: unit.MM(100), Width: unit.MM(20)}}, MostTensionN: 1}
	plan, err := choice.Prepare(req)
	require.NoError(t, err)
	l, err := fan.New(plan.SpecOf(700, 660, nil))
	require.NoError(t, err)
	got := plan.PairLimits(l)
	require.Len(t, got, 5)
	assert.InDelta(t, 40, got[0].Value, 1e-9)
	assert.InDelta(t, math.Abs(l.Saddle.Slant.Rad()), got[2].Value, 1e-12)

	set := make([]int, len(req.Cases[0].FreqsHz))
	d, err := plan.Detail(700, 660, set)
	require.NoError(t, err)
	var whole []choice.Miss
	for _, m := range d.Broken {
		if m.String == 0 {
			whole = append(whole, m)
		}
	}
	assert.Equal(t, whole, got)

	req.Limits = choice.Limits{}
	plan, err = choice.Prepare(req)
	require.NoError(t, err)
	assert.Nil(t, plan.PairLimits(l))
}
