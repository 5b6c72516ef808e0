package main

import (
	"github.com/spf13/cobra"

	"scalepair/cmd/scalepair/build"
	"scalepair/cmd/scalepair/report"
	"scalepair/data/fault"
	"scalepair/tension/choice"
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
	f.StringArrayVar(&o.asked.Tunings, "tuning", nil, "`notes` low to high, or a named tuning; may be repeated")
	f.StringArrayVar(&o.asked.Retunes, "retune", nil, "the build's tuning with strings at other `notes`, such as 6=A1; may be repeated")
	f.StringArrayVar(&o.asked.Capos, "capo", nil, "`fret` of a capo, 0 for none; may be repeated")
	f.StringArrayVar(&o.asked.Pairs, "pair", nil, "bass and treble scale `lengths`, such as \"690 / 650 mm\", or one for straight frets; may be repeated")
	f.StringArrayVar(&o.asked.Gauges, "gauges", nil, "`gauges` of the stock, low string first, or a word: today, reference, suggested; may be repeated")
	f.BoolVar(&o.asked.OneSet, "one-set", false, "one set for all columns: the one that does best in all of them")
	o.over.Add(f, "pitch", "neutral")
	return c
}

func (a *app) compare(path string, o *compareOptions) error {
	j, err := a.load(path, &o.over)
	if err != nil {
		return err
	}
	in := &report.Input{Run: j, Units: o.output.units(j)}
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
	var oneSet []int
	if o.asked.OneSet {
		var none choice.Miss
		if oneSet, none, err = choice.OneSet(requests); err != nil {
			return err
		}
		if oneSet == nil {
			in.Plan, _ = j.Plan()
			return fault.Fault{Place: fault.Place{Input: "--one-set"}, What: "no set keeps the limits on strings in all columns: " + in.MissWords(none)}
		}
		for i := range requests {
			requests[i].Set, columns[i].Set, columns[i].SetName = oneSet, oneSet, "one set"
		}
	}
	found, err := choice.Compare(requests)
	if err != nil {
		return err
	}
	in.Plan = found[0].Plan
	return a.print(&o.output, report.NewComparison(in, columns, found, oneSet))
}

// settlePairs puts the pick of advise into the columns whose pair is open, and
// says so.
func (a *app) settlePairs(in *report.Input, columns []build.Column) error {
	var pick *choice.Pick
	for i := range columns {
		if columns[i].HasPair() {
			continue
		}
		if pick == nil {
			var err error
			if in.Plan, err = in.Run.Plan(); err == nil {
				pick, err = a.preferred(in, in.Plan)
			}
			if err != nil {
				return err
			}
			a.hint("no pair is chosen: comparing on the pick %q of advise, %s", pick.Kind, in.Pair(pick.Bass, pick.Treble))
		}
		columns[i].SetPair(pick.Bass, pick.Treble)
	}
	return nil
}
