package job

import (
	"scalepair/cmd/scalepair/build"
	"scalepair/data/fault"
	"scalepair/data/unit"
	"scalepair/fan"
	"scalepair/tension"
	"scalepair/tension/choice"
	"scalepair/tuning"
)

// Plan makes the choice ready.
func (j *Job) Plan() (*choice.Plan, error) {
	req, err := j.Request()
	if err != nil {
		return nil, err
	}
	plan, err := choice.Prepare(req)
	return plan, j.atFile(err)
}

// Request maps the build to a choice. Gauges given on the command line or in
// the file are fixed; a chosen set is not: it was the outcome of a choice.
func (j *Job) Request() (choice.Request, error) {
	b := j.Build
	var faults fault.List
	req := choice.Request{
		Cases: j.Cases(), By: choice.Combining(b.TuningsBy),
		Stock: j.Stock.Gauges, Ordering: b.Strings.Ordering,
		Neck: j.Neck(), BassMM: allMM(b.Scales.Bass), TrebleMM: allMM(b.Scales.Treble),
		Tails: tails(b.Tails), TailsAssumed: b.Tails.NutAssumed || b.Tails.SaddleAssumed,
		ActionAssumed: b.Saddle.Assumed,
		Feel:          j.feel(), Limits: j.limits(), ApartMM: b.Scales.Apart.MM(),
	}
	n := len(req.Cases[0].FreqsHz)
	req.ActionM = heights(b.Saddle, n)
	if b.Strings.Stock != nil {
		req.Usable = j.indexes(b.Strings.Stock, func(i int) fault.Place { return b.Place("strings.stock") }, &faults)
	}
	if b.Strings.Gauges != nil {
		req.Given = j.indexes(b.Strings.Gauges, j.gaugePlace("strings.gauges"), &faults)
	}
	if even := b.Feel.Tension[0].Source == build.Even || b.Feel.BendingForce[0].Source == build.Even; even &&
		req.Given == nil && b.Chosen != nil && b.Chosen.Gauges != nil {
		// Evenness speaks of one set; the chosen one is the only one there is.
		req.Given = j.indexes(b.Chosen.Gauges, j.gaugePlace("chosen.gauges"), &faults)
	}
	req.Reference = j.reference(&faults)
	if b.Chosen != nil && req.BassMM == nil {
		req.BassMM = []float64{b.Chosen.Bass.MM()}
	}
	if b.Chosen != nil && req.TrebleMM == nil {
		req.TrebleMM = []float64{b.Chosen.Treble.MM()}
	}
	return req, faults.Err()
}

// Cases are the tunings that the strings must serve.
func (j *Job) Cases() []choice.Case {
	b := j.Build
	if len(b.Tunings) == 0 {
		return []choice.Case{{Name: title(b.Strings.Tuning, ""), Weight: 1, CapoFret: b.Strings.CapoFret,
			FreqsHz: b.Strings.Tuning.FreqsHz(b.Strings.PitchStandard.Hz())}}
	}
	var out []choice.Case
	for _, t := range b.Tunings {
		out = append(out, choice.Case{Name: title(t.Tuning, t.Name), Weight: t.Weight, CapoFret: t.CapoFret,
			FreqsHz: t.Tuning.FreqsHz(b.Strings.PitchStandard.Hz())})
	}
	return out
}

// Tunings gives the tunings in the order of Cases.
func (j *Job) Tunings() []tuning.Tuning {
	if len(j.Build.Tunings) == 0 {
		return []tuning.Tuning{j.Build.Strings.Tuning}
	}
	var out []tuning.Tuning
	for _, t := range j.Build.Tunings {
		out = append(out, t.Tuning)
	}
	return out
}

func title(t tuning.Tuning, name string) string {
	switch {
	case name != "":
		return name
	case t.Name != "":
		return t.Name
	}
	return t.String()
}

func allMM(in []unit.Length) []float64 {
	var out []float64
	for _, l := range in {
		out = append(out, l.MM())
	}
	return out
}

func tails(t build.Tails) []tension.Tails {
	out := make([]tension.Tails, len(t.Nut))
	for i := range out {
		out[i] = tension.Tails{NutM: float64(t.Nut[i]), SaddleM: float64(t.Saddle[i])}
	}
	return out
}

// heights runs straight from the treble to the bass height.
func heights(s build.Saddle, n int) []float64 {
	out := make([]float64, n)
	for i := range out {
		share := 0.0
		if n > 1 {
			share = float64(i) / float64(n-1)
		}
		out[i] = (1-share)*float64(s.ActionTreble) + share*float64(s.ActionBass)
	}
	return out
}

// Neck is the wanted neck without a pair.
func (j *Job) Neck() fan.Spec {
	b := j.Build
	spec := fan.Spec{Strings: b.Strings.Tuning.Strings(), AllowReverse: b.Scales.ReverseFan, Neck: b.Neck.Neck}
	if b.Chosen != nil {
		spec.Neutral = *b.Chosen.Neutral
	}
	return spec
}

func (j *Job) feel() choice.Feel {
	f := j.Build.Feel
	out := choice.Feel{
		Tension: target(f.Tension), BendingForce: target(f.BendingForce),
		MoreStrings: choice.Mapping(f.MoreStrings), BendStrings: f.BendStrings, BendCents: f.BendCents.Value(),
		Weights: choice.Weights(f.Weights),
	}
	out.Overtone.Source = source(f.Overtone.Source)
	if out.Overtone.Source == choice.Stated {
		out.Overtone.Values = []float64{f.Overtone.Cents.Value()}
	}
	for _, n := range f.BendFrets {
		out.BendFrets = append(out.BendFrets, float64(n))
	}
	for _, d := range f.BendTowards {
		out.Towards = append(out.Towards, choice.Direction(d))
	}
	return out
}

func source(s build.Source) choice.Source {
	return map[build.Source]choice.Source{
		build.NoTarget: choice.Absent, build.LikeReference: choice.LikeReference,
		build.Stated: choice.Stated, build.Even: choice.OwnMean,
	}[s]
}

func target(t []build.Target) choice.Target {
	out := choice.Target{Source: source(t[0].Source)}
	for _, f := range t {
		if f.Source == build.Stated {
			out.Values = append(out.Values, f.Force.N())
		}
	}
	return out
}

func (j *Job) limits() choice.Limits {
	l := j.Build.Limits
	out := choice.Limits{
		DifferenceMM: l.Difference.MM(), NutToFret1MM: l.NutToFret1.MM(), InharmonicityCents: l.Inharmonicity.Value(),
		FretSlantRad: l.FretSlant.Rad(), SaddleSlantRad: l.SaddleSlant.Rad(),
		BreakingOpen: float64(l.BreakingOpen), BreakingBent: float64(l.BreakingBent),
		LeastTensionN: l.LeastTension.N(), MostTensionN: l.MostTension.N(), MostBendingForceN: l.MostBendingForce.N(),
		SaddleTravelM: float64(l.SaddleTravel),
	}
	if l.Blank {
		out.Blanks = j.Build.Blanks
	}
	return out
}

// reference maps the reference instrument; spans it does not state are the
// neck's.
func (j *Job) reference(faults *fault.List) *choice.Reference {
	r := j.Build.Reference
	if r == nil {
		return nil
	}
	neck := j.Neck()
	neck.Bass, neck.Treble = r.Bass, r.Treble
	neck.Strings, neck.Frets, neck.Neutral = r.Tuning.Strings(), r.Frets, *r.Neutral
	if r.NutSpread > 0 && r.SaddleSpread > 0 {
		neck.NutWidth, neck.OtherWidth = 0, 0
		neck.NutSpread, neck.SaddleSpread = r.NutSpread, r.SaddleSpread
	}
	neck.NutSpacing, neck.SaddleSpacing = fan.Spacing{}, fan.Spacing{}
	return &choice.Reference{
		Neck: neck, FreqsHz: r.Tuning.FreqsHz(r.PitchStandard.Hz()),
		Gauges: j.indexes(r.Gauges, j.gaugePlace("reference.gauges"), faults),
		Tails:  tails(build.Tails{Nut: r.NutTail, Saddle: r.SaddleTail}), TailsAssumed: r.TailsAssumed,
	}
}

// gaugePlace gives where the gauge of string i (from 0) was named.
func (j *Job) gaugePlace(key string) func(i int) fault.Place {
	return func(i int) fault.Place { return j.Build.PlaceOfString(key, i+1) }
}

// indexes finds gauges by label, noting every one that is not in stock.
func (j *Job) indexes(labels []string, at func(i int) fault.Place, faults *fault.List) []int {
	out := make([]int, len(labels))
	for i, label := range labels {
		g, err := j.index(label)
		if err != nil {
			faults.Include(at(i), err)
			continue
		}
		out[i] = g
	}
	return out
}

// index finds a gauge's place in the stock.
func (j *Job) index(label string) (int, error) {
	found, err := j.Stock.Lookup(label)
	if err != nil {
		return 0, err
	}
	for i, g := range j.Stock.Gauges {
		if g.Label == found.Label {
			return i, nil
		}
	}
	panic("a gauge that was found is not in the stock")
}

// atFile gives faults that name a build-file key the place of that key.
func (j *Job) atFile(err error) error {
	list, ok := err.(fault.List)
	if !ok {
		return err
	}
	for i, f := range list {
		if f.Place.Line == 0 && j.Build.Place(f.Place.Input).Line > 0 {
			list[i].What = f.Place.Input + ": " + f.What
			list[i].Place = j.Build.Place(f.Place.Input)
		}
	}
	return list.Err()
}
