package choice

import (
	"cmp"
	"math"

	"scalepair/data/unit"
	"scalepair/fan"
)

// Limits are the bounds that a candidate must keep. A zero leaves a limit off.
type Limits struct {
	// On a pair.
	Difference    unit.Length `toml:"difference" range:"0.1 mm, 500 mm"`     // of bass and treble length
	FretSlant     unit.Angle  `toml:"fret_slant_deg" range:"0.1, 60"`        // of nut and frets
	SaddleSlant   unit.Angle  `toml:"saddle_slant_deg" range:"0.1, 60"`      // of the saddle line
	NutToFret1    unit.Length `toml:"nut_to_fret_1" range:"5 mm, 150 mm"`    // on the bass line
	Blank         bool        `toml:"blank"`                                 // one of the blanks on offer must hold the board
	Inharmonicity unit.Cents  `toml:"inharmonicity_cents" range:"0.1, 1200"` // of the string of lowest pitch
	SaddleTravel  unit.Length `toml:"saddle_travel" range:"0.5 mm, 100 mm"`  // of all saddles

	// On a gauge.
	BreakingOpen     unit.Ratio `toml:"breaking_open_percent" range:"1, 85"`
	BreakingBent     unit.Ratio `toml:"breaking_bent_percent" range:"1, 95"`
	LeastTension     unit.Force `toml:"least_tension" range:"1 N, 2000 N"`
	MostTension      unit.Force `toml:"most_tension" range:"1 N, 2000 N"`
	MostBendingForce unit.Force `toml:"most_bending_force" range:"0.1 N, 1000 N"`
}

// DefaultLimits drops a gauge near its breaking strength (judgement: a semitone
// of overshoot adds 12 % of tension, a whole-tone bend about 26 %).
func DefaultLimits() Limits { return Limits{BreakingOpen: 0.75, BreakingBent: 0.90} }

// Caution is the part of its breaking strength from which the elastic limit of
// music wire may be passed by an open string (Shigley, Mechanical Engineering
// Design, Table 10-5: elastic limit 65 to 75 % of tensile strength, in
// tension), and StrongCaution that beyond which it surely is.
const (
	Caution       unit.Ratio = 0.65
	StrongCaution unit.Ratio = 0.75
)

// Limit names what drops a pair, or a gauge on a string. The order is that in
// which limits are looked at: a pair is counted under the first it breaks.
type Limit int

const (
	Kept               Limit = iota // nothing is broken
	Range                           // outside the lengths to try
	ReverseFan                      // the bass is shorter than the treble, which was not asked for
	Unbuildable                     // no neck can be drawn for the pair
	DifferenceLimit                 // bass and treble length differ by too much
	FretSlant                       // a fret or the nut is too steep
	SaddleSlant                     // the saddle line is too steep
	NutToFret1                      // the reach from nut to fret 1 is too long
	BlankSize                       // no blank on offer holds the board
	WindingLength                   // the winding ends before the string's length does
	LeastTension                    // the string is too slack
	MostTension                     // the string is too tight
	StrengthUnknown                 // a limit on breaking strength holds, and the gauge's core or its strength is not known
	BreakingOpen                    // the open string is too near to breaking
	StiffnessUnknown                // the gauge is wanted on a bend string, and nothing is known of its core
	BendUnreachable                 // the bend ends beyond the board's edge or past breaking
	BreakingBent                    // the bent string is too near to breaking
	MostBendingForce                // the bend takes too much force
	OrderingRule                    // every string has a gauge, but no set of them keeps the ordering rule
	InharmonicityLimit              // the lowest string's partials stand too high
	SaddleTravel                    // the saddles cannot be turned back so far

	limits
)

// limitInfo is what is known of each limit: its words, its key, what sets it, and
// what it bounds.
var limitInfo = [limits]struct {
	words, key, setting string
	bounds
}{
	Kept:               {"no limit", "kept", "", bounds{}},
	Range:              {"range of lengths to try", "range", "scales", bounds{of: length}},
	ReverseFan:         {"reverse fan", "reverse_fan", "scales.reverse_fan", bounds{of: length}},
	Unbuildable:        {"no neck can be drawn", "unbuildable", "", bounds{}},
	DifferenceLimit:    {"difference", "difference", "limits.difference", bound(func(l *Limits) *unit.Length { return &l.Difference })},
	FretSlant:          {"slant of nut and frets", "fret_slant", "limits.fret_slant_deg", bound(func(l *Limits) *unit.Angle { return &l.FretSlant })},
	SaddleSlant:        {"slant of the saddle line", "saddle_slant", "limits.saddle_slant_deg", bound(func(l *Limits) *unit.Angle { return &l.SaddleSlant })},
	NutToFret1:         {"nut to fret 1", "nut_to_fret_1", "limits.nut_to_fret_1", bound(func(l *Limits) *unit.Length { return &l.NutToFret1 })},
	BlankSize:          {"size of the blanks", "blank", "blanks", bounds{of: length, off: func(l *Limits) { l.Blank = false }}},
	WindingLength:      {"length of the winding", "winding_length", "winding in the readings", bounds{of: length}},
	LeastTension:       {"least tension", "least_tension", "limits.least_tension", bound(func(l *Limits) *unit.Force { return &l.LeastTension })},
	MostTension:        {"greatest tension", "most_tension", "limits.most_tension", bound(func(l *Limits) *unit.Force { return &l.MostTension })},
	StrengthUnknown:    {"strength of the core not known", "strength_unknown", "", bounds{}},
	BreakingOpen:       {"breaking strength, open", "breaking_open", "limits.breaking_open_percent", bound(func(l *Limits) *unit.Ratio { return &l.BreakingOpen })},
	StiffnessUnknown:   {"stiffness of the core not known", "stiffness_unknown", "", bounds{}},
	BendUnreachable:    {"bend not reachable", "bend_unreachable", "feel.bend_cents", bounds{}},
	BreakingBent:       {"breaking strength, bent", "breaking_bent", "limits.breaking_bent_percent", bound(func(l *Limits) *unit.Ratio { return &l.BreakingBent })},
	MostBendingForce:   {"bending force", "most_bending_force", "limits.most_bending_force", bound(func(l *Limits) *unit.Force { return &l.MostBendingForce })},
	OrderingRule:       {"ordering of the strings", "ordering", "strings.ordering", bounds{}},
	InharmonicityLimit: {"inharmonicity of the lowest string", "inharmonicity", "limits.inharmonicity_cents", bound(func(l *Limits) *unit.Cents { return &l.Inharmonicity })},
	SaddleTravel:       {"saddle travel", "saddle_travel", "limits.saddle_travel", bound(func(l *Limits) *unit.Length { return &l.SaddleTravel })},
}

// bounds are the quantity of a limit's values, its bound, and how it is taken off.
type bounds struct {
	of  func(si float64) any
	at  func(l Limits) float64
	off func(l *Limits)
}

// bound is what one of the Limits bounds.
func bound[Q ~float64](of func(l *Limits) *Q) bounds {
	return bounds{func(si float64) any { return Q(si) }, func(l Limits) float64 { return float64(*of(&l)) }, func(l *Limits) { *of(l) = 0 }}
}

func length(x float64) any { return unit.Length(x) }

// String says the limit in plain words.
func (l Limit) String() string { return limitInfo[l].words }

// MarshalText gives the limit's key.
func (l Limit) MarshalText() ([]byte, error) { return []byte(limitInfo[l].key), nil }

// Setting is the key of the build file that sets the limit; "" where none does.
func (l Limit) Setting() string { return limitInfo[l].setting }

// Least reports whether the limit is a least value; the others are greatest.
func (l Limit) Least() bool { return l == LeastTension || l == WindingLength }

// Quantity gives a value of the limit, in SI, as its quantity of package unit;
// nil for a limit without a number.
func (l Limit) Quantity(si float64) any {
	if limitInfo[l].of == nil {
		return nil
	}
	return limitInfo[l].of(si)
}

// Bounds lists the limits with a number that are on, in their order.
func (l Limits) Bounds() (list []Limit, si []float64) {
	for limit, info := range limitInfo {
		if info.at != nil && info.at(l) != 0 {
			list, si = append(list, Limit(limit)), append(si, info.at(l))
		}
	}
	return list, si
}

// Miss is one broken limit: what the value was and what the bound is, in SI.
type Miss struct {
	Limit        Limit
	Bass, Treble unit.Length
	String       int // number; 0 where the pair as a whole broke it
	Gauge        int // index into the stock; -1 where none is meant
	Value, Bound float64
	BendFret     float64    // of a limit on bends; 0 of any other
	Neck         fan.Reason // with Unbuildable: why no neck can be drawn
}

// Excess is how far a miss lies beyond its bound, as a part of the bound (of
// what has no bound but 0, in metres); 0 for limits without a number, so that
// the first seen stands.
func (m Miss) Excess() float64 {
	if m.Bound == 0 {
		return math.Abs(m.Value)
	}
	return math.Abs(m.Value-m.Bound) / math.Abs(m.Bound)
}

// before orders misses: by excess, then by bass and treble length, so that
// the result does not depend on the order in which pairs are seen.
func (m Miss) before(n Miss) bool {
	return cmp.Or(cmp.Compare(m.Excess(), n.Excess()), cmp.Compare(m.Bass, n.Bass), cmp.Compare(m.Treble, n.Treble)) < 0
}

// Dropped counts the pairs that one limit dropped, and keeps the one that
// missed by least.
type Dropped struct {
	Limit   Limit
	Pairs   int
	Nearest Miss
}

// tally counts dropped pairs by limit.
type tally [limits]Dropped

// drop counts one pair.
func (t *tally) drop(m Miss) {
	d := &t[m.Limit]
	if d.Pairs == 0 || m.before(d.Nearest) {
		d.Nearest = m
	}
	d.Limit = m.Limit
	d.Pairs++
}

// list gives the limits that dropped anything, in their order.
func (t *tally) list() []Dropped {
	var out []Dropped
	for _, d := range t {
		if d.Pairs > 0 {
			out = append(out, d)
		}
	}
	return out
}
