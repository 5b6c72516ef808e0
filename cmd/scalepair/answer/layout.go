package answer

import (
	"strconv"
	"strings"

	"github.com/spf13/pflag"

	"scalepair/cmd/scalepair/report"
	"scalepair/data/fault"
	"scalepair/data/unit"
	"scalepair/fan"
)

// Layout works up the fan of the pair in use.
func (q *Question) Layout() (*report.Layout, error) {
	l, err := q.layout()
	if err != nil {
		return nil, err
	}
	return report.NewLayout(q.Input, l), nil
}

// Neutral asks what moving the neutral fret does.
type Neutral struct {
	step   float64
	played playedFrets
	hand   unit.Angle
	set    *pflag.FlagSet
}

// Flags defines the flags.
func (o *Neutral) Flags(f *pflag.FlagSet) {
	o.set = f
	f.Float64Var(&o.step, "step", 1, "with --neutral-table: `step` of the neutral fret, 0.1 to 12")
	TextVar(f, &o.played, "played", "with --neutral-table: `frets` played most, such as 1-9 (default: the build file's)")
	TextVar(f, &o.hand, "hand", "with --neutral-table: `slant` that lies best under your hand, such as \"-4 deg\", in place of a neck angle")
}

// Neutral works the table up.
func (q *Question) Neutral(o Neutral) (*report.NeutralTable, error) {
	l, err := q.layout()
	if err != nil {
		return nil, err
	}
	play, given := q.Run.Build.Playing, o.set.Changed
	if given("played") {
		play.FromFret, play.ToFret = o.played.from, o.played.to
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
		return nil, flagPlaces(err, map[string]string{"step": "--step", "hand": "--hand", "playing.to_fret": "--played"})
	}
	return report.NewNeutralTable(q.Input, l, table, play), nil
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
