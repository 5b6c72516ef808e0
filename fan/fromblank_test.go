package fan_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"scalepair/data/unit"
	"scalepair/fan"
)

func TestAdviseBlank(t *testing.T) {
	spec := sixStrings()
	blank := fan.Blank{Name: "ebony", Length: unit.MM(530), Width: unit.MM(72)}
	got, err := fan.AdviseBlank(spec, blank, nil)
	require.NoError(t, err)
	require.NotNil(t, got.LongestBass)
	assert.Equal(t, spec.Treble, got.LongestBass.Spec.Treble)
	assert.Equal(t, got.LongestStraight.Spec.Bass, got.LongestStraight.Spec.Treble)
	for _, l := range []*fan.Layout{got.LongestBass, got.LongestStraight} {
		assert.True(t, l.LeastBlank().Fit([]fan.Blank{blank})[0].Fits)
		longer := l.Spec
		longer.Bass += unit.MM(0.2)
		if l == got.LongestStraight {
			longer.Treble = longer.Bass
		}
		l, err := fan.New(longer)
		require.NoError(t, err)
		assert.False(t, l.LeastBlank().Fit([]fan.Blank{blank})[0].Fits, "0.2 mm longer")
	}
	assert.Equal(t, fan.BlankLength, got.BassStop)
}

// A straight board of a scale L, its nut square and no shelf, is L k(24) long,
// with the body end's 6 mm and 2 mm of allowance at either end.
func TestAdviseBlankByHand(t *testing.T) {
	spec := sixStrings()
	got, err := fan.AdviseBlank(spec, fan.Blank{Length: unit.MM(0.75*640 + 10), Width: unit.MM(90)}, nil)
	require.NoError(t, err)
	assert.InDelta(t, 640, got.LongestStraight.Spec.Bass.MM(), 0.1)
	assert.Nil(t, got.LongestBass, "650 mm of treble are longer already")
	assert.Equal(t, fan.BlankLength, got.BassStop)
}

func TestAdviseBlankRefused(t *testing.T) {
	spec := sixStrings()
	spec.NutSpread = 0
	_, err := fan.AdviseBlank(spec, fan.Blank{Length: unit.MM(500)}, nil)
	require.ErrorContains(t, err, "neck.string_spread_at_nut")
	require.ErrorContains(t, err, "a blank needs a length and a width")
}
