package tuning

import (
	"fmt"
	"math"
	"regexp"
	"strconv"
	"strings"
	"sync"
	"unicode/utf8"

	"scalepair/data/fault"
	"scalepair/data/unit"
)

// The notes that are read: MIDI 0 to 127, C-1 to G9 (8 Hz to 12.5 kHz), far
// beyond any string.
const (
	lowestSemitone  = 0
	highestSemitone = 127
)

var noteForm = regexp.MustCompile(`^([A-Ga-g])([#b]{0,2})(-?\d{1,3})(?:([+-]\d[\d.]*)(?:c|ct|cents?))?$`)

// The forms of slips, for the words of a refusal.
var (
	noOctave = regexp.MustCompile(`^[A-Ga-g][#b]{0,2}$`)
	noCents  = regexp.MustCompile(`^[A-Ga-g][#b]{0,2}\d[+-]\d[\d.]*$`)
	germanH  = regexp.MustCompile(`^[Hh][#b]?-?\d`)
)

// plainSigns writes typographic signs in the characters of the grammar.
func plainSigns(s string) string {
	if !strings.ContainsFunc(s, func(r rune) bool { return r >= utf8.RuneSelf }) {
		return s
	}
	return signs().Replace(s)
}

// signs are those of plainSigns.
var signs = sync.OnceValue(func() *strings.Replacer {
	return strings.NewReplacer("♯", "#", "♭", "b", "𝄪", "##", "𝄫", "bb", "\u2212", "-", "\u2013", "-",
		"\u00a0", " ", "\u2009", " ", "\u202f", " ", "¢", "c")
})

// fromC gives a letter's semitones above C; known is false for what is no
// note's capital letter.
func fromC(letter byte) (semitones int, known bool) {
	if letter < 'A' || letter > 'G' {
		return 0, false
	}
	return [...]int{9, 11, 0, 2, 4, 5, 7}[letter-'A'], true
}

// refuse gives an error with the house wording and no place; the caller adds
// the place through fault.List.Include.
func refuse(what, given, remedy string) error {
	return fault.Fault{What: what, Given: given, Remedy: remedy}
}

// ParseNote reads a note: "F#3", "Gb3", "f♯3", "A2-14c", "A2+14c". The octave
// belongs to the letter: Cb4 sounds like B3, B#3 like C4. Notes from C-1 to G9
// and deviations within 100 cents are taken.
func ParseNote(s string) (Note, error) {
	if n, ok := bareNote(s); ok {
		return n, nil
	}
	text := strings.Join(strings.Fields(plainSigns(s)), "")
	m := noteForm.FindStringSubmatch(text)
	if m == nil {
		return Note{}, refuseNote(s, text)
	}
	letter := strings.ToUpper(m[1])
	octave, _ := strconv.Atoi(m[3])
	from, _ := fromC(letter[0])
	n := Note{
		Semitone: 12*(octave+1) + from + strings.Count(m[2], "#") - strings.Count(m[2], "b"),
		Spelling: letter + m[2] + strconv.Itoa(octave),
	}
	if n.Semitone < lowestSemitone || n.Semitone > highestSemitone {
		return Note{}, refuse("the note lies outside C-1 to G9", s, `middle C is "C4", a guitar's low E "E2"`)
	}
	if m[4] == "" {
		return n, nil
	}
	return n.withCents(s, m[4])
}

// bareNote reads the usual case without the full grammar: a letter, a sign or
// none, and one digit, such as "F#3".
func bareNote(s string) (Note, bool) {
	if len(s) < 2 || len(s) > 3 {
		return Note{}, false
	}
	from, known := fromC(s[0])
	sign, octave := s[1:len(s)-1], int(s[len(s)-1])-'0'
	if !known || octave < 0 || octave > 9 || sign != "" && sign != "#" && sign != "b" {
		return Note{}, false
	}
	n := Note{Semitone: 12*(octave+1) + from + strings.Count(sign, "#") - strings.Count(sign, "b"), Spelling: s}
	return n, n.Semitone <= highestSemitone
}

func (n Note) withCents(given, text string) (Note, error) {
	cents, err := unit.ParseNumber(text)
	if err != nil {
		return Note{}, refuse("the cents do not read as a number", given, `write "A2-14c"`)
	}
	if math.Abs(cents) > 100 {
		return Note{}, refuse("more than 100 cents off the note", given, "write the note that is nearest")
	}
	n.Cents = cents
	return n, nil
}

// What is said of texts that may have been meant as notes.
const (
	notANote     = "not a note"
	notNotes     = "these are no notes"
	noSuchTuning = "no tuning of that name"
)

// refuseNote says why a text is no note.
func refuseNote(given, text string) error {
	switch {
	case text == "":
		return refuse("a note is missing", "", `write one such as "F#3"`)
	case noOctave.MatchString(text):
		return refuse("the octave is missing", given, fmt.Sprintf(`write %q, say; middle C is "C4", a guitar's low E "E2"`, strings.ToUpper(text[:1])+text[1:]+"2"))
	case noCents.MatchString(text):
		return refuse("a deviation needs its unit", given, fmt.Sprintf("write %q", text+"c"))
	case germanH.MatchString(text):
		return refuse("there is no note H here", given, "write B for it, and Bb for a German B")
	}
	return refuse(notANote, given, `write a letter from A to G, # or b where needed, and the octave, such as "F#3"`)
}
