package main

import (
	"strconv"
	"strings"

	"github.com/spf13/cobra"

	"scalepair/cmd/scalepair/build"
	"scalepair/cmd/scalepair/report"
	"scalepair/data/fault"
	"scalepair/data/unit"
	"scalepair/fan"
)

// layoutOptions are what layout takes beside a build file.
type layoutOptions struct {
	output       outputFlags
	over         build.Flags
	neutralTable bool
	step         float64
	played       playedFrets
	angle, hand  unit.Angle
}

func (a *app) layoutCommand() *cobra.Command {
	o := &layoutOptions{}
	c := &cobra.Command{
		Use:   "layout [build.toml]",
		Short: "String lines, marks, slants, spacing and blank of one pair",
		Long: `layout prints the fan of one scale pair: marks on both outer string lines from
the nut and as steps, slants, string positions along nut and saddle line, and
the blank it needs.

--neutral-table moves the fret that stands square from the nut to the last fret,
and to the bridge, and prints what that does to the slants. It names the choices
that stand out; no rule decides among them.`,
		Example: `  scalepair layout
  scalepair layout --bass 27in --treble 25.5in --lengths in64
  scalepair layout --neutral 7.5 --only marks --format csv
  scalepair layout --neutral-table --played 1-9 --neck-angle "30 deg"`,
		Args: buildFile,
		RunE: func(c *cobra.Command, args []string) error { return a.layout(c, first(args), o) },
	}
	o.output.add(c)
	o.over.Add(c.Flags())
	f := c.Flags()
	f.BoolVar(&o.neutralTable, "neutral-table", false, "print what moving the neutral fret does")
	f.Float64Var(&o.step, "step", 1, "with --neutral-table: `step` of the neutral fret, 0.1 to 12")
	textVar(f, &o.played, "played", "with --neutral-table: `frets` played most, such as 1-9 (default: the build file's)")
	textVar(f, &o.angle, "neck-angle", "with --neutral-table: `angle` at which the neck points up from level, such as \"25 deg\"")
	textVar(f, &o.hand, "hand", "with --neutral-table: `slant` that lies best under your hand, such as \"-4 deg\", in place of a neck angle")
	c.MarkFlagsMutuallyExclusive("neck-angle", "hand")
	return c
}

func (a *app) layout(c *cobra.Command, path string, o *layoutOptions) error {
	in, err := a.ready(path, &o.over, &o.output)
	if err != nil {
		return err
	}
	l, err := a.layoutOf(in)
	if err != nil {
		return err
	}
	if !o.neutralTable {
		return a.print(&o.output, report.NewLayout(in, l))
	}
	play, given := in.Run.Build.Playing, c.Flags().Changed
	if given("played") {
		play.FromFret, play.ToFret = o.played.from, o.played.to
	}
	if given("neck-angle") {
		play.NeckAngle = &o.angle
	}
	if given("hand") {
		play.HandSlant = &o.hand
	}
	step := o.step
	if !given("step") {
		step = stepFor(l.Spec.Neutral)
	}
	table, err := fan.AdviseNeutral(l.Spec, step, play)
	if err != nil {
		return flagPlaces(err, map[string]string{"step": "--step", "hand": "--hand", "playing.to_fret": "--played"})
	}
	return a.print(&o.output, report.NewNeutralTable(in, l, table, play))
}

// stepFor gives the widest of a few steps that does not pass over the neutral fret
// in force.
func stepFor(n fan.Neutral) float64 {
	for _, step := range []float64{1, 0.5, 0.25} {
		if n.Fret/step == float64(int(n.Fret/step)) {
			return step
		}
	}
	return 1
}

// playedFrets is a range such as "1-9".
type playedFrets struct{ from, to float64 }

func (p *playedFrets) UnmarshalText(text []byte) error {
	low, high, _ := strings.Cut(string(text), "-")
	from, err1 := strconv.Atoi(strings.TrimSpace(low))
	to, err2 := strconv.Atoi(strings.TrimSpace(high))
	if err1 != nil || err2 != nil || from > to || to == 0 {
		return fault.Fault{What: "not a range of frets", Given: string(text), Remedy: "lower fret first: --played 1-9"}
	}
	*p = playedFrets{float64(from), float64(to)}
	return nil
}

// flagPlaces gives faults of named inputs the flags they came by.
func flagPlaces(err error, flags map[string]string) error {
	list, ok := err.(fault.List)
	if !ok {
		return err
	}
	for i, f := range list {
		if flag := flags[f.Place.Input]; flag != "" {
			list[i].Place.Input = flag
		}
	}
	return list.Err()
}
