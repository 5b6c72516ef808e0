package gauges

import (
	"fmt"
	"io"
	"slices"
	"strings"

	"scalepair/data/csvtable"
	"scalepair/data/fault"
	"scalepair/data/near"
	"scalepair/data/unit"
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
	{Name: "length_step", Units: lengthUnits},
	{Name: "mass", Units: massUnits},
	{Name: "mass_step", Units: massUnits},
	{Name: "hung_mass", Units: massUnits},
	{Name: "hung_step", Units: massUnits},
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
	for _, row := range rows {
		if len(faults) >= mostFaults {
			break
		}
		if totals(row, &faults) {
			continue
		}
		p := rowReader{row: row, faults: &faults, unitless: unitless}
		before := len(faults)
		p.commas(decimals)
		r := p.reading(note)
		r.check(row.Place, headed && len(faults) == before && !unitless.InRow(row), &faults)
		out = append(out, r)
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
func totals(row csvtable.Row, faults *fault.List) bool {
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
	any := slices.ContainsFunc(all, func(r Reading) bool { return r.Given.Length.anyFraction() || r.Given.Speaking.anyFraction() })
	for i := range all {
		all[i].Given.Fractions = any
	}
}

// rowReader reads the cells of one row.
type rowReader struct {
	row      csvtable.Row
	faults   *fault.List
	unitless csvtable.Unitless
}

func (p rowReader) reading(note PitchReader) Reading {
	outerFrom, coreFrom := p.diameters()
	return Reading{
		Place:        p.row.Place("gauge"),
		Gauge:        p.row.Get("gauge"),
		Construction: p.row.Get("construction"),
		Material:     p.row.Get("material"),
		OuterM:       p.length("outer"),
		CoreM:        p.length("core"),
		Shape:        p.shape(),
		OuterFrom:    outerFrom,
		CoreFrom:     coreFrom,
		DensityKgM3:  p.positive("density_kg_m3"),
		YoungsPa:     1e9 * p.positive("youngs_gpa"),
		StrengthPa:   1e6 * p.positive("strength_mpa"),
		WindingM:     p.length("winding"),
		Kind:         p.kind(),
		Pieces:       p.pieces(),
		LengthM:      p.length("length"),
		LengthStepM:  p.length("length_step"),
		MassKg:       p.mass("mass"),
		MassStepKg:   p.mass("mass_step"),
		HungKg:       p.mass("hung_mass"),
		HungStepKg:   p.mass("hung_step"),
		SpeakingM:    p.length("speaking_length"),
		FreqHz:       p.pitch(note),
		PitchCents:   p.positive("pitch_cents"),
		Date:         p.row.Get("date"),
		Remark:       p.row.Get("remark"),
		Given: Given{
			Outer: p.written("outer"), Core: p.written("core"), Winding: p.written("winding"),
			Length: p.written("length"), LengthStep: p.written("length_step"), Speaking: p.written("speaking_length"),
			Mass: p.written("mass"), MassStep: p.written("mass_step"), Hung: p.written("hung_mass"), HungStep: p.written("hung_step"),
		},
	}
}

func (p rowReader) written(name string) AsWritten {
	return AsWritten{p.row.Get(name), p.row.Unit(name)}
}

func (p rowReader) length(name string) float64 {
	if p.unitless.At(p.row, name) {
		return 0
	}
	x, given := p.row.Length(name, p.faults)
	return p.above0(name, float64(x), given)
}

func (p rowReader) mass(name string) float64 {
	if p.unitless.At(p.row, name) {
		return 0
	}
	x, given := p.row.Mass(name, p.faults)
	return p.above0(name, float64(x), given)
}

func (p rowReader) positive(name string) float64 {
	x, given := p.row.Number(name, p.faults)
	return p.above0(name, x, given)
}

// above0 refuses a size of nothing or less; 0 stands for 'not given' further on,
// so a written 0 must not pass for it.
func (p rowReader) above0(name string, x float64, given bool) float64 {
	if given && x <= 0 {
		p.faults.Add(p.row.Place(name), words(name)+" must be above 0", p.row.Get(name), "leave the cell empty where it is not known")
		return 0
	}
	return x
}

// mostPieces is more than anybody weighs together. Judgement.
const mostPieces = 1000

func (p rowReader) pieces() int {
	n, given := p.row.Whole("pieces", p.faults)
	if given && (n < 1 || n > mostPieces) {
		p.faults.Add(p.row.Place("pieces"), fmt.Sprintf("pieces must be 1 to %d", mostPieces), p.row.Get("pieces"), "count the pieces that were weighed together")
	}
	return n
}

func (p rowReader) kind() Kind {
	i, _ := p.choice("kind", "weighed", "hung", "listed")
	return Kind(i)
}

func (p rowReader) shape() Shape {
	i, given := p.choice("core_shape", "round", "hex")
	if !given {
		return ShapeAssumed
	}
	return []Shape{Round, Hex}[i]
}

// diameters reads how the outer and the core diameter are known.
func (p rowReader) diameters() (outer, core DiameterFrom) {
	i, _ := p.choice("diameters", "nominal", "measured", "outer measured", "core measured")
	return []DiameterFrom{Nominal, Measured, Measured, Nominal}[i], []DiameterFrom{Nominal, Measured, Nominal, Measured}[i]
}

// choice reads one of a few words; the first where the cell is empty.
func (p rowReader) choice(name string, allowed ...string) (index int, given bool) {
	text := p.row.Get(name)
	if text == "" {
		return 0, false
	}
	for i, w := range allowed {
		if labelKey(text) == w {
			return i, true
		}
	}
	remedy := "write " + strings.Join(allowed, ", ")
	if best := near.Suggest(text, allowed); best != "" {
		remedy = fmt.Sprintf("did you mean %q? ", best) + remedy
	}
	p.faults.Add(p.row.Place(name), words(name)+" does not know this word", text, remedy)
	return 0, false
}

// pitch reads hertz, or leaves a note to the caller's reader.
func (p rowReader) pitch(note PitchReader) float64 {
	text := p.row.Get("pitch")
	if text == "" {
		return 0
	}
	bare := strings.TrimSpace(strings.TrimSuffix(strings.ToLower(text), "hz"))
	if note != nil && !startsNumber(bare) && p.row.Unit("pitch") != "" {
		if _, err := note(text); err == nil {
			p.faults.Add(p.row.Place("pitch"), "a note stands under a heading in hertz", text, "name the column pitch, which takes notes and hertz")
			return 0
		}
	}
	hz, err := unit.ParseNumber(bare)
	if err != nil && note != nil && !startsNumber(bare) && p.row.Unit("pitch") == "" {
		hz, err = note(text)
	}
	if err != nil {
		p.faults.Include(p.row.Place("pitch"), fault.About("pitch", err))
		return 0
	}
	return p.above0("pitch", hz, true)
}

func startsNumber(s string) bool { return s == "" || strings.ContainsAny(s[:1], "0123456789.-+") }

// words makes a heading readable.
func words(name string) string {
	for heading, word := range map[string]string{"density_kg_m3": "density", "youngs_gpa": "modulus", "strength_mpa": "strength"} {
		if name == heading {
			return word
		}
	}
	return strings.ReplaceAll(name, "_", " ")
}
