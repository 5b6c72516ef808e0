package tuning_test

import (
	"math"
	"os"
	"regexp"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"scalepair/data"
	"scalepair/tuning"
)

// quoted matches the texts of a build file, cell those of the list of tunings.
var (
	quoted = regexp.MustCompile(`tuning = "([^"]*)"`)
	cell   = regexp.MustCompile(`[^,;\n]+`)
)

// realTexts returns the tunings of the demo and the test builds, and every name
// and every tuning of the list.
func realTexts(f *testing.F) []string {
	out := cell.FindAllString(string(data.Tunings()), -1)
	for _, file := range []string{
		"../data/demo/build.toml", "../testdata/builds/seven/build.toml", "../testdata/builds/eight_inch/build.toml", "../testdata/builds/bass_five/build.toml",
	} {
		src, err := os.ReadFile(file)
		require.NoError(f, err)
		for _, m := range quoted.FindAllStringSubmatch(string(src), -1) {
			out = append(out, m[1])
		}
	}
	return out
}

// An error means the zero note; success means a note of the range that is read,
// within 100 cents, that prints and reads back to itself. Its name for a reader
// is the same note to a tenth of a cent.
func FuzzParseNote(f *testing.F) {
	for _, s := range []string{"F#3", "gb-1", "f♯3", "A2-14c", "A2 +0.5 cents", "Cb-1", "B##3", "H2", "E", "", "\xff2", "A2-1e5c", "A4-0c", "G9+100c", "C-1-100c", "A2+99.96c", "E002"} {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, s string) {
		n, err := tuning.ParseNote(s)
		if err != nil {
			assert.Zero(t, n)
			assert.NotEmpty(t, err.Error())
			return
		}
		requireNote(t, n)
		again, err := tuning.ParseNote(n.String())
		require.NoError(t, err)
		assert.Equal(t, n, again)
		named, err := tuning.ParseNote(n.Name())
		require.NoError(t, err, n.Name())
		assert.Equal(t, n.Semitone, named.Semitone)
		assert.InDelta(t, n.Cents, named.Cents, 0.05+1e-9)
		assert.Equal(t, n.Name(), named.Name(), "printed again")
	})
}

// requireNote holds a note to C-1 to G9, which are 8.18 and 12544 Hz (the MIDI
// table, from memory), and to 100 cents about it.
func requireNote(t *testing.T, n tuning.Note) {
	hz := n.Pitch(tuning.ConcertA).Hz()
	require.False(t, math.IsNaN(hz) || hz < 7.7 || hz > 13290, hz)
	require.False(t, n.Semitone < 0 || n.Semitone > 127 || math.Abs(n.Cents) > 100, n)
	require.False(t, n.Cents == 0 && math.Signbit(n.Cents), "-0")
	require.NotEmpty(t, n.Spelling)
}

func FuzzParse(f *testing.F) {
	for _, s := range append(realTexts(f), "8-string F sharp", "E A D G", "B1,E2;X3", "", "drop", "b flat", "E2-14c", "E2 A2\u00a0D3", "A1 +14c E2") {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, s string) {
		got, err := tuning.Parse(s)
		if err != nil {
			assert.Zero(t, got)
			assert.NotEmpty(t, err.Error())
			return
		}
		require.NotEmpty(t, got.Notes)
		for _, n := range got.Notes {
			requireNote(t, n)
		}
		again, err := tuning.Parse(got.String())
		require.NoError(t, err)
		assert.Equal(t, got.Notes, again.Notes)
		if got.Name != "" {
			again, err = tuning.Parse(got.Name)
			require.NoError(t, err)
			assert.Equal(t, got, again)
		}
	})
}
