package build_test

import (
	"fmt"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"scalepair/data/unit"
)

// bassGrid reads the sound file with another bass range, and a treble short
// enough for any.
func bassGrid(t *testing.T, bass string) []unit.Length {
	t.Helper()
	src := strings.Replace(sound, `bass = "690 mm"`, "bass = "+bass, 1)
	return read(t, strings.Replace(src, `treble = "650 mm"`, `treble = "200 mm"`, 1)).Scales.Bass
}

func TestGridForms(t *testing.T) {
	for _, c := range []struct{ name, toml, want string }{
		{"one length", `"690 mm"`, "[690 mm]"},
		{"list, any order, doubles", `["700 mm", "27 in", "690 mm", "700 mm"]`, "[685.8 mm 690 mm 700 mm]"},
		{"range", `{ from = "660 mm", to = "680 mm", step = "5 mm" }`, "[660 mm 665 mm 670 mm 675 mm 680 mm]"},
		{"end off the grid", `{ from = "660 mm", to = "674 mm", step = "5 mm" }`, "[660 mm 665 mm 670 mm]"},
		{"one point", `{ from = "660 mm", to = "660 mm", step = "5 mm" }`, "[660 mm]"},
		{"step beyond the end", `{ from = "660 mm", to = "662 mm", step = "5 mm" }`, "[660 mm]"},
		{"inches", `{ from = "25 1/2 in", to = "26 in", step = "1/8 in" }`, "[647.7 mm 650.875 mm 654.05 mm 657.225 mm 660.4 mm]"},
		{"mixed units", `{ from = "25.5 in", to = "650 mm", step = "1 mm" }`, "[647.7 mm 648.7 mm 649.7 mm]"},
	} {
		t.Run(c.name, func(t *testing.T) { assert.Equal(t, c.want, fmt.Sprint(bassGrid(t, c.toml))) })
	}
}

// Every point is the float64 that the same length written out gives, however
// far from the start, so that 675 mm of a range and "675 mm" are one length.
func TestGridPointsDoNotDrift(t *testing.T) {
	rapid.Check(t, func(r *rapid.T) {
		denominators := map[string]int{"mm": rapid.SampledFrom([]int{1, 2, 4, 10, 100}).Draw(r, "mm"), "in": rapid.SampledFrom([]int{1, 2, 8, 64, 100, 1000}).Draw(r, "in")}
		u := rapid.SampledFrom([]string{"mm", "in"}).Draw(r, "unit")
		den := denominators[u]
		longest := map[string]int{"mm": 2000, "in": 78}[u] * den
		from := rapid.IntRange(map[string]int{"mm": 200, "in": 8}[u]*den, longest/2).Draw(r, "from")
		step := rapid.IntRange(1, 12*den).Draw(r, "step")
		count := rapid.IntRange(1, min(60, 1+(longest-from)/step)).Draw(r, "count")
		write := func(n int) string { return fmt.Sprintf("%d %d/%d %s", n/den, n%den, den, u) }
		got := bassGrid(t, fmt.Sprintf(`{ from = %q, to = %q, step = %q }`, write(from), write(from+(count-1)*step), write(step)))
		require.Len(t, got, count)
		for i, l := range got {
			want, err := unit.ParseLength(write(from + i*step))
			require.NoError(t, err)
			require.Equal(t, want, l, "point %d", i)
		}
	})
}

func TestGridsOfTooManyPairs(t *testing.T) {
	src := strings.Replace(sound, `bass = "690 mm"`, `bass = { from = "700 mm", to = "800 mm", step = "0.01 mm" }`, 1)
	src = strings.Replace(src, `treble = "650 mm"`, `treble = { from = "600 mm", to = "700 mm", step = "0.01 mm" }`, 1)
	assert.Equal(t, []string{"build.toml:12:10: 10001 bass and 10001 treble lengths make 100020001 pairs; take larger steps; up to 5000000 pairs are searched"},
		faultsOf(t, src))
}

func TestReverseFan(t *testing.T) {
	src := strings.Replace(sound, `bass = "690 mm"`, "bass = \"600 mm\"\nreverse_fan = true", 1)
	assert.True(t, read(t, src).Scales.ReverseFan)
	// A range in which some pairs are no reverse fan is the chooser's business.
	some := strings.Replace(sound, `bass = "690 mm"`, `bass = ["600 mm", "650 mm"]`, 1)
	assert.Len(t, read(t, some).Scales.Bass, 2)
}

func TestNoScalesAtAll(t *testing.T) {
	start, end := strings.Index(sound, "[scales]"), strings.Index(sound, "[neck]")
	b := read(t, sound[:start]+sound[end:])
	assert.Empty(t, b.Scales.Bass)
	assert.Equal(t, unit.MM(5), b.Scales.Apart)
}
