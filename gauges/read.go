package gauges

import (
	"fmt"
	"io"
	"slices"
	"strings"

	"scalepair/data/csvtable"
	"scalepair/data/fault"
)

// PitchReader turns a pitch as written into hertz, for notes such as
// "A2-14c". Plain hertz ("110 Hz", "110") are read without it.
type PitchReader func(text string) (hz float64, err error)

var (
	lengthUnits = []string{"mm", "cm", "m", "in"}
	massUnits   = []string{"g", "mg", "kg", "oz", "gr", "lb"}
)

// readingColumns are the columns of a readings file.
var readingColumns = []csvtable.Column{
	{Name: "gauge", Required: true},
	{Name: "construction"},
	{Name: "outer", Units: lengthUnits},
	{Name: "core", Units: lengthUnits},
	{Name: "core_shape"},
	{Name: "diameters"},
	{Name: "material"},
	{Name: "kind"},
	{Name: "pieces"},
	{Name: "length", Units: lengthUnits},
	{Name: "length_resolution", Units: lengthUnits},
	{Name: "mass", Units: massUnits},
	{Name: "mass_resolution", Units: massUnits},
	{Name: "hung_mass", Units: massUnits},
	{Name: "hung_resolution", Units: massUnits},
	{Name: "speaking_length", Units: lengthUnits},
	{Name: "pitch", Units: []string{"hz"}},
	{Name: "pitch_cents"},
	{Name: "winding", Units: lengthUnits},
	{Name: "density_kg_m3"},
	{Name: "youngs_gpa"},
	{Name: "strength_mpa"},
	{Name: "date"},
	{Name: "remark"},
}

// ReadReadings reads a readings file: CSV with a heading row, one weighing, hung
// test or listed gauge a row. Only the gauge's label is needed in every row;
// what a later row of a gauge leaves out stands in its other rows. note reads
// pitches that are not in hertz; nil refuses them. The error is a fault.List of
// every fault with line and column; the readings are then nil.
func ReadReadings(in io.Reader, file string, note PitchReader) ([]Reading, error) {
	rows, faults := csvtable.Scan(in, file, readingColumns)
	unitless := csvtable.WithoutUnits(rows, readingColumns)
	headed := headingsSound(faults)
	unitless.Report(&faults)
	misspeltKinds(rows, &faults)
	if exchangedColumns(rows, &faults) {
		return nil, faults.Err()
	}
	out, decimals := make([]Reading, 0, len(rows)), weighsToDecimals(rows)
	p := rowReader{faults: &faults, unitless: unitless, note: note}
	for i := range rows {
		row := &rows[i]
		if len(faults) >= mostFaults {
			break
		}
		if totals(row, &faults) {
			continue
		}
		p.row = row
		before := len(faults)
		p.commas(decimals)
		out = append(out, Reading{Place: row.Place("gauge"), Given: givenIn(row)})
		r := &out[len(out)-1]
		p.fill(r)
		r.check(row.Place, headed && len(faults) == before && !unitless.InRow(row), &faults)
	}
	nameColumns(rows, faults)
	if err := faults.Err(); err != nil {
		return nil, err
	}
	markFractions(out)
	return out, nil
}

// mostFaults is from where the rest of a file is not looked at, since nobody
// reads more.
const mostFaults = 100

// totals reports a row that a spreadsheet added up.
func totals(row *csvtable.Row, faults *fault.List) bool {
	label := row.Get("gauge")
	if !slices.Contains([]string{"total", "totals", "sum", "average", "mean", "count", "summe", "gesamt", "mittel", "mittelwert"}, strings.TrimSuffix(labelKey(label), ":")) {
		return false
	}
	faults.Add(row.Place("gauge"), "a row of totals or means, and no gauge", label, "leave it out, or put # before it, which makes it a remark")
	return true
}

// nameColumns says which column to add where rows lack what no column holds.
func nameColumns(rows []csvtable.Row, faults fault.List) {
	for i, f := range faults {
		for what, c := range map[string]string{withoutMass: "mass", withoutLength: "length"} {
			if f.What == what && len(rows) > 0 && !rows[0].Has(c) {
				faults[i].Remedy = fmt.Sprintf("add a column for it to the heading row: %s", headingOf(c))
			}
		}
	}
}

func headingOf(column string) string {
	i := slices.IndexFunc(readingColumns, func(c csvtable.Column) bool { return c.Name == column })
	return column + "_" + readingColumns[i].Units[0]
}

// markFractions notes in every reading whether the file has lengths in
// fractions.
func markFractions(all []Reading) {
	any := false
	for i := 0; i < len(all) && !any; i++ {
		any = all[i].Given.Length().anyFraction() || all[i].Given.Speaking().anyFraction()
	}
	for i := range all {
		all[i].Given.Fractions = any
	}
}
