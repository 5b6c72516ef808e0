package job

import (
	"fmt"
	"slices"
	"strconv"
	"strings"
	"unicode/utf8"

	"scalepair/cmd/scalepair/build"
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
func (j *Job) askedColumns(base Column, asked Comparison) ([]Column, error) {
	var faults fault.List
	out := j.tuningColumns(base, asked, &faults)
	if len(out) == 0 {
		out = []Column{base} // no tuning was right, so that the other flags are still looked at
	}
	out = combine(out, asked.Capos, func(c *Column, text string) { j.capoOf(c, text, &faults) })
	out = combine(out, asked.Pairs, func(c *Column, text string) { j.pairOf(c, text, &faults) })
	out = combine(out, asked.Gauges, func(c *Column, text string) { j.setOf(base, c, text, &faults) })
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
func (j *Job) tuningColumns(base Column, asked Comparison, faults *fault.List) []Column {
	var out []Column
	if len(asked.Tunings) == 0 {
		out = append(out, base)
	}
	add := func(t tuning.Tuning, name string) {
		c := base.clone()
		c.retune(t, name, j.Build.Strings.PitchStandard, j.Build.Strings.CapoFret)
		out = append(out, c)
	}
	want := j.Build.Strings.Tuning.Strings()
	for _, text := range asked.Tunings {
		at := fault.Place{Input: "--tuning"}
		t, err := tuning.Parse(text)
		if err == nil && j.Build.Strings.Ordering {
			err = build.HighFirst(t, text)
		}
		faults.Include(at, err)
		if err == nil && t.Strings() != want {
			faults.Add(at, fmt.Sprintf("this tuning has %d strings, the build has %d", t.Strings(), want), text,
				"all columns stand on one neck, with one number of strings")
		} else if err == nil {
			add(t, title(t, ""))
		}
	}
	for _, text := range asked.Retunes {
		t, err := build.Retuned(j.Build.Strings.Tuning, strings.Split(text, ","))
		faults.Include(fault.Place{Input: "--retune"}, err)
		if err == nil {
			add(t, retunedName(text))
		}
	}
	return out
}

// retunedName says which strings have another note: "6 at A1".
func retunedName(text string) string {
	return "string " + strings.ReplaceAll(strings.ReplaceAll(strings.ReplaceAll(text, " ", ""), "=", " at "), ",", ", ")
}

func (j *Job) capoOf(c *Column, text string, faults *fault.List) {
	fret, err := capoFret(text, j.Build.Neck.Frets)
	faults.Include(fault.Place{Input: "--capo"}, err)
	for i := range c.Request.Cases {
		c.Request.Cases[i].CapoFret = fret
	}
}

func (j *Job) pairOf(c *Column, text string, faults *fault.List) {
	at := fault.Place{Input: "--pair"}
	bass, treble, err := ParsePair(text)
	faults.Include(at, err)
	if err == nil && bass < treble && !j.Build.Scales.ReverseFan {
		faults.Add(at, "the bass scale is shorter than the treble scale", text, "bass first; for a reverse fan write reverse_fan = true under [scales]")
	}
	c.SetPair(bass, treble)
}

// setOf reads labels, or the word for a set that needs none.
func (j *Job) setOf(base Column, c *Column, text string, faults *fault.List) {
	at := fault.Place{Input: "--gauges"}
	switch strings.ToLower(strings.TrimSpace(text)) {
	case "suggested":
		c.Set, c.SetName = nil, SuggestedSet
		return
	case "today":
		if base.Set == nil {
			faults.Add(at, "there is no set of today", text, "give strings.gauges in the build file, or list the gauges")
		}
		c.Set, c.SetName = base.Set, TodaysSet
		return
	case "reference":
		set, err := j.referenceSet()
		faults.Include(at, err)
		if err == nil && set == nil {
			faults.Add(at, "there is no reference instrument with as many strings", text, "describe one under [reference], or list the gauges")
		}
		c.Set, c.SetName = set, ReferenceSet
		return
	}
	labels := strings.FieldsFunc(text, func(r rune) bool { return strings.ContainsRune(", ;", r) })
	slices.Reverse(labels)
	if have, want := len(labels), j.Build.Strings.Tuning.Strings(); have != want {
		faults.Add(at, fmt.Sprintf("%d labels for %d strings", have, want), text,
			"give one label a string, low string first, or a word: today, reference or suggested")
		return
	}
	c.Set, c.SetName = j.indexes(labels, func(int) fault.Place { return at }, faults), ""
}

// ParsePair reads a scale pair, bass first: "690 / 650 mm", "27 in / 25 1/2
// in", or one length for straight frets. A length without a unit takes that of
// the other.
func ParsePair(text string) (bass, treble unit.Length, err error) {
	if l, err := unit.ParseLength(text); err == nil && scaleLike(l) {
		return l, l, nil
	}
	for i, r := range text {
		if r != '/' {
			continue
		}
		t, err := unit.ParseLength(text[i+1:])
		if err != nil || !scaleLike(t) {
			continue
		}
		left := strings.TrimSpace(text[:i])
		b, err := unit.ParseLength(left)
		if err != nil {
			b, err = unit.ParseLength(left + unitOf(text[i+1:]))
		}
		if err == nil && scaleLike(b) {
			return b, t, nil
		}
	}
	return 0, 0, fault.Fault{What: "not a scale pair", Given: text,
		Remedy: fmt.Sprintf("write bass and treble with their unit, such as \"690 / 650 mm\", or one length for straight frets, each %d to %d mm", leastScaleMM, mostScaleMM)}
}

func scaleLike(l unit.Length) bool { return l.MM() >= leastScaleMM && l.MM() <= mostScaleMM }

// unitOf is what follows the last digit.
func unitOf(text string) string {
	at := strings.LastIndexAny(text, "0123456789½¼¾.")
	_, size := utf8.DecodeRuneInString(text[at:])
	return text[at+size:]
}

// capoFret reads the fret of a capo, 0 for none.
func capoFret(text string, frets int) (int, error) {
	fret, err := strconv.Atoi(strings.TrimSpace(text))
	if err != nil || fret < 0 || fret > frets {
		return 0, fault.Fault{What: "there is no such fret for a capo", Given: text, Remedy: fmt.Sprintf("give 1 to %d, or 0 for none", frets)}
	}
	return fret, nil
}

// Scales outside these bounds belong to no fretted instrument that the tool
// is for; package fan refuses them too.
const (
	leastScaleMM = 200
	mostScaleMM  = 2000
)
