package reading

import "scalepair/data/suggest"

// Kind is the kind of a row.
type Kind int

// The kinds of rows. Listed is a gauge that is in stock without a reading: its
// linear density is estimated from the fit of its family.
const (
	Weighed Kind = iota
	Hung
	Listed
)

var kindWords = []string{"weighed", "hung", "listed"}

// String gives the word that the file uses.
func (k Kind) String() string { return kindWords[k] }

// DiameterFrom says how a diameter is known.
type DiameterFrom int

// A diameter is a nominal size off the packet, or measured with the builder's
// calipers.
const (
	Nominal DiameterFrom = iota
	Measured
)

var diameterWords = []string{"nominal", "measured"}

// diametersWords say it of both diameters of a row.
var diametersWords = append(diameterWords[:2:2], "outer measured", "core measured")

// UnmarshalText reads one of those words.
func (d *DiameterFrom) UnmarshalText(text []byte) error {
	return suggest.Word(d, string(text), diameterWords)
}

var shapeWords = []string{"unknown", "round", "hex"}

// String gives "core shape assumed", "round" or "hex".
func (s Shape) String() string {
	if s == ShapeAssumed {
		return "core shape assumed"
	}
	return shapeWords[s]
}

// UnmarshalText reads one of those words.
func (s *Shape) UnmarshalText(text []byte) error {
	return suggest.Word(s, string(text), shapeWords)
}
