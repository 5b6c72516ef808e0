package csvtable

import (
	"fmt"
	"slices"
	"strconv"
	"strings"
	"unicode"

	"scalepair/data/fault"
	"scalepair/data/suggest"
)

// wrongSeparator notices a heading row whose columns are parted by something
// else than commas.
func wrongSeparator(line string, known []heading) *fault.Fault {
	sign := ""
	switch {
	case strings.Contains(line, ","):
	case strings.Contains(line, ";"):
		sign = "semicolons"
	case strings.Contains(line, "\t"):
		sign = "tabs"
	case strings.Contains(line, "|"):
		sign = "bars"
	case countHeadings(strings.Fields(line), known) > 1:
		sign = "blanks"
	}
	if sign == "" {
		return nil
	}
	return &fault.Fault{What: "the columns are parted by " + sign, Remedy: "part them by commas, and write decimals with a point"}
}

// otherSeparator notices a row parted by semicolons or tabs below a heading
// parted by commas.
func otherSeparator(line string, columns int) *fault.Fault {
	if columns <= 2 || strings.ContainsAny(line, `,"`) {
		return nil
	}
	for _, sign := range [][2]string{{";", "semicolons"}, {"\t", "tabs"}} {
		if strings.Count(line, sign[0]) > 1 {
			return &fault.Fault{What: "this row is parted by " + sign[1] + ", the heading by commas", Given: strings.TrimSpace(line),
				Remedy: "part it by commas, and write decimals with a point"}
		}
	}
	return nil
}

// isHeading tells whether a cell is a heading that the table may have, or one
// with a slip in it.
func isHeading(text string, known []heading) bool {
	if len(text) > longestHeading {
		return false
	}
	folded := fold(text)
	if slices.ContainsFunc(known, func(k heading) bool { return k.is(folded) }) {
		return true
	}
	return len(folded) > 4 && slices.ContainsFunc(known, func(k heading) bool { return suggest.Distance(k.text(), folded) <= 2 })
}

// longestHeading is from where no heading can be meant, in bytes.
const longestHeading = 60

func countHeadings(cells []string, known []heading) int {
	n := 0
	for _, c := range cells {
		if isHeading(c, known) {
			n++
		}
	}
	return n
}

// headingRow tells whether a row may be the heading row: at least a third of
// its cells are headings. Judgement.
func headingRow(cells []cell, known []heading) bool {
	texts := filled(cells)
	return countHeadings(texts, known)*3 >= len(texts)
}

// headingAgain tells whether a row is a heading row in the middle of a table.
func (t *table) headingAgain(cells []cell) bool {
	texts, words := 0, 0
	for _, c := range cells {
		if c.text != "" {
			texts++
		}
		if startsAsWord(c.text) {
			words++
		}
	}
	if words*2 <= texts { // most rows, without a closer look
		return false
	}
	exact := 0
	for _, c := range cells {
		if startsAsWord(c.text) && t.knows(fold(c.text)) {
			exact++
		}
	}
	return exact > 1 && exact*2 > texts
}

// knows tells whether a folded cell is a heading of the table, letter for letter.
func (t *table) knows(folded string) bool {
	return slices.ContainsFunc(t.known, func(k heading) bool { return k.is(folded) })
}

// startsAsWord tells whether a cell begins with a letter or a bracket, as every
// heading does that fold knows, and is no longer than one.
func startsAsWord(text string) bool {
	return text != "" && len(text) <= longestHeading &&
		(text[0] >= 'A' && text[0] <= 'Z' || text[0] >= 'a' && text[0] <= 'z' || text[0] == '(' || text[0] == '[')
}

// unitsRow tells whether a row holds units and nothing else, as spreadsheets
// often have them below the headings.
func (t *table) unitsRow(cells []cell) bool {
	if len(t.rows) > 0 {
		return false
	}
	texts := filled(cells)
	return len(texts) > 0 && !slices.ContainsFunc(texts, func(text string) bool {
		return !slices.ContainsFunc(t.columns, func(c Column) bool { return slices.Contains(c.Units, strings.ToLower(strings.Trim(text, "()[] "))) })
	})
}

func filled(cells []cell) []string {
	out := make([]string, 0, len(cells))
	for _, c := range cells {
		if c.text != "" {
			out = append(out, c.text)
		}
	}
	return out
}

// extraCells reports cells beyond the headings or under an empty heading, and a
// row that has more cells than the heading where a decimal comma may have made
// one of them: the spare cell of a row filled into a form is empty.
func (t *table) extraCells(row *Row, text string) {
	for i, c := range row.cells {
		headed := i < len(t.head.cells)
		if c.text == "" || headed && (t.head.cells[i].name != "" || t.head.refused[i]) {
			continue
		}
		remedy := "put a cell that holds a comma in quotation marks"
		switch left := row.cutNumbers(); {
		case headed:
			remedy = "name its column in the heading row, or leave the cell empty"
		case strings.ContainsAny(text, "“”„"):
			remedy = `a cell that holds a comma stands between straight quotation marks: "so, so"`
		case left != "":
			remedy = "a decimal comma? write " + left
		}
		t.faults.Add(t.place(row.line, c.column), "a cell without a heading", c.text, remedy)
		return
	}
	if len(row.cells) <= len(t.head.cells) {
		return
	}
	if left := row.cutNumbers(); left != "" {
		t.faults.Add(t.place(row.line, 0), "more cells than the heading has", fmt.Sprintf("%d for %d", len(row.cells), len(t.head.cells)),
			"a decimal comma? write "+left+"; else take out the cell too many")
	}
}

// cut tells whether two neighbouring cells make a number cut by a decimal
// comma, and gives the number with a point.
func cut(left, right *cell) (string, bool) {
	if !digits(right.text) || !digits(strings.TrimLeft(left.text, "+-")) || right.column != left.column+len(left.text)+1 {
		return "", false
	}
	return left.text + "." + right.text, true
}

// unitBehind is the " Hz" of "94 Hz": letters or an inch mark behind digits; ""
// where a cell holds anything else.
func unitBehind(text string) string {
	unit := strings.TrimLeft(text, "0123456789")
	sign := strings.TrimSpace(unit)
	if unit == text || strings.ContainsFunc(sign, func(r rune) bool { return !unicode.IsLetter(r) && r != '"' }) {
		return ""
	}
	return unit
}

// cutNumbers lists the numbers of a row that a decimal comma may have cut in
// two, with a point: those that have their unit behind them, else those under
// headings with units, else any.
func (r *Row) cutNumbers() string {
	var sure, measured, any []string
	for i := 1; i < len(r.cells); i++ {
		left, right := &r.cells[i-1], r.cells[i]
		unit := unitBehind(right.text)
		right.text = strings.TrimSuffix(right.text, unit)
		number, ok := cut(left, &right)
		switch {
		case !ok:
			continue
		case unit != "":
			sure = append(sure, strconv.Quote(number+unit))
			continue
		}
		any = append(any, strconv.Quote(number))
		if i <= len(r.head.cells) && r.head.measured[i-1] {
			measured = append(measured, strconv.Quote(number))
		}
	}
	switch {
	case sure != nil:
		return strings.Join(sure, " or ")
	case measured != nil:
		return strings.Join(measured, " or ")
	}
	return strings.Join(any, " or ")
}

func digits(s string) bool {
	for i := range len(s) {
		if s[i] < '0' || s[i] > '9' {
			return false
		}
	}
	return s != ""
}

func blank(cells []cell) bool {
	return !slices.ContainsFunc(cells, func(c cell) bool { return c.text != "" })
}
