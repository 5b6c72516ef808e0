package build

import (
	"fmt"
	"maps"
	"strings"

	"scalepair/data/fault"
	"scalepair/data/unit"
	"scalepair/tension/choice"
	"scalepair/tuning"
)

// Column is one column of a comparison as asked for: the build with some of its
// keys over it. Its request has its pair as the only one to try; none where the
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

// Columns gives the columns that the flags ask for, else those of [[compare]],
// else today's set against a suggested one: today's is the set chosen or given,
// and where there is none the reference instrument's. So it does where the flags
// leave one column and name no set.
func (r *Run) Columns(asked Comparison) ([]Column, error) {
	var faults fault.List
	var out []Column
	all := asked.combined()
	file := asked.Listed == nil && len(all) == 1 && len(all[0]) == 0 && len(r.Build.Columns) > 0
	if file {
		all = r.ofFile()
	} else if asked.Listed != nil {
		all = asked.Listed
	}
	if asked.OneSet && len(asked.Gauges) > 0 {
		return nil, fault.Fault{Place: fault.Place{Input: "--one-set"}, What: "a set is given too", Given: strings.Join(asked.Gauges, "; "), Remedy: "keep --gauges or --one-set"}
	}
	if len(all) > mostColumns {
		at := fault.Place{Input: "scalepair compare"}
		if file {
			at = r.Place("compare")
		}
		return nil, fault.Fault{Place: at, What: fmt.Sprintf("this makes %d columns", len(all)),
			Remedy: fmt.Sprintf("compare up to %d at once", mostColumns)}
	}
	for _, texts := range all {
		c, err := r.column(texts)
		c.Name = texts["name"]
		faults.Include(fault.Place{Input: r.File}, err)
		out = append(out, c)
	}
	if err := faults.Err(); err != nil || len(out) > 1 || len(asked.Gauges) > 0 || asked.OneSet {
		return out, err
	}
	return r.againstSuggested(out[0]) // one column alone compares nothing
}

// column reads the build anew with flags over it, those of the run among them.
func (r *Run) column(texts map[string]string) (c Column, err error) {
	var faults fault.List
	one, set := *r, texts["gauges"]
	flags := Flags{byName: map[string]*Flag{}}
	if r.flags != nil {
		maps.Copy(flags.byName, r.flags.byName)
	}
	for name, text := range texts {
		err = nil
		switch {
		case name == "name":
		case name == "pair":
			var bass, treble unit.Length
			bass, treble, err = parsePair(text)
			flags.byName["bass"], flags.byName["treble"] = &Flag{name: "pair", key: "scales.bass", text: bass.String()},
				&Flag{name: "pair", key: "scales.treble", text: treble.String()}
		case name == "retune":
			flags.retune = strings.Split(text, ",")
		case name != "gauges" || !isSetWord(text):
			delete(flags.byName, name)
			err = flags.flag(name).Set(text)
		}
		faults.Include(fault.Place{Input: "--" + name}, err)
	}
	if len(faults) > 0 {
		return c, faults
	}
	if one.Build, err = Read(r.Source, r.File, &flags); err != nil {
		return c, err
	}
	c.Tunings = one.Tunings()
	if c.Request, err = one.Request(); err != nil {
		return c, err
	}
	pick, err := one.Pick()
	c.Request.Given, c.Request.Bass, c.Request.Treble = nil, nil, nil
	if pick.HasPair() {
		c.SetPair(pick.Bass, pick.Treble)
	}
	if err == nil {
		err = one.setOf(&c, set, pick.Gauges)
	}
	return c, err
}

// setOf settles a column's set: by its gauges, by a word, or that of the build.
func (r *Run) setOf(c *Column, text string, today []int) (err error) {
	refuse := func(what, remedy string) error {
		return fault.Fault{Place: fault.Place{Input: "--gauges"}, What: what, Given: text, Remedy: remedy}
	}
	c.Set = today
	switch word := strings.ToLower(strings.TrimSpace(text)); {
	case word == "reference":
		if c.Set, err = r.referenceSet(); err == nil && c.Set == nil {
			err = refuse("there is no reference instrument with as many strings", "describe one under [reference], or list the gauges")
		}
		c.SetName = ReferenceSet
	case word == "today" && today == nil:
		err = refuse("there is no set of today", "scalepair advise --save keeps the one advised; or list the gauges")
	case word == "suggested" || today == nil:
		c.Set, c.SetName = nil, SuggestedSet
	case word == "today" || text == "":
		c.SetName = TodaysSet
	}
	return err
}

// againstSuggested sets a column's set, else the reference's, against the
// suggested one.
func (r *Run) againstSuggested(base Column) (out []Column, err error) {
	suggested := base
	suggested.Set, suggested.SetName = nil, SuggestedSet
	if base.Set == nil {
		base.SetName = ReferenceSet
		base.Set, err = r.referenceSet()
	}
	if base.Set == nil || err != nil {
		return []Column{suggested}, err
	}
	suggested.unasked = true
	return []Column{base, suggested}, nil
}

// referenceSet is the set of a reference instrument with as many strings; nil
// without one.
func (r *Run) referenceSet() (set []int, err error) {
	var faults fault.List
	if ref := r.Build.Reference; ref != nil && ref.Tuning.Strings() == r.Strings.Tuning.Strings() {
		set = r.set("reference.gauges", ref.Gauges, &faults)
	}
	return set, faults.Err()
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
				return nil, nil, r.Placed(err)
			}
		}
		c.Request.Feel.BendStrings = append([]int{}, first.BendStrings()...)
		kept, out = append(kept, c), append(out, c.Column)
	}
	return kept, out, nil
}
