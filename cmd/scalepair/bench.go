package main

import (
	"github.com/spf13/cobra"

	"scalepair/cmd/scalepair/build"
	"scalepair/cmd/scalepair/report"
	"scalepair/data/unit"
	"scalepair/fan/mark"
)

// benchOptions are what bench takes beside a build file.
type benchOptions struct {
	output      outputFlags
	over        build.Flags
	calipers    mark.Resolution
	blank       string
	radiusFirst bool
	out, date   string // of the sheet
	force       bool
}

func (a *app) benchCommand() *cobra.Command {
	o := &benchOptions{}
	c := &cobra.Command{
		Use:   "bench [build.toml]",
		Short: "The setting-out list: every line, mark, slot and saddle in working order",
		Long: `bench prints what a builder sets out by hand for the chosen pair, in working
order: the blank, centreline, string lines, nut, marks, the checks before the
first cut, slots and their depth, dots, fret wire, nut slots, bridge and saddles,
pickups, and what to buy. Marks are rounded to what calipers show: the
resolution that the build file states (caliper_resolution under [measuring] or
[marking]), 0.01 mm or 0.001 in at the finest, in decimals even where lengths go
in fractions.

--out writes the bench sheet instead: the choice, the strings, the fan drawn in
true size and the setting-out list with boxes to tick, one page of HTML that needs
no network. Templates to print and glue come from draw.`,
		Example: `  scalepair bench
  scalepair bench --calipers 0.05mm
  scalepair bench --calipers 1/64in --only bass-marks,treble-marks
  scalepair bench --out sheet.html --date "3 May"`,
		Args: buildFile,
		RunE: func(_ *cobra.Command, args []string) error {
			in, list, err := a.bench(first(args), o)
			switch {
			case err != nil:
				return err
			case o.out != "":
				return a.sheet(in, list, o)
			}
			return a.print(&o.output, list)
		},
	}
	o.output.add(c)
	o.over.Add(c.Flags())
	f := c.Flags()
	textVar(f, &o.calipers, "calipers", "least `difference` your calipers show, such as 0.05mm, 0.001in or 1/64in (default: the build file's, else 0.01mm or 0.001in)")
	f.StringVar(&o.blank, "blank", "", "`name` of the blank on offer to work with (default: the first that fits)")
	f.BoolVar(&o.radiusFirst, "radius-first", false, "the board is radiused before it is slotted")
	textVar(f, namedFile{&o.out, ".html"}, "out", "write the bench sheet into this HTML `file`")
	f.StringVar(&o.date, "date", "", "with --out: `date` to print, in your own words")
	f.BoolVar(&o.force, "force", false, "with --out: replace a file that exists")
	return c
}

// bench works the setting-out list out.
func (a *app) bench(path string, o *benchOptions) (*report.Input, *report.Bench, error) {
	in, err := a.ready(path, &o.over, &o.output)
	if err != nil {
		return nil, nil, err
	}
	fineness := o.fineness(in)
	l, d, err := a.fretted(in)
	if err != nil {
		return nil, nil, err
	}
	list, err := report.NewBench(in, l, d, report.BenchOptions{Fineness: fineness, Blank: o.blank, RadiusFirst: o.radiusFirst})
	return in, list, err
}

// fineness is how finely marks are printed. Where --calipers is given and
// --lengths is not, everything is printed in the calipers' unit; inches of either
// kind go together.
func (o *benchOptions) fineness(in *report.Input) build.Fineness {
	if o.calipers == (mark.Resolution{}) {
		return in.Run.Calipers(in.Units.Length)
	}
	if !o.output.flags.Changed("lengths") && !(o.calipers.Unit == unit.DecimalInches && in.Units.Length == unit.InchFractions) {
		in.Units.Length = o.calipers.Unit
	}
	return build.Fineness{Resolution: o.calipers, From: "--calipers", Stated: o.calipers.Length()}
}
