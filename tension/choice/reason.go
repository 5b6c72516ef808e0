package choice

import "scalepair/fan"

// Reason says why a pair, or a gauge on a string, was dropped. The order is
// the order in which limits are looked at: a pair is counted under the first
// it breaks.
type Reason int

const (
	// Kept means that nothing was broken.
	Kept Reason = iota
	// ReverseFan: the bass is shorter than the treble, which was not asked for.
	ReverseFan
	// Unbuildable: no neck can be drawn for the pair.
	Unbuildable
	// Difference: bass and treble length differ by more than the limit.
	Difference
	// FretSlant: a fret or the nut is slanted beyond the limit.
	FretSlant
	// SaddleSlant: the saddle line is slanted beyond the limit.
	SaddleSlant
	// NutToFret1: the reach from nut to fret 1 on the bass line is too long.
	NutToFret1
	// BlankSize: no blank on offer holds the board.
	BlankSize
	// WindingLength: the winding ends before the string's length does.
	WindingLength
	// LeastTension: the string is too slack.
	LeastTension
	// MostTension: the string is too tight.
	MostTension
	// StrengthUnknown: a breaking limit holds, but the gauge's core or its
	// strength is not known, so that it cannot pass.
	StrengthUnknown
	// BreakingOpen: the open string is too near to breaking.
	BreakingOpen
	// StiffnessUnknown: the gauge is wanted on a bend string, but nothing is
	// known of its core, so that the bend cannot be computed.
	StiffnessUnknown
	// BendUnreachable: the bend ends beyond the board's edge or past breaking.
	BendUnreachable
	// BreakingBent: the bent string is too near to breaking.
	BreakingBent
	// MostBendingForce: the bend takes too much force.
	MostBendingForce
	// Inharmonicity: the lowest string's overtones stand too high.
	Inharmonicity
	// SaddleTravel: the compensation needs more travel than the saddle has.
	SaddleTravel
	// OrderingRule: every string has a gauge, but no set of them keeps the
	// ordering rule.
	OrderingRule

	reasons

	// dearer: the pair costs more than one already found. SearchBest alone gives
	// such a pair up, and counts it nowhere.
	dearer
)

// OnGauge says whether the reason removes a gauge from one string's choice;
// the others speak of a pair as a whole.
func (r Reason) OnGauge() bool { return r >= WindingLength && r <= SaddleTravel }

// Quantity says in which unit the values of a Miss stand.
type Quantity int

const (
	// NoQuantity marks a reason that has no number.
	NoQuantity Quantity = iota
	// MillimetreValues, RadianValues, MetreValues, NewtonValues, ShareValues
	// and CentValues name the unit of a Miss's Value and Limit.
	MillimetreValues
	RadianValues
	MetreValues
	NewtonValues
	ShareValues
	CentValues
)

// Quantity gives the unit of the reason's values.
func (r Reason) Quantity() Quantity {
	switch r {
	case Difference, NutToFret1, BlankSize, ReverseFan:
		return MillimetreValues
	case FretSlant, SaddleSlant:
		return RadianValues
	case WindingLength, SaddleTravel:
		return MetreValues
	case LeastTension, MostTension, MostBendingForce:
		return NewtonValues
	case BreakingOpen, BreakingBent:
		return ShareValues
	case Inharmonicity:
		return CentValues
	}
	return NoQuantity
}

// Miss is one broken limit: what the value was and what the limit is, in the
// unit of the reason's Quantity. String is 0 when the pair as a whole broke
// it; Gauge is an index into the stock, -1 when none is meant.
type Miss struct {
	Reason           Reason
	BassMM, TrebleMM float64
	String, Gauge    int
	Value, Limit     float64
	BendFret         float64    // of a limit on bends; 0 of any other
	Neck             fan.Reason // with Unbuildable: why no neck can be drawn
}

// Excess is how far a miss lies beyond its limit, as a share of the limit (of
// what has no limit but 0, in metres); 0 for reasons without a number,
// so that the first seen stands.
func (m Miss) Excess() float64 {
	if m.Limit == 0 {
		return abs(m.Value) / 1000
	}
	return abs(m.Value-m.Limit) / abs(m.Limit)
}

func abs(x float64) float64 {
	if x < 0 {
		return -x
	}
	return x
}

// Dropped counts the pairs that one reason dropped, and keeps the one that
// missed by least.
type Dropped struct {
	Reason  Reason
	Pairs   int
	Nearest Miss
}

// tally counts dropped pairs by reason.
type tally [reasons]Dropped

// drop counts one pair.
func (t *tally) drop(m Miss) {
	d := &t[m.Reason]
	d.Reason = m.Reason
	d.Pairs++
	if d.Pairs == 1 || m.before(d.Nearest) {
		d.Nearest = m
	}
}

// before orders misses: by excess, then by bass and treble length, so that
// the result does not depend on the order in which pairs are seen.
func (m Miss) before(n Miss) bool {
	a, b := m.Excess(), n.Excess()
	if a != b {
		return a < b
	}
	if m.BassMM != n.BassMM {
		return m.BassMM < n.BassMM
	}
	return m.TrebleMM < n.TrebleMM
}

// merge adds another tally.
func (t *tally) merge(o *tally) {
	for r := range o {
		if o[r].Pairs == 0 {
			continue
		}
		d := &t[r]
		if d.Pairs == 0 || o[r].Nearest.before(d.Nearest) {
			d.Nearest = o[r].Nearest
		}
		d.Reason = Reason(r)
		d.Pairs += o[r].Pairs
	}
}

// list gives the reasons that dropped anything, in their order.
func (t *tally) list() []Dropped {
	var out []Dropped
	for _, d := range t {
		if d.Pairs > 0 {
			out = append(out, d)
		}
	}
	return out
}
