package show

import (
	"iter"
	"slices"
	"strings"
	"unicode/utf8"
)

// unitWords stay on the line of the figure before them.
var unitWords = []string{"mm", "in", "m", "N", "lbf", "kgf", "%", "g", "g/m", "kg", "kg/m", "lb/in",
	"Hz", "cents", "deg", "GPa", "MPa"}

// wrap breaks cleaned text into lines of at most width cells, between words
// where it can, and inside a word only when that word alone is too long.
// Width 0 is no limit. It gives at least one line.
func wrap(s string, width int) []string {
	if width <= 0 || cells(s) <= width {
		return []string{soften(s)}
	}
	var lines []string
	for line := range broken(s, width) {
		lines = append(lines, soften(line))
	}
	return lines
}

// countLines gives how many lines a text has that is wider than the width.
func countLines(s string, width int) int {
	n := 0
	for range broken(s, width) {
		n++
	}
	return n
}

// broken gives the lines of a text, which are pieces of it.
func broken(s string, width int) iter.Seq[string] {
	return func(yield func(string) bool) {
		start, end, used := 0, 0, 0 // of the line so far
		for from, to := 0, 0; from <= len(s); from = to + 1 {
			to = wordEnd(s, from, width)
			n := cells(s[from:to])
			if end > start && used+1+n <= width {
				end, used = to, used+1+n
				continue
			}
			if end > start && !yield(s[start:end]) {
				return
			}
			start, end, used = from, to, n
			for used > width {
				cut := start + fitting(s[start:end], width)
				if cut == end {
					break
				}
				if !yield(s[start:cut]) {
					return
				}
				start, used = cut, used-cells(s[start:cut])
			}
		}
		yield(s[start:end])
	}
}

// soften prints no-break blanks as blanks.
func soften(s string) string { return strings.ReplaceAll(s, string(hardBlank), " ") }

// wordEnd gives the end of the word that begins at from, with what belongs on
// its line: a figure, its fraction, its ± and its unit. What would be wider than
// the line is left apart.
func wordEnd(s string, from, width int) int {
	to := blankFrom(s, from)
	for to < len(s) {
		next := blankFrom(s, to+1)
		if !sticks(s[from:to], s[to+1:next]) || cells(s[from:next]) > width {
			break
		}
		to = next
	}
	return to
}

// blankFrom gives the offset of the next blank, or of the text's end.
func blankFrom(s string, from int) int {
	if i := strings.IndexByte(s[from:], ' '); i >= 0 {
		return from + i
	}
	return len(s)
}

// sticks tells whether word belongs on the line of the word before it.
func sticks(before, word string) bool {
	if before == "" || word == "" {
		return false
	}
	if last, _ := utf8.DecodeLastRuneInString(before); last == '±' {
		return true
	}
	word = strings.TrimRight(word, ".,;:)")
	return digits(before[len(before)-1:]) && (word == "±" || fraction(word) || slices.Contains(unitWords, word))
}

// fraction tells whether a word is one such as "7/32", which follows its whole
// number.
func fraction(word string) bool {
	above, below, found := strings.Cut(word, "/")
	return found && digits(above) && digits(below)
}

func digits(s string) bool { return s != "" && strings.Trim(s, "0123456789") == "" }

// fitting gives how much of a word fits into width cells, one letter at least.
func fitting(s string, width int) int {
	used := 0
	for i, r := range s {
		n := cells(string(r))
		if i > 0 && used+n > width {
			return i
		}
		used += n
	}
	return len(s)
}
