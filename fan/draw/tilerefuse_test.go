package draw_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"scalepair/data/unit"
	"scalepair/fan/draw/tile"
)

func TestPapersByName(t *testing.T) {
	for in, want := range map[string]tile.Paper{
		"A4":          {Name: "A4", Width: unit.MM(210), Length: unit.MM(297)},
		" letter ":    {Name: "Letter", Width: unit.MM(215.9), Length: unit.MM(279.4)},
		"a3":          {Name: "A3", Width: unit.MM(297), Length: unit.MM(420)},
		"roll 610 mm": {Name: "roll", Width: unit.MM(610)},
		"Roll 24 in":  {Name: "roll", Width: unit.MM(609.6)},
	} {
		var got tile.Paper
		require.NoError(t, got.UnmarshalText([]byte(in)))
		assert.Equal(t, want.Name, got.Name)
		assert.InDelta(t, want.Width.MM(), got.Width.MM(), tolMM)
		assert.InDelta(t, want.Length.MM(), got.Length.MM(), tolMM)
	}
	for in, want := range map[string]string{
		"A5":       "did you mean A4?",
		"roll":     "write it as `roll 610 mm`",
		"roll 610": "write it as `roll 610 mm`",
		"roll 9 m": "it goes from 150 to 5000 mm",
		"foolscap": "take A4, A3, Letter, Legal, Tabloid or a roll with its width",
	} {
		var got tile.Paper
		assert.ErrorContains(t, got.UnmarshalText([]byte(in)), want)
		assert.Zero(t, got)
	}
}

func TestPaperTooNarrow(t *testing.T) {
	d := drawingOf(t, "eight")
	_, err := tile.Lay(d, options(paper("roll 152 mm"), false))
	require.Error(t, err)
	assert.Regexp(t, `^paper: the board is too wide for this paper \("roll, 152.0 mm wide"\); take a roll at least \d+ mm wide, or hide layers`, err.Error())
	inches := options(tile.Roll(unit.MM(152.4)), false)
	inches.Unit = unit.DecimalInches
	_, err = tile.Lay(d, inches)
	require.Error(t, err)
	assert.Regexp(t, `\("roll, 6.000 in wide"\); take a roll at least \d\.\d\d in wide`, err.Error())
	_, err = tile.Lay(d, options(tile.Paper{Name: "card", Width: unit.MM(150), Length: unit.MM(160)}, true))
	assert.ErrorContains(t, err, "take larger paper")
}
