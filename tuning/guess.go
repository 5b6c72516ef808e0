package tuning

import (
	"errors"
	"fmt"
	"math"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"sync"

	"scalepair/data/fault"
	"scalepair/data/unit"
)

// guessed gives a better refusal of a tuning where what was meant can be told:
// notes in another writing, or as numbers. Else it gives err.
func guessed(given string, err error) error {
	var f fault.Fault
	if !errors.As(err, &f) || !slices.Contains([]string{notANote, notNotes, noSuchTuning}, f.What) || len(given) > longestTuning {
		return err
	}
	if t, ok := otherWriting(given); ok {
		remedy := fmt.Sprintf("write %q", t.String())
		if germanName.MatchString(given) {
			remedy += "; Bb for a German B"
		}
		return refuse("these notes are written otherwise here", given, remedy)
	}
	words := wordsOf(given)
	switch {
	case numbers(words, 0, 127):
		return refuse("a tuning is not given in numbers", given, "write its notes, low string first: if these are MIDI numbers, "+strconv.Quote(fromMIDI(words)))
	case numbers(words, 15, 5000):
		return refuse("a tuning is not given in numbers", given, "write its notes, low string first: if these are hertz, "+strconv.Quote(fromHertz(words)))
	case sung(words):
		return refuse("notes have letters here", given, `write them from A to G with their octave, such as "E2 A2 D3 G3 B3 E4"`)
	case octaveMarks.MatchString(given):
		return refuse("octaves are numbers here, not strokes or small letters", given, `write "E2 A2 D3 G3 B3 E4" for a guitar; middle C is "C4"`)
	case f.What == noSuchTuning && oneWord.MatchString(strings.TrimSpace(given)) && !strings.HasPrefix(f.Remedy, "did you mean"):
		return refuse("the octaves are missing", given, `write "E2 A2 D3 G3 B3 E4" for a guitar; middle C is "C4"`)
	}
	return err
}

// longestTuning is from where no tuning can be meant.
const longestTuning = 200

var (
	germanName  = regexp.MustCompile(`(?i)\b([CDFGA]is|[DG]es|[EA]s|Ces|H)-?\d`)
	octaveMarks = regexp.MustCompile(`[A-Ga-g][#b]?['\x{2019}\x{2032},]+(\s|$)|[a-g]'`)
	oneWord     = regexp.MustCompile(`^[A-G][A-G#b]{3,}$`)
	rewritings  = []struct {
		form *regexp.Regexp
		as   string
	}{
		{regexp.MustCompile(`(?i)\b([A-G])[ -]?sharp`), "$1#"},
		{regexp.MustCompile(`(?i)\b([A-G])[ -]?flat`), "${1}b"},
		{regexp.MustCompile(`(?i)\b([CDFGA])is(\d)`), "$1#$2"},
		{regexp.MustCompile(`(?i)\b([DG])es(\d)`), "${1}b$2"},
		{regexp.MustCompile(`(?i)\b([EA])s(\d)`), "${1}b$2"},
		{regexp.MustCompile(`\bH(\d)`), "B$1"},
		{regexp.MustCompile(`(\d)\s*[-\x{2013}/|_.:+]+\s*([A-Ga-g])`), "$1 $2"},
		{regexp.MustCompile(`\b([A-Ga-g][#b]?)\s+(\d)\b`), "$1$2"},
		{regexp.MustCompile(`(\d)([A-Ga-g])`), "$1 $2"},
	}
)

// letters puts Latin letters and digits in the place of others that look the
// same.
var letters = sync.OnceValue(func() *strings.Replacer {
	pairs := []string{"А", "A", "В", "B", "С", "C", "Е", "E", "Α", "A", "Β", "B", "Ε", "E", "а", "a", "с", "c", "е", "e", "＃", "#", "\u3000", " "}
	for i := range 7 {
		pairs = append(pairs, string('Ａ'+rune(i)), string(rune('A'+i)), string('ａ'+rune(i)), string(rune('a'+i)))
	}
	for i := range 10 {
		pairs = append(pairs, string('０'+rune(i)), string(rune('0'+i)))
	}
	return strings.NewReplacer(pairs...)
})

// otherWriting reads notes that are run together, parted by other signs, named
// in words or in German, or written in letters that only look right.
func otherWriting(given string) (Tuning, bool) {
	text := letters().Replace(plainSigns(given))
	for _, r := range rewritings {
		text = r.form.ReplaceAllString(text, r.as)
	}
	t, err := parseNotes(wordsOf(text))
	return t, err == nil && len(t.Notes) > 1
}

// numbers tells whether all words are numbers from low to high; those up to 127
// are whole.
func numbers(words []string, low, high float64) bool {
	return len(words) > 1 && !slices.ContainsFunc(words, func(w string) bool {
		x, err := unit.ParseNumber(w)
		return err != nil || x < low || x > high || high == 127 && x != math.Trunc(x)
	})
}

func fromMIDI(words []string) string {
	var out []string
	for _, w := range words {
		x, _ := unit.ParseNumber(w)
		out = append(out, spell(int(x), usual))
	}
	return strings.Join(out, " ")
}

func fromHertz(words []string) string {
	var out []string
	for _, w := range words {
		x, _ := unit.ParseNumber(w)
		out = append(out, spell(Nearest(x, ConcertA).Semitone, usual))
	}
	return strings.Join(out, " ")
}

// sung tells whether notes have the names that singers give them.
func sung(words []string) bool {
	names := []string{"do", "ut", "re", "ré", "mi", "fa", "sol", "so", "la", "si", "ti"}
	return len(words) > 1 && !slices.ContainsFunc(words, func(w string) bool {
		return !slices.Contains(names, strings.ToLower(strings.TrimRight(w, "0123456789#b")))
	})
}
