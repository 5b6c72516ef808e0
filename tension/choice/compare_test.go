package choice_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"scalepair/tension/choice"
)

// onPairOf is the baritone on one pair, in one tuning.
func onPairOf(bass, treble float64, midi ...int) choice.Request {
	req := baritone()
	req.BassMM, req.TrebleMM = []float64{bass}, []float64{treble}
	if midi != nil {
		req.Cases[0].FreqsHz = hz(midi...)
	}
	return req
}

func TestCompareThreeTuningsOnOnePair(t *testing.T) {
	set := indexes(stock(), "p13", "p17", "w26", "w36", "w46", "w62")
	columns := []choice.Column{
		{Request: onPairOf(690, 650, 59, 54, 50, 45, 40, 35), Set: set},
		{Request: onPairOf(690, 650, 57, 52, 48, 43, 38, 33)},
		{Request: onPairOf(690, 650, 59, 54, 50, 45, 40, 33), Set: set},
	}
	out, err := choice.Compare(columns, 5)
	require.NoError(t, err)
	require.Len(t, out, 3)
	assert.Equal(t, []bool{false, true, false}, []bool{out[0].Suggested, out[1].Suggested, out[2].Suggested})
	a, c := out[0].Detail, out[2].Detail
	assert.Equal(t, a.Strings[0], c.Strings[0], "string 1 is the same string in both")
	assert.Less(t, c.Strings[5].Cases[0].TensionN, a.Strings[5].Cases[0].TensionN, "the dropped string slackens")
	for _, one := range out {
		require.NotEmpty(t, one.Ways)
		for _, w := range one.Ways[1:] {
			assert.Less(t, w.Detail.TensionMisfit, one.Ways[0].Detail.TensionMisfit)
		}
	}
}

// A suggested set is what a search of that pair finds, though a limit on the
// pair would drop it there.
func TestASuggestedSetIsTheSearchsBest(t *testing.T) {
	for _, pair := range [][2]float64{{660, 640}, {690, 650}, {720, 600}} {
		req := onPairOf(pair[0], pair[1])
		p, r := search(t, req)
		req.Limits.DifferenceMM, req.Limits.NutToFret1MM = 10, 10
		out, err := choice.Compare([]choice.Column{{Request: req}}, 3)
		require.NoError(t, err)
		require.NotNil(t, out[0].Detail)
		assert.Equal(t, labels(p.Stock(), r.Best[0].Gauges), labels(p.Stock(), out[0].Detail.Gauges))
		require.Len(t, out[0].Detail.Broken, 2, "reported, not dropped")
	}
}

func TestAColumnWithoutAnySetSaysWhy(t *testing.T) {
	req := onPairOf(690, 650)
	req.Limits.LeastTensionN = 900
	out, err := choice.Compare([]choice.Column{{Request: req}}, 3)
	require.NoError(t, err)
	assert.Nil(t, out[0].Detail)
	assert.Equal(t, choice.LeastTension, out[0].None.Reason)
	assert.Positive(t, out[0].None.String)
	assert.Equal(t, 690.0, out[0].None.BassMM)
}

func TestNothingToSuggestBy(t *testing.T) {
	req := onPairOf(690, 650)
	req.Feel.Tension, req.Feel.BendingForce = choice.Target{}, choice.Target{}
	_, err := choice.Compare([]choice.Column{{Name: "free", Request: req}}, 3)
	require.ErrorContains(t, err, "free: no set can be suggested")
	req.Feel.Tension = choice.Target{Source: choice.OwnMean}
	_, err = choice.Compare([]choice.Column{{Name: "free", Request: req}}, 3)
	require.ErrorContains(t, err, "the candidate's own mean needs given gauges")
}

func TestCompareTakesOnePairAColumn(t *testing.T) {
	assert.Panics(t, func() { _, _ = choice.Compare([]choice.Column{{Request: baritone()}}, 3) })
}
