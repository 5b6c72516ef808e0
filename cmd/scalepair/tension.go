package main

import (
	"github.com/spf13/cobra"

	"scalepair/cmd/scalepair/answer"
	"scalepair/cmd/scalepair/build"
)

// tensionOptions are what tension takes beside a build file.
type tensionOptions struct {
	output  outputFlags
	over    build.Flags
	explain answer.Explain
}

func (a *app) tensionCommand() *cobra.Command {
	o := &tensionOptions{}
	c := &cobra.Command{
		Use:   "tension [build.toml]",
		Short: "Tension, bends, breaking strength and inharmonicity of every string of one pair",
		Long: `tension prints the strings of one scale pair with one set of gauges. Pair and set
are those given, else those chosen in the build file, else the pick of advise.

--explain shows the work for one string: every step from its readings to the
linear density with its uncertainty, to tension, breaking strength, inharmonicity,
a bend and the compensation of the saddle, with the source of each formula and
number, so that it can be followed with a pocket calculator.`,
		Example: `  scalepair tension
  scalepair tension --bass "686 mm" --treble "648 mm" --forces lbf
  scalepair tension --tuning "B1 E2 A2 D3 F#3 A3" --format csv --only strings
  scalepair tension --explain 6
  scalepair tension --explain 2 --fret 12 --only bend`,
		Args: buildFile,
		RunE: func(_ *cobra.Command, args []string) error { return a.tension(first(args), o) },
	}
	o.output.add(c)
	o.over.Add(c.Flags())
	o.explain.Flags(c.Flags())
	return c
}

func (a *app) tension(path string, o *tensionOptions) error {
	j, err := a.open(path, &o.over, o.output.units)
	if err != nil {
		return err
	}
	r, err := j.Tension(o.explain)
	return a.print(&o.output, r, err)
}
