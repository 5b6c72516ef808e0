package tile

import (
	"math"
	"strings"

	"scalepair/data/fault"
	"scalepair/data/suggest"
	"scalepair/data/unit"
)

// Paper is what the printer takes. WidthMM is the shorter side of a cut sheet
// or the width of a roll; LengthMM is the longer side, 0 for a roll.
type Paper struct {
	Name              string
	WidthMM, LengthMM float64
}

// A4 is 210 x 297 mm (ISO 216).
func A4() Paper { return Paper{"A4", 210, 297} }

// A3 is 297 x 420 mm (ISO 216).
func A3() Paper { return Paper{"A3", 297, 420} }

// Letter is 8 1/2 x 11 in (ANSI/ASME Y14.1, size A), in mm exactly.
func Letter() Paper { return Paper{"Letter", 215.9, 279.4} }

// Legal is 8 1/2 x 14 in, in mm exactly (common practice, no source).
func Legal() Paper { return Paper{"Legal", 215.9, 355.6} }

// Tabloid is 11 x 17 in (ANSI/ASME Y14.1, size B), in mm exactly.
func Tabloid() Paper { return Paper{"Tabloid", 279.4, 431.8} }

// Papers gives the cut sheets that ParsePaper knows by name.
func Papers() []Paper { return []Paper{A4(), A3(), Letter(), Legal(), Tabloid()} }

// Roll is paper of that width and any length, on a plotter.
func Roll(widthMM float64) Paper { return Paper{Name: "roll", WidthMM: widthMM} }

// IsRoll reports whether the paper is a roll.
func (p Paper) IsRoll() bool { return p.LengthMM == 0 }

// ParsePaper reads the name of one of Papers, or "roll" with a width, such as
// "roll 610 mm" or "roll 24 in".
func ParsePaper(s string) (Paper, error) {
	place := fault.Place{Input: "paper"}
	words := strings.TrimSpace(s)
	if rest, ok := cutPrefixFold(words, "roll"); ok {
		width, err := unit.ParseLength(strings.TrimSpace(rest))
		if err != nil {
			return Paper{}, fault.Fault{Place: place, What: "a roll needs its width with a unit", Given: s, Remedy: "write it as `roll 610 mm`"}
		}
		if math.IsInf(width.MM(), 0) {
			return Paper{}, fault.Fault{Place: place, What: "the paper's width is out of range", Given: s, Remedy: "from 150 to 5000 mm"}
		}
		return Roll(width.MM()), nil
	}
	var names []string
	for _, p := range Papers() {
		if strings.EqualFold(words, p.Name) {
			return p, nil
		}
		names = append(names, p.Name)
	}
	remedy := "take " + strings.Join(names, ", ") + " or a roll with its width"
	if meant := suggest.Nearest(words, append(names, "roll")); meant != "" {
		remedy = "did you mean " + meant + "?"
	}
	return Paper{}, fault.Fault{Place: place, What: "no paper of that name is known", Given: s, Remedy: remedy}
}

func cutPrefixFold(s, prefix string) (string, bool) {
	if len(s) < len(prefix) || !strings.EqualFold(s[:len(prefix)], prefix) {
		return s, false
	}
	return s[len(prefix):], true
}

// Arrangement says how pieces share the sheets.
type Arrangement int

const (
	// OneEach puts one piece on a sheet, with title and key on the first.
	OneEach Arrangement = iota
	// Strips leaves the key out and the title's words at the foot, and puts pieces below one another, or
	// one across a sheet's diagonal, whichever takes fewest sheets.
	Strips
)

// Options say how a drawing is laid out. Begin with DefaultOptions.
type Options struct {
	Paper     Paper
	Arrange   Arrangement
	MarginMM  float64 // what the printer leaves white on every side: 3 to 40 mm
	OverlapMM float64 // how far a piece goes on beyond its join: 5 to 40 mm
	// BarAcrossMM and BarUpMM are what the level and the upright check bar of an
	// uncorrected print measured, 90 to 110 mm; 0 for a printer that was not
	// measured. They hold for the same paper and arrangement: a printer turns
	// some sheets, and its two directions with them.
	BarAcrossMM, BarUpMM float64
	// Unit is that of the lengths in a fault's words.
	Unit unit.LengthUnit
}

// length prints millimetres in the options' unit.
func (o Options) length(mm float64, decimals int) string {
	return o.Unit.Format(unit.MM(mm), decimals) + " " + o.Unit.Symbol()
}

// DefaultOptions gives A4, one piece a sheet, 10 mm of margin, which every
// printer known to the trade can print inside, and 12 mm of overlap (both
// judgement).
func DefaultOptions() Options {
	return Options{Paper: A4(), MarginMM: 10, OverlapMM: 12}
}

// check finds every fault of the options.
func (o Options) check() error {
	var faults fault.List
	within := func(place, what string, mm, least, most float64) {
		if !(mm >= least && mm <= most) {
			faults.Add(fault.Place{Input: place}, what+" is out of range", number(mm),
				"from "+unit.Fixed(least, 0)+" to "+unit.Fixed(most, 0)+" mm")
		}
	}
	within("margin", "the white margin", o.MarginMM, 3, 40)
	within("overlap", "the overlap", o.OverlapMM, 5, 40)
	within("paper", "the paper's width", o.Paper.WidthMM, 150, 5000)
	if !o.Paper.IsRoll() {
		within("paper", "the paper's length", o.Paper.LengthMM, o.Paper.WidthMM, 5000)
	}
	for place, mm := range map[string]float64{"bar across": o.BarAcrossMM, "bar up": o.BarUpMM} {
		if mm != 0 {
			within(place, "the measured length of a bar of 100 mm", mm, 90, 110)
		}
	}
	return faults.Err()
}

// scale gives by how much to stretch x and y before printing, so that the
// print comes out in true size.
func (o Options) scale() (x, y float64) {
	x, y = 1, 1
	if o.BarAcrossMM != 0 {
		x = 100 / o.BarAcrossMM
	}
	if o.BarUpMM != 0 {
		y = 100 / o.BarUpMM
	}
	return x, y
}

// number prints what was given; NaN and infinities, which are faults too, by
// their names.
func number(mm float64) string {
	switch {
	case math.IsNaN(mm):
		return "not a number"
	case math.IsInf(mm, 0):
		return "infinite"
	}
	return unit.Fixed(mm, 2) + " mm"
}
