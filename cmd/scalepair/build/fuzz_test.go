package build_test

import (
	"bytes"
	"os"
	"strings"
	"testing"
	"unicode/utf8"

	"github.com/pelletier/go-toml/v2"
	"github.com/stretchr/testify/require"

	"scalepair/cmd/scalepair/build"
	"scalepair/data/testutil"
	"scalepair/gauges"
	"scalepair/tuning"
)

func seeds(f *testing.F) {
	files := []string{
		"../../../data/demo/build.toml", "../../../testdata/builds/seven/build.toml",
		"../../../testdata/builds/eight_inch/build.toml", "../../../testdata/builds/bass_five/build.toml",
	}
	for _, file := range files {
		src, err := os.ReadFile(file)
		require.NoError(f, err)
		f.Add(string(src))
	}
	for _, src := range []string{
		"", sound, "\uFEFF" + strings.ReplaceAll(sound, "\n", "\r\n"), sound + "[chosen]\nbass = 1", "a = [", "a = {b = [1, {c = 2}]}",
		"[a\n[b]\nx = \"", "a.b = 1\n[a]\nb = 2\n[[a]]", "x = 1979-05-27\ny = '''\n", "scales = { bass = [[\"1 mm\"]], treble = {} }",
		"[[blanks]]\n[blanks.x]\n[[blanks.x]]", "\"\" = 1\n'' = 2", "neck.frets = 0x10\nneck.string_spread_at_nut = nan", "a = 1 # \xff",
	} {
		f.Add(src)
	}
}

// Read never panics; a fault means no build, and a build holds finite numbers
// only, comes from TOML, and can be changed and read again.
func FuzzRead(f *testing.F) {
	seeds(f)
	f.Fuzz(func(t *testing.T, src string) {
		b, err := build.Read([]byte(src), "f")
		if err != nil {
			require.Nil(t, b)
			testutil.CheckFaults(t, err, "f", src)
			return
		}
		require.NoError(t, toml.Unmarshal([]byte(strings.TrimPrefix(src, "\uFEFF")), &map[string]any{}))
		testutil.CheckFinite(t, *b)
		if b.Chosen == nil {
			return
		}
		saved, err := b.Chosen.Save([]byte(src), b.LengthUnit)
		require.NoError(t, err)
		again, err := build.Read(saved, "f")
		require.NoError(t, err)
		require.Equal(t, b.Chosen, again.Chosen)
		require.Equal(t, b.Scales, again.Scales)
	})
}

// Whatever is asked of a first build file is refused, or gives one that reads,
// says what was asked, and stands beside readings that read.
func FuzzTemplate(f *testing.F) {
	for _, s := range starts() {
		f.Add(s.Name, s.Tuning, s.Strings, s.Bass, s.Inches)
	}
	f.Add(" \" ", "B1 E2", 0, false, false)
	f.Add(" ", "", 7, false, false)
	f.Add("two\nlines", "H2 E2", -1, true, false)
	f.Add("\xff\u2028", "C-1 G9+100c", 1<<30, false, true)
	f.Fuzz(func(t *testing.T, name, notes string, count int, bass, inches bool) {
		src, readings, err := build.Template(build.Start{Name: name, Tuning: notes, Strings: count, Bass: bass, Inches: inches})
		if err != nil {
			require.Nil(t, src)
			require.Nil(t, readings)
			return
		}
		b, err := build.Read(src, "f")
		require.NoError(t, err)
		testutil.CheckFinite(t, *b)
		if notes != "" {
			want, err := tuning.Parse(notes)
			require.NoError(t, err)
			require.Equal(t, want.Notes, b.Strings.Tuning.Notes)
		}
		if strings.TrimSpace(name) != "" && utf8.ValidString(name) {
			require.Equal(t, strings.TrimSpace(name), b.Name)
		}
		_, err = gauges.ReadReadings(bytes.NewReader(readings), "r.csv", nil)
		require.NoError(t, err)
	})
}

// SetKeys never panics; what it gives is TOML and holds the value.
func FuzzSetKeys(f *testing.F) {
	for _, src := range []string{"", sound, "chosen.bass = 1\n", "chosen = {}\n", "chosen = { bass = 1, x = [ # c\n 2 ] }", "[chosen] # c\r\n  bass = 1\r\n", "[[chosen]]\n", "[chosen.a]\nb=1", "a=1\n[b]\nchosen.x = 1", "chosen = 1"} {
		f.Add(src, "chosen.bass", `"27 in"`)
		f.Add(src, "top", `[1, 2]`)
		f.Add(src, "chosen.bass", "")
		f.Add(src, "chosen.a.c", "{ x = 1 }")
	}
	f.Fuzz(func(t *testing.T, src, key, value string) {
		out, err := build.SetKeys([]byte(src), []build.Edit{{Key: key, Value: value}})
		if err != nil {
			require.Nil(t, out)
			return
		}
		var got map[string]any
		require.NoError(t, toml.Unmarshal([]byte(strings.TrimPrefix(string(out), "\uFEFF")), &got))
		at, found := lookup(got, key)
		require.Equal(t, value != "", found)
		if found {
			var want map[string]any
			require.NoError(t, toml.Unmarshal([]byte("value = "+value), &want))
			require.Equal(t, want["value"], at)
		}
	})
}

// lookup follows a dotted key.
func lookup(tree map[string]any, key string) (any, bool) {
	parts := strings.Split(key, ".")
	for _, p := range parts[:len(parts)-1] {
		inner, ok := tree[p].(map[string]any)
		if !ok {
			return nil, false
		}
		tree = inner
	}
	v, ok := tree[parts[len(parts)-1]]
	return v, ok
}
