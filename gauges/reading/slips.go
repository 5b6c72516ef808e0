package reading

import (
	"fmt"
	"slices"
	"strings"

	"scalepair/data/csvtable"
	"scalepair/data/fault"
	"scalepair/data/suggest"
	"scalepair/data/unit"
)

// commaColumns are the columns whose numbers usually have decimals.
var commaColumns = []string{"outer", "core", "length", "mass", "hung_mass", "speaking_length", "pitch"}

// commas reports numbers that a decimal comma has cut in two, so that "3,72"
// stands as a mass of 3 and a 72 in the column after it. Whole numbers may
// stand side by side, so the 72 must be none of what its column holds.
func (p *cellReader) commas() {
	for c := range p.row.Cells() {
		number, next, cut := c.DecimalComma()
		if !cut || !slices.Contains(commaColumns, c.Name()) || !spilled(next) {
			continue
		}
		p.faults.Add(c.Place(), plainName(c.Name())+" and "+plainName(next.Name())+" look like one number with a decimal comma",
			c.Text()+","+next.Text(), fmt.Sprintf("write %q", number))
	}
}

// spilled reports whether the cell behind a number holds nothing of its own
// column's.
func spilled(next csvtable.Cell) bool {
	switch next.Name() {
	case "remark", "material", "core_shape", "kind", "diameters":
		return true // words stand there
	case "date":
		return len(next.Text()) < len("2025")
	case "winding":
		var quiet fault.List // the cell's own faults are reported elsewhere
		x, ok := next.Length(&quiet)
		return ok && (x < shortWinding || x > longWinding)
	}
	return false
}

// The lengths of winding that strings are sold with, with room to spare
// (judgement).
const shortWinding, longWinding = unit.Length(0.5), unit.Length(1.5)

// misspeltKind reports a construction that is the word plain with a slip in it,
// since that makes a wound string without a core of a plain one, or another row's
// with a slip in a letter.
func misspeltKind(rows []csvtable.Row, faults *fault.List) {
	known := []string{Plain}
	for i := range rows {
		text := rows[i].Get("construction")
		key := Key(text)
		at := slices.IndexFunc(known, func(k string) bool { return suggest.Distance(k, key) == 1 })
		switch {
		case key == "" || slices.Contains(known, key):
		case at < 0 || strings.ContainsAny(key, "0123456789") || at == 0 && key[0] != Plain[0]:
			known = append(known, key)
		default:
			faults.Add(rows[i].Place("construction"), "this kind of string is written almost as another", text,
				fmt.Sprintf("did you mean %q? two kinds need names that are less alike", known[at]))
			return
		}
	}
}

// exchangedColumns reports a file in which the headings of length and mass
// stand for each other: no row is a likely weighing as it stands, and at least
// two are, and none is not, when the two are exchanged.
func exchangedColumns(rows []csvtable.Row, faults *fault.List) bool {
	var first *csvtable.Row
	count := 0
	for i := range rows {
		row := &rows[i]
		l, m := row.Get("length"), row.Get("mass")
		if l == "" || m == "" {
			continue
		}
		if likely(row, l, m) || !likely(row, m, l) {
			return false
		}
		if count++; count == 1 {
			first = row
		}
	}
	if count < 2 {
		return false
	}
	faults.Add(first.Place("length"), "length and mass look exchanged, in every row",
		first.Get("length")+" "+first.Unit("length")+", "+first.Get("mass")+" "+first.Unit("mass"), "exchange the two headings")
	return true
}

// likely reports whether two texts are a likely length and mass of a piece
// (judgement: 50 mm to 2 m, 0.02 to 100 g) under the headings of their columns.
func likely(row *csvtable.Row, length, mass string) bool {
	l, errL := unit.ParseLengthIn(length, row.Unit("length"))
	m, errM := unit.ParseMassIn(mass, row.Unit("mass"))
	return errL == nil && errM == nil && l >= unit.MM(50) && l <= 2 && m >= unit.Grams(0.02) && m <= unit.Grams(100)
}
