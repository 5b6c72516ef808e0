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
	line := ""
	for _, word := range words(s, width) {
		if line != "" && cells(line)+1+cells(word) > width {
			lines, line = append(lines, line), ""
		}
		if line != "" {
			line += " "
		}
		line += word
		for cells(line) > width {
			var head string
			head, line = cut(line, width)
			lines = append(lines, head)
		}
	}
	return append(lines, line)
}

// soften prints no-break blanks as blanks.
func soften(s string) string { return strings.ReplaceAll(s, string(hardBlank), " ") }

// words splits at blanks and joins again what belongs on one line: a figure,
// its ± and its unit. What would be wider than the line is left apart.
func words(s string, width int) []string {
	var out []string
	for _, w := range strings.Split(s, " ") {
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
	digit := before[len(before)-1] >= '0' && before[len(before)-1] <= '9'
	return digit && (word == "±" || slices.Contains(unitWords, strings.TrimRight(word, ".,;:)")))
}

// cut parts s after as many runes as fill width cells, and always after at
// least one.
func cut(s string, width int) (head, rest string) {
	end := 0
	for end < len(s) {
		_, n := utf8.DecodeRuneInString(s[end:])
		if end > 0 && cells(s[:end+n]) > width {
			break
		}
		end += n
	}
	return s[:end], s[end:]
}
