package build

import (
	"cmp"
	"fmt"
	"maps"
	"slices"
	"strconv"
	"strings"

	"github.com/spf13/pflag"

	"scalepair/data/fault"
	"scalepair/data/unit"
	"scalepair/tuning"
)

// flagTable has the flags over the build file by name, with the key of each and
// what help says.
var flagTable = []struct{ name, key, usage string }{
	{"bass", "scales.bass", "bass scale `length` or range: \"686 mm\", \"26.5 in to 28 in\", or +10mm on the chosen pair's"},
	{"treble", "scales.treble", "treble scale `length` or range"},
	{"tuning", "strings.tuning", "`notes` low to high, or a named tuning"},
	{"gauges", "strings.gauges", "`gauges` of the stock, low string first"},
	{"capo", "strings.capo_fret", "`fret` of a capo, 0 for none (default: the build file's)"},
	{"pitch", "strings.pitch_standard_hz", "pitch standard: A4 in `Hz`"},
	{"neutral", "neck.neutral_fret", "neutral `fret`, such as 7 or 7.5, or bridge"},
	{"neck-angle", "playing.neck_angle_deg", "with --neutral-table: `angle` at which the neck points up from level, such as \"25 deg\""},
	{"trials", "confidence.trials", "`number` of trials for the confidence, 0 for none (default: the build file's)"},
	{"seed", "confidence.seed", "`seed` of the trials (default: the build file's)"},
}

// Flags are the flags that stand over the build file.
type Flags struct {
	byName map[string]*Flag
	// freeGauges lets the gauges be chosen although the file gives them; retune
	// has single strings at other notes, "6=A1".
	freeGauges bool
	retune     []string
}

// Add registers flags by name; without names all that change what is built.
func (f *Flags) Add(set *pflag.FlagSet, names ...string) {
	if len(names) == 0 {
		names = []string{"bass", "treble", "tuning", "gauges", "capo", "pitch", "neutral"}
		set.BoolVar(&f.freeGauges, "free-gauges", false, "choose gauges from the stock, whatever the file gives")
		set.StringSliceVar(&f.retune, "retune", nil, "tune one string to another `note`, such as 6=A1 (1 is the highest)")
	}
	for _, row := range flagTable {
		if slices.Contains(names, row.name) {
			set.Var(f.flag(row.name), row.name, row.usage)
		}
	}
}

// ButPair gives the flags without those of the pair; nil stays nil.
func (f *Flags) ButPair() *Flags {
	if f == nil {
		return nil
	}
	rest := *f
	rest.byName = maps.Clone(f.byName)
	delete(rest.byName, "bass")
	delete(rest.byName, "treble")
	return &rest
}

// flag gives the flag of a name, which is made where there is none.
func (f *Flags) flag(name string) *Flag {
	if f.byName == nil {
		f.byName = map[string]*Flag{}
	}
	for _, row := range flagTable {
		if row.name == name && f.byName[name] == nil {
			f.byName[name] = NewFlag(name, row.key)
		}
	}
	return f.byName[name]
}

// given reports whether the flag of a name was given.
func (f *Flags) given(name string) bool { return f.byName[name] != nil && f.byName[name].text != "" }

// over puts the flags over a build as the file has it.
func (f *Flags) over(b *Build) error {
	var faults fault.List
	include := func(name string, err error) { faults.Include(fault.Place{Input: "--" + name}, err) }
	for name, one := range f.byName {
		if name != "bass" && name != "treble" {
			include(name, one.over(b))
		}
	}
	if f.given("tuning") {
		b.oneTuning()
	}
	if len(f.retune) > 0 {
		if b.Strings.Tuning.Strings() == 0 && len(b.Tunings) > 0 {
			b.Strings.Tuning = b.Tunings[0].Tuning
		}
		t, err := retuned(b.Strings.Tuning, f.retune)
		include("retune", err)
		b.oneTuning()
		name := strings.NewReplacer(" ", "", "=", " at ").Replace(strings.Join(f.retune, ", "))
		b.Strings.Tuning, b.Tunings = t, []Tuning{{Name: "string " + strings.ReplaceAll(name, ",", ", "), Tuning: t}}
		b.places.say("strings.tuning", "retune", strings.Join(f.retune, ","))
	}
	for i := range b.Tunings {
		if f.given("capo") {
			b.Tunings[i].CapoFret = b.Strings.CapoFret
			b.places.say(fmt.Sprintf("tunings[%d].capo_fret", i), "capo", f.byName["capo"].text)
		}
	}
	if f.freeGauges && f.given("gauges") {
		include("free-gauges", fault.Fault{What: "a set is given too", Given: f.byName["gauges"].text, Remedy: "keep --gauges or --free-gauges"})
	} else if f.freeGauges {
		b.Strings.Gauges = nil
	}
	if b.Chosen != nil {
		other := f.given("tuning") && len(b.Chosen.Gauges) != b.Strings.Tuning.Strings() // a set for another number of strings
		if f.freeGauges || f.given("gauges") || other {
			b.Chosen.Gauges = nil
		}
		if f.given("neutral") {
			b.Chosen.Neutral = nil
		}
	}
	include("bass", f.pair(b))
	return faults.Err()
}

// pair puts --bass and --treble over the lengths to try and the chosen pair: one
// length for each side chooses the pair, a range searches.
func (f *Flags) pair(b *Build) error {
	if !f.given("bass") && !f.given("treble") {
		return nil
	}
	var pair Pair
	if c := b.Chosen; c != nil {
		pair = Pair{Bass: cmp.Or(c.Scale, c.Bass), Treble: cmp.Or(c.Scale, c.Treble)}
	}
	var faults fault.List
	open := false
	for _, side := range []struct {
		name   string
		length *unit.Length
		tried  *Lengths
	}{{"bass", &pair.Bass, &b.Scales.Bass}, {"treble", &pair.Treble, &b.Scales.Treble}} {
		if f.given(side.name) {
			one, err := f.byName[side.name].changing(*side.length)
			if err == nil {
				err = one.over(b)
			}
			faults.Include(fault.Place{Input: "--" + one.name}, err)
			*side.length = 0
			if len(*side.tried) == 1 {
				*side.length = (*side.tried)[0]
			}
		}
		open = open || *side.length == 0
	}
	switch {
	case len(faults) > 0:
		return faults
	case open:
		b.Chosen = nil // there is something to be searched
		return nil
	case b.Chosen == nil:
		b.Chosen = &Chosen{}
	}
	b.Chosen.Pair = pair
	b.places.drop(func(path string) bool { return path == "chosen.scale" })
	for _, name := range []string{"bass", "treble"} {
		if !b.Given("chosen."+name) || f.given(name) {
			b.places.say("chosen."+name, f.flag(name).name, f.flag(name).text)
		}
	}
	return nil
}

// changing gives the flag of a scale length; one that was given as a change, with
// the chosen length changed by it.
func (f Flag) changing(chosen unit.Length) (Flag, error) {
	if !f.shift() {
		return f, nil
	}
	change, err := unit.ParseLength(f.text)
	if err == nil && chosen == 0 {
		err = fault.Fault{What: "there is no chosen pair to change", Given: f.text, Remedy: "give the length itself, or choose a pair under [chosen]"}
	}
	f.text = (chosen + change).String()
	return f, err
}

// shift reports whether a scale length is given as a change: +10mm.
func (f *Flag) shift() bool {
	return strings.HasPrefix(f.key, "scales.") && strings.IndexAny(strings.TrimSpace(f.text), "+-") == 0
}

// retuned gives a tuning with single strings at other notes. Each change is
// "6=A1": the string's number, 1 the highest, and its new note. The result
// has no name.
func retuned(t tuning.Tuning, changes []string) (tuning.Tuning, error) {
	var faults fault.List
	out := tuning.Tuning{Notes: slices.Clone(t.Notes)}
	seen := map[int]bool{}
	for _, text := range changes {
		number, note, found := strings.Cut(text, "=")
		n, err := strconv.Atoi(strings.TrimSpace(number))
		switch {
		case !found || err != nil:
			faults.Add(fault.Place{}, "not a string and its note", text, "give the string's number, 1 the highest, and its note: 6=A1")
			continue
		case n < 1 || n > t.Strings():
			faults.Add(fault.Place{}, "there is no such string", text, fmt.Sprintf("use 1 to %d; 1 is the highest", t.Strings()))
			continue
		case seen[n]:
			faults.Add(fault.Place{}, "this string has two notes", strings.Join(changes, ","), "keep one of them")
			continue
		}
		seen[n] = true
		to, err := tuning.ParseNote(note)
		faults.Include(fault.Place{}, err)
		out.Notes[len(out.Notes)-n] = to
	}
	return out, faults.Err()
}
