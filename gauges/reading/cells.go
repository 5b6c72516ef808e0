package reading

import (
	"fmt"
	"strings"

	"scalepair/data/csvtable"
	"scalepair/data/fault"
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
	lengths := map[string]*unit.Length{
		"outer": &r.Outer, "core": &r.Core, "winding": &r.Winding,
		"length": &r.Length, "length_resolution": &r.LengthResolution, "speaking_length": &r.Speaking,
	}
	masses := map[string]*unit.Mass{
		"mass": &r.Mass, "mass_resolution": &r.MassResolution, "hung_mass": &r.HungMass, "hung_resolution": &r.HungResolution,
	}
	for c := range p.row.Cells() {
		name := c.Name()
		if p.unitless.At(p.row, name) {
			continue
		}
		r.Written.note(c)
		if l := lengths[name]; l != nil {
			*l = positive(p, c, csvtable.Cell.Length)
		} else if m := masses[name]; m != nil {
			*m = positive(p, c, csvtable.Cell.Mass)
		} else {
			p.other(&r, c)
		}
	}
	return r
}

// other reads a cell that is no length and no mass.
func (p *cellReader) other(r *Reading, c csvtable.Cell) {
	number := func() float64 { return positive(p, c, csvtable.Cell.Number) }
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
		known := word[int](p, c, []string{"nominal", "measured", "outer measured", "core measured"})
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

// positive reads a size and refuses one of nothing or less; 0 stands for 'not
// given' further on, so a written 0 must not pass for it.
func positive[Q ~float64](p *cellReader, c csvtable.Cell, read func(csvtable.Cell, *fault.List) (Q, bool)) Q {
	x, given := read(c, p.faults)
	if given && x <= 0 {
		p.faults.Add(c.Place(), plainName(c.Name())+" must be above 0", c.Text(), "leave the cell empty where it is not known")
		return 0
	}
	return x
}

func word[T ~int](p *cellReader, c csvtable.Cell, words []string) T {
	i, err := Word[T](plainName(c.Name()), []byte(c.Text()), words)
	p.faults.Include(c.Place(), err)
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
	return positive(p, c, func(csvtable.Cell, *fault.List) (unit.Frequency, bool) { return f, true })
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
