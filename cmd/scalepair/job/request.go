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
		Cases: j.Cases(), By: b.TuningsBy,
		Stock: j.Stock.Gauges, Ordering: b.Strings.Ordering,
		Neck: j.Neck(), Bass: b.Scales.Bass, Treble: b.Scales.Treble, Blanks: b.Blanks,
		Tails: tails(b.Tails), TailsAssumed: b.Tails.NutAssumed || b.Tails.SaddleAssumed,
		ActionAssumed: b.Saddle.Assumed,
		Feel:          b.Feel.Feel, Limits: b.Limits,
	}
	n := len(req.Cases[0].Pitches)
	req.Action = heights(b.Saddle, n)
	if b.Strings.Stock != nil {
		req.Usable = j.indexes(b.Strings.Stock, func(i int) fault.Place { return b.Place("strings.stock") }, &faults)
	}
	if b.Strings.Gauges != nil {
		req.Given = j.indexes(b.Strings.Gauges, j.gaugePlace("strings.gauges"), &faults)
	}
	if even := req.Feel.Tension.Kind == choice.Even; even && b.Reference == nil &&
		req.Given == nil && b.Chosen != nil && b.Chosen.Gauges != nil {
		// Evenness speaks of one set; the chosen one is the only one there is.
		req.Given = j.indexes(b.Chosen.Gauges, j.gaugePlace("chosen.gauges"), &faults)
	}
	req.Reference = j.reference(&faults)
	if b.Chosen != nil && req.Bass == nil {
		req.Bass = []unit.Length{b.Chosen.Bass}
	}
	if b.Chosen != nil && req.Treble == nil {
		req.Treble = []unit.Length{b.Chosen.Treble}
	}
	return req, faults.Err()
}

// Cases are the tunings that the strings must serve.
func (j *Job) Cases() []choice.Case {
	b := j.Build
	if len(b.Tunings) == 0 {
		return []choice.Case{{Name: title(b.Strings.Tuning, ""), Weight: 1, CapoFret: b.Strings.CapoFret,
			Pitches: pitches(b.Strings.Tuning.FreqsHz(b.Strings.PitchStandard.Hz()))}}
	}
	var out []choice.Case
	for _, t := range b.Tunings {
		out = append(out, choice.Case{Name: title(t.Tuning, t.Name), Weight: t.Weight, CapoFret: t.CapoFret,
			Pitches: pitches(t.Tuning.FreqsHz(b.Strings.PitchStandard.Hz()))})
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

// pitches are frequencies as quantities.
func pitches(hz []float64) []unit.Frequency {
	out := make([]unit.Frequency, len(hz))
	for i, f := range hz {
		out[i] = unit.Frequency(f)
	}
	return out
}

func tails(t build.Tails) []tension.Tails {
	out := make([]tension.Tails, len(t.Nut))
	for i := range out {
		out[i] = tension.Tails{Nut: t.Nut[i], Saddle: t.Saddle[i]}
	}
	return out
}

// heights runs straight from the treble to the bass height.
func heights(s build.Saddle, n int) []unit.Length {
	out := make([]unit.Length, n)
	for i := range out {
		share := 0.0
		if n > 1 {
			share = float64(i) / float64(n-1)
		}
		out[i] = unit.Length(1-share)*s.ActionTreble + unit.Length(share)*s.ActionBass
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
		Neck: neck, Pitches: pitches(r.Tuning.FreqsHz(r.PitchStandard.Hz())),
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
