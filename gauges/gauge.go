package gauges

import (
	"strings"

	"scalepair/data/fault"
	"scalepair/data/unit"
)

// Plain is the family of strings that are one bare wire.
const Plain = "plain"

// Shape is the cross-section of a core wire.
type Shape int

// The shapes. ShapeAssumed is an unknown shape, reckoned as round and marked
// 'core shape assumed'.
const (
	ShapeAssumed Shape = iota
	Round
	Hex
)

var shapeWords = []string{"unknown", "round", "hex"}

// String gives "core shape assumed", "round" or "hex".
func (s Shape) String() string {
	if s == ShapeAssumed {
		return "core shape assumed"
	}
	return shapeWords[s]
}

// MarshalText gives "unknown", "round" or "hex".
func (s Shape) MarshalText() ([]byte, error) { return []byte(shapeWords[s]), nil }

// UnmarshalText reads one of those words.
func (s *Shape) UnmarshalText(text []byte) error {
	shape, err := wordAmong[Shape]("core_shape", text, shapeWords)
	*s = shape
	return err
}

// CommonPart is an error of one named source that several gauges share. U is
// its standard uncertainty in the quantity it belongs to, with a sign: where
// two gauges carry the same source with opposite signs, the one is too heavy
// when the other is too light.
//
// Bounded tells that the error lies anywhere within +-sqrt(3) U, all values
// alike, as a rounding does; else it counts as normal.
type CommonPart struct {
	Source  string
	U       float64
	Bounded bool
}

// Gauge is one size of string as the stock knows it.
type Gauge struct {
	Label    string
	Family   string // Plain or the user's name of a wound kind
	Material string // of the core; of the whole wire where plain

	Outer, UOuter unit.Length
	Core, UCore   unit.Length // 0 unknown; a plain gauge's core is its outer diameter
	Shape         Shape

	LinearDensity unit.LinearDensity // slack
	U             unit.LinearDensity // standard uncertainty: U² = Indep² + sum of Common²
	Indep         unit.LinearDensity // the part that no other value shares
	Common        []CommonPart       // kg/m; a source 'diameter of ...' is shared with CoreParts
	CoreParts     []CommonPart       // m, the parts of UCore: UCore² = sum of their squares

	AreaM2      float64     // core's cross-section; 0 where the core is unknown
	EA          unit.Force  // 0 where the core or its modulus is unknown
	EI          float64     // N m²; 0 as EA
	YoungsPa    float64     // 0 unknown
	StrengthPa  float64     // the material's stated strength; 0: look music wire up by its diameter
	DensityKgM3 float64     // of the core's material, from the material list; 0 unknown
	Winding     unit.Length // length of the wound part that a bought string has; 0 not stated

	ImpliedKgM3 float64    // the wrap's where the core is known, else that of the whole string
	Packing     unit.Ratio // share of the wraps' rings filled with metal, where a construction was given; else 0

	Readings  int  // rows used, weighed and hung
	Built     bool // a construction from core and wraps went in
	Estimated bool // no reading and no construction: from the fit
	Suspect   bool // its reading stands off from the fit made without it
	Disagrees bool // its own readings stand further apart than chance allows

	Rows   []Reading  // the readings that went in, as they were read
	Judged *Judgement // how it stands to the fit; nil where nothing could judge it
	Notes  []string   // in plain words, for the table's foot

	bounded     float64 // kg/m, the parts of Indep that have bounds, see fourthSum
	outer, core diameter
	chi2        float64 // of its readings among themselves
	dof         int
}

// RelU is the standard uncertainty of the linear density as a fraction of it.
func (g Gauge) RelU() unit.Ratio { return unit.Ratio(g.U / g.LinearDensity) }

// Flags gives the words that must stand wherever the gauge appears:
// 'estimated', 'suspect', 'readings disagree', 'core unknown', 'core shape
// assumed'. Empty for a gauge without a mark.
func (g Gauge) Flags() []string {
	var flags []string
	for _, f := range []struct {
		on   bool
		word string
	}{
		{g.Estimated, "estimated"},
		{g.Suspect, "suspect"},
		{g.Disagrees, "readings disagree"},
		{g.Core == 0, "core unknown"},
		{g.Core > 0 && g.Family != Plain && g.Shape == ShapeAssumed, ShapeAssumed.String()},
	} {
		if f.on {
			flags = append(flags, f.word)
		}
	}
	return flags
}

// Stock is every gauge the builder can use, in the order of the file, with
// the fits that tie them together.
type Stock struct {
	Gauges []Gauge
	Fits   []Fit
	Hung   []HungTest

	by   combiner // what it was made from
	each float64  // chance of a false alarm that every judgement was allowed
}

// Lookup finds a gauge by its label, blanks at the ends and letter case
// aside. The error names the nearest labels.
func (s Stock) Lookup(label string) (Gauge, error) {
	key := labelKey(label)
	for _, g := range s.Gauges {
		if labelKey(g.Label) == key {
			return g, nil
		}
	}
	return Gauge{}, fault.Fault{What: "this gauge is not in stock", Given: label, Remedy: suggestLabel(label, s.Gauges)}
}

// labelKey is what makes two labels the same gauge.
func labelKey(label string) string {
	if folded(label) {
		return label
	}
	return strings.ToLower(strings.Join(strings.Fields(label), " "))
}

// folded tells whether a label is its own key: small letters and other visible
// ASCII, with single blanks between.
func folded(label string) bool {
	before := byte(' ')
	for i := range len(label) {
		c := label[i]
		if c < ' ' || c > '~' || c >= 'A' && c <= 'Z' || c == ' ' && before == ' ' {
			return false
		}
		before = c
	}
	return before != ' ' || label == ""
}
