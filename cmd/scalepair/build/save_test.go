package build_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"scalepair/cmd/scalepair/build"
	"scalepair/data/testutil"
	"scalepair/data/unit"
	"scalepair/fan"
)

var _ = testutil.Seed("1")

var picked = build.Chosen{
	Pair:    build.Pair{Bass: unit.MM(700), Treble: unit.Inches(26)},
	Neutral: &fan.Neutral{Fret: 7.5}, Gauges: build.PerString[string]{"10", `p"13`},
}

const pickedText = "[chosen]\nbass = \"700 mm\"\ntreble = \"660.4 mm\"\nneutral_fret = 7.5\ngauges = [\"p\\\"13\", \"10\"]\n"

func TestSave(t *testing.T) {
	for _, c := range []struct{ name, before, after string }{
		{"a new section", "name = 'x'\n", "name = 'x'\n\n" + pickedText},
		{"no last line end", "name = 'x'", "name = 'x'\n\n" + pickedText},
		{"an old one", "[chosen] # mine\nscale = '650 mm'\ngauges = [\n 'a', # low\n 'b',\n] # here\n\n# next\n[neck]\nfrets = 3\n",
			"[chosen] # mine\ngauges = [\"p\\\"13\", \"10\"] # here\nbass = \"700 mm\"\ntreble = \"660.4 mm\"\nneutral_fret = 7.5\n\n# next\n[neck]\nfrets = 3\n"},
		{"an empty one", "[neck]\n[chosen]\n\n[tails]\n", "[neck]\n" + pickedText + "\n[tails]\n"},
		{"the last", "[neck]\nfrets = 3\n[chosen]\nscale = '3 mm'", "[neck]\nfrets = 3\n" + pickedText},
		{"line ends of Windows", "[chosen]\r\nscale = '3 mm'\r\n[neck]\r\n", strings.ReplaceAll(pickedText, "\n", "\r\n") + "[neck]\r\n"},
		{"a byte order mark", "\uFEFF[chosen]\n", "\uFEFF" + pickedText},
	} {
		t.Run(c.name, func(t *testing.T) {
			got, err := picked.Save([]byte(c.before), "build.toml", unit.Millimetres)
			require.NoError(t, err)
			assert.Equal(t, c.after, string(got))
			again, err := picked.Save(got, "build.toml", unit.Millimetres)
			require.NoError(t, err)
			assert.Equal(t, c.after, string(again), "saved twice")
		})
	}
	_, err := picked.Save([]byte("chosen = { scale = '3 mm' }\n"), "build.toml", unit.Millimetres)
	assert.ErrorContains(t, err, "build.toml:1:1: chosen is no section of its own")
	_, err = picked.Save([]byte("chosen.scale = '3 mm'\n"), "build.toml", unit.Millimetres)
	assert.Error(t, err)
}

// A saved pair reads back as it was, in both systems of units.
func TestSavedPairsReadBack(t *testing.T) {
	good := sound(t)
	rapid.Check(t, func(r *rapid.T) {
		u := rapid.SampledFrom([]unit.LengthUnit{unit.Millimetres, unit.DecimalInches, unit.InchFractions}).Draw(r, "unit")
		treble := unit.MM(float64(rapid.IntRange(5000, 7000).Draw(r, "treble")) / 10)
		if u != unit.Millimetres {
			treble = unit.Inches(float64(rapid.IntRange(20*64, 27*64).Draw(r, "64ths")) / 64)
		}
		c := build.Chosen{Pair: build.Pair{Bass: treble + unit.MM(float64(rapid.IntRange(0, 60).Draw(r, "difference"))), Treble: treble},
			Neutral: &fan.Neutral{Fret: float64(rapid.IntRange(0, 44).Draw(r, "neutral")) / 2}}
		text, err := c.Save([]byte(good), "build.toml", u)
		require.NoError(r, err)
		b, err := build.Read(text, "build.toml", nil)
		require.NoError(r, err)
		assert.InDelta(r, c.Bass.MM(), b.Chosen.Bass.MM(), 1e-9)
		assert.InDelta(r, c.Treble.MM(), b.Chosen.Treble.MM(), 1e-9)
		assert.Equal(r, c.Neutral, b.Chosen.Neutral)
	})
}
