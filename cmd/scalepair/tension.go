package main

import (
	"github.com/spf13/cobra"

	"scalepair/cmd/scalepair/build"
	"scalepair/cmd/scalepair/report"
)

func (a *app) tensionCommand() *cobra.Command {
	var output outputFlags
	var over build.Flags
	c := &cobra.Command{
		Use:   "tension [build.toml]",
		Short: "Tension, bend, breaking share and inharmonicity of every string of one pair",
		Long: `tension prints the strings of one scale pair with one set of gauges. Pair and set
are those given, else those chosen in the build file, else the best of advise.`,
		Example: `  scalepair tension
  scalepair tension --bass "686 mm" --treble "648 mm" --forces lbf
  scalepair tension --tuning "B1 E2 A2 D3 F#3 A3" --format csv --only strings`,
		Args: buildFile,
		RunE: func(_ *cobra.Command, args []string) error {
			in, err := a.ready(first(args), &over, &output)
			if err != nil {
				return err
			}
			d, err := a.detail(in)
			if err != nil {
				return err
			}
			return a.write(&output, report.Tension(in, d), func() any { return report.TensionValues(in, d) })
		},
	}
	output.add(c)
	over.Add(c.Flags())
	return c
}
