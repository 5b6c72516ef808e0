package show

import (
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
	var line strings.Builder
	used := 0
	for _, word := range words(s, width) {
		n := cells(word)
		if line.Len() > 0 && used+1+n <= width {
			line.WriteByte(' ')
			line.WriteString(word)
			used += 1 + n
			continue
		}
		if line.Len() > 0 {
			lines = append(lines, line.String())
			line.Reset()
		}
		if n > width {
			pieces := chop(word, width)
			lines = append(lines, pieces[:len(pieces)-1]...)
			word = pieces[len(pieces)-1]
			n = cells(word)
		}
		line.Grow(width)
		line.WriteString(word)
		used = n
	}
	return append(lines, line.String())
}

// soften prints no-break blanks as blanks.
func soften(s string) string { return strings.ReplaceAll(s, string(hardBlank), " ") }

// words splits at blanks and joins again what belongs on one line: a figure,
// its fraction, its ± and its unit. What would be wider than the line is left apart.
func words(s string, width int) []string {
	out := make([]string, 0, strings.Count(s, " ")+1)
	for w := range strings.SplitSeq(s, " ") {
		w = soften(w)
		if n := len(out); n > 0 && sticks(out[n-1], w) && cells(out[n-1])+1+cells(w) <= width {
			out[n-1] += " " + w
			continue
		}
		out = append(out, w)
	}
	return out
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

// chop parts a word into pieces of at most width cells, each of at least one
// letter.
func chop(s string, width int) []string {
	var pieces []string
	start, used := 0, 0
	for i, r := range s {
		n := cells(string(r))
		if i > start && used+n > width {
			pieces = append(pieces, s[start:i])
			start, used = i, 0
		}
		used += n
	}
	return append(pieces, s[start:])
}
