package main

import (
	"bytes"
	"strings"
	"testing"

	"github.com/spf13/cobra"
	"github.com/spf13/pflag"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"scalepair/data/unit"
	"scalepair/tuning"
)

// tree is the command tree of a run that prints nothing.
func tree() *cobra.Command {
	var out bytes.Buffer
	a := &app{out: &out, err: &out, env: func(string) string { return "" }}
	return a.root()
}

func choices(line ...string) []string {
	var out, errOut bytes.Buffer
	run(append([]string{"__complete"}, line...), &out, &errOut)
	lines := strings.Split(strings.TrimSpace(out.String()), "\n")
	return lines[:len(lines)-1] // the last line tells the shell how to take them
}

// Whatever is offered as a tuning is one, with the notes that stand beside it.
func TestOfferedTuningsAreTunings(t *testing.T) {
	offered := choices("advise", "--tuning", "")
	require.Len(t, offered, len(tuning.Named()))
	for _, line := range offered {
		name, notes, _ := strings.Cut(line, "\t")
		got, err := tuning.Parse(name)
		require.NoError(t, err)
		assert.Equal(t, notes, got.String())
	}
}

// Whatever is offered as a length reads back to the length of the grid.
func TestOfferedLengthsReadBack(t *testing.T) {
	for _, in := range []float64{25.3, 25.5, 26.0625, 27} {
		for _, u := range []unit.LengthUnit{unit.Millimetres, unit.DecimalInches, unit.InchFractions} {
			word := lengthWord(u, unit.Inches(in))
			got, err := unit.ParseLength(word)
			if assert.NoError(t, err, word) {
				assert.InDelta(t, in, got.Inches(), 1e-6, word) // printed to the millionth
			}
			assert.LessOrEqual(t, len(word), len("1587.123456mm"), word)
		}
	}
}

// Every command that reads a build file has something to offer for it, and
// every flag whose usage lists its words completes some of them.
func TestEveryCommandCompletes(t *testing.T) {
	for _, c := range tree().Commands() {
		t.Run(c.Name(), func(t *testing.T) {
			if strings.Contains(c.Use, "[build.toml]") {
				assert.NotEmpty(t, choices(c.Name(), ""))
			}
			c.Flags().VisitAll(func(f *pflag.Flag) {
				if f.Name == "format" || f.Name == "lengths" || f.Name == "forces" {
					offered := choices(c.Name(), "--"+f.Name, "")
					require.NotEmpty(t, offered, f.Name)
					for _, w := range offered {
						assert.Contains(t, f.Usage, w, f.Name)
					}
				}
			})
		})
	}
}
