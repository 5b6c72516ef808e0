package main

import (
	"fmt"
	"strconv"

	"scalepair/cmd/scalepair/build"
	"scalepair/cmd/scalepair/job"
	"scalepair/cmd/scalepair/report"
	"scalepair/data/fault"
	"scalepair/fan"
	"scalepair/tension/choice"
)

// load reads the job, and says so when the demo stands in for a build file.
func (a *app) load(path string, over *build.Flags) (*job.Job, error) {
	j, err := job.Load(path, over)
	if err != nil {
		return nil, err
	}
	a.inputs = j.Inputs()
	if j.Demo() {
		a.hint("no build file given and no %s here: showing the embedded demo, which is invented", job.DefaultFile)
	}
	return j, nil
}

// input makes the plan ready and settles the units.
func (a *app) input(j *job.Job, o *outputFlags) (*report.Input, error) {
	if _, err := o.options(a); err != nil {
		return nil, err
	}
	units := o.units(j)
	in := &report.Input{Job: j, Units: units}
	var err error
	if in.Plan, err = j.Plan(); err != nil {
		return nil, err
	}
	return in, nil
}

// settle gives a pair and a set: those given, else those chosen in the build
// file, and for what is still open the best of advise, which is said on
// stderr.
func (a *app) settle(in *report.Input) (job.Pick, error) {
	pick, err := in.Job.Pick()
	if err != nil || pick.HasPair() && pick.Gauges != nil {
		return pick, err
	}
	plan, err := planFor(in.Plan, pick)
	if err != nil {
		return pick, err
	}
	best, dropped, ok := plan.SearchBest()
	if !ok {
		return pick, noPair(in, dropped)
	}
	pick = job.Pick{BassMM: best.BassMM, TrebleMM: best.TrebleMM, Gauges: best.Gauges}
	a.hint("pair and gauges are not all settled: taking the best of advise, %s, gauges %s; advise --save keeps a choice",
		in.Pair(pick.BassMM, pick.TrebleMM), in.Set(pick.Gauges))
	return pick, nil
}

// planFor narrows a plan to what is settled already.
func planFor(p *choice.Plan, pick job.Pick) (*choice.Plan, error) {
	if !pick.HasPair() && pick.Gauges == nil {
		return p, nil
	}
	req := p.Request()
	if pick.HasPair() {
		// Whoever names a pair has decided on it: its limits are told, not held.
		req.BassMM, req.TrebleMM = []float64{pick.BassMM}, []float64{pick.TrebleMM}
		req.Limits = req.Limits.OnGauges()
	}
	if pick.Gauges != nil {
		req.Given = pick.Gauges
	}
	return choice.Prepare(req)
}

// noPair says why nothing is left to work with: every limit that dropped a
// pair, but for pairs that nobody asked for.
func noPair(in *report.Input, dropped []choice.Dropped) error {
	var faults fault.List
	for _, d := range dropped {
		if d.Reason == choice.ReverseFan && len(dropped) > 1 {
			continue
		}
		faults.Add(fault.Place{Input: in.Job.Build.File}, fmt.Sprintf("no pair is left: %d dropped by %s", d.Pairs, in.Miss(d.Nearest)), "",
			in.Remedy(d.Nearest))
	}
	return faults.Err()
}

// detail settles a pair and a set and works them out.
func (a *app) detail(in *report.Input) (*choice.Detail, error) {
	pick, err := a.settle(in)
	if err != nil {
		return nil, err
	}
	d, err := in.Plan.Detail(pick.BassMM, pick.TrebleMM, pick.Gauges)
	return d, err
}

// layoutOf settles a pair and draws its fan. A settled pair needs no gauges
// here, except for equal gaps between them.
func (a *app) layoutOf(in *report.Input) (*fan.Layout, error) {
	pick, err := in.Job.Pick()
	if err != nil {
		return nil, err
	}
	if !pick.HasPair() {
		if pick, err = a.settle(in); err != nil {
			return nil, err
		}
	}
	l, err := fan.New(in.Plan.SpecOf(pick.BassMM, pick.TrebleMM, pick.Gauges))
	return l, err
}

func trimNumber(x float64) string { return strconv.FormatFloat(x, 'f', -1, 64) }
