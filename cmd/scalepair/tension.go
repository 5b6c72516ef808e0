package main

import (
	"fmt"
	"slices"

	"github.com/spf13/cobra"

	"scalepair/cmd/scalepair/build"
	"scalepair/cmd/scalepair/report"
	"scalepair/data/fault"
)

// tensionOptions are what tension takes beside a build file.
type tensionOptions struct {
	output  outputFlags
	over    build.Flags
	explain int
	fret    float64
}

// buildsFret is the value of --fret that leaves the fret to the build.
const buildsFret = -1

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
	f := c.Flags()
	f.IntVar(&o.explain, "explain", 0, "show the work for the `string` of this number, 1 the highest")
	f.Float64Var(&o.fret, "fret", buildsFret, "with --explain: `fret` of the bend, 0 for none (default: the build's first, on a string that is bent)")
	f.Lookup("fret").DefValue = "0" // the usage says it in words
	return c
}

func (a *app) tension(path string, o *tensionOptions) error {
	j, err := a.load(path, &o.over)
	if err != nil {
		return err
	}
	in, err := a.input(j, &o.output)
	if err != nil {
		return err
	}
	if err := o.check(in); err != nil {
		return err
	}
	d, err := a.detail(in)
	if err != nil {
		return err
	}
	if o.explain == 0 {
		return a.print(&o.output, report.NewTension(in, d))
	}
	w, err := in.Run.Work(in.Plan, d, o.explain, o.fret)
	if err != nil {
		return err
	}
	return a.print(&o.output, report.NewExplained(in, d, w))
}

// check settles the fret, and refuses a string or a fret that is not there.
func (o *tensionOptions) check(in *report.Input) error {
	strings, last := in.Plan.Request().Neck.Strings, in.Plan.Request().Neck.Frets
	if o.explain < 0 || o.explain > strings {
		return fault.Fault{Place: fault.Place{Input: "--explain"}, What: "there is no such string", Given: fmt.Sprint(o.explain), Remedy: fmt.Sprintf("use 1 to %d, 1 the highest", strings)}
	}
	if o.fret == buildsFret {
		o.fret = 0
		if frets := in.Plan.Request().Feel.BendFrets; len(frets) > 0 && slices.Contains(in.Plan.BendStrings(), o.explain) {
			o.fret = float64(frets[0])
		}
	}
	if o.fret != 0 && !(o.fret >= 1 && o.fret <= float64(last)) {
		return fault.Fault{Place: fault.Place{Input: "--fret"}, What: "there is no such fret to bend at", Given: fmt.Sprint(o.fret), Remedy: fmt.Sprintf("give 1 to %d, or 0 for no bend", last)}
	}
	return nil
}
