// Package tuning reads notes and tunings and returns their pitches.
//
// Notes are in scientific pitch notation: a letter, sharps or flats, the octave
// (middle C is C4) and, where wanted, a deviation in cents. Tunings are written
// as they are spoken, low string first; strings are numbered from the highest,
// so string 1 is the note written last.
//
// In reading order: note.go, parse.go, tuning.go, named.go.
package tuning

import (
	"math"
	"strconv"
	"strings"

	"scalepair/data/unit"
)

// ConcertA is the usual pitch standard, the frequency of A4 in Hz. ISO 16.
const ConcertA = 440.0

// Note is a pitch of equal temperament with a deviation in cents.
type Note struct {
	Semitone int     // MIDI number: C4 = 60, A4 = 69
	Cents    float64 // deviation, within +-100
	Spelling string  // letter, # or b, octave, without cents: "F#3", "Gb3"
}

// Pitch returns the frequency of the note under a pitch standard.
//
//	f = a4 * 2^((n - 69 + c/100)/12)
//
// a4 is the frequency of A4, n the MIDI number, c the cents. Equal temperament
// with A4 as note 69; the MIDI note table, ISO 16 for 440 Hz.
func (n Note) Pitch(a4 unit.Frequency) unit.Frequency {
	return a4 * unit.Frequency(math.Exp2((float64(n.Semitone-69)+n.Cents/100)/12))
}

// Up returns the note that many semitones higher, for a capo or a retuned
// string. A note spelt with a flat stays with flats, one with a sharp with
// sharps.
func (n Note) Up(semitones int) Note {
	names := common
	switch spelling := n.spelling(); {
	case strings.Contains(spelling, "#"):
		names = sharps
	case strings.Contains(spelling[1:], "b"):
		names = flats
	}
	n.Semitone += semitones
	n.Spelling = spell(n.Semitone, names)
	return n
}

// String returns the note so that ParseNote reads the same back: "F#3",
// "A2-14c".
func (n Note) String() string { return n.with(n.Cents) }

// Name returns the note for a reader, with the cents rounded to a tenth and
// left out when they round to nothing.
func (n Note) Name() string { return n.with(math.Round(n.Cents*10) / 10) }

func (n Note) with(cents float64) string {
	if cents == 0 {
		return n.spelling()
	}
	sign := ""
	if cents > 0 {
		sign = "+"
	}
	return n.spelling() + sign + strconv.FormatFloat(cents, 'f', -1, 64) + "c"
}

func (n Note) spelling() string {
	if n.Spelling == "" {
		return spell(n.Semitone, common)
	}
	return n.Spelling
}

// Names of the twelve semitones from C. Players say Eb and Bb, but C#, F# and
// G# (judgement).
var (
	common = [12]string{"C", "C#", "D", "Eb", "E", "F", "F#", "G", "G#", "A", "Bb", "B"}
	sharps = [12]string{"C", "C#", "D", "D#", "E", "F", "F#", "G", "G#", "A", "A#", "B"}
	flats  = [12]string{"C", "Db", "D", "Eb", "E", "F", "Gb", "G", "Ab", "A", "Bb", "B"}
)

// spell names a semitone; its octave is floor(n/12) - 1, so C-1 is note 0.
func spell(semitone int, names [12]string) string {
	octave := int(math.Floor(float64(semitone) / 12))
	return names[semitone-12*octave] + strconv.Itoa(octave-1)
}
