package answer

import (
	"scalepair/cmd/scalepair/build"
	"scalepair/data/fault"
	"scalepair/fan"
	"scalepair/tension/choice"
)

// settle gives a pair and a set: those given, else those chosen in the build file,
// and for what is still open the pick that prefer names, which is noted.
func (q *Question) settle() (build.Pick, error) {
	pick, err := q.Run.Pick()
	if err != nil || pick.HasPair() && pick.Gauges != nil {
		return pick, err
	}
	if q.Run.Bare {
		return pick, fault.Fault{Place: q.place(), What: "without readings neither pair nor set can be advised", Remedy: "name a pair under [chosen], or weigh some string ends"}
	}
	if pick.HasPair() {
		set, none := q.Plan.Suggest(pick.Bass, pick.Treble)
		if set == nil {
			return pick, fault.Fault{Place: q.place(), What: "no set in stock keeps the limits on strings: " + q.MissWords(none), Remedy: q.Remedy(none)}
		}
		pick.Gauges = set
		q.Note("no gauges are chosen: taking the best in stock for %s, %s", q.Pair(pick.Bass, pick.Treble), q.Set(set))
		return pick, nil
	}
	plan := q.Plan
	if pick.Gauges != nil {
		req := plan.Request()
		req.Given = pick.Gauges
		if plan, err = choice.Prepare(req); err != nil {
			return pick, err
		}
	}
	best, err := q.preferred(plan)
	if err != nil {
		return pick, err
	}
	q.Note("no pair is chosen: taking the pick %q of advise, %s with %s; advise --save keeps it", best.Kind, q.Pair(best.Bass, best.Treble), q.Set(best.Gauges))
	return build.Pick{Bass: best.Bass, Treble: best.Treble, Gauges: best.Gauges}, nil
}

// preferred searches, and gives the pick that prefer names.
func (q *Question) preferred(plan *choice.Plan) (*choice.Pick, error) {
	r, err := plan.Search(q.Context)
	if err != nil {
		return nil, err
	}
	if p := r.Preferred(); p != nil {
		return p, nil
	}
	return nil, q.NoPair(r, q.place())
}

// detail settles a pair and a set and works them out.
func (q *Question) detail() (*choice.Detail, error) {
	if err := q.strings(); err != nil {
		return nil, err
	}
	pick, err := q.settle()
	if err != nil {
		return nil, err
	}
	d, err := q.Plan.Detail(pick.Bass, pick.Treble, pick.Gauges)
	return d, q.Run.Placed(err)
}

// laidOut lays a fan out; what is wrong with it stands at its key.
func (q *Question) laidOut(spec fan.Spec) (*fan.Layout, error) {
	l, err := fan.New(spec)
	return l, q.Run.Placed(err)
}

// fretted settles pair and gauges and lays the fan out. Where the pair is chosen
// but no set keeps the limits, the fan alone is given.
func (q *Question) fretted() (*fan.Layout, *choice.Detail, error) {
	pick, err := q.settle()
	if err != nil && pick.HasPair() && pick.Gauges == nil {
		if !q.Run.Bare {
			q.Note("%v; saddles, nut slots and strings to buy are left out", err)
		}
		l, err := q.laidOut(q.Plan.SpecOf(pick.Bass, pick.Treble, nil))
		return l, nil, err
	}
	if err != nil {
		return nil, nil, err
	}
	d, err := q.Plan.Detail(pick.Bass, pick.Treble, pick.Gauges)
	if err != nil {
		return nil, nil, q.Run.Placed(err)
	}
	l, err := q.laidOut(d.Spec)
	return l, d, err
}

// layout settles a pair and draws its fan. A pair that is chosen needs no gauges
// here, except for equal gaps between them: then it has the set that all other
// commands take.
func (q *Question) layout() (*fan.Layout, error) {
	if err := q.marks(); err != nil {
		return nil, err
	}
	pick, err := q.Run.Pick()
	switch {
	case err != nil:
		return nil, err
	case !pick.HasPair() || q.Plan.EqualGaps():
		l, _, err := q.fretted()
		return l, err
	}
	return q.laidOut(q.Plan.SpecOf(pick.Bass, pick.Treble, pick.Gauges))
}
