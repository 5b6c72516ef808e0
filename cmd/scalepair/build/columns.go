package build

import (
	"cmp"
	"fmt"
	"slices"

	"scalepair/data/fault"
	"scalepair/data/unit"
	"scalepair/tension/choice"
	"scalepair/tuning"
)

// Column is one column of a comparison as asked for. Its request has the
// column's tunings and neck, and its pair as the only one to try; none where the
// pair is still open. A nil set is to be suggested.
type Column struct {
	choice.Column
	// Tunings are those of the request's cases.
	Tunings []tuning.Tuning
	// SetName names the set, such as "today's set"; "" for one given by its
	// gauges.
	SetName string
	// unasked marks a suggested set that nobody asked for: the column is left out
	// where nothing tells one set from another.
	unasked bool
}

// SetName of the sets that need no list of gauges.
const (
	TodaysSet    = "today's set"
	ReferenceSet = "the reference's set"
	SuggestedSet = "suggested set"
)

// HasPair reports whether the column's pair is settled.
func (c *Column) HasPair() bool { return len(c.Request.Bass) == 1 && len(c.Request.Treble) == 1 }

// SetPair settles the column's pair.
func (c *Column) SetPair(bass, treble unit.Length) {
	c.Request.Bass, c.Request.Treble = []unit.Length{bass}, []unit.Length{treble}
}

// clone gives a column whose tunings can be changed by themselves.
func (c Column) clone() Column {
	c.Request.Cases = slices.Clone(c.Request.Cases)
	return c
}

// retune gives the column one tuning in place of its own.
func (c *Column) retune(t tuning.Tuning, name string, a4 unit.Frequency, capo int) {
	c.Tunings = []tuning.Tuning{t}
	c.Request.Cases = []choice.Case{{Name: name, Weight: 1, CapoFret: capo, Pitches: t.Pitches(a4)}}
}

// Columns gives the columns that the flags ask for, else those of [[compare]],
// else today's set against a suggested one: today's is the set chosen or given,
// and where there is none the reference instrument's. So it does where the flags
// leave one column and name no set.
func (r *Run) Columns(asked Comparison) ([]Column, error) {
	base, err := r.base()
	if err != nil {
		return nil, err
	}
	var out []Column
	switch {
	case asked.any():
		out, err = r.askedColumns(base, asked)
		if err == nil && len(out) == 1 && asked.Gauges == nil && !asked.OneSet {
			out, err = r.againstSuggested(out[0]) // one column alone compares nothing
		}
	case len(r.Build.Columns) > 0:
		out, err = r.fileColumns(base)
	default:
		out, err = r.againstSuggested(base)
	}
	return out, err
}

// base is the build itself as a column.
func (r *Run) base() (Column, error) {
	pick, err := r.Pick()
	if err != nil {
		return Column{}, err
	}
	base := Column{Tunings: r.Tunings(), SetName: SuggestedSet}
	if base.Request, err = r.Request(); err != nil {
		return base, err
	}
	base.Request.Given, base.Request.Bass, base.Request.Treble = nil, nil, nil
	if pick.HasPair() {
		base.SetPair(pick.Bass, pick.Treble)
	}
	if base.Set = pick.Gauges; base.Set != nil {
		base.SetName = TodaysSet
	}
	return base, nil
}

// againstSuggested sets a column's set against the suggested one.
func (r *Run) againstSuggested(base Column) ([]Column, error) {
	suggested := base
	suggested.Set, suggested.SetName = nil, SuggestedSet
	if base.Set == nil {
		var err error
		if base.Set, err = r.referenceSet(); err != nil {
			return nil, err
		}
		base.SetName = ReferenceSet
	}
	if base.Set == nil {
		return []Column{suggested}, nil
	}
	suggested.unasked = true
	return []Column{base, suggested}, nil
}

// referenceSet is the set of a reference instrument with as many strings; nil
// without one.
func (r *Run) referenceSet() ([]int, error) {
	ref := r.Build.Reference
	if ref == nil || ref.Tuning.Strings() != r.Build.Strings.Tuning.Strings() {
		return nil, nil
	}
	var faults fault.List
	set := r.set(ref.Gauges, r.placesOf("reference.gauges"), &faults)
	return set, faults.Err()
}

// fileColumns are those of [[compare]].
func (r *Run) fileColumns(base Column) ([]Column, error) {
	var faults fault.List
	var out []Column
	for i, from := range r.Build.Columns {
		c, key := base.clone(), fmt.Sprintf("compare[%d]", i)
		c.Name = from.Name
		r.fileTunings(&c, from)
		if from.Bass > 0 {
			c.SetPair(from.Bass, from.Treble)
		}
		if from.Neutral != nil {
			c.Request.Neck.Neutral = *from.Neutral
		}
		if from.Gauges != nil {
			c.Set, c.SetName = r.set(from.Gauges, r.placesOf(key+".gauges"), &faults), ""
		}
		out = append(out, c)
	}
	return out, faults.Err()
}

// fileTunings puts a column's own tuning, capo and pitch standard in place of
// the build's, as far as it states them.
func (r *Run) fileTunings(c *Column, from Compare) {
	a4 := cmp.Or(from.PitchStandard, r.Build.Strings.PitchStandard)
	if from.Tuning != nil {
		c.retune(*from.Tuning, title(*from.Tuning), a4, r.Build.Strings.CapoFret)
	}
	for i := range c.Request.Cases {
		c.Request.Cases[i].Pitches = c.Tunings[i].Pitches(a4)
		if from.CapoFret != nil {
			c.Request.Cases[i].CapoFret = *from.CapoFret
		}
	}
}

// Requests makes the columns ready to be worked out; every pair must be settled.
// All columns bend the strings that the first one bends, so that like stands
// beside like. A column that nobody asked for is left out where nothing tells
// one set from another.
func (r *Run) Requests(columns []Column) ([]Column, []choice.Column, error) {
	var kept []Column
	var out []choice.Column
	var first *choice.Plan
	for _, c := range columns {
		c.Request.Given = c.Set
		own := c.Set == nil && c.Request.Feel.Tension.Kind == choice.Even && c.Request.Reference == nil
		switch {
		case c.unasked && (own || first != nil && !first.CanSuggest()):
			continue
		case own:
			return nil, nil, fault.Fault{Place: r.Build.Place("feel"), What: "no set can be suggested: even tension without a reference has any set of one tension",
				Remedy: "say under [feel] what is wanted, describe a [reference], or give the column its gauges"}
		case first == nil:
			var err error
			if first, err = choice.Prepare(c.Request); err != nil {
				return nil, nil, r.atFile(err)
			}
		}
		c.Request.Feel.BendStrings = append([]int{}, first.BendStrings()...)
		kept, out = append(kept, c), append(out, c.Column)
	}
	return kept, out, nil
}
