package reading

import (
	"fmt"
	"strings"

	"scalepair/data/csvtable"
	"scalepair/data/fault"
	"scalepair/data/suggest"
	"scalepair/data/unit"
)

// cellReader reads the cells of one row.
type cellReader struct {
	row      *csvtable.Row
	faults   *fault.List
	unitless csvtable.Unitless
	note     PitchReader
}

// read gives what the row's cells hold.
func (p *cellReader) read() Reading {
	r := Reading{Place: p.row.Place("gauge")}
	var none unit.Written
	w := &r.Written
	lengths := map[string]written[unit.Length]{
		"outer": {&r.Outer, &w.Outer}, "core": {&r.Core, &w.Core}, "winding": {&r.Winding, &none},
		"length": {&r.Length, &w.Length}, "length_resolution": {&r.LengthResolution, &none}, "speaking_length": {&r.Speaking, &w.Speaking},
	}
	masses := map[string]written[unit.Mass]{
		"mass": {&r.Mass, &w.Mass}, "mass_resolution": {&r.MassResolution, &none},
		"hung_mass": {&r.HungMass, &w.HungMass}, "hung_resolution": {&r.HungResolution, &none},
	}
	for c := range p.row.Cells() {
		name := c.Name()
		if p.unitless.At(p.row, name) {
			continue
		}
		if l, ok := lengths[name]; ok {
			*l.form = unit.Form[unit.Length](c.Text(), c.Unit())
			*l.x = positive(p, c, csvtable.Cell.Length, *l.form)
		} else if m, ok := masses[name]; ok {
			*m.form = unit.Form[unit.Mass](c.Text(), c.Unit())
			*m.x = positive(p, c, csvtable.Cell.Mass, *m.form)
		} else {
			p.other(&r, c)
		}
	}
	return r
}

// written is where a size and the form that it is written in go.
type written[Q unit.Quantity] struct {
	x    *Q
	form *unit.Written
}

// other reads a cell that is no length and no mass.
func (p *cellReader) other(r *Reading, c csvtable.Cell) {
	number := func() float64 { return positive(p, c, csvtable.Cell.Number, unit.Written{}) }
	switch c.Name() {
	case "gauge":
		r.Gauge = c.Text()
	case "construction":
		r.Construction = c.Text()
	case "material":
		r.Material = c.Text()
	case "core_shape":
		r.Shape = word[Shape](p, c, shapeWords)
	case "diameters":
		known := word[int](p, c, diametersWords)
		r.OuterFrom, r.CoreFrom = []DiameterFrom{Nominal, Measured, Measured, Nominal}[known], []DiameterFrom{Nominal, Measured, Nominal, Measured}[known]
	case "kind":
		r.Kind = word[Kind](p, c, kindWords)
	case "pieces":
		r.Pieces = p.pieces(c)
	case "pitch":
		r.Pitch = p.pitch(c)
	case "pitch_cents":
		r.PitchU = unit.Cents(number())
	case "density_kg_m3":
		r.DensityKgM3 = number()
	case "youngs_gpa":
		r.YoungsPa = 1e9 * number()
	case "strength_mpa":
		r.StrengthPa = 1e6 * number()
	case "date":
		r.Date = c.Text()
	case "remark":
		r.Remark = c.Text()
	}
}

// positive reads a size that a string can have; 0 stands for 'not given' further
// on, so a written 0 must not pass for it.
func positive[Q ~float64](p *cellReader, c csvtable.Cell, read func(csvtable.Cell, *fault.List) (Q, bool), form unit.Written) Q {
	x, given := read(c, p.faults)
	switch {
	case given && x <= 0:
		p.faults.Add(c.Place(), plainName(c.Name())+" must be above 0", c.Text(), "leave the cell empty where it is not known")
		return 0
	case given:
		p.checkSize(c, float64(x), form)
	}
	return x
}

func word[T ~int](p *cellReader, c csvtable.Cell, words []string) (i T) {
	p.faults.Include(c.Place(), fault.About(plainName(c.Name()), suggest.Word(&i, c.Text(), words)))
	return i
}

// mostPieces is more than anybody weighs together. Judgement.
const mostPieces = 1000

func (p *cellReader) pieces(c csvtable.Cell) int {
	n, given := c.Whole(p.faults)
	if given && (n < 1 || n > mostPieces) {
		p.faults.Add(c.Place(), fmt.Sprintf("pieces must be 1 to %d", mostPieces), c.Text(), "count the pieces that were weighed together")
	}
	return n
}

// pitch reads hertz, or leaves a note to the caller's reader.
func (p *cellReader) pitch(c csvtable.Cell) unit.Frequency {
	bare := strings.TrimSpace(strings.TrimSuffix(strings.ToLower(c.Text()), "hz"))
	hz, err := unit.ParseNumber(bare)
	f := unit.Frequency(hz)
	if isNote := bare != "" && !strings.ContainsAny(bare[:1], "0123456789.-+"); err != nil && isNote && p.note != nil {
		f, err = p.note(c.Text())
		if err == nil && c.Unit() != "" {
			p.faults.Add(c.Place(), "a note stands under a heading in hertz", c.Text(), "name the column pitch, which takes notes and hertz")
			return 0
		}
	}
	if err != nil {
		p.faults.Include(c.Place(), fault.About("pitch", err))
		return 0
	}
	return positive(p, c, func(csvtable.Cell, *fault.List) (unit.Frequency, bool) { return f, true }, unit.Written{})
}

// plainName makes a heading readable.
func plainName(column string) string {
	switch column {
	case "density_kg_m3":
		return "density"
	case "youngs_gpa":
		return "modulus"
	case "strength_mpa":
		return "strength"
	}
	return strings.ReplaceAll(column, "_", " ")
}
