package tuning

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"scalepair/data/unit"
)

// Tuning is the notes of an instrument's strings. Name is empty for a tuning
// given by its notes.
type Tuning struct {
	Name  string
	Notes []Note // low string first, as written: Notes[len-1] is string 1
}

// Parse reads a tuning: notes separated by blanks or commas, low string first
// ("B1 E2 A2 D3 F#3 B3"), or the name of a tuning in the list ("baritone B").
func Parse(s string) (Tuning, error) {
	words := wordsOf(s)
	switch {
	case len(words) == 0:
		return Tuning{}, refuse("a tuning is missing", "", `write notes such as "E2 A2 D3 G3 B3 E4", or a name such as "baritone B"`)
	case slices.ContainsFunc(words, meant.MatchString):
		return parseNotes(words)
	}
	t, err := Lookup(s)
	if err != nil && !slices.ContainsFunc(words, func(w string) bool { return !noOctave.MatchString(w) }) {
		err = refuse("the octaves are missing", s, `write "E2 A2 D3 G3 B3 E4" for a guitar; middle C is "C4"`)
	}
	return t, err
}

func wordsOf(s string) []string {
	return strings.FieldsFunc(signs.Replace(s), func(c rune) bool { return strings.ContainsRune(" \t\r\n,;", c) })
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
	return Tuning{}, refuse("these are no notes", strings.Join(bad, " "), howToWrite)
}

// UnmarshalText reads what Parse reads.
func (t *Tuning) UnmarshalText(text []byte) (err error) {
	*t, err = Parse(string(text))
	return err
}

// Strings returns the number of strings.
func (t Tuning) Strings() int { return len(t.Notes) }

// OfString returns the note of string n, where 1 is the highest, the one written
// last. It panics when there is no such string.
func (t Tuning) OfString(n int) Note {
	if n < 1 || n > len(t.Notes) {
		panic(fmt.Sprintf("tuning: no string %d of %d", n, len(t.Notes)))
	}
	return t.Notes[len(t.Notes)-n]
}

// Pitches returns the pitch of every string under a pitch standard; index 0 is
// string 1.
func (t Tuning) Pitches(a4 unit.Frequency) []unit.Frequency {
	out := make([]unit.Frequency, len(t.Notes))
	for i := range out {
		out[i] = t.OfString(i + 1).Pitch(a4)
	}
	return out
}

// ReEntrant reports whether some string sounds lower than its neighbour on the
// bass side.
func (t Tuning) ReEntrant() bool {
	return !slices.IsSortedFunc(t.Notes, func(a, b Note) int {
		return cmp.Compare(a.Pitch(ConcertA), b.Pitch(ConcertA))
	})
}

// Up returns the tuning that many semitones higher, as under a capo; negative
// goes down. The result has no name.
func (t Tuning) Up(semitones int) Tuning {
	out := Tuning{Notes: make([]Note, len(t.Notes))}
	for i, n := range t.Notes {
		out.Notes[i] = n.Up(semitones)
	}
	return out
}

// String returns the notes, low string first, so that Parse reads them back.
func (t Tuning) String() string {
	words := make([]string, len(t.Notes))
	for i, n := range t.Notes {
		words[i] = n.String()
	}
	return strings.Join(words, " ")
}
