package main

import (
	"bytes"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// harmlessFolder holds files that are not as the program writes them and mean
// the same all the same.
const harmlessFolder = "../../testdata/harmless"

// readBy are the commands that a file of each group is read by.
var readBy = map[string][]string{
	"readings": {"gauges", "tension"},
	"marks":    {"check measured.csv"},
	"builds":   {"tension", "layout", "advise --trials 50"},
}

// What is harmless gives the same result as the clean file, to the letter.
func TestHarmlessSlips(t *testing.T) {
	wanted := map[string]string{}
	t.Run("clean", func(t *testing.T) {
		t.Chdir(soundFolder(t))
		for _, lines := range readBy {
			for _, line := range lines {
				wanted[line] = resultOf(t, line)
			}
		}
	})
	files, err := filepath.Glob(harmlessFolder + "/*/*")
	require.NoError(t, err)
	require.NotEmpty(t, files)
	for _, file := range files {
		group := filepath.Base(filepath.Dir(file))
		t.Run(group+"/"+filepath.Base(file), func(t *testing.T) {
			require.Contains(t, readBy, group)
			text, err := os.ReadFile(file)
			require.NoError(t, err)
			dir := soundFolder(t)
			clean, err := os.ReadFile(filepath.Join(dir, standsFor[group]))
			require.NoError(t, err)
			require.NotEqual(t, string(clean), string(text), "there is no slip in this file")
			require.NoError(t, os.WriteFile(filepath.Join(dir, standsFor[group]), text, 0o644))
			t.Chdir(dir)
			for _, line := range readBy[group] {
				assert.Equal(t, wanted[line], resultOf(t, line), "scalepair %s", line)
			}
		})
	}
}

// The same for values on the command line: both lines of a pair print the same.
func TestHarmlessSlipsOfTheLine(t *testing.T) {
	t.Chdir(soundFolder(t))
	for _, pair := range [][2]string{
		{`tension --bass 648mm`, `tension --bass "64.8 cm"`},
		{`tension --bass 648mm`, "tension --bass \"648\u00a0mm\""},
		{`tension --bass 648mm`, `tension --bass "648 millimetres"`},
		{`tension --bass "25.5 in"`, `tension --bass "25 1/2 in"`},
		{`tension --bass "25.5 in"`, `tension --bass "25-1/2in"`},
		{`tension --bass "25.5 in"`, `tension --bass "25½ in"`},
		{`tension --bass "25.5 in"`, `tension --bass '25.5"'`},
		{`tension --bass "25.5 in"`, `tension --bass 25.5″`},
		{`tension --bass "25.5 in"`, `tension --bass "25.5''"`},
		{`tension --bass "25.5 in"`, `tension --bass "25.5 IN."`},
		{`tension --tuning "D2 A2 D3 F#3 A3 D4"`, `tension --tuning "d2 a2 d3 f♯3 a3 d4"`},
		{`tension --tuning "D2 A2 D3 F#3 A3 D4"`, `tension --tuning "D2, A2, D3, F#3, A3, D4"`},
		{`tension --tuning "Eb2 Ab2 Db3 Gb3 Bb3 Eb4"`, `tension --tuning "E♭2 A♭2 D♭3 G♭3 B♭3 E♭4"`},
		{`tension --tuning "drop D"`, `tension --tuning "Dropped-D"`},
		{`tension --gauges "w46 w36 w26 p17 p13 p10"`, `tension --gauges w46,w36,w26,p17,p13,p10`},
		{`tension --gauges "w46 w36 w26 p17 p13 p10"`, `tension --gauges "w46; w36; w26; p17; p13; p10"`},
		{`tension --gauges "w46 w36 w26 p17 p13 p10"`, `tension --gauges "W46 W36 W26 P17 P13 P10"`},
		{`tension --pitch 442`, `tension --pitch "442 Hz"`},
		{`tension --pitch 442`, `tension --pitch 442hz`},
		{`layout --neutral bridge`, `layout --neutral Bridge`},
		{`layout --neutral 7`, `layout --neutral 7.0`},
		{`check measured.csv --tolerance 3cents`, `check measured.csv --tolerance "3 CENTS"`},
	} {
		assert.Equal(t, resultOf(t, pair[0]), resultOf(t, pair[1]), pair[1])
	}
}

// resultOf runs a command line that must do, and gives what it prints.
func resultOf(t *testing.T, line string) string {
	t.Helper()
	var out, errOut bytes.Buffer
	require.Equal(t, exitDone, run(argumentsOf(t, line), &out, &errOut), "scalepair %s\n%s", line, errOut.String())
	require.NotEmpty(t, strings.TrimSpace(out.String()))
	return out.String()
}
