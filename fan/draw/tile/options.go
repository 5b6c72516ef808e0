package tile

import (
	"scalepair/data/unit"
	"scalepair/fan/draw"
)

// Options say how a drawing is laid out. Begin with DefaultOptions.
type Options struct {
	Paper Paper
	// Strips puts pieces below one another where a sheet takes several. Without it
	// every piece has a sheet.
	Strips bool
	// Margin is what the printer leaves white on every side: 3 to 40 mm. Overlap
	// is how far a piece goes on beyond its join: 5 to 40 mm.
	Margin, Overlap unit.Length
	// BarAcross and BarUp are what the level and the upright check bar of an
	// uncorrected print measured; 0 for one that was not measured. They hold for
	// the same paper and arrangement: a printer turns some sheets, and its two
	// directions with them.
	BarAcross, BarUp unit.Length
	// Unit is that of the check bars and of the lengths in a fault's words.
	Unit unit.LengthUnit
}

// DefaultOptions gives A4, one piece a sheet, 10 mm of margin, which every
// printer known to the trade can print inside, and 12 mm of overlap (both
// judgement).
func DefaultOptions() Options {
	return Options{Paper: Papers()[0], Margin: 10 * unit.Millimetre, Overlap: 12 * unit.Millimetre}
}

// length prints a length in the options' unit.
func (o Options) length(l unit.Length, decimals int) string {
	return o.Unit.Format(l, decimals) + " " + o.Unit.Symbol()
}

// level and upright are the lengths of the check bars that a sheet's area takes,
// in mm.
func (o Options) level(area draw.Rect) float64   { return draw.BarLength(o.Unit, area.Width()) }
func (o Options) upright(area draw.Rect) float64 { return draw.BarLength(o.Unit, area.Height()-overMM) }
