package main

import (
	"fmt"
	"slices"
	"strconv"

	"github.com/spf13/cobra"

	"scalepair/cmd/scalepair/build"
	"scalepair/cmd/scalepair/report"
	"scalepair/data/fault"
	"scalepair/data/unit"
)

// explainOptions are what explain takes beside a string and a build file.
type explainOptions struct {
	output outputFlags
	over   build.Flags
	fret   string
}

func (a *app) explainCommand() *cobra.Command {
	o := &explainOptions{}
	c := &cobra.Command{
		Use:   "explain string [build.toml]",
		Short: "Show the work for one string, from the readings to tension, bending force and compensation",
		Long: `explain prints every step for one string, 1 the highest: from the readings to the
linear density with its uncertainty, to tension, breaking share, inharmonicity, the
bending force of a bend and the compensation of the saddle, with the source of each formula
and number. The numbers carry the digits that the next steps need, so that the
work can be followed with a pocket calculator.

Pair and set are those of scalepair tension.`,
		Example: `  scalepair explain 1
  scalepair explain 6 --bass "700 mm" --treble "670 mm" --gauges "w56 w44 w34 w24 p17 p13"
  scalepair explain 2 --fret 12 --only gauge,bend`,
		Args: func(c *cobra.Command, args []string) error {
			if len(args) == 0 {
				return usageError{fault.Fault{Place: fault.Place{Input: c.CommandPath()}, What: "no string is named",
					Remedy: "give its number, 1 the highest: scalepair explain 1"}}
			}
			return buildFile(c, args[1:])
		},
		RunE: func(_ *cobra.Command, args []string) error {
			number, path := args[0], first(args[1:])
			if _, err := strconv.Atoi(path); err == nil {
				number, path = path, number
			}
			return a.explain(number, path, o)
		},
	}
	o.output.add(c)
	o.over.Add(c.Flags())
	c.Flags().StringVar(&o.fret, "fret", "", "`fret` of the bend, 0 for none (default: the build's first, on a string that is bent)")
	return c
}

func (a *app) explain(text, path string, o *explainOptions) error {
	j, err := a.load(path, &o.over)
	if err != nil {
		return err
	}
	number, err := stringNumber(text, j.Build.Strings.Tuning.Strings())
	if err != nil {
		return err
	}
	in, err := a.input(j, &o.output)
	if err != nil {
		return err
	}
	fret, err := o.bendFret(in, number)
	if err != nil {
		return err
	}
	d, err := a.detail(in)
	if err != nil {
		return err
	}
	w, err := j.Work(in.Plan, d, 0, number, fret)
	if err != nil {
		return err
	}
	return a.write(&o.output, report.Explain(in, d, w), func() any { return report.ExplainValues(in, d, w) })
}

// stringNumber reads the number of a string.
func stringNumber(text string, strings int) (int, error) {
	n, err := strconv.Atoi(text)
	if err != nil || n < 1 || n > strings {
		return 0, usageError{fault.Fault{Place: fault.Place{Input: "scalepair explain"}, What: "there is no such string", Given: text,
			Remedy: fmt.Sprintf("use 1 to %d, 1 the highest; the build file comes behind the number", strings)}}
	}
	return n, nil
}

// bendFret is the fret asked for, else the first of the build's on a string
// that is bent, else none.
func (o *explainOptions) bendFret(in *report.Input, number int) (float64, error) {
	frets := in.Plan.Request().Feel.BendFrets
	if o.fret == "" {
		if len(frets) > 0 && slices.Contains(in.Plan.BendStrings(), number) {
			return frets[0], nil
		}
		return 0, nil
	}
	last := in.Job.Build.Neck.Frets
	fret, err := unit.ParseNumber(o.fret)
	if err != nil || fret != 0 && !(fret >= 1 && fret <= float64(last)) {
		return 0, fault.Fault{Place: fault.Place{Input: "--fret"}, What: "there is no such fret to bend at", Given: o.fret,
			Remedy: fmt.Sprintf("give 1 to %d, or 0 for no bend", last)}
	}
	return fret, nil
}
