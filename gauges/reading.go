package gauges

import (
	"scalepair/data/fault"
	"scalepair/data/unit"
)

// Kind is the kind of a row in the readings file.
type Kind int

// The kinds of rows. Listed is a gauge that is in stock without a reading: its
// linear density is estimated from the fit of its family.
const (
	Weighed Kind = iota
	Hung
	Listed
)

// String gives the word that the file uses.
func (k Kind) String() string { return [...]string{"weighed", "hung", "listed"}[k] }

// Reading is one row of the readings file: one weighing, one hung-weight pitch
// test, or one listed gauge. A size that is 0 was not given; a later row of a
// gauge takes the sizes that it leaves out from the gauge's other rows.
type Reading struct {
	Place fault.Place

	Gauge               string
	Construction        string // Plain or the family's name
	Material            string // of the core; "" is music wire
	OuterM              float64
	CoreM               float64
	Shape               Shape
	OuterFrom, CoreFrom DiameterFrom // how the outer and the core diameter are known
	DensityKgM3         float64      // own values of the material, 0 where the list serves
	YoungsPa            float64
	StrengthPa          float64
	WindingM            float64 // wound length of a bought string

	Kind        Kind
	Pieces      int     // equal pieces weighed together; 0 is 1
	LengthM     float64 // of each piece
	LengthStepM float64 // the ruler's, here; 0: the file's
	MassKg      float64 // of all pieces together
	MassStepKg  float64 // the balance's, here; 0: the file's

	HungKg           float64 // everything that hangs on the string, lower clamp and hook included
	HungResolutionKg float64 // of the scales that weighed it; 0: the file's
	SpeakingM        float64 // clamp to clamp
	FreqHz           float64 // sounded pitch
	PitchCents       float64 // standard uncertainty of the pitch; 0: the file's

	Date, Remark string

	Given Given // how the sizes were written down
}

// DiameterFrom says how a diameter is known.
type DiameterFrom int

// A diameter is a nominal size off the packet, or measured with the builder's
// calipers.
const (
	Nominal DiameterFrom = iota
	Measured
)

var diameterWords = []string{"nominal", "measured"}

// String gives "nominal" or "measured".
func (d DiameterFrom) String() string { return diameterWords[d] }

// MarshalText gives the word of String.
func (d DiameterFrom) MarshalText() ([]byte, error) { return []byte(d.String()), nil }

// UnmarshalText reads one of those words.
func (d *DiameterFrom) UnmarshalText(text []byte) error {
	from, err := wordAmong[DiameterFrom]("diameters", text, diameterWords)
	*d = from
	return err
}

// HungCaution is what must be read before a weight is hung on a string. The
// breaking load that it speaks of is in HungTest.
const HungCaution = "A hung weight falls when the string breaks. Wear eye protection; keep the weight a hand's breadth over a padded floor, " +
	"hands and feet away from under it; never hang more than half the breaking load."

// HungTest is one hung-weight reading against the string's breaking load.
type HungTest struct {
	Place          fault.Place
	Gauge          string
	Load, Breaking unit.Force // weight of what hung on the string; least breaking load of the core, 0 unknown
	OutsideTable   bool       // the strength is continued beyond its table
}

// OverHalf tells whether more hung than half the breaking load.
func (h HungTest) OverHalf() bool { return h.Breaking > 0 && h.Load > h.Breaking/2 }
