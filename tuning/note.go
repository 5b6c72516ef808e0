// Package tuning reads notes and tunings and gives their frequencies.
//
// Notes are in scientific pitch notation: a letter, sharps or flats, the octave
// (middle C is C4) and cents where wanted. Tunings are written as they are
// spoken, low string first; the strings are numbered from the highest.
package tuning

import "math"

// ConcertA is the usual pitch standard: A4 in Hz. ISO 16.
const ConcertA = 440.0

// Note is a pitch of equal temperament with a deviation in cents.
type Note struct {
	Semitone int     // MIDI number, C4 = 60
	Cents    float64 // deviation, within +-100
	Spelling string  // as written, in ASCII and without cents: "F#3"
}

// FreqHz gives the note's frequency under a pitch standard.
//
//	f = a4 * 2^((n - 69 + c/100) / 12)
//
// a4 is the frequency of A4 in Hz, n the MIDI number, c the cents.
func (n Note) FreqHz(a4Hz float64) float64 {
	return a4Hz * math.Exp2((float64(n.Semitone-69)+n.Cents/100)/12)
}
