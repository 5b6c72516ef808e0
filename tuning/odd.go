package tuning

import (
	"fmt"
	"slices"

	"scalepair/data/fault"
	"scalepair/data/odd"
)

// Rows of the table.
const (
	watchStandard = iota
	watchNote
	watchStep
	watchCapo
)

// watched are the usual ranges of pitches.
var watched = [...]odd.Usual{
	watchStandard: {
		Quantity: "pitch standard", Measure: odd.Hertz, Low: 415, High: 446,
		Check:  "is this the frequency of A4?",
		Source: "from the low pitch of early music to the highest of orchestras (common practice, no source); ISO 16: 440 Hz",
	},
	watchNote: {
		Quantity: "pitch", Measure: odd.Hertz, Low: 23, High: 700,
		Check:  "is the octave right? a guitar's low E is E2, a bass's E1",
		Source: "from F#0, below any bass in use, to E5, the mandolin's first string, with a tone to spare (common practice, no source)",
	},
	watchStep: {
		Quantity: "step in pitch", Measure: odd.Semitones, Low: 0, High: 9,
		Check:  "is one of the two an octave off? for courses and re-entrant tunings write ordering = false under [strings]",
		Source: "judgement: tunings step by 2 to 7 semitones, and a string an octave off makes a step below 0 or above 9",
	},
	watchCapo: {
		Quantity: "capo fret", Measure: odd.Plain, Low: 0, High: 9,
		Check:  "is this the fret, counted from the nut?",
		Source: "judgement: a capo lies on the lower frets",
	},
}

// Watched gives the usual ranges of pitches, row by row.
func Watched() []odd.Usual { return slices.Clone(watched[:]) }

// Odd watches the open strings. ordered tells that every string is to sound no
// lower than its neighbour on the bass side; otherwise steps are left alone, and
// so are those of a tuning that was asked for by name.
func (t Tuning) Odd(ordered bool) odd.List {
	var out odd.List
	n := t.Strings()
	for i := 1; i <= n; i++ {
		hz := t.OfString(i).FreqHz(ConcertA)
		if u := &watched[watchNote]; !u.Holds(hz) {
			out.Look(u, fault.Place{}, fmt.Sprintf("of string %d, %s", i, t.OfString(i).Name()), hz)
		}
		if i == n || !ordered || t.Name != "" {
			continue
		}
		step := t.OfString(i).height() - t.OfString(i+1).height()
		if u := &watched[watchStep]; !u.Holds(step) {
			out.Look(u, fault.Place{}, fmt.Sprintf("from string %d, %s, to string %d, %s", i+1, t.OfString(i+1).Name(), i, t.OfString(i).Name()), step)
		}
	}
	return out
}

// height is the pitch in semitones.
func (n Note) height() float64 { return float64(n.Semitone) + n.Cents/100 }

// OddStandard watches the frequency of A4.
func OddStandard(a4Hz float64) odd.List {
	var out odd.List
	out.Look(&watched[watchStandard], fault.Place{}, "", a4Hz)
	return out
}

// OddCapo watches the fret of a capo; 0 is none.
func OddCapo(fret int) odd.List {
	var out odd.List
	out.Look(&watched[watchCapo], fault.Place{}, "", float64(fret))
	return out
}
