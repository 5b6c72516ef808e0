package tuning

import (
	"fmt"
	"math"
	"regexp"
	"strconv"
	"strings"

	"scalepair/data/fault"
	"scalepair/data/unit"
)

// The notes that are read: MIDI 0 to 127, C-1 to G9 (8 Hz to 12.5 kHz), far
// beyond any string.
const (
	lowestSemitone  = 0
	highestSemitone = 127
)

var (
	noteForm = regexp.MustCompile(`^([A-Ga-g])([#b]{0,2})(-?\d{1,3})(?:([+-]\d[\d.]*)(?:c|ct|cents?))?$`)
	noOctave = regexp.MustCompile(`^[A-Ga-g][#b]{0,2}$`)
	// meant is the beginning of a word that was meant as a note, right or wrong.
	meant = regexp.MustCompile(`^[A-Za-z][#b]{0,2}-?\d`)
)

// signs writes typographic signs in the characters of the grammar.
var signs = strings.NewReplacer("♯", "#", "♭", "b", "\u2212", "-", "\u00a0", " ", "\u202f", " ")

// fromC is how many semitones the letters A to G stand above C.
var fromC = [...]int{9, 11, 0, 2, 4, 5, 7}

// refuse returns an error with the house wording and no place; the caller adds
// the place through fault.List.Include.
func refuse(what, given, remedy string) error {
	return fault.Fault{What: what, Given: given, Remedy: remedy}
}

const howToWrite = `write a letter from A to G, # or b where needed, and the octave, such as "F#3" or "A2-14c"`

// ParseNote reads a note: "F#3", "Gb3", "f♯3", "A2-14c", "A2+14c". The octave
// belongs to the letter: Cb4 sounds like B3, B#3 like C4. Notes from C-1 to G9
// and deviations within 100 cents are taken.
func ParseNote(s string) (Note, error) {
	text := strings.Join(strings.Fields(signs.Replace(s)), "")
	m := noteForm.FindStringSubmatch(text)
	switch {
	case text == "":
		return Note{}, refuse("a note is missing", "", `write one such as "F#3"`)
	case noOctave.MatchString(text):
		return Note{}, refuse("the octave is missing", s, fmt.Sprintf(`write %q, say; middle C is "C4", a guitar's low E "E2"`, strings.ToUpper(text[:1])+text[1:]+"2"))
	case m == nil:
		return Note{}, refuse("not a note", s, howToWrite)
	}
	letter := strings.ToUpper(m[1])
	octave, _ := strconv.Atoi(m[3])
	n := Note{
		Semitone: 12*(octave+1) + fromC[letter[0]-'A'] + strings.Count(m[2], "#") - strings.Count(m[2], "b"),
		Spelling: letter + m[2] + strconv.Itoa(octave),
	}
	if n.Semitone < lowestSemitone || n.Semitone > highestSemitone {
		return Note{}, refuse("the note lies outside C-1 to G9", s, `middle C is "C4", a guitar's low E "E2"`)
	}
	if m[4] == "" {
		return n, nil
	}
	cents, err := unit.ParseNumber(m[4])
	if err != nil {
		return Note{}, refuse("not a note", s, howToWrite)
	}
	if math.Abs(cents) > 100 {
		return Note{}, refuse("more than 100 cents off the note", s, "write the note that is nearest")
	}
	n.Cents = cents
	return n, nil
}
