package reading

import (
	"fmt"
	"io"

	"scalepair/data"
	"scalepair/data/csvtable"
	"scalepair/data/fault"
	"scalepair/data/unit"
)

// PitchReader turns a pitch as written into hertz, for notes such as
// "A2-14c". Plain hertz ("110 Hz", "110") are read without it.
type PitchReader func(text string) (unit.Frequency, error)

var (
	lengthUnits = []string{"mm", "cm", "m", "in"}
	massUnits   = []string{"g", "mg", "kg", "oz", "gr", "lb"}
)

// columns are the columns of a readings file.
var columns = []csvtable.Column{
	{Name: "gauge", Required: true},
	{Name: "construction", Words: []string{Plain}},
	{Name: "outer", Units: lengthUnits},
	{Name: "core", Units: lengthUnits},
	{Name: "core_shape", Words: shapeWords},
	{Name: "diameters", Words: diametersWords},
	{Name: "material", Words: data.MaterialNames()},
	{Name: "kind", Words: kindWords},
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

// Columns are all that a readings file may have.
func Columns() []csvtable.Column { return columns }

// mostGauges bounds a stock (judgement: ten times what a large shop has). Each is
// judged against all others.
const mostGauges = 2000

// Read reads a readings file: CSV with a heading row. Only the gauge's label is
// needed in every row; what a later row of a gauge leaves out stands in its
// other rows. note reads pitches that are not in hertz; nil refuses them. The
// error is a fault.List of every fault with line and column; the readings are
// then nil.
func Read(in io.Reader, file string, note PitchReader) ([]Reading, error) {
	rows, faults := csvtable.Read(in, file, columns)
	headed := len(faults) == 0
	unitless := csvtable.WithoutUnits(rows, columns)
	unitless.Report(&faults)
	misspeltKind(rows, &faults)
	if exchangedColumns(rows, &faults) {
		return nil, faults.Err()
	}
	p := cellReader{faults: &faults, unitless: unitless, note: note}
	labels := map[string]bool{}
	out := make([]Reading, 0, len(rows))
	for i := range rows {
		p.row = &rows[i]
		before := len(faults)
		p.commas()
		r := p.read()
		// A row with a fault in its cells or its headings may lack what is there.
		if sound := headed && len(faults) == before && !unitless.InRow(p.row); sound {
			p.check(&r)
		}
		labels[Key(r.Gauge)] = true
		out = append(out, r)
	}
	if len(labels) > mostGauges {
		faults.Add(fault.Place{Input: file}, fmt.Sprintf("%d gauges, more than any stock has", len(labels)), "", fmt.Sprintf("keep those that you can use, up to %d", mostGauges))
	}
	if err := faults.Err(); err != nil {
		return nil, err
	}
	return out, nil
}
