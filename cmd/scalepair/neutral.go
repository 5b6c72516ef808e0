package main

import (
	"fmt"
	"strconv"
	"strings"

	"github.com/spf13/cobra"

	"scalepair/cmd/scalepair/build"
	"scalepair/cmd/scalepair/report"
	"scalepair/data/fault"
	"scalepair/data/unit"
	"scalepair/fan"
)

// neutralOptions are what neutral takes beside a build file.
type neutralOptions struct {
	output              outputFlags
	over                build.Flags
	step                float64
	setStep             bool
	played, angle, hold string
}

func (a *app) neutralCommand() *cobra.Command {
	o := &neutralOptions{}
	c := &cobra.Command{
		Use:   "neutral [build.toml]",
		Short: "What moving the neutral fret does to the slants of one pair",
		Long: `neutral moves the fret that stands square from the nut to the last fret, and to
the bridge, and prints what that does to the slant of the nut, of fret 1, fret
12, the last fret and the saddle line. It names the choices that stand out; there
is no hard rule among them.`,
		Example: `  scalepair neutral
  scalepair neutral --played 1-9 --neck-angle "30 deg"
  scalepair neutral --bass "690 mm" --treble "650 mm" --step 0.5`,
		Args: buildFile,
		RunE: func(c *cobra.Command, args []string) error {
			o.setStep = c.Flags().Changed("step")
			return a.neutral(first(args), o)
		},
	}
	o.output.add(c)
	o.over.Add(c.Flags())
	f := c.Flags()
	f.Float64Var(&o.step, "step", 1, "`step` of the neutral fret, 0.1 to 12")
	f.StringVar(&o.played, "played", "", "`frets` played most, such as 1-9 (default: the build file's)")
	f.StringVar(&o.angle, "neck-angle", "", "`angle` at which the neck points up from level, such as \"25 deg\"")
	f.StringVar(&o.hold, "hold", "", "`slant` that lies best under your hand, such as \"-4 deg\", in place of a neck angle")
	return c
}

func (a *app) neutral(path string, o *neutralOptions) error {
	j, err := a.load(path, &o.over)
	if err != nil {
		return err
	}
	n := &report.Neutral{Playing: j.Build.Playing}
	if err := o.playing(j, n); err != nil {
		return err
	}
	in, err := a.input(j, &o.output)
	if err != nil {
		return err
	}
	if n.Layout, err = a.layoutOf(in); err != nil {
		return err
	}
	if n.Advice, err = fan.AdviseNeutral(n.Layout.Spec, o.stepFor(n.Layout.Spec.Neutral), n.Playing); err != nil {
		return flagPlaces(err, map[string]string{"step": "--step", "hand": "--hold", "playing.to_fret": "--played"})
	}
	return a.write(&o.output, report.NeutralFret(in, n), func() any { return report.NeutralValues(in, n) })
}

// stepFor gives the step asked for, else the widest of a few that does not
// pass over the neutral fret in force.
func (o *neutralOptions) stepFor(n fan.Neutral) float64 {
	if o.setStep {
		return o.step
	}
	for _, step := range []float64{1, 0.5, 0.25} {
		if n.Fret/step == float64(int(n.Fret/step)) {
			return step
		}
	}
	return 1
}

// playing takes the build's habits of play and what the flags say over them.
func (o *neutralOptions) playing(j *build.Run, n *report.Neutral) error {
	p := j.Build.Playing
	if p.NeckAngle != nil {
		n.NeckAngleRad, n.AngleGiven = p.NeckAngle.Rad(), true
	}
	var faults fault.List
	if o.played != "" {
		from, to := playedFrets(o.played, j.Build.Neck.Frets, &faults)
		n.Playing.FromFret, n.Playing.ToFret = float64(from), float64(to)
	}
	if o.angle != "" && o.hold != "" {
		faults.Add(fault.Place{Input: "--hold"}, "the hand is told twice", "", "give --neck-angle or --hold")
	}
	angle := func(flag, text string) float64 {
		rad, err := unit.ParseAngle(text)
		faults.Include(fault.Place{Input: flag}, err)
		return rad.Rad()
	}
	if o.angle != "" {
		n.NeckAngleRad, n.AngleGiven = angle("--neck-angle", o.angle), true
		n.Playing.NeckAngle = new(unit.Angle(n.NeckAngleRad))
	}
	if o.hold != "" {
		n.Playing.HandSlant, n.AngleGiven = new(unit.Angle(angle("--hold", o.hold))), false
	}
	return faults.Err()
}

// playedFrets reads a range such as "1-9".
func playedFrets(text string, last int, faults *fault.List) (from, to int) {
	low, high, two := strings.Cut(text, "-")
	from, err1 := strconv.Atoi(strings.TrimSpace(low))
	to, err2 := strconv.Atoi(strings.TrimSpace(high))
	if !two || err1 != nil || err2 != nil || from < 0 || from > to || to > last || to == 0 {
		faults.Add(fault.Place{Input: "--played"}, "not a range of frets on the board", text,
			fmt.Sprintf("lower fret first, up to %d: --played 1-9", last))
		return 0, 0
	}
	return from, to
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
