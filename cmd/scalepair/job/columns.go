package job

import (
	"fmt"
	"slices"

	"scalepair/cmd/scalepair/build"
	"scalepair/data/fault"
	"scalepair/data/unit"
	"scalepair/fan"
	"scalepair/tension/choice"
	"scalepair/tuning"
)

// Column is one column of a comparison as asked for, before it is worked out.
type Column struct {
	// Name is the builder's own, "" where the column is to be named by what it
	// differs in.
	Name string
	// Tunings and Cases are what the column's set serves, one tuning or several.
	Tunings []tuning.Tuning
	Cases   []choice.Case
	// The pair; lengths of 0 are open.
	Bass, Treble unit.Length
	Neutral      fan.Neutral
	// Set is nil where the best of the stock is wanted.
	Set []int
	// SetName names the set, such as "today's set"; "" for one given by its
	// gauges.
	SetName string
	// IfAny marks a suggested set that nobody asked for: the column is left out
	// where nothing tells one set from another.
	IfAny bool
}

// SetName of the sets that need no list of gauges.
const (
	TodaysSet    = "today's set"
	ReferenceSet = "the reference's set"
	SuggestedSet = "suggested set"
)

// Columns gives the columns that the flags ask for, else those of [[compare]],
// else today's set against a suggested one: today's is the set chosen or
// given, and where there is none the reference instrument's. So it does where
// the flags leave one column and name no set.
func (j *Job) Columns(asked Comparison) ([]Column, error) {
	pick, err := j.Pick()
	if err != nil {
		return nil, err
	}
	base := Column{
		Tunings: j.Tunings(), Cases: j.Cases(), Bass: unit.MM(pick.BassMM), Treble: unit.MM(pick.TrebleMM),
		Neutral: j.Neck().Neutral, Set: pick.Gauges, SetName: SuggestedSet,
	}
	if pick.Gauges != nil {
		base.SetName = TodaysSet
	}
	switch {
	case asked.any():
		out, err := j.askedColumns(base, asked)
		if err != nil || len(out) > 1 || asked.Gauges != nil {
			return out, err
		}
		return j.usualColumns(out[0]) // one column alone compares nothing
	case len(j.Build.Columns) > 0:
		return j.fileColumns(base)
	}
	return j.usualColumns(base)
}

// usualColumns sets today's set against a suggested one.
func (j *Job) usualColumns(base Column) ([]Column, error) {
	suggested := base
	suggested.Set, suggested.SetName = nil, SuggestedSet
	if base.Set == nil {
		var err error
		if base.Set, err = j.referenceSet(); err != nil {
			return nil, err
		}
		base.SetName = ReferenceSet
	}
	if base.Set == nil {
		return []Column{suggested}, nil
	}
	suggested.IfAny = true
	return []Column{base, suggested}, nil
}

// referenceSet is the set of a reference instrument with as many strings; nil
// without one.
func (j *Job) referenceSet() ([]int, error) {
	ref := j.Build.Reference
	if ref == nil || ref.Tuning.Strings() != j.Build.Strings.Tuning.Strings() {
		return nil, nil
	}
	var faults fault.List
	set := j.indexes(ref.Gauges, j.gaugePlace("reference.gauges"), &faults)
	return set, faults.Err()
}

// fileColumns are those of [[compare]].
func (j *Job) fileColumns(base Column) ([]Column, error) {
	var faults fault.List
	var out []Column
	for i, from := range j.Build.Columns {
		c, key := base, fmt.Sprintf("compare[%d]", i)
		c.Name = from.Name
		j.columnTunings(&c, from, key)
		if from.Bass > 0 {
			c.Bass, c.Treble = from.Bass, from.Treble
		}
		if from.Neutral != nil {
			c.Neutral = *from.Neutral
		}
		if from.Gauges != nil {
			c.Set, c.SetName = j.indexes(from.Gauges, j.gaugePlace(key+".gauges"), &faults), ""
		}
		out = append(out, c)
	}
	return out, faults.Err()
}

// columnTunings puts a column's own tuning, capo and pitch standard in place of
// the build's, as far as it states them.
func (j *Job) columnTunings(c *Column, from build.Column, key string) {
	names := make([]string, len(c.Cases))
	for i := range c.Cases {
		names[i] = c.Cases[i].Name
	}
	c.Cases = slices.Clone(c.Cases)
	if from.Tuning != nil {
		c.Tunings, names = []tuning.Tuning{*from.Tuning}, []string{title(*from.Tuning, "")}
		c.Cases = []choice.Case{{Weight: 1, CapoFret: j.Build.Strings.CapoFret}}
	}
	hz := j.Build.Strings.PitchStandard.Hz()
	if j.Build.Given(key + ".pitch_standard_hz") {
		hz = from.PitchStandard.Hz()
	}
	for i := range c.Cases {
		c.Cases[i].Name, c.Cases[i].Pitches = names[i], pitches(c.Tunings[i].FreqsHz(hz))
		if j.Build.Given(key + ".capo_fret") {
			c.Cases[i].CapoFret = *from.CapoFret
		}
	}
}

// Requests makes the columns ready to be worked out; every pair must be
// settled. All columns bend the strings that the first one bends, so that like
// stands beside like. The columns come back too, without those that are left
// out.
func (j *Job) Requests(columns []Column) ([]Column, []choice.Column, error) {
	var kept []Column
	var out []choice.Column
	suggests := true
	for _, c := range columns {
		req, err := j.columnRequest(c)
		if c.IfAny && (!suggests) {
			continue
		}
		if err != nil {
			return nil, nil, err
		}
		if len(out) > 0 {
			req.Feel.BendStrings = out[0].Request.Feel.BendStrings
		} else {
			plan, err := choice.Prepare(req)
			if err != nil {
				return nil, nil, j.atFile(err)
			}
			req.Feel.BendStrings, suggests = append([]int{}, plan.BendStrings()...), plan.CanSuggest()
		}
		kept = append(kept, c)
		out = append(out, choice.Column{Name: c.Name, Request: req, Set: c.Set})
	}
	return kept, out, nil
}

// columnRequest is the build's request with what the column states.
func (j *Job) columnRequest(c Column) (choice.Request, error) {
	req, err := j.Request()
	if err != nil {
		return req, err
	}
	req.Cases, req.Neck.Neutral, req.Given = c.Cases, c.Neutral, c.Set
	req.Bass, req.Treble = []unit.Length{c.Bass}, []unit.Length{c.Treble}
	if c.Set == nil && req.Reference == nil && !wantsANumber(req.Feel) {
		return req, fault.Fault{Place: j.Build.Place("feel"), What: "no set can be suggested: the tension or bending force wanted is the set's own mean, which any set has",
			Remedy: "say under [feel] what is wanted, describe a [reference], or give the column its gauges"}
	}
	return req, nil
}

// wantsANumber says that no target is the set's own mean, so that a set may be
// chosen by it.
func wantsANumber(f choice.Feel) bool {
	return f.Tension.Kind != choice.Even
}
