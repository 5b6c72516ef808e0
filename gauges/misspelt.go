package gauges

import (
	"fmt"
	"slices"
	"strings"
	"unicode"
	"unicode/utf8"

	"scalepair/data/csvtable"
	"scalepair/data/fault"
	"scalepair/data/suggest"
)

// misspeltKinds reports a construction that is the word plain with a slip in
// it, since that makes a wound string without a core of a plain one, and one
// that differs from another of the file in the script of a letter only, which
// nobody sees. Names that are merely near are noted, not refused: see namesake.
func misspeltKinds(rows []csvtable.Row, faults *fault.List) {
	kinds := []string{Plain}
	for i := range rows {
		row := &rows[i]
		text := row.Get("construction")
		key := labelKey(text)
		if key == "" || slices.Contains(kinds, key) {
			continue
		}
		i := slices.IndexFunc(kinds, func(k string) bool {
			return latin(k) == latin(key) || k == Plain && writtenAlike(k, key)
		})
		if i < 0 {
			kinds = append(kinds, key)
			continue
		}
		faults.Add(row.Place("construction"), "this kind of string is written almost as another", text,
			fmt.Sprintf("did you mean %q? two kinds need names that are less alike", kinds[i]))
	}
}

// writtenAlike tells whether two names differ only as a slip of the keyboard
// makes them differ: in blanks and hyphens, or in one word by a letter left out, doubled or swapped with
// its neighbour. Words that differ in their first letter, in a letter put for
// another ("ground" and "round", "wound" and "round") or in numbers are two.
func writtenAlike(a, b string) bool {
	if labelKey(a) == labelKey(b) {
		return false
	}
	a, b = latin(labelKey(a)), latin(labelKey(b))
	if joined(a) == joined(b) {
		return true
	}
	x, y := strings.Fields(a), strings.Fields(b)
	if len(x) != len(y) {
		return false
	}
	differ := -1
	for i := range x {
		if x[i] != y[i] && differ >= 0 {
			return false
		} else if x[i] != y[i] {
			differ = i
		}
	}
	return differ >= 0 && sameWord(x[differ], y[differ])
}

func sameWord(a, b string) bool {
	const shortest = 4 // in shorter words a letter more or less makes another
	letters := func(s string) bool {
		return !strings.ContainsFunc(s, func(r rune) bool { return !unicode.IsLetter(r) })
	}
	if len(a) < shortest || len(b) < shortest || a[0] != b[0] || !letters(a) || !letters(b) || suggest.Distance(a, b) != 1 {
		return false
	}
	return len(a) != len(b) || sorted(a) == sorted(b)
}

// joined leaves out blanks and hyphens.
func joined(s string) string {
	return strings.Map(func(r rune) rune {
		if r == ' ' || r == '-' || r == '_' {
			return -1
		}
		return r
	}, s)
}

func sorted(s string) string {
	letters := []byte(s)
	slices.Sort(letters)
	return string(letters)
}

// latin puts Latin letters in the place of Cyrillic and Greek ones that look the
// same.
func latin(s string) string {
	if !strings.ContainsFunc(s, func(r rune) bool { return r >= utf8.RuneSelf }) {
		return s
	}
	return strings.Map(func(r rune) rune {
		if _, after, found := strings.Cut(lookAlikes, string(r)); found && r >= utf8.RuneSelf {
			return rune(after[0])
		}
		return r
	}, s)
}

// lookAlikes are letters of other scripts, each before its Latin one.
const lookAlikes = "аa сc еe һh іi јj кk оo рp ѕs уy хx αa ιi κk οo ρp νv ıi"
