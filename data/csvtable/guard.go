package csvtable

import (
	"regexp"

	"scalepair/data/unit"
)

// calculated is a text that a spreadsheet takes for a formula, or would but for
// the apostrophes before it.
var calculated = regexp.MustCompile(`^'*[=+\-@\t\r]`)

// Guarded gives a text as it is written into a cell: an apostrophe before one that a
// spreadsheet would calculate, such as the label "=1+1". A number stays as it is.
// Reading takes the apostrophe off again.
func Guarded(text string) string {
	if calculated.MatchString(text) && !unit.Bare(text) {
		return "'" + text
	}
	return text
}

// bare gives a cell as it was before it was guarded.
func bare(text string) string {
	if text != "" && text[0] == '\'' && calculated.MatchString(text) {
		return text[1:]
	}
	return text
}
