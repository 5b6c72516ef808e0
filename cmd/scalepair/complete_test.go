package main

import (
	"bytes"
	"context"
	"os/exec"
	"strings"
	"testing"

	"github.com/spf13/cobra"
	"github.com/spf13/pflag"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"scalepair/data/testutil"
	"scalepair/tuning"
)

// tree is the command tree of a run that prints nothing.
func tree() *cobra.Command {
	var out bytes.Buffer
	return (&app{ctx: context.Background(), out: &out, err: &out}).root()
}

func choices(line ...string) []string {
	var out, errOut bytes.Buffer
	run(context.Background(), append([]string{"__complete"}, line...), &out, &errOut)
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

// What is offered for a flag stands in its usage.
func TestEveryCommandCompletes(t *testing.T) {
	for _, c := range tree().Commands() {
		c.Flags().VisitAll(func(f *pflag.Flag) {
			if f.Name == "format" || f.Name == "lengths" || f.Name == "forces" {
				offered := choices(c.Name(), "--"+f.Name, "")
				require.NotEmpty(t, offered, "%s --%s", c.Name(), f.Name)
				for _, w := range offered {
					assert.Contains(t, f.Usage, w, "%s --%s", c.Name(), f.Name)
				}
			}
		})
	}
}

func TestGaugesAreOfferedOneAfterAnother(t *testing.T) {
	offered := choices("tension", "--gauges", "w54 ")
	require.NotEmpty(t, offered)
	for _, line := range offered {
		assert.Regexp(t, `^w54 \S+\t`, line)
	}
}

// The scripts that cobra writes are ones that their shells read.
func TestCompletionScripts(t *testing.T) {
	for _, shell := range []string{"bash", "zsh", "fish", "powershell"} {
		var out, errOut bytes.Buffer
		require.Equal(t, exitDone, run(context.Background(), []string{"completion", shell}, &out, &errOut), errOut.String())
		if shell == "bash" {
			c := exec.Command(testutil.NeedTool(t, "bash"), "-n")
			c.Stdin = &out
			assert.NoError(t, c.Run())
		}
	}
}
