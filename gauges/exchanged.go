package gauges

import (
	"scalepair/data/csvtable"
	"scalepair/data/fault"
)

// exchangedColumns reports a file in which the headings of length and mass
// stand for each other: no row is a likely weighing as it stands, and at least
// two are, and none is not, when the two are exchanged.
func exchangedColumns(rows []csvtable.Row, faults *fault.List) bool {
	length, _ := usualSizeOf("length")
	mass, _ := usualSizeOf("mass")
	count := 0
	var first *csvtable.Row
	for i := range rows {
		row := &rows[i]
		a, b := row.Get("length"), row.Get("mass")
		if a == "" || b == "" {
			continue
		}
		l, m := row.Unit("length"), row.Unit("mass")
		if length.fits(a, l) && mass.fits(b, m) || !length.fits(b, l) || !mass.fits(a, m) {
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

// fits tells whether a text is a size of the usual range.
func (s usualSize) fits(text, unit string) bool {
	x, err := s.read(text, unit)
	return err == nil && x >= s.low && x <= s.top
}
