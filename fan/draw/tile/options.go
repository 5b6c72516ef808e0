package tile

import (
	"cmp"

	"scalepair/data/unit"
	"scalepair/fan/draw"
)

// Options say how a drawing is laid out. Begin with DefaultOptions.
type Options struct {
	Paper Paper
	// Strips leaves the key out and puts the title's words at the foot, and puts
	// pieces below one another, or one across a sheet's diagonal, whichever takes
	// fewest sheets. Without it every piece has a sheet, the first with title and
	// key.
	Strips bool
	// Margin is what the printer leaves white on every side: 3 to 40 mm. Overlap
	// is how far a piece goes on beyond its join: 5 to 40 mm.
	Margin, Overlap unit.Length
	// BarAcross and BarUp are what the level and the upright check bar of an
	// uncorrected print measured, 90 to 110 mm; 0 for a printer that was not
	// measured. They hold for the same paper and arrangement: a printer turns
	// some sheets, and its two directions with them.
	BarAcross, BarUp unit.Length
	// Unit is that of the lengths in a fault's words.
	Unit unit.LengthUnit
}

// DefaultOptions gives A4, one piece a sheet, 10 mm of margin, which every
// printer known to the trade can print inside, and 12 mm of overlap (both
// judgement).
func DefaultOptions() Options {
	return Options{Paper: Papers()[0], Margin: 10 * unit.Millimetre, Overlap: 12 * unit.Millimetre}
}

// bars are what the bars measured, in mm; one that was not measured counts as
// true.
func (o Options) bars() (across, up float64) {
	return cmp.Or(o.BarAcross.MM(), draw.BarLength), cmp.Or(o.BarUp.MM(), draw.BarLength)
}

// scale gives by how much to stretch x and y before printing, so that the
// print comes out in true size.
func (o Options) scale() (x, y float64) {
	across, up := o.bars()
	return draw.BarLength / across, draw.BarLength / up
}

// length prints a length in the options' unit.
func (o Options) length(l unit.Length, decimals int) string {
	return o.Unit.Format(l, decimals) + " " + o.Unit.Symbol()
}
