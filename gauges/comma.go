package gauges

import (
	"fmt"
	"slices"
	"strings"

	"scalepair/data/csvtable"
	"scalepair/data/fault"
)

// commaColumns are the columns whose numbers usually have decimals.
var commaColumns = []string{"outer", "core", "length", "mass", "hung_mass", "speaking_length", "pitch"}

// commas reports numbers that a decimal comma has cut in two, so that "3,72"
// stands as a mass of 3 and a 72 in the column after it. Whole numbers may
// stand side by side, so the 72 must be none of what its column holds; under a
// winding it is enough that the file weighs to decimals and this mass has none.
func (p *rowReader) commas(decimals bool) {
	for c := range p.row.Cells() {
		number, next, cut := c.DecimalComma()
		if !cut || !slices.Contains(commaColumns, c.Name()) || !spilled(c, next, decimals) {
			continue
		}
		whole, _, _ := strings.Cut(number, ".")
		p.faults.Add(c.Place(), words(c.Name())+" and "+words(next.Name())+" look like one number with a decimal comma",
			c.Text()+","+next.Text(), fmt.Sprintf("write %q, or %q where the whole number is meant", number, whole+".0"))
	}
}

// The lengths of winding that strings are sold with, with room to spare
// (judgement), in metres.
const shortWindingM, longWindingM = 0.5, 1.5

// spilled tells whether the cell behind a number holds nothing of its own
// column's.
func spilled(number, next csvtable.Cell, decimals bool) bool {
	switch next.Name() {
	case "remark", "material", "core_shape", "kind", "diameters":
		return true // words stand there
	case "date":
		return len(next.Text()) < len("2025")
	case "winding":
		var quiet fault.List // the cell's own faults are told elsewhere
		x, ok := next.Length(&quiet)
		return ok && (float64(x) < shortWindingM || float64(x) > longWindingM || decimals && number.Name() == "mass" && number.Unit() != "mg")
	}
	return false
}

// weighsToDecimals tells whether some mass of a file has decimals.
func weighsToDecimals(rows []csvtable.Row) bool {
	return slices.ContainsFunc(rows, func(r csvtable.Row) bool { return strings.Contains(r.Get("mass"), ".") })
}
