package answer

import (
	"strings"

	"scalepair/cmd/scalepair/build"
	"scalepair/cmd/scalepair/report"
	"scalepair/data/fault"
	"scalepair/tension/choice"
)

// Preferred is the word for the pick that is advised, as --save takes it.
const Preferred = "the pick advised"

// Find searches, and works out a pick with all that is said of it; "" is the one
// advised.
func (q *Question) Find(pick string) (*report.Found, error) {
	if err := q.strings(); err != nil {
		return nil, err
	}
	ctx := q.Context
	r, err := q.Plan.Search(ctx)
	if err != nil {
		return nil, err
	}
	f := &report.Found{Result: r}
	if f.Pick, err = pickOf(r, pick); err != nil {
		return nil, err
	}
	if f.Pick == nil {
		return nil, q.NoPair(r, q.place())
	}
	if f.Detail, err = q.Plan.Detail(f.Pick.Bass, f.Pick.Treble, f.Pick.Gauges); err != nil {
		return nil, err
	}
	if f.Taste, err = q.Plan.Taste(ctx, r); err != nil {
		return nil, err
	}
	if f.LimitCosts, err = q.Plan.LimitCosts(ctx, r); err != nil {
		return nil, err
	}
	if f.Lacks, f.With, err = q.Run.Lacks(ctx, q.Plan, r, f.Pick); err != nil {
		return nil, err
	}
	f.Confidence, err = q.confidence(r)
	return f, err
}

// confidence is that of the picks; nil where no trials are asked for.
func (q *Question) confidence(r *choice.Result) (*choice.Confidence, error) {
	c := q.Run.Build.Confidence
	if c.Trials == 0 {
		return nil, nil
	}
	return q.Plan.Confidence(q.Context, r, q.Run.Stock.Drawer(), c.Trials, uint64(c.Seed))
}

// pickOf gives the pick of a name.
func pickOf(r *choice.Result, name string) (*choice.Pick, error) {
	if name == Preferred || name == "" {
		return r.Preferred(), nil
	}
	var k choice.PickKind
	err := k.UnmarshalText([]byte(name))
	pick := r.Pick(k)
	if err == nil && pick == nil {
		var have []string
		for _, p := range r.Picks {
			have = append(have, p.Kind.String())
		}
		err = fault.Fault{What: "there is no such pick here", Given: name, Remedy: "there is: " + strings.Join(have, ", ")}
	}
	var faults fault.List
	faults.Include(fault.Place{Input: "--save"}, err)
	return pick, faults.Err()
}

// Keep gives the build file's text with a pair and its set as [chosen], and the
// rest of the file as it is.
func (q *Question) Keep(p choice.Pair) ([]byte, error) {
	neutral := q.Run.Neck().Neutral
	kept := build.Chosen{Pair: build.Pair{Bass: p.Bass, Treble: p.Treble}, Neutral: &neutral}
	for _, g := range p.Gauges {
		kept.Gauges = append(kept.Gauges, q.Plan.Stock()[g].Label)
	}
	return kept.Save(q.Run.Source, q.Run.Build.File, q.Run.Build.LengthUnit)
}

// KeepPick is Keep of a pick of the search; of the pair and the set in use for "".
func (q *Question) KeepPick(name string) ([]byte, error) {
	if err := q.strings(); err != nil {
		return nil, err
	}
	if name == "" {
		d, err := q.detail()
		if err != nil {
			return nil, err
		}
		return q.Keep(d.Pair)
	}
	r, err := q.Plan.Search(q.Context)
	if err != nil {
		return nil, err
	}
	pick, err := pickOf(r, name)
	if err == nil && pick == nil {
		err = q.NoPair(r, q.place())
	}
	if err != nil {
		return nil, err
	}
	return q.Keep(pick.Pair)
}
