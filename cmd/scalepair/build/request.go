package build

import (
	"fmt"
	"reflect"
	"slices"
	"strings"

	"scalepair/data/fault"
	"scalepair/data/unit"
	"scalepair/fan"
	"scalepair/gauges"
	"scalepair/tension"
	"scalepair/tension/choice"
	"scalepair/tuning"
)

// Plan makes the choice ready.
func (r *Run) Plan() (*choice.Plan, error) {
	req, err := r.Request()
	if err != nil {
		return nil, err
	}
	plan, err := choice.Prepare(req)
	return plan, r.Placed(err)
}

// PlanOfMarks makes the choice ready as far as marks need it. Where the pair is
// settled, gauges that are named but not in stock take nothing from lengths and
// marks; leftOut names them. What goes is the reference where its gauges alone are
// not known, else all that depends on strings.
func (r *Run) PlanOfMarks() (plan *choice.Plan, leftOut, err error) {
	pick, leftOut := r.Pick()
	plan, err = r.Plan()
	if !pick.HasPair() || err == nil && leftOut == nil || !r.namesUnknown() {
		return plan, nil, err
	}
	if err != nil {
		leftOut = err
	}
	if r.Build.Reference != nil && pick.Gauges != nil {
		one, without := *r, *r.Build
		without.Reference, without.Feel.Feel, one.Build = nil, choice.DefaultFeel(false, false), &without
		if _, unknown := one.Pick(); unknown == nil {
			if plan, err = one.Plan(); err == nil {
				return plan, leftOut, nil
			}
		}
	}
	r.Bare = true
	plan, err = r.Plan()
	return plan, leftOut, err
}

// namesUnknown reports whether the build names a gauge that is not in stock.
func (r *Run) namesUnknown() bool {
	labels := slices.Concat(r.Strings.Gauges, r.Strings.Stock)
	if r.Chosen != nil {
		labels = append(labels, r.Chosen.Gauges...)
	}
	if r.Build.Reference != nil {
		labels = append(labels, r.Build.Reference.Gauges...)
	}
	_, err := r.Stock.Named(labels)
	return err != nil
}

// Request is the choice that the build asks for. Gauges given on the command
// line or in the file are fixed; a chosen set is not: it was the outcome of a
// choice. Evenness alone speaks of one set, so there the chosen one is taken.
func (r *Run) Request() (choice.Request, error) {
	var faults fault.List
	req := choice.Request{
		By: r.TuningsBy, Stock: r.Stock.Gauges, Ordering: r.Strings.Ordering, Neck: r.Neck(), Blanks: r.Blanks,
		Tails: tails(r.Tails.Nut, r.Tails.Saddle), TailsAssumed: r.Tails.NutAssumed || r.Tails.SaddleAssumed,
		Action: r.Saddle.heights(r.Strings.Tuning.Strings()), ActionAssumed: r.Saddle.Assumed,
		Feel: r.Feel.Feel, Limits: r.Limits,
		Given: r.set("strings.gauges", r.Strings.Gauges, &faults), Reference: r.reference(&faults),
	}
	for _, t := range r.Build.Tunings {
		req.Cases = append(req.Cases, choice.Case{Name: t.Name, Weight: t.Weight, CapoFret: t.CapoFret, Pitches: t.Tuning.Pitches(r.Strings.PitchStandard)})
	}
	if r.Strings.Stock != nil {
		req.Usable = r.indexes(r.Strings.Stock, func(i int) fault.Place { return r.Place(fmt.Sprintf("strings.stock[%d]", i)) }, &faults)
	}
	if !r.Given("strings.ordering") && slices.ContainsFunc(r.Build.Tunings, func(t Tuning) bool { return t.Tuning.ReEntrant() }) {
		req.Ordering = false // strings that do not rise one by one have no order
	}
	if c := r.Chosen; c != nil && req.Feel.Tension.Kind == choice.Even && req.Reference == nil && req.Given == nil {
		req.Given = r.set("chosen.gauges", c.Gauges, &faults)
	}
	req.Bass, req.Treble = r.lengths()
	if r.Bare { // what is known without readings: the neck and its limits
		req.Given, req.Usable, req.Reference, req.Feel, faults = nil, nil, nil, choice.DefaultFeel(false, false), nil
	}
	return req, faults.Err()
}

// lengths are those to try: of the file, else those about the reference's, which a
// chosen pair does not narrow, else the chosen pair's.
func (r *Run) lengths() (bass, treble []unit.Length) {
	bass, treble = r.Scales.Bass, r.Scales.Treble
	switch ref := r.Build.Reference; {
	case bass != nil || treble != nil:
	case ref == nil && r.Chosen != nil:
		return []unit.Length{r.Chosen.Bass}, []unit.Length{r.Chosen.Treble}
	case ref != nil:
		return choice.DefaultRange(ref.Bass, ref.Treble, ref.Tuning.Pitches(ref.PitchStandard)[0], r.LengthUnit != unit.Millimetres)
	}
	return bass, treble
}

// Tunings are those that the strings must serve, in the order of the request's
// cases.
func (r *Run) Tunings() []tuning.Tuning {
	var out []tuning.Tuning
	for _, t := range r.Build.Tunings {
		out = append(out, t.Tuning)
	}
	return out
}

func tails(nut, saddle []unit.Length) []tension.Tails {
	out := make([]tension.Tails, len(nut))
	for i := range out {
		out[i] = tension.Tails{Nut: nut[i], Saddle: saddle[i]}
	}
	return out
}

// heights run straight from the treble to the bass height.
func (s Saddle) heights(strings int) []unit.Length {
	out := make([]unit.Length, strings)
	for i := range out {
		part := unit.Length(i) / unit.Length(strings-1)
		out[i] = (1-part)*s.ActionTreble + part*s.ActionBass
	}
	return out
}

// Neck is the wanted neck without a pair.
func (r *Run) Neck() fan.Spec {
	spec := fan.Spec{Strings: r.Strings.Tuning.Strings(), AllowReverse: r.Scales.ReverseFan, Neck: r.Build.Neck.Neck}
	if r.Chosen != nil {
		spec.Neutral = *r.Chosen.Neutral
	}
	return spec
}

// reference is the instrument to be like; what it does not state is the neck's.
func (r *Run) reference(faults *fault.List) *choice.Reference {
	ref := r.Build.Reference
	if ref == nil {
		return nil
	}
	neck := r.Neck()
	neck.Bass, neck.Treble = ref.Bass, ref.Treble
	neck.Strings, neck.Frets, neck.Neutral = ref.Tuning.Strings(), ref.Frets, *ref.Neutral
	if ref.NutSpread > 0 && ref.SaddleSpread > 0 {
		neck.NutWidth, neck.OtherWidth = 0, 0
		neck.NutSpread, neck.SaddleSpread = ref.NutSpread, ref.SaddleSpread
	}
	neck.NutSpacing, neck.SaddleSpacing = fan.Spacing{}, fan.Spacing{}
	return &choice.Reference{
		Neck: neck, Pitches: ref.Tuning.Pitches(ref.PitchStandard), Gauges: r.set("reference.gauges", ref.Gauges, faults),
		Tails: tails(ref.NutTail, ref.SaddleTail), TailsAssumed: ref.TailsAssumed,
	}
}

// Pick is a pair and a set as far as they are settled: lengths 0 and a nil
// set are open.
type Pick struct {
	Bass, Treble unit.Length
	Gauges       []int // by string, indexes into the stock
}

// HasPair reports whether the pair is settled.
func (p Pick) HasPair() bool { return p.Bass > 0 }

// Pick gives what command line and build file settle: the pair of [chosen] or
// the only pair of [scales], and the gauges of the command line, of [chosen]
// or of [strings], in this order.
func (r *Run) Pick() (Pick, error) {
	var p Pick
	var faults fault.List
	if c := r.Chosen; c != nil {
		p = Pick{c.Bass, c.Treble, r.set("chosen.gauges", c.Gauges, &faults)}
	} else if s := r.Scales; len(s.Bass) == 1 && len(s.Treble) == 1 {
		p.Bass, p.Treble = s.Bass[0], s.Treble[0]
	}
	if r.Bare {
		return Pick{Bass: p.Bass, Treble: p.Treble}, nil
	}
	if p.Gauges == nil {
		p.Gauges = r.set("strings.gauges", r.Strings.Gauges, &faults)
	}
	return p, faults.Err()
}

// fewestToTell is the fewest strings that tell a list written high string
// first from a choice of its own (judgement).
const fewestToTell = 3

// set finds the gauges of a key, string 1 first, by their labels; nil for none.
// It reports labels that are not in stock, and a set that was written high string
// first: each gauge is thicker than its neighbour on the bass side. With ordering
// = false it may be meant so.
func (r *Run) set(key string, labels []string, faults *fault.List) []int {
	if labels == nil {
		return nil
	}
	before := len(*faults)
	set := r.indexes(labels, func(i int) fault.Place { return r.PlaceOfString(key, i+1) }, faults)
	thicker := func(a, b int) int {
		if r.Stock.Gauges[a].Outer >= r.Stock.Gauges[b].Outer {
			return -1
		}
		return 1
	}
	if len(*faults) == before && r.Strings.Ordering && len(set) >= fewestToTell && slices.IsSortedFunc(set, thicker) {
		faults.Add(r.Place(key), "every gauge is thicker than the one before it", strings.Join(reversed(labels), " "),
			fmt.Sprintf("low string first? write %s; a set that is meant so needs ordering = false under [strings]", labelList(labels)))
	}
	return set
}

func reversed(labels []string) []string {
	out := slices.Clone(labels)
	slices.Reverse(out)
	return out
}

// indexes finds gauges by label, noting every one that is not in stock.
func (r *Run) indexes(labels []string, at func(i int) fault.Place, faults *fault.List) []int {
	out := make([]int, len(labels))
	for i, label := range labels {
		g, err := r.Stock.Lookup(label)
		faults.Include(at(i), err)
		out[i] = max(0, slices.IndexFunc(r.Stock.Gauges, func(have gauges.Gauge) bool { return have.Label == g.Label }))
	}
	return out
}

// Placed gives faults that name a key of the build file the key's place, or that
// of its section where the file leaves it out.
func (r *Run) Placed(err error) error {
	list, ok := err.(fault.List)
	if !ok {
		return err
	}
	for i, f := range list {
		key := f.Place.Input
		if side, ok := strings.CutPrefix(key, "scales."); ok && r.Chosen != nil {
			key = "chosen." + side
		}
		if _, _, known := reach(reflect.ValueOf(new(Build)).Elem(), key); !known {
			continue
		}
		if list[i].Place = r.Place(key); list[i].Place.Line > 0 || !r.Given(key) {
			list[i].What = lastKey(key) + ": " + f.What
		}
	}
	return list.Err()
}
