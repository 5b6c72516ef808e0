package main

import (
	"github.com/spf13/cobra"

	"scalepair/cmd/scalepair/answer"
	"scalepair/cmd/scalepair/build"
)

// compareOptions are what compare takes beside a build file.
type compareOptions struct {
	output outputFlags
	over   build.Flags
	asked  build.Comparison
}

func (a *app) compareCommand() *cobra.Command {
	o := &compareOptions{}
	c := &cobra.Command{
		Use:   "compare [build.toml]",
		Short: "Set tunings, gauge sets and scale pairs side by side on one build",
		Long: `compare prints a verdict, then columns side by side: feel error, tension, bends,
inharmonicity, slants and blanks of each, every string in each, and the swaps of
single strings that would bring a given set nearer.

The columns are those of [[compare]] in the build file. Flags take their place:
--tuning, --retune, --capo, --pair and --gauges may each be given again and
again, and every combination is a column. --gauges also takes a word: today (the
set chosen or given), reference (the reference instrument's) or suggested (the
best of the stock). With --one-set all columns have one set, the one that does
best in all of them. Without columns of either kind, or with one alone and no
--gauges, today's set stands against the suggested one; where there is no set of
today, the reference instrument's.

What a column leaves open is the build's: its tuning or tunings, its chosen pair
or the pick of advise, today's set or else a suggested one.`,
		Example: `  scalepair compare
  scalepair compare --tuning "baritone B" --tuning "baritone A" --one-set
  scalepair compare --pair "686 mm" --pair "700 / 670 mm" --pair "27.5 / 26 in"
  scalepair compare --retune 6=A1 --gauges "w56 w44 w34 w24 p17 p13" --gauges suggested
  scalepair compare --capo 0 --capo 2 --only strings`,
		Args: buildFile,
		RunE: func(_ *cobra.Command, args []string) error { return a.compare(first(args), o) },
	}
	o.output.add(c)
	f := c.Flags()
	answer.CompareFlags(f, &o.asked)
	o.over.Add(f, "pitch", "neutral")
	return c
}

func (a *app) compare(path string, o *compareOptions) error {
	j, err := a.open(path, &o.over, o.output.units)
	if err != nil {
		return err
	}
	r, err := j.Compare(o.asked)
	return a.print(&o.output, r, err)
}
