// Package reading reads what a builder measured of strings: a CSV file with one
// weighing, one hung-weight pitch test or one listed gauge a row.
//
// Sizes are quantities in SI; one that is 0 was not given. Files in reading
// order: reading.go (a row), core.go (the shape of a core wire), words.go (words
// that cells and keys may have), read.go (the file), cells.go (its cells),
// check.go (what one row alone shows to be wrong), slips.go (slips that the
// whole file shows), written.go (how sizes were written down).
package reading

import (
	"strings"
	"unicode"

	"scalepair/data/fault"
	"scalepair/data/unit"
)

// Plain is the construction of strings that are one bare wire.
const Plain = "plain"

// IsPlain reports whether a construction is Plain, whatever its letter case.
func IsPlain(construction string) bool { return Key(construction) == Plain }

// Key is what makes two labels, constructions or words the same: letter case,
// blanks and what does not show, such as a space of no width, aside.
func Key(label string) string {
	shown := strings.Map(func(r rune) rune {
		if unicode.Is(unicode.Cf, r) {
			return -1
		}
		return unicode.ToLower(r)
	}, label)
	return strings.Join(strings.Fields(shown), " ")
}

// Reading is one row of the readings file. A later row of a gauge takes the
// sizes that it leaves out from the gauge's other rows.
type Reading struct {
	Place fault.Place

	Gauge               string
	Construction        string // Plain or the builder's name of a wound kind
	Material            string // of the core; "" is music wire
	Outer, Core         unit.Length
	Shape               Shape
	OuterFrom, CoreFrom DiameterFrom
	Winding             unit.Length // wound length of a bought string

	// Own values of the core's material, 0 where the list of materials has them.
	DensityKgM3, YoungsPa, StrengthPa float64

	Kind Kind

	// A weighing.
	Pieces           int         // equal pieces weighed together; 0 is 1
	Length           unit.Length // of each piece
	LengthResolution unit.Length // the ruler's, here; 0: the file's
	Mass             unit.Mass   // of all pieces together
	MassResolution   unit.Mass   // the balance's, here; 0: the file's

	// A hung test.
	HungMass       unit.Mass      // everything that hangs on the string, lower clamp and hook included
	HungResolution unit.Mass      // of the scales that weighed it; 0: the file's
	Speaking       unit.Length    // clamp to clamp
	Pitch          unit.Frequency // as it sounded
	PitchU         unit.Cents     // its standard uncertainty; 0: the file's

	Date, Remark string

	Written Written // how the sizes were written down
}

// NumPieces is how many pieces were weighed together.
func (r *Reading) NumPieces() int { return max(r.Pieces, 1) }

// CoreWire is the diameter of the wire that carries the tension, 0 unknown.
func (r *Reading) CoreWire() unit.Length {
	if IsPlain(r.Construction) {
		return r.Outer
	}
	return r.Core
}
