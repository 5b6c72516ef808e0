package tuning

import (
	"fmt"
	"strings"
)

// Tuning is the notes of an instrument's strings. Name is empty for a tuning
// given by its notes.
type Tuning struct {
	Name  string
	Notes []Note // low string first, as written: Notes[len-1] is string 1
}

// Parse reads a tuning: notes parted by blanks or commas, low string first
// ("B1 E2 A2 D3 F#3 B3"), or the name of a tuning in the list ("baritone B").
func Parse(s string) (Tuning, error) {
	t, err := parse(s)
	if err != nil {
		return Tuning{}, guessed(s, err)
	}
	return t, nil
}

func parse(s string) (Tuning, error) {
	words := wordsOf(s)
	switch {
	case len(words) == 0:
		return Tuning{}, refuse("a tuning is missing", "", `write notes such as "E2 A2 D3 G3 B3 E4", or a name such as "baritone B"`)
	case anyNote(words):
		return parseNotes(words)
	}
	return lookup(s, words)
}

func wordsOf(s string) []string {
	return strings.FieldsFunc(plainSigns(s), func(c rune) bool { return strings.ContainsRune(" \t\r\n,;", c) })
}

// parseNotes reads a note a word, and names every word that is none.
func parseNotes(words []string) (Tuning, error) {
	var t Tuning
	var bad []string
	var last error
	for _, w := range words {
		n, err := ParseNote(w)
		if err != nil {
			bad, last = append(bad, w), err
		}
		t.Notes = append(t.Notes, n)
	}
	switch len(bad) {
	case 0:
		return t, nil
	case 1:
		return Tuning{}, last
	}
	return Tuning{}, refuse(notNotes, strings.Join(bad, " "),
		`write a letter from A to G, # or b where needed, and the octave, such as "F#3"`)
}

// anyNote tells whether notes were meant, well written or not.
func anyNote(words []string) bool {
	for _, w := range words {
		if looksLikeANote(w) {
			return true
		}
	}
	return false
}

// looksLikeANote tells whether w begins with a letter, then sharps or flats,
// then a number.
func looksLikeANote(w string) bool {
	if w[0]|0x20 < 'a' || w[0]|0x20 > 'z' {
		return false
	}
	rest := strings.TrimPrefix(strings.TrimLeft(w[1:], "#b"), "-")
	return rest != "" && rest[0] >= '0' && rest[0] <= '9'
}

// lookup finds a tuning by name, and says where letters without octaves were
// given instead.
func lookup(s string, words []string) (Tuning, error) {
	t, err := Lookup(s)
	if err == nil {
		return t, nil
	}
	for _, w := range words {
		if !noOctave.MatchString(w) {
			return Tuning{}, err
		}
	}
	return Tuning{}, refuse("the octaves are missing", s, `write "E2 A2 D3 G3 B3 E4" for a guitar; middle C is "C4"`)
}

// Strings gives the number of strings.
func (t Tuning) Strings() int { return len(t.Notes) }

// OfString gives the note of string n, where 1 is the highest, the one written
// last. It panics when there is no such string.
func (t Tuning) OfString(n int) Note {
	if n < 1 || n > len(t.Notes) {
		panic(fmt.Sprintf("tuning: no string %d of %d", n, len(t.Notes)))
	}
	return t.Notes[len(t.Notes)-n]
}

// FreqsHz gives the frequency of every string under a pitch standard; index 0
// is string 1.
func (t Tuning) FreqsHz(a4Hz float64) []float64 {
	out := make([]float64, len(t.Notes))
	for i := range out {
		out[i] = t.OfString(i + 1).FreqHz(a4Hz)
	}
	return out
}

// ReEntrant tells whether some string sounds lower than its neighbour on the
// bass side.
func (t Tuning) ReEntrant() bool {
	for i := 1; i < len(t.Notes); i++ {
		if t.Notes[i].FreqHz(ConcertA) < t.Notes[i-1].FreqHz(ConcertA) {
			return true
		}
	}
	return false
}

// Up gives the tuning that many semitones higher, as under a capo; negative
// goes down. The result has no name.
func (t Tuning) Up(semitones int) Tuning {
	out := Tuning{Notes: make([]Note, len(t.Notes))}
	for i, n := range t.Notes {
		out.Notes[i] = n.Up(semitones)
	}
	return out
}

// String gives the notes, low string first, so that Parse reads them back.
func (t Tuning) String() string {
	words := make([]string, len(t.Notes))
	for i, n := range t.Notes {
		words[i] = n.String()
	}
	return strings.Join(words, " ")
}
