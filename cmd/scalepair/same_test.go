package main

import (
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// What must not change a result.

// builds are those of testdata, and the demo in the current folder's stead.
var builds = []string{"", "seven", "eight_inch", "bass_five"}

func buildPath(name string) string {
	if name == "" {
		return ""
	}
	return " " + filepath.Join(startFolder, "../../testdata/builds", name, "build.toml")
}

// Two runs print the same, to the letter.
func TestDeterminism(t *testing.T) {
	t.Chdir(t.TempDir())
	for _, build := range builds {
		for _, line := range []string{"advise --trials 200", "gauges", "tension --format html", "layout --format json"} {
			command, flags, _ := strings.Cut(line, " ")
			whole := command + buildPath(build) + " " + flags
			assert.Equal(t, resultOf(t, whole), resultOf(t, whole), whole)
		}
	}
}

// JSON does not depend on the units that are printed.
func TestJSONHasItsOwnUnits(t *testing.T) {
	t.Chdir(t.TempDir())
	for _, build := range builds {
		for _, command := range []string{"tension", "layout", "gauges"} {
			line := command + buildPath(build) + " --format json"
			assert.Equal(t, resultOf(t, line), resultOf(t, line+" --lengths in64 --forces lbf"), line)
		}
	}
}

// Values may be written in several ways and mean the same.
func TestValuesWrittenOtherwise(t *testing.T) {
	t.Chdir(soundFolder(t))
	for _, pair := range [][2]string{
		{`tension --bass 648mm`, `tension --bass "64.8 cm"`},
		{`tension --bass 648mm`, "tension --bass \"648\u00a0mm\""},
		{`tension --bass "25.5 in"`, `tension --bass "25 1/2 in"`},
		{`tension --bass "25.5 in"`, `tension --bass "25-1/2in"`},
		{`tension --bass "25.5 in"`, `tension --bass "25½ in"`},
		{`tension --bass "25.5 in"`, `tension --bass '25.5"'`},
		{`tension --tuning "D2 A2 D3 F#3 A3 D4"`, `tension --tuning "d2, a2, d3, f♯3, a3, d4"`},
		{`tension --tuning "drop D"`, `tension --tuning Dropped-D`},
		{`tension --gauges "w46 w36 w26 p17 p13 p10"`, `tension --gauges w46,w36,w26,p17,p13,p10`},
		{`tension --pitch 442`, `tension --pitch "442 Hz"`},
		{`layout --neutral bridge`, `layout --neutral Bridge`},
	} {
		assert.Equal(t, resultOf(t, pair[0]), resultOf(t, pair[1]), pair[1])
	}
}

// A build and its readings say the same however an editor ended the lines, and
// a file keeps its line ends when a choice is saved into it.
func TestFilesSavedOnWindows(t *testing.T) {
	unix := func(s string) string { return s }
	crlf := func(s string) string { return strings.ReplaceAll(s, "\n", "\r\n") }
	advise := func(editor func(string) string) (printed, saved string) {
		t.Chdir(t.TempDir())
		for _, name := range []string{"build.toml", "readings.csv"} {
			text, err := os.ReadFile(filepath.Join(startFolder, "../../testdata/builds/seven", name))
			require.NoError(t, err)
			require.NoError(t, os.WriteFile(name, []byte(editor(string(text))), 0o644))
		}
		printed = resultOf(t, "advise --save --trials 0")
		text, err := os.ReadFile("build.toml")
		require.NoError(t, err)
		return printed, string(text)
	}
	want, saved := advise(unix)
	assert.Contains(t, saved, "[chosen]")
	for name, editor := range map[string]func(string) string{
		"CR LF":                          crlf,
		"byte order mark":                func(s string) string { return "\ufeff" + s },
		"CR LF behind a byte order mark": func(s string) string { return "\ufeff" + crlf(s) },
	} {
		got, text := advise(editor)
		assert.Equal(t, want, got, name)
		assert.Equal(t, editor(saved), text, name)
	}
}
