package main

import (
	"github.com/spf13/cobra"

	"scalepair/cmd/scalepair/build"
	"scalepair/cmd/scalepair/report"
)

func (a *app) layoutCommand() *cobra.Command {
	var output outputFlags
	var over build.Flags
	c := &cobra.Command{
		Use:   "layout [build.toml]",
		Short: "String lines, marks, slants, spacing and blank of one pair",
		Long: `layout prints the fan of one scale pair: marks on both outer string lines from
the nut and as steps, slants, string positions along nut and saddle line, and
the blank it needs.`,
		Example: `  scalepair layout
  scalepair layout --bass 27in --treble 25.5in --lengths in64
  scalepair layout --neutral 7.5 --only marks --format csv`,
		Args: buildFile,
		RunE: func(_ *cobra.Command, args []string) error {
			in, err := a.ready(first(args), &over, &output)
			if err != nil {
				return err
			}
			l, err := a.layoutOf(in)
			if err != nil {
				return err
			}
			return a.write(&output, report.Layout(in, l), func() any { return report.LaidOutValues(in, l) })
		},
	}
	output.add(c)
	over.Add(c.Flags())
	return c
}
