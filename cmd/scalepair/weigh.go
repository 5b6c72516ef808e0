package main

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"github.com/spf13/cobra"

	"scalepair/cmd/scalepair/build"
	"scalepair/cmd/scalepair/report"
	"scalepair/data/fault"
	"scalepair/data/unit"
	"scalepair/gauges"
	"scalepair/tension/choice"
)

// weighOptions are what weigh takes beside a build file.
type weighOptions struct {
	output                outputFlags
	over                  build.Flags
	aim, longest, within  string
	against               int
	setAgainst            bool
	longestM, withinShare float64
}

func (a *app) weighCommand() *cobra.Command {
	o := &weighOptions{}
	c := &cobra.Command{
		Use:   "weigh [build.toml]",
		Short: "Which string to weigh next, and how long a piece of it",
		Long: `weigh tells which one further weighing would narrow the answer most, and how
long the piece must be. While pair and gauges are open, the answer is the
ranking: how sure it is that the best pair beats its strongest rival. Once both
are chosen, it is the total tension. It also prints what the uncertainty is made
of, since not all of it can be weighed away.

` + report.Craft,
		Example: `  scalepair weigh
  scalepair weigh --against 4 --longest "900 mm"
  scalepair weigh --for tension --within 0.5%`,
		Args: buildFile,
		RunE: func(c *cobra.Command, args []string) error {
			o.setAgainst = c.Flags().Changed("against")
			return a.weigh(first(args), o)
		},
	}
	o.output.add(c)
	o.over.Add(c.Flags())
	f := c.Flags()
	f.StringVar(&o.aim, "for", "", "`aim`: ranking or tension (default: tension once pair and gauges are chosen)")
	f.IntVar(&o.against, "against", 0, "`rank` of the pair to tell from the best (default: the strongest rival)")
	f.StringVar(&o.longest, "longest", "1500 mm", "greatest `length` of string to weigh at once, in one piece or several together")
	f.StringVar(&o.within, "within", "1%", "standard uncertainty in `percent` that a weighing is to reach")
	return c
}

func (a *app) weigh(path string, o *weighOptions) error {
	if err := o.check(); err != nil {
		return err
	}
	j, err := a.load(path, &o.over)
	if err != nil {
		return err
	}
	in, err := a.input(j, &o.output)
	if err != nil {
		return err
	}
	w := &report.Weigh{LongestM: o.longestM, Within: o.withinShare}
	if err := a.aimAt(in, o, w); err != nil {
		return err
	}
	if err := leanOn(in, w); err != nil {
		return err
	}
	next, err := j.Stock.WhatToWeigh(w.ByWeight, unit.Length(w.LongestM))
	if err != nil {
		return flagPlaces(err, map[string]string{"longest piece": "--longest"})
	}
	for _, s := range next {
		if s.After < s.Before { // a weighing poorer than those there are helps nobody
			w.Next = append(w.Next, s)
		}
	}
	return a.write(&o.output, report.WhatToWeigh(in, w), func() any { return report.WeighValues(in, w) })
}

// check reads the flags that are not settled by the parser.
func (o *weighOptions) check() error {
	var faults fault.List
	if o.aim != "" && o.aim != "ranking" && o.aim != "tension" {
		faults.Add(fault.Place{Input: "--for"}, "no such aim", o.aim, "give ranking or tension")
	}
	if o.aim == "tension" && o.setAgainst {
		faults.Add(fault.Place{Input: "--against"}, "the total tension is of one pair", "", "leave one of --for tension and --against out")
	}
	longest, err := unit.ParseLength(o.longest)
	faults.Include(fault.Place{Input: "--longest"}, err)
	if o.longestM = float64(longest); err == nil && !(o.longestM >= 0.02 && o.longestM <= 5) {
		faults.Add(fault.Place{Input: "--longest"}, "nobody weighs such a length of string", o.longest, `give 20 mm to 5 m, such as "900 mm"`)
	}
	percent, err := unit.ParseNumber(strings.TrimSpace(strings.TrimSuffix(strings.TrimSpace(o.within), "%")))
	faults.Include(fault.Place{Input: "--within"}, err)
	if err == nil && !(percent >= 0.01 && percent <= 20) {
		faults.Add(fault.Place{Input: "--within"}, "no uncertainty to aim at", o.within, "give a per cent from 0.01 to 20, such as 1%")
	}
	o.withinShare = percent / 100
	return faults.Err()
}

// aimAt settles what is to be narrowed: the lead of the best pair over its
// rival, or the total tension of one pair and set.
func (a *app) aimAt(in *report.Input, o *weighOptions, w *report.Weigh) error {
	pick, err := in.Job.Pick()
	if err != nil {
		return err
	}
	settled := pick.HasPair() && pick.Gauges != nil
	if o.aim == "ranking" || o.aim == "" && !settled || o.setAgainst {
		done, err := aimAtRanking(in, o, w)
		if done || err != nil {
			return err
		}
		if o.aim == "ranking" || o.setAgainst {
			return fault.Fault{Place: fault.Place{Input: "--for"}, What: "there is only one pair to rank, or nothing to rank it by",
				Remedy: "widen [scales], or give --for tension"}
		}
	}
	w.Best, err = a.detail(in)
	return err
}

// aimAtRanking takes the best pair and a rival; false where there are no two
// pairs, or no score to tell them by.
func aimAtRanking(in *report.Input, o *weighOptions, w *report.Weigh) (bool, error) {
	res := in.Plan.Search()
	if len(res.Best) == 0 {
		return false, noPair(in, res.Dropped)
	}
	if len(res.Best) < 2 || res.Best[1].Score == 0 {
		return false, nil
	}
	rank, err := rivalRank(in, o, res)
	if err != nil {
		return false, err
	}
	w.Lead, w.RivalRank = res.Best[rank-1].Score-res.Best[0].Score, rank
	if w.Best, err = detailOf(in, res.Best[0]); err != nil {
		return false, err
	}
	w.Rival, err = detailOf(in, res.Best[rank-1])
	return true, err
}

func detailOf(in *report.Input, c choice.Candidate) (*choice.Detail, error) {
	return in.Plan.Detail(c.BassMM, c.TrebleMM, c.Gauges)
}

// rivalRank is the rank asked for, else that of the listed pair that most
// often beats the best one in draws.
func rivalRank(in *report.Input, o *weighOptions, res *choice.Result) (int, error) {
	if o.setAgainst {
		if o.against < 2 || o.against > len(res.Best) {
			return 0, fault.Fault{Place: fault.Place{Input: "--against"}, What: "there is no rival of that rank", Given: fmt.Sprint(o.against),
				Remedy: fmt.Sprintf("give 2 to %d, as advise lists them", len(res.Best))}
		}
		return o.against, nil
	}
	conf := in.Job.Build.Confidence
	if conf.Trials == 0 {
		return 2, nil
	}
	standing := in.Plan.Confidence(res, in.Job.Stock.Drawer(), conf.Trials, uint64(conf.Seed)).Standing
	rivals := standing[1:min(len(standing), len(res.Best))]
	strongest := slices.MaxFunc(rivals, func(a, b choice.Standing) int { return cmp.Compare(a.BeatsBest, b.BeatsBest) })
	for i, s := range rivals {
		if s.BeatsBest == strongest.BeatsBest {
			return i + 2, nil
		}
	}
	return 2, nil
}

// leanStep is the relative change of a linear density or core by which the
// result's slope is found: small enough for the curvature not to show, large
// enough for rounding not to.
const leanStep = 1e-4

// leanOn finds how the result leans on every gauge in play, by central
// differences.
func leanOn(in *report.Input, w *report.Weigh) error {
	req := in.Plan.Request()
	w.ByWeight, w.ByCore = make([]float64, len(req.Stock)), make([]float64, len(req.Stock))
	for _, g := range w.InPlay(in) {
		for _, lean := range []struct {
			into   []float64
			change func(g *gauges.Gauge, by float64)
		}{{w.ByWeight, heavier}, {w.ByCore, thicker}} {
			slope, err := slopeOf(req, g, lean.change, w)
			if err != nil {
				return err
			}
			lean.into[g] = slope
		}
	}
	return nil
}

func heavier(g *gauges.Gauge, by float64) { g.LinearDensity *= unit.LinearDensity(by) }

// thicker changes the core at the same linear density: stretch stiffness goes
// with the square of its diameter, bending stiffness with the fourth power.
func thicker(g *gauges.Gauge, by float64) {
	g.Core *= unit.Length(by)
	g.AreaM2 *= by * by
	g.EA *= unit.Force(by * by)
	g.EI *= by * by * by * by
}

// slopeOf is the change of the result per relative change of one gauge.
func slopeOf(req choice.Request, g int, change func(*gauges.Gauge, float64), w *report.Weigh) (float64, error) {
	at := func(by float64) (float64, error) {
		req.Stock = slices.Clone(req.Stock)
		was := req.Stock[g]
		change(&req.Stock[g], by)
		plan, err := choice.Prepare(req)
		req.Stock[g] = was
		if err != nil {
			return 0, err
		}
		return w.Result(plan)
	}
	up, err := at(1 + leanStep)
	if err != nil {
		return 0, err
	}
	down, err := at(1 - leanStep)
	return (up - down) / (2 * leanStep), err
}
