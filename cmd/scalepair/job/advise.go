package job

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
func (j *Job) Find(pick string) (*report.Found, error) {
	if err := j.strings(); err != nil {
		return nil, err
	}
	ctx := j.Context
	r, err := j.Plan.Search(ctx)
	if err != nil {
		return nil, err
	}
	f := &report.Found{Result: r}
	if f.Pick, err = pickOf(r, pick); err != nil {
		return nil, err
	}
	if f.Pick == nil {
		return nil, j.NoPair(r, j.place())
	}
	if f.Detail, err = j.Plan.Detail(f.Pick.Bass, f.Pick.Treble, f.Pick.Gauges); err != nil {
		return nil, err
	}
	if f.Taste, err = j.Plan.Taste(ctx, r); err != nil {
		return nil, err
	}
	if f.LimitCosts, err = j.Plan.LimitCosts(ctx, r); err != nil {
		return nil, err
	}
	if f.Lacks, f.With, err = j.Run.Lacks(ctx, j.Plan, r, f.Pick); err != nil {
		return nil, err
	}
	f.Confidence, err = j.confidence(r)
	return f, err
}

// confidence is that of the picks; nil where no trials are asked for.
func (j *Job) confidence(r *choice.Result) (*choice.Confidence, error) {
	c := j.Run.Build.Confidence
	if c.Trials == 0 {
		return nil, nil
	}
	return j.Plan.Confidence(j.Context, r, j.Run.Stock.Drawer(), c.Trials, uint64(c.Seed))
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
func (j *Job) Keep(p choice.Pair) ([]byte, error) {
	neutral := j.Run.Neck().Neutral
	kept := build.Chosen{Pair: build.Pair{Bass: p.Bass, Treble: p.Treble}, Neutral: &neutral}
	for _, g := range p.Gauges {
		kept.Gauges = append(kept.Gauges, j.Plan.Stock()[g].Label)
	}
	return kept.Save(j.Run.Source, j.Run.Build.File, j.Run.Build.LengthUnit)
}

// KeepPick is Keep of a pick of the search; of the pair and the set in use for "".
func (j *Job) KeepPick(name string) ([]byte, error) {
	if err := j.strings(); err != nil {
		return nil, err
	}
	if name == "" {
		d, err := j.detail()
		if err != nil {
			return nil, err
		}
		return j.Keep(d.Pair)
	}
	r, err := j.Plan.Search(j.Context)
	if err != nil {
		return nil, err
	}
	pick, err := pickOf(r, name)
	if err == nil && pick == nil {
		err = j.NoPair(r, j.place())
	}
	if err != nil {
		return nil, err
	}
	return j.Keep(pick.Pair)
}
