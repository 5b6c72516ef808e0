package main

import (
	"bytes"
	"os/exec"
	"strings"
	"testing"

	"github.com/spf13/cobra"
	"github.com/spf13/pflag"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"scalepair/data/testutil"
	"scalepair/data/unit"
	"scalepair/tuning"
)

// tree is the command tree of a run that prints nothing.
func tree() *cobra.Command {
	var out bytes.Buffer
	a := &app{out: &out, err: &out, env: func(string) string { return "" }}
	return a.root(nil)
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
				require.NotEmpty(t, choices(c.Name(), ""))
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

// Bash itself, with stand-ins for what its package bash-completion brings.
func TestBashCompletes(t *testing.T) {
	bash := testutil.NeedTool(t, "bash")
	const helpers = `
source <(scalepair completion bash)
compopt() { :; }
_get_comp_words_by_ref() { cur=${COMP_WORDS[COMP_CWORD]}; prev=${COMP_WORDS[COMP_CWORD-1]}; words=("${COMP_WORDS[@]}"); cword=$COMP_CWORD; }
COMP_WORDS=("$@"); COMP_CWORD=$(($#-1)); COMP_LINE="$*"; COMP_POINT=${#COMP_LINE}; COLUMNS=80
for COMP_TYPE in 9 37; do COMPREPLY=(); __start_scalepair scalepair; printf '%s\n' "${COMPREPLY[@]%%  *}"; done`
	for _, c := range []struct {
		name string
		line []string
		want string // once for the tab key, once for a menu
	}{
		{"a command", []string{"advi"}, "advise\nadvise\n"},
		{"a name with a blank", []string{"advise", "--tuning", `double`}, "double\\ drop\\ D\ndouble\\ drop\\ D\n"},
		{"behind a blank", []string{"advise", "--tuning", `double\ drop\ `}, "double\\ drop\\ D\ndouble\\ drop\\ D\n"},
		{"a gauge", []string{"advise", "--gauges", "p09"}, "p09\np095\np09\np095\n"},
		{"a second gauge", []string{"advise", "--gauges", "w56,w44"}, "w56,w44\nw56,w44\n"},
		{"a third gauge", []string{"advise", "--gauges", "w56,w44,p09"}, "w56,w44,p09\nw56,w44,p095\nw56,w44,p09\nw56,w44,p095\n"},
		{"a table", []string{"layout", "--only", "slants,ma"}, "slants,marks\nslants,marks\n"},
	} {
		t.Run(c.name, func(t *testing.T) {
			run := exec.Command(bash, append([]string{"-c", helpers, "bash", "scalepair"}, c.line...)...)
			run.Dir = t.TempDir()
			var errs bytes.Buffer
			run.Stderr = &errs
			out, err := run.Output()
			require.NoError(t, err, errs.String())
			assert.Equal(t, c.want, string(out))
			assert.Empty(t, errs.String())
		})
	}
}
