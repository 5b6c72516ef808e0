package gauges

import (
	"fmt"
	"strings"

	"scalepair/data/csvtable"
	"scalepair/data/fault"
	"scalepair/data/suggest"
	"scalepair/data/unit"
)

// rowReader reads the cells of one row.
type rowReader struct {
	row      *csvtable.Row
	faults   *fault.List
	unitless csvtable.Unitless
	note     PitchReader
}

// fill puts what the cells hold into a reading. Empty cells are passed over:
// most rows have more of them than of others.
func (p *rowReader) fill(r *Reading) {
	for c := range p.row.Cells() {
		if si := r.length(c.Name()); si != nil {
			*si = p.length(c)
		} else if si := r.mass(c.Name()); si != nil {
			*si = p.mass(c)
		} else {
			p.other(r, c)
		}
	}
}

// length gives what a column of lengths is read into; nil for any other.
func (r *Reading) length(column string) (si *float64) {
	switch column {
	case "outer":
		return &r.OuterM
	case "core":
		return &r.CoreM
	case "winding":
		return &r.WindingM
	case "length":
		return &r.LengthM
	case "length_resolution":
		return &r.LengthStepM
	case "speaking_length":
		return &r.SpeakingM
	}
	return nil
}

// mass gives what a column of masses is read into; nil for any other.
func (r *Reading) mass(column string) (si *float64) {
	switch column {
	case "mass":
		return &r.MassKg
	case "mass_resolution":
		return &r.MassStepKg
	case "hung_mass":
		return &r.HungKg
	case "hung_resolution":
		return &r.HungResolutionKg
	}
	return nil
}

// other reads a cell that is no length and no mass.
func (p *rowReader) other(r *Reading, c csvtable.Cell) {
	switch c.Name() {
	case "gauge":
		r.Gauge = c.Text()
	case "construction":
		r.Construction = c.Text()
	case "material":
		r.Material = c.Text()
	case "core_shape":
		r.Shape = p.shape(c)
	case "diameters":
		r.OuterFrom, r.CoreFrom = p.diameters(c)
	case "kind":
		r.Kind = p.kind(c)
	case "pieces":
		r.Pieces = p.pieces(c)
	case "pitch":
		r.FreqHz = p.pitch(c)
	case "pitch_cents":
		r.PitchCents = p.positive(c)
	case "density_kg_m3":
		r.DensityKgM3 = p.positive(c)
	case "youngs_gpa":
		r.YoungsPa = 1e9 * p.positive(c)
	case "strength_mpa":
		r.StrengthPa = 1e6 * p.positive(c)
	case "date":
		r.Date = c.Text()
	case "remark":
		r.Remark = c.Text()
	}
}

func (p *rowReader) length(c csvtable.Cell) float64 {
	if p.unitless.At(p.row, c.Name()) {
		return 0
	}
	x, given := c.Length(p.faults)
	return p.above0(c, float64(x), given)
}

func (p *rowReader) mass(c csvtable.Cell) float64 {
	if p.unitless.At(p.row, c.Name()) {
		return 0
	}
	x, given := c.Mass(p.faults)
	return p.above0(c, float64(x), given)
}

func (p *rowReader) positive(c csvtable.Cell) float64 {
	x, given := c.Number(p.faults)
	return p.above0(c, x, given)
}

// above0 refuses a size of nothing or less; 0 stands for 'not given' further on,
// so a written 0 must not pass for it.
func (p *rowReader) above0(c csvtable.Cell, x float64, given bool) float64 {
	if given && x <= 0 {
		p.faults.Add(c.Place(), words(c.Name())+" must be above 0", c.Text(), "leave the cell empty where it is not known")
		return 0
	}
	return x
}

// mostPieces is more than anybody weighs together. Judgement.
const mostPieces = 1000

func (p *rowReader) pieces(c csvtable.Cell) int {
	n, given := c.Whole(p.faults)
	if given && (n < 1 || n > mostPieces) {
		p.faults.Add(c.Place(), fmt.Sprintf("pieces must be 1 to %d", mostPieces), c.Text(), "count the pieces that were weighed together")
	}
	return n
}

func (p *rowReader) kind(c csvtable.Cell) Kind {
	i, _ := p.choice(c, "weighed", "hung", "listed")
	return Kind(i)
}

func (p *rowReader) shape(c csvtable.Cell) Shape {
	i, known := p.choice(c, "round", "hex")
	if !known {
		return ShapeAssumed
	}
	return []Shape{Round, Hex}[i]
}

// diameters reads how the outer and the core diameter are known.
func (p *rowReader) diameters(c csvtable.Cell) (outer, core DiameterFrom) {
	i, _ := p.choice(c, "nominal", "measured", "outer measured", "core measured")
	return []DiameterFrom{Nominal, Measured, Measured, Nominal}[i], []DiameterFrom{Nominal, Measured, Nominal, Measured}[i]
}

// choice reads one of a few words; the first, and false, for any other.
func (p *rowReader) choice(c csvtable.Cell, allowed ...string) (index int, known bool) {
	for i, w := range allowed {
		if labelKey(c.Text()) == w {
			return i, true
		}
	}
	remedy := "write " + strings.Join(allowed, ", ")
	if best := suggest.Nearest(c.Text(), allowed); best != "" {
		remedy = fmt.Sprintf("did you mean %q? ", best) + remedy
	}
	p.faults.Add(c.Place(), words(c.Name())+" does not know this word", c.Text(), remedy)
	return 0, false
}

// pitch reads hertz, or leaves a note to the caller's reader.
func (p *rowReader) pitch(c csvtable.Cell) float64 {
	text := c.Text()
	bare := strings.TrimSpace(strings.TrimSuffix(strings.ToLower(text), "hz"))
	if p.note != nil && !startsNumber(bare) && c.Unit() != "" {
		if _, err := p.note(text); err == nil {
			p.faults.Add(c.Place(), "a note stands under a heading in hertz", text, "name the column pitch, which takes notes and hertz")
			return 0
		}
	}
	hz, err := unit.ParseNumber(bare)
	if err != nil && p.note != nil && !startsNumber(bare) && c.Unit() == "" {
		hz, err = p.note(text)
	}
	if err != nil {
		p.faults.Include(c.Place(), fault.About("pitch", err))
		return 0
	}
	return p.above0(c, hz, true)
}

func startsNumber(s string) bool { return s == "" || strings.ContainsAny(s[:1], "0123456789.-+") }

// words makes a heading readable.
func words(name string) string {
	switch name {
	case "density_kg_m3":
		return "density"
	case "youngs_gpa":
		return "modulus"
	case "strength_mpa":
		return "strength"
	}
	return strings.ReplaceAll(name, "_", " ")
}
