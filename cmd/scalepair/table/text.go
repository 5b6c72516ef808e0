package table

import (
	"regexp"
	"slices"
	"strings"

	"github.com/olekukonko/tablewriter/pkg/twwidth"
)

const (
	gap       = 2  // blanks between columns
	headLines = 3  // the most lines that a heading is broken into
	proseLine = 24 // the least width to which a column of words is wrapped: about four words
)

// NoRows stands where a table has no rows, so that none looks forgotten.
const NoRows = "(none)"

// Text gives the table for a terminal of width cells (0: no limit), without
// title and notes. No column is dropped: headings are broken into up to three
// lines, columns of words are wrapped, and what is still too wide goes out in
// parts that repeat the first column.
func (t *Table) Text(width int, ascii bool) string {
	if len(t.rows) == 0 {
		return NoRows + "\n"
	}
	var parts []string
	columns := t.shown()
	for rest := columns; len(rest) > 0; {
		take, widths := t.fit(rest, width)
		parts = append(parts, t.plain(take, widths, ascii))
		rest = rest[len(take):]
		if len(rest) > 0 {
			rest = append([]int{columns[0]}, rest...)
		}
	}
	return strings.Join(parts, "\n")
}

// fit takes as many of the columns, from the left, as the width holds, two at
// the least, and gives the width of each.
func (t *Table) fit(columns []int, width int) (take, widths []int) {
	for n := len(columns); ; n-- {
		take = columns[:n]
		for lines := 1; lines <= headLines; lines++ {
			widths = widths[:0]
			for _, c := range take {
				widths = append(widths, max(t.widest(c), headWidth(t.heads[c].text, lines)))
			}
			if width == 0 || total(widths) <= width {
				return take, widths
			}
		}
		if t.squeeze(take, widths, total(widths)-width) || n <= 2 {
			return take, widths
		}
	}
}

// squeeze narrows the columns of words by excess cells in all, the widest first,
// and reports whether they stay wide enough to be read.
func (t *Table) squeeze(columns, widths []int, excess int) bool {
	for ; excess > 0; excess-- {
		at := -1
		for i, c := range columns {
			if !t.heads[c].right && (at < 0 || widths[i] > widths[at]) {
				at = i
			}
		}
		if at < 0 || widths[at] <= proseLine {
			return false
		}
		widths[at]--
	}
	return true
}

func total(widths []int) int {
	sum := -gap
	for _, w := range widths {
		sum += w + gap
	}
	return sum
}

// widest is the width of a column's widest cell.
func (t *Table) widest(c int) int {
	w := 1
	for _, row := range t.rows {
		w = max(w, twwidth.Width(row[c].text))
	}
	if t.foot != nil {
		w = max(w, twwidth.Width(t.foot[c]))
	}
	return w
}

// headWidth is the least width at which a heading takes at most that many
// lines.
func headWidth(text string, lines int) int {
	for w := 1; ; w++ {
		if got := Wrap(text, w); len(got) <= lines && !slices.ContainsFunc(got, func(l string) bool { return twwidth.Width(l) > w }) {
			return w
		}
	}
}

// Wrap breaks text into lines of at most width cells between words; a longer
// word stays whole. A number stays with its unit and its ±.
func Wrap(text string, width int) []string {
	if width <= 0 {
		return []string{text}
	}
	var lines []string
	line := ""
	for _, word := range strings.Split(numbers.ReplaceAllString(strings.ReplaceAll(text, "± ", "±"+stay), "$1"+stay+"$2"), " ") {
		word = strings.ReplaceAll(word, stay, " ")
		switch {
		case line == "":
			line = word
		case twwidth.Width(line)+1+twwidth.Width(word) <= width:
			line += " " + word
		default:
			lines = append(lines, line)
			line = word
		}
	}
	return append(lines, line)
}

// numbers are those before a unit or a ±; stay is a blank that is no place to
// break.
var numbers = regexp.MustCompile(`([0-9]) (±|%|°|(?:mm|in|m|N|lbf|kgf|g/m|g|lb/in|Hz|cents|GPa|MPa)\b)`)

const stay = "\u00a0"
