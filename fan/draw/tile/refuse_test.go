package tile_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"scalepair/data/unit"
	"scalepair/fan/draw/internal/trial"
	"scalepair/fan/draw/tile"
)

func TestParsePaper(t *testing.T) {
	tests := []struct {
		in   string
		want tile.Paper
	}{
		{"A4", tile.Paper{Name: "A4", WidthMM: 210, LengthMM: 297}},
		{" letter ", tile.Paper{Name: "Letter", WidthMM: 215.9, LengthMM: 279.4}},
		{"a3", tile.Paper{Name: "A3", WidthMM: 297, LengthMM: 420}},
		{"roll 610 mm", tile.Paper{Name: "roll", WidthMM: 610}},
		{"Roll 24 in", tile.Paper{Name: "roll", WidthMM: 609.6}},
	}
	for _, tt := range tests {
		t.Run(tt.in, func(t *testing.T) {
			got, err := tile.ParsePaper(tt.in)
			require.NoError(t, err)
			assert.Equal(t, tt.want.Name, got.Name)
			assert.InDelta(t, tt.want.WidthMM, got.WidthMM, 1e-9)
			assert.Equal(t, tt.want.LengthMM, got.LengthMM)
		})
	}
	for in, want := range map[string]string{
		"A5":       "did you mean A4?",
		"roll":     "write it as `roll 610 mm`",
		"roll 610": "write it as `roll 610 mm`",
		"foolscap": "take A4, A3, Letter, Legal, Tabloid or a roll with its width",
	} {
		_, err := tile.ParsePaper(in)
		require.Error(t, err, in)
		assert.Contains(t, err.Error(), want)
	}
}

func TestOptionsOutOfRange(t *testing.T) {
	bad := tile.DefaultOptions()
	bad.MarginMM, bad.OverlapMM, bad.BarAcrossMM, bad.BarUpMM = -1, 100, 3.93, math.NaN()
	_, err := tile.Lay(trial.Drawing(t, "six"), bad)
	require.Error(t, err)
	assert.Equal(t, `bar across: the measured length of a bar of 100 mm is out of range ("3.93 mm"); from 90 to 110 mm
bar up: the measured length of a bar of 100 mm is out of range ("not a number"); from 90 to 110 mm
margin: the white margin is out of range ("-1.00 mm"); from 3 to 40 mm
overlap: the overlap is out of range ("100.00 mm"); from 5 to 40 mm`, err.Error())
	_, err = tile.One(trial.Drawing(t, "six"), bad)
	assert.Error(t, err)
	none := tile.DefaultOptions()
	none.Paper = tile.Paper{Name: "stamp", WidthMM: 20, LengthMM: 30}
	_, err = tile.Lay(trial.Drawing(t, "six"), none)
	assert.ErrorContains(t, err, "paper: the paper's width is out of range")
}

func TestPaperTooNarrow(t *testing.T) {
	d := trial.Drawing(t, "eight")
	_, err := tile.Lay(d, options(tile.Roll(152), tile.OneEach))
	require.Error(t, err)
	assert.Regexp(t, `^paper: the board is too wide for this paper \("roll, 152.0 mm wide"\); take a roll at least \d+ mm wide, or hide layers`, err.Error())
	inches := options(tile.Roll(152.4), tile.OneEach)
	inches.Unit = unit.DecimalInches
	_, err = tile.Lay(d, inches)
	require.Error(t, err)
	assert.Regexp(t, `\("roll, 6.000 in wide"\); take a roll at least \d\.\d\d in wide`, err.Error())
	_, err = tile.Lay(d, options(tile.Paper{Name: "card", WidthMM: 150, LengthMM: 160}, tile.Strips))
	assert.ErrorContains(t, err, "take larger paper")
}
