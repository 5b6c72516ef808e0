package fan

import "scalepair/data/unit"

// Spec is what was asked of a layout.
type Spec struct {
	// Bass and Treble are the scale pair: the lengths of the two outer strings,
	// each along its own line, from 200 to 2000 mm.
	Bass, Treble unit.Length
	// AllowReverse lets the bass be shorter than the treble.
	AllowReverse bool
	// Strings is the number of strings, 2 to 24.
	Strings int
	// Diameters are the outer diameters of the strings, string 1 first;
	// needed for EqualGaps only.
	Diameters []unit.Length
	Neck
}
