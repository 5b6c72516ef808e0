package main

import (
	"fmt"
	"strings"

	"github.com/spf13/cobra"

	"scalepair/cmd/scalepair/build"
	"scalepair/cmd/scalepair/job"
	"scalepair/cmd/scalepair/report"
	"scalepair/data/fault"
	"scalepair/data/unit"
	"scalepair/tension/choice"
)

// compareOptions are what compare takes beside a build file.
type compareOptions struct {
	output outputFlags
	over   build.Flags
	asked  job.Comparison
	within string
}

func (a *app) compareCommand() *cobra.Command {
	o := &compareOptions{}
	c := &cobra.Command{
		Use:   "compare [build.toml]",
		Short: "Set tunings, gauge sets and scale pairs side by side on one build",
		Long: `compare prints columns side by side: what every string does in each, what they
come to as a whole, which limits each breaks, and which strings would have to be
swapped for which gauge of the stock to come near the wanted tension.

The columns are those of [[compare]] in the build file. Flags take their place:
--tuning, --retune, --capo, --pair and --gauges may each be given again and
again, and every combination is a column. Each --retune is one more tuning
beside the build's own. --gauges also takes a word: today (the set chosen or
given), reference (the reference instrument's) or suggested (the best of the
stock). Without columns of either kind, or with one alone and no --gauges, today's
set stands against the suggested one; where there is no set of today, the
reference instrument's.

What a column leaves open is the build's: its tuning or tunings, its chosen pair
or the best of advise, today's set or else a suggested one.`,
		Example: `  scalepair compare
  scalepair compare --tuning "baritone B" --tuning "baritone A" --tuning "drop A baritone" --pair "700 / 670 mm"
  scalepair compare --pair "686 mm" --pair "700 / 670 mm" --pair "27.5 / 26 in" --within 3%
  scalepair compare --retune 6=A1 --gauges "w56 w44 w34 w24 p17 p13" --gauges suggested
  scalepair compare --capo 0 --capo 2 --only tensions,bends`,
		Args: buildFile,
		RunE: func(_ *cobra.Command, args []string) error { return a.compare(first(args), o) },
	}
	o.output.add(c)
	f := c.Flags()
	f.StringArrayVar(&o.asked.Tunings, "tuning", nil, "`notes` low to high, or a named tuning; may be repeated")
	f.StringArrayVar(&o.asked.Retunes, "retune", nil, "the build's tuning with strings at other `notes`, such as 6=A1; may be repeated")
	f.StringArrayVar(&o.asked.Capos, "capo", nil, "`fret` of a capo, 0 for none; may be repeated")
	f.StringArrayVar(&o.asked.Pairs, "pair", nil, "bass and treble scale `lengths`, such as \"690 / 650 mm\", or one for straight frets; may be repeated")
	f.StringArrayVar(&o.asked.Gauges, "gauges", nil, "`gauges` of the stock, low string first, or a word: today, reference, suggested; may be repeated")
	f.StringVar(&o.within, "within", "5%", "tension misfit in `percent` that swapped strings should come within")
	o.over.AddPitch(f)
	o.over.AddNeutral(f)
	return c
}

func (a *app) compare(path string, o *compareOptions) error {
	if _, err := o.output.options(a); err != nil {
		return err
	}
	within, err := percentOf(o.within)
	if err != nil {
		return err
	}
	j, err := a.load(path, &o.over)
	if err != nil {
		return err
	}
	units := o.output.units(j)
	in := &report.Input{Job: j, Units: units}
	columns, err := j.Columns(o.asked)
	if err != nil {
		return err
	}
	if err := a.settlePairs(in, columns); err != nil {
		return err
	}
	columns, requests, err := j.Requests(columns)
	if err != nil {
		return err
	}
	compared, err := choice.Compare(requests, within)
	if err != nil {
		return err
	}
	in.Plan = compared[0].Plan
	cmp := &report.Comparison{Asked: columns, Compared: compared, Within: within}
	return a.write(&o.output, report.Compare(in, cmp), func() any { return report.CompareValues(in, cmp) })
}

// mostWithin is the widest misfit that is worth naming, in percent.
const mostWithin = 50

// percentOf reads "3%", "3 %" or "3".
func percentOf(text string) (float64, error) {
	x, err := unit.ParseNumber(strings.TrimSpace(strings.TrimSuffix(strings.TrimSpace(text), "%")))
	if err != nil || !(x > 0 && x <= mostWithin) {
		return 0, fault.Fault{Place: fault.Place{Input: "--within"}, What: "not a misfit in percent", Given: text,
			Remedy: fmt.Sprintf("give more than 0 and up to %d, such as 3%%", mostWithin)}
	}
	return x, nil
}

// settlePairs puts the best pair of advise into the columns whose pair is
// open, and says so.
func (a *app) settlePairs(in *report.Input, columns []job.Column) error {
	var open []int
	for i, c := range columns {
		if c.BassMM == 0 {
			open = append(open, i)
		}
	}
	if open == nil {
		return nil
	}
	var err error
	if in.Plan, err = in.Job.Plan(); err != nil {
		return err
	}
	best, dropped, ok := in.Plan.SearchBest()
	if !ok {
		return noPair(in, dropped)
	}
	for _, i := range open {
		columns[i].BassMM, columns[i].TrebleMM = best.BassMM, best.TrebleMM
	}
	a.hint("no pair is settled: comparing on the best of advise, %s", in.Pair(best.BassMM, best.TrebleMM))
	return nil
}
