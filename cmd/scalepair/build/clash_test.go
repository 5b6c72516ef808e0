package build_test

import (
	"strings"
	"testing"

	"github.com/pelletier/go-toml/v2"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"scalepair/cmd/scalepair/build"
)

// Names of several parts, and lists that were closed: TOML 1.0.0, sections
// "Table" and "Array of Tables". The fault stands where the name begins.
func TestClashesOfParts(t *testing.T) {
	const said = ": a key or a section here clashes with an earlier one; state every section once, and every key once and in its own section"
	for _, c := range []struct{ name, src, at string }{
		{"a section of dotted keys is stated again", "[feel]\nweights.bending_force = 1\n[feel.weights]\ntension = 1\n", "3:2"},
		{"a section between braces is added to", "feel = { bend_cents = 200 }\n[feel.weights]\nbending_force = 1\n", "2:2"},
		{"a list in brackets is added to", "blanks = []\n[[blanks]]\nlength = \"1 m\"\nwidth = \"90 mm\"\nthickness = \"7 mm\"\n", "2:3"},
	} {
		t.Run(c.name, func(t *testing.T) {
			src := strings.Replace(sound, "[feel]\ntension = \"like the reference\"\n", "", 1)
			got := faultsOf(t, c.src+strings.Replace(src, `name = "Sound"`, "", 1))
			assert.Equal(t, []string{"build.toml:" + c.at + said}, got)
		})
	}
}

// What is read without a fault is TOML, whatever the order of keys and headers.
func TestReadIsTOML(t *testing.T) {
	blank := "length = \"520 mm\"\nwidth = \"75 mm\"\nthickness = \"7 mm\"\n"
	lines := rapid.SampledFrom([]string{
		"[limits]\n", "difference = \"50 mm\"\n", "limits.nut_to_fret_1 = \"40 mm\"\n", "limits = { blank = false }\n",
		"[playing]\n", "from_fret = 0\n", "playing.to_fret = 12\n", "\"playing\".to_fret = 12\n", "[ playing ]\n",
		"[feel.weights]\n", "weights.bending_force = 1\n", "weights = { bending_force = 1 }\n", "bending_force = 1\n", "feel.weights.tension = 2\n",
		"[[blanks]]\n" + blank, "blanks = []\n", "blanks = [{ length = \"520 mm\", width = \"75 mm\", thickness = \"7 mm\" }]\n",
	})
	read := 0
	rapid.Check(t, func(r *rapid.T) {
		before := strings.Join(rapid.SliceOfN(lines, 0, 2).Draw(r, "before"), "")
		src := before + sound[strings.Index(sound, "\n")+1:] + strings.Join(rapid.SliceOfN(lines, 0, 4).Draw(r, "behind"), "")
		if _, err := build.Read([]byte(src), "f"); err == nil {
			require.NoError(r, toml.Unmarshal([]byte(src), &map[string]any{}))
			read++
		}
	})
	assert.NotZero(t, read)
}
