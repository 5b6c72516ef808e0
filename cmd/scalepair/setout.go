package main

import (
	"github.com/spf13/cobra"

	"scalepair/cmd/scalepair/build"
	"scalepair/cmd/scalepair/report"
	"scalepair/data/fault"
	"scalepair/data/unit"
	"scalepair/fan/mark"
)

// setoutOptions are what setout takes beside a build file.
type setoutOptions struct {
	output      outputFlags
	over        build.Flags
	calipers    string
	blank       string
	radiusFirst bool
}

func (a *app) setoutCommand() *cobra.Command {
	o := &setoutOptions{}
	c := &cobra.Command{
		Use:   "setout [build.toml]",
		Short: "The setting-out list: every line, mark, slot and saddle in working order",
		Long: `setout prints what a builder sets out by hand for the chosen pair, in working
order: the blank, centreline, string lines, nut, marks, the checks before the
first cut, slots and their depth, dots, fret wire, nut slots, bridge and saddles,
pickups, and what to buy. Marks are rounded to what calipers show: the step that
the build file states (caliper_resolution under [measuring] or [marking]), 0.01 mm or
0.001 in at the finest, in decimals even where lengths go in fractions.`,
		Example: `  scalepair setout
  scalepair setout --calipers 0.05mm
  scalepair setout --calipers 1/64in --only bass-marks,treble-marks`,
		Args: buildFile,
		RunE: func(_ *cobra.Command, args []string) error { return a.setout(first(args), o) },
	}
	o.output.add(c)
	o.over.Add(c.Flags())
	f := c.Flags()
	f.StringVar(&o.calipers, "calipers", "", "least `difference` your calipers show, such as 0.05mm, 0.001in or 1/64in (default: the build file's, else 0.01mm or 0.001in)")
	f.StringVar(&o.blank, "blank", "", "`name` of the blank on offer to work with (default: the first that serves)")
	f.BoolVar(&o.radiusFirst, "radius-first", false, "the board is radiused before it is slotted")
	return c
}

func (a *app) setout(path string, o *setoutOptions) error {
	if _, err := o.parse(); err != nil {
		return err
	}
	in, err := a.ready(path, &o.over, &o.output)
	if err != nil {
		return err
	}
	resolution, err := o.resolution(in)
	if err != nil {
		return err
	}
	l, d, err := a.fretted(in)
	if err != nil {
		return err
	}
	s, err := in.Job.SetOut(l, d, build.SetOutOptions{Resolution: resolution, Blank: o.blank, RadiusFirst: o.radiusFirst})
	if err != nil {
		return err
	}
	return a.write(&o.output, report.SetOut(in, s), func() any { return report.SetOutValues(in, s) })
}

// parse reads --calipers; the zero value where it is not given.
func (o *setoutOptions) parse() (build.Fineness, error) {
	if o.calipers == "" {
		return build.Fineness{}, nil
	}
	r, err := mark.ParseResolution(o.calipers)
	var faults fault.List
	faults.Include(fault.Place{Input: "--calipers"}, err)
	return build.Fineness{Resolution: r, From: "--calipers", Stated: unit.MM(r.StepMM())}, faults.Err()
}

// resolution is how finely marks are printed. Where --calipers is given and
// --lengths is not, everything is printed in the calipers' unit; inches of
// either kind go together.
func (o *setoutOptions) resolution(in *report.Input) (build.Fineness, error) {
	f, err := o.parse()
	switch {
	case err != nil:
		return f, err
	case o.calipers == "":
		return in.Job.Calipers(in.Units.Length), nil
	case !o.output.flags.Changed("lengths") && !(f.Unit == unit.DecimalInches && in.Units.Length == unit.InchFractions):
		in.Units.Length = f.Unit
	}
	return f, nil
}

// benchFlags are the flags of the bench.
func (o *setoutOptions) benchFlags(c *cobra.Command) {
	f := c.Flags()
	f.StringVar(&o.calipers, "calipers", "", "least `difference` your calipers show, such as 0.05mm, 0.001in or 1/64in (default: the build file's)")
	f.StringVar(&o.blank, "blank", "", "`name` of the blank on offer to work with (default: the first that serves)")
	f.BoolVar(&o.radiusFirst, "radius-first", false, "the board is radiused before it is slotted")
}
