package build

import (
	"fmt"
	"slices"
	"strconv"
	"strings"

	"scalepair/data/fault"
	"scalepair/data/unit"
	"scalepair/tuning"
)

// Comparison is what the command line asks a comparison for. Each list holds a
// flag that may be repeated; every combination of them is a column.
type Comparison struct {
	Tunings []string // notes or names
	Retunes []string // "6=A1", or several with commas: one more tuning each
	Capos   []string // frets
	Pairs   []string // "690 / 650 mm", or one length for straight frets
	Gauges  []string // labels, "today", "reference" or "suggested"
	OneSet  bool     // the set that serves all columns best
}

func (c Comparison) any() bool {
	return len(c.Tunings)+len(c.Retunes)+len(c.Capos)+len(c.Pairs)+len(c.Gauges) > 0
}

// mostColumns bounds a comparison (judgement: more than anybody can compare,
// and a slip of the keyboard).
const mostColumns = 24

// askedColumns combines what the flags list: tunings, then capos, pairs, sets.
func (r *Run) askedColumns(base Column, asked Comparison) ([]Column, error) {
	var faults fault.List
	out := r.tuningColumns(base, asked, &faults)
	if len(out) == 0 {
		out = []Column{base} // no tuning was right, so that the other flags are still looked at
	}
	out = combine(out, asked.Capos, func(c *Column, text string) { r.capoOf(c, text, &faults) })
	out = combine(out, asked.Pairs, func(c *Column, text string) { r.pairOf(c, text, &faults) })
	out = combine(out, asked.Gauges, func(c *Column, text string) { r.setOf(base, c, text, &faults) })
	if len(out) > mostColumns {
		faults.Add(fault.Place{Input: "--tuning"}, fmt.Sprintf("these flags combine to %d columns", len(out)), "",
			fmt.Sprintf("compare up to %d at once", mostColumns))
	}
	return out, oneOfEach(faults).Err()
}

// combine gives every column once for each text, changed by it; without texts
// the columns stay.
func combine(columns []Column, texts []string, change func(c *Column, text string)) []Column {
	if len(texts) == 0 {
		return columns
	}
	var out []Column
	for _, c := range columns {
		for _, text := range texts {
			one := c.clone()
			change(&one, text)
			out = append(out, one)
		}
	}
	return out
}

// oneOfEach drops faults that came up once for every column.
func oneOfEach(list fault.List) fault.List {
	var out fault.List
	for _, f := range list {
		if !slices.Contains(out, f) {
			out = append(out, f)
		}
	}
	return out
}

// tuningColumns gives one column for each tuning: those named, or the build's
// own, and one for each retuning.
func (r *Run) tuningColumns(base Column, asked Comparison, faults *fault.List) []Column {
	var out []Column
	if len(asked.Tunings) == 0 {
		out = append(out, base)
	}
	add := func(t tuning.Tuning, name, flag, text string) {
		if what, remedy := r.wrongTuning(t, r.Strings.Tuning.Strings()); what != "" {
			faults.Add(fault.Place{Input: "--" + flag}, what, text, remedy)
			return
		}
		c := base.clone()
		c.retune(t, name, r.Strings.PitchStandard, r.Strings.CapoFret)
		out = append(out, c)
	}
	for _, text := range asked.Tunings {
		t, err := tuning.Parse(text)
		if faults.Include(fault.Place{Input: "--tuning"}, err); err == nil {
			add(t, title(t), "tuning", text)
		}
	}
	for _, text := range asked.Retunes {
		t, err := Retuned(r.Strings.Tuning, strings.Split(text, ","))
		if faults.Include(fault.Place{Input: "--retune"}, err); err == nil {
			add(t, "string "+strings.NewReplacer(" ", "", "=", " at ", ",", ", ").Replace(text), "retune", text)
		}
	}
	return out
}

func (r *Run) capoOf(c *Column, text string, faults *fault.List) {
	fret, err := strconv.Atoi(strings.TrimSpace(text))
	if err != nil || fret < 0 || fret > r.Build.Neck.Frets {
		faults.Add(fault.Place{Input: "--capo"}, "there is no such fret for a capo", text, fmt.Sprintf("give 1 to %d, or 0 for none", r.Build.Neck.Frets))
	}
	for i := range c.Request.Cases {
		c.Request.Cases[i].CapoFret = fret
	}
}

func (r *Run) pairOf(c *Column, text string, faults *fault.List) {
	at := fault.Place{Input: "--pair"}
	bass, treble, err := parsePair(text)
	faults.Include(at, err)
	if err == nil && bass < treble && !r.Scales.ReverseFan {
		faults.Add(at, "the bass is shorter than the treble", text, "bass first; for a reverse fan write reverse_fan = true under [scales]")
	}
	c.SetPair(bass, treble)
}

// parsePair reads a scale pair, bass first: "690 / 650 mm", "27 in / 25 1/2 in",
// or one length for straight frets. A length without a unit takes that of the
// other.
func parsePair(text string) (bass, treble unit.Length, err error) {
	if l, err := unit.ParseLength(text); err == nil && isScale(l) {
		return l, l, nil
	}
	for i := range text {
		if text[i] != '/' {
			continue
		}
		left, right := text[:i], text[i+1:]
		treble, err := unit.ParseLength(right)
		bass, bare := unit.ParseLength(left)
		if bare != nil {
			bass, bare = unit.ParseLength(left + strings.TrimLeft(right, " 0123456789./½¼¾-"))
		}
		if err == nil && bare == nil && isScale(bass) && isScale(treble) {
			return bass, treble, nil
		}
	}
	return 0, 0, fault.Fault{What: "not a scale pair", Given: text,
		Remedy: `write bass and treble with their unit, such as "690 / 650 mm", or one length for straight frets, from 200 to 2000 mm`}
}

func isScale(l unit.Length) bool { return l >= 200*unit.Millimetre && l <= 2000*unit.Millimetre }

// setOf reads labels, or the word for a set that needs none.
func (r *Run) setOf(base Column, c *Column, text string, faults *fault.List) {
	at := fault.Place{Input: "--gauges"}
	var err error
	switch strings.ToLower(strings.TrimSpace(text)) {
	case "suggested":
		c.Set, c.SetName = nil, SuggestedSet
	case "today":
		if c.Set, c.SetName = base.Set, TodaysSet; base.Set == nil {
			faults.Add(at, "there is no set of today", text, "give strings.gauges in the build file, or list the gauges")
		}
	case "reference":
		c.SetName = ReferenceSet
		if c.Set, err = r.referenceSet(); err == nil && c.Set == nil {
			faults.Add(at, "there is no reference instrument with as many strings", text, "describe one under [reference], or list the gauges")
		}
		faults.Include(at, err)
	default:
		var labels PerString[string]
		_ = labels.UnmarshalText([]byte(text))
		if err := labels.settle(r.Strings.Tuning.Strings()); err != nil {
			faults.Include(at, err)
			return
		}
		c.Set, c.SetName = r.set(labels, func(int) fault.Place { return at }, faults), ""
	}
}
