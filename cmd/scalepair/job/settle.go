package job

import (
	"scalepair/cmd/scalepair/build"
	"scalepair/data/fault"
	"scalepair/fan"
	"scalepair/tension/choice"
)

// settle gives a pair and a set: those given, else those chosen in the build file,
// and for what is still open the pick that prefer names, which is noted.
func (j *Job) settle() (build.Pick, error) {
	pick, err := j.Run.Pick()
	if err != nil || pick.HasPair() && pick.Gauges != nil {
		return pick, err
	}
	if j.Run.Bare {
		return pick, fault.Fault{Place: j.place(), What: "without readings neither pair nor set can be advised", Remedy: "name a pair under [chosen], or weigh some string ends"}
	}
	if pick.HasPair() {
		set, none := j.Plan.Suggest(pick.Bass, pick.Treble)
		if set == nil {
			return pick, fault.Fault{Place: j.place(), What: "no set in stock keeps the limits on strings: " + j.MissWords(none), Remedy: j.Remedy(none)}
		}
		pick.Gauges = set
		j.Note("no gauges are chosen: taking the best in stock for %s, %s", j.Pair(pick.Bass, pick.Treble), j.Set(set))
		return pick, nil
	}
	plan := j.Plan
	if pick.Gauges != nil {
		req := plan.Request()
		req.Given = pick.Gauges
		if plan, err = choice.Prepare(req); err != nil {
			return pick, err
		}
	}
	best, err := j.preferred(plan)
	if err != nil {
		return pick, err
	}
	j.Note("no pair is chosen: taking the pick %q of advise, %s with %s; advise --save keeps it", best.Kind, j.Pair(best.Bass, best.Treble), j.Set(best.Gauges))
	return build.Pick{Bass: best.Bass, Treble: best.Treble, Gauges: best.Gauges}, nil
}

// preferred searches, and gives the pick that prefer names.
func (j *Job) preferred(plan *choice.Plan) (*choice.Pick, error) {
	r, err := plan.Search(j.Context)
	if err != nil {
		return nil, err
	}
	if p := r.Preferred(); p != nil {
		return p, nil
	}
	return nil, j.NoPair(r, j.place())
}

// detail settles a pair and a set and works them out.
func (j *Job) detail() (*choice.Detail, error) {
	if err := j.strings(); err != nil {
		return nil, err
	}
	pick, err := j.settle()
	if err != nil {
		return nil, err
	}
	d, err := j.Plan.Detail(pick.Bass, pick.Treble, pick.Gauges)
	return d, j.Run.Placed(err)
}

// laidOut lays a fan out; what is wrong with it stands at its key.
func (j *Job) laidOut(spec fan.Spec) (*fan.Layout, error) {
	l, err := fan.New(spec)
	return l, j.Run.Placed(err)
}

// fretted settles pair and gauges and lays the fan out. Where the pair is chosen
// but no set keeps the limits, the fan alone is given.
func (j *Job) fretted() (*fan.Layout, *choice.Detail, error) {
	pick, err := j.settle()
	if err != nil && pick.HasPair() && pick.Gauges == nil {
		if !j.Run.Bare {
			j.Note("%v; saddles, nut slots and strings to buy are left out", err)
		}
		l, err := j.laidOut(j.Plan.SpecOf(pick.Bass, pick.Treble, nil))
		return l, nil, err
	}
	if err != nil {
		return nil, nil, err
	}
	d, err := j.Plan.Detail(pick.Bass, pick.Treble, pick.Gauges)
	if err != nil {
		return nil, nil, j.Run.Placed(err)
	}
	l, err := j.laidOut(d.Spec)
	return l, d, err
}

// layout settles a pair and draws its fan. A pair that is chosen needs no gauges
// here, except for equal gaps between them: then it has the set that all other
// commands take.
func (j *Job) layout() (*fan.Layout, error) {
	if err := j.marks(); err != nil {
		return nil, err
	}
	pick, err := j.Run.Pick()
	switch {
	case err != nil:
		return nil, err
	case !pick.HasPair() || j.Plan.EqualGaps():
		l, _, err := j.fretted()
		return l, err
	}
	return j.laidOut(j.Plan.SpecOf(pick.Bass, pick.Treble, pick.Gauges))
}
