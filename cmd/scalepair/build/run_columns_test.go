package build_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"scalepair/cmd/scalepair/build"
	"scalepair/data/unit"
)

func TestParsePair(t *testing.T) {
	for text, want := range map[string][2]float64{
		"690 / 650 mm":         {690, 650},
		"690mm/650mm":          {690, 650},
		"686 mm":               {686, 686},
		"25 1/2 in":            {647.7, 647.7},
		"27 / 25 1/2 in":       {685.8, 647.7},
		`27 1/2" / 25 1/2"`:    {698.5, 647.7},
		"27 1/2 in/25 1/2 in":  {698.5, 647.7},
		"69 cm / 650 mm":       {690, 650},
		"27½ in / 25½ in":      {698.5, 647.7},
		"28.625 / 25.5 in":     {727.075, 647.7},
		" 27in  /  660.4 mm  ": {685.8, 660.4},
	} {
		bass, treble, err := build.ParsePair(text)
		if assert.NoError(t, err, text) {
			assert.InDelta(t, want[0], bass.MM(), 1e-9, text)
			assert.InDelta(t, want[1], treble.MM(), 1e-9, text)
		}
	}
	for _, text := range []string{"", "/", "690", "690/650", "690 / mm", "690 / 650 / 600 mm", "10 / 650 mm", "27 in / 25", "a / b mm", "NaN / 650 mm"} {
		_, _, err := build.ParsePair(text)
		assert.ErrorContains(t, err, "not a scale pair", text)
	}
}

const demo = "../../../data/demo/build.toml"

func columns(t *testing.T, file string, asked build.Comparison) []build.Column {
	t.Helper()
	j, err := build.Load(file, nil)
	require.NoError(t, err)
	out, err := j.Columns(asked)
	require.NoError(t, err)
	return out
}

func TestFlagsCombineToColumns(t *testing.T) {
	out := columns(t, demo, build.Comparison{
		Tunings: []string{"baritone B", "A1 D2 G2 C3 E3 A3"}, Retunes: []string{"6=A1, 1=A3"},
		Pairs: []string{"690 / 650 mm", "686 mm"}, Gauges: []string{"w56 w44 w34 w24 p17 p13", "suggested"},
	})
	require.Len(t, out, 3*2*2)
	assert.Equal(t, "string 6 at A1, 1 at A3", out[8].Request.Cases[0].Name)
	assert.Equal(t, "A1 E2 A2 D3 F#3 A3", out[8].Tunings[0].String())
	assert.Equal(t, [2]unit.Length{unit.MM(690), unit.MM(650)}, [2]unit.Length{out[0].Request.Bass[0], out[0].Request.Treble[0]})
	assert.Equal(t, [2]unit.Length{unit.MM(686), unit.MM(686)}, [2]unit.Length{out[2].Request.Bass[0], out[2].Request.Treble[0]})
	assert.NotNil(t, out[0].Set)
	assert.Nil(t, out[1].Set)
	assert.Equal(t, build.SuggestedSet, out[1].SetName)
}

func TestWithoutFlagsTodaysSetStandsBesideASuggestedOne(t *testing.T) {
	out := columns(t, demo, build.Comparison{})
	require.Len(t, out, 2)
	assert.Equal(t, build.ReferenceSet, out[0].SetName, "the demo gives no set")
	assert.Equal(t, build.SuggestedSet, out[1].SetName)
	assert.False(t, out[0].HasPair())

	out = columns(t, demo, build.Comparison{Pairs: []string{"686 mm"}})
	require.Len(t, out, 2, "one column alone compares nothing")
	assert.Equal(t, []unit.Length{unit.MM(686)}, out[1].Request.Bass)
}

func TestColumnsOfTheBuildFile(t *testing.T) {
	out := columns(t, "../../../testdata/builds/seven/build.toml", build.Comparison{})
	require.Len(t, out, 2)
	assert.Len(t, out[0].Request.Cases, 2, "both tunings of the build")
	assert.Equal(t, []unit.Length{unit.MM(648)}, out[0].Request.Bass)
	require.Len(t, out[1].Request.Cases, 1)
	assert.Equal(t, "A1 E2 A2 D3 G3 B3 E4", out[1].Tunings[0].String())
	assert.True(t, out[1].Request.Neck.Neutral.Bridge)
	assert.Equal(t, 8.5, out[0].Request.Neck.Neutral.Fret)
}

func TestTooManyColumns(t *testing.T) {
	j, err := build.Load(demo, nil)
	require.NoError(t, err)
	asked := build.Comparison{Capos: []string{"0", "1", "2", "3", "4"}, Pairs: []string{"686 mm", "690 mm", "695 mm", "700 mm", "705 mm"}}
	_, err = j.Columns(asked)
	assert.ErrorContains(t, err, "this makes 25 columns")
	asked.Capos = []string{"0", "x"}
	_, err = j.Columns(asked)
	assert.EqualError(t, err, `--capo: not a whole number ("x")`, "once, however many columns")
}
