package main

import (
	"errors"
	"strings"

	"scalepair/cmd/scalepair/build"
	"scalepair/cmd/scalepair/report"
	"scalepair/data/fault"
	"scalepair/fan"
	"scalepair/tension/choice"
)

// load reads the run, and says so when the demo stands in for a build file.
func (a *app) load(path string, over *build.Flags) (*build.Run, error) {
	j, err := build.Load(path, over)
	if j == nil || err != nil && !j.Bare {
		return nil, err
	}
	a.inputs = j.Inputs()
	if j.Demo() {
		a.hint("no build file given and no %s here: showing the embedded demo, which is invented", build.DefaultFile)
	}
	return j, err
}

// input makes the plan ready and settles the units.
func (a *app) input(j *build.Run, o *outputFlags) (*report.Input, error) {
	if _, err := o.options(a); err != nil {
		return nil, err
	}
	in := &report.Input{Run: j, Units: o.units(j)}
	var err error
	in.Plan, err = j.Plan()
	return in, err
}

// ready loads a build and makes the input of its report. Without readings, or with
// gauges named that are not in stock, lengths and marks follow all the same, which
// is said.
func (a *app) ready(path string, over *build.Flags, o *outputFlags) (*report.Input, error) {
	j, err := a.load(path, over)
	if missing := (build.NoReadings{}); errors.As(err, &missing) {
		a.hint("%v; without them nothing is known of strings, and only what follows from lengths is printed", missing)
		err = nil
	}
	if err != nil {
		return nil, err
	}
	if _, err := o.options(a); err != nil {
		return nil, err
	}
	in := &report.Input{Run: j, Units: o.units(j)}
	var unknown error
	if in.Plan, unknown, err = j.PlanOfMarks(); unknown != nil {
		for line := range strings.Lines(unknown.Error()) {
			a.hint("%s", strings.TrimSpace(line))
		}
		a.hint("what follows without it is printed")
	}
	return in, err
}

// preferred searches, and gives the pick that prefer names.
func (a *app) preferred(in *report.Input, plan *choice.Plan) (*choice.Pick, error) {
	defer a.working("trying pairs")()
	r, err := plan.Search(a.ctx)
	if err != nil {
		return nil, a.orInterrupted(err)
	}
	if p := r.Preferred(); p != nil {
		return p, nil
	}
	return nil, in.NoPair(r, fault.Place{Input: in.Run.Build.File})
}

// settle gives a pair and a set: those given, else those chosen in the build
// file, and for what is still open the pick that prefer names, which is said on
// stderr.
func (a *app) settle(in *report.Input) (build.Pick, error) {
	pick, err := in.Run.Pick()
	if err != nil || pick.HasPair() && pick.Gauges != nil {
		return pick, err
	}
	if in.Run.Bare {
		return pick, fault.Fault{Place: fault.Place{Input: in.Run.Build.File}, What: "without readings neither pair nor set can be advised", Remedy: "name a pair under [chosen], or weigh some string ends"}
	}
	if pick.HasPair() {
		set, none := in.Plan.Suggest(pick.Bass, pick.Treble)
		if set == nil {
			return pick, fault.Fault{Place: fault.Place{Input: in.Run.Build.File}, What: "no set in stock keeps the limits on strings: " + in.MissWords(none), Remedy: in.Remedy(none)}
		}
		pick.Gauges = set
		a.hint("no gauges are chosen: taking the best in stock for %s, %s", in.Pair(pick.Bass, pick.Treble), in.Set(set))
		return pick, nil
	}
	plan := in.Plan
	if pick.Gauges != nil {
		req := plan.Request()
		req.Given = pick.Gauges
		if plan, err = choice.Prepare(req); err != nil {
			return pick, err
		}
	}
	best, err := a.preferred(in, plan)
	if err != nil {
		return pick, err
	}
	a.hint("no pair is chosen: taking the pick %q of advise, %s with %s; advise --save keeps it", best.Kind, in.Pair(best.Bass, best.Treble), in.Set(best.Gauges))
	return build.Pick{Bass: best.Bass, Treble: best.Treble, Gauges: best.Gauges}, nil
}

// detail settles a pair and a set and works them out.
func (a *app) detail(in *report.Input) (*choice.Detail, error) {
	pick, err := a.settle(in)
	if err != nil {
		return nil, err
	}
	return in.Plan.Detail(pick.Bass, pick.Treble, pick.Gauges)
}

// layoutOf settles a pair and draws its fan. A pair that is chosen needs no
// gauges here, except for equal gaps between them: then it has the set that all
// other commands take.
func (a *app) layoutOf(in *report.Input) (*fan.Layout, error) {
	pick, err := in.Run.Pick()
	if err == nil && (!pick.HasPair() || in.Plan.EqualGaps()) {
		l, _, err := a.fretted(in)
		return l, err
	}
	if err != nil {
		return nil, err
	}
	return laidOut(in, in.Plan.SpecOf(pick.Bass, pick.Treble, pick.Gauges))
}

// laidOut lays a fan out; what is wrong with it stands at its key.
func laidOut(in *report.Input, spec fan.Spec) (*fan.Layout, error) {
	l, err := fan.New(spec)
	return l, in.Run.Placed(err)
}

// fretted settles pair and gauges and lays the fan out. Where the pair is chosen
// but no set keeps the limits, the fan alone is given.
func (a *app) fretted(in *report.Input) (*fan.Layout, *choice.Detail, error) {
	pick, err := a.settle(in)
	if err != nil && pick.HasPair() && pick.Gauges == nil {
		if !in.Run.Bare {
			a.hint("%v; saddles, nut slots and strings to buy are left out", err)
		}
		l, err := laidOut(in, in.Plan.SpecOf(pick.Bass, pick.Treble, nil))
		return l, nil, err
	}
	if err != nil {
		return nil, nil, err
	}
	d, err := in.Plan.Detail(pick.Bass, pick.Treble, pick.Gauges)
	if err != nil {
		return nil, nil, err
	}
	l, err := laidOut(in, d.Spec)
	return l, d, err
}
