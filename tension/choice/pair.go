package choice

import (
	"math"

	"scalepair/data/unit"
	"scalepair/fan"
	"scalepair/tension"
)

// Pair is a scale pair with a set of gauges, and what it costs.
type Pair struct {
	Bass       unit.Length `json:"bass_mm"`
	Treble     unit.Length `json:"treble_mm"`
	Difference unit.Length `json:"difference_mm"`
	// Gauges by string, indexes into the stock.
	Gauges []int `json:"-"`

	// Error is E, the feel error of the set; unknown where a bend cannot be made.
	Error        unit.Ratio `json:"feel_error_percent"`
	ErrorUnknown bool       `json:"feel_error_unknown,omitempty"`
	// WorstString is the number of the string of greatest error, with the
	// deviation of its tension from the wanted; 0 where no string has an error.
	WorstString    int        `json:"worst_string"`
	WorstDeviation unit.Ratio `json:"worst_string_tension_deviation_percent"`
	// Inharmonicity is that of the string of lowest pitch, of several tunings the
	// greatest; 0 where its core is not known.
	Inharmonicity unit.Cents `json:"inharmonicity_cents"`

	NutSlant      unit.Angle  `json:"nut_slant_deg"`
	LastFretSlant unit.Angle  `json:"last_fret_slant_deg"`
	SaddleSlant   unit.Angle  `json:"saddle_slant_deg"`
	NutToFret1    unit.Length `json:"nut_to_fret_1_mm"`
	BlankLength   unit.Length `json:"blank_length_mm"`
	BlankWidth    unit.Length `json:"blank_width_mm"`
	// Blanks says of every blank on offer whether it holds the board.
	Blanks []fan.Fit `json:"-"`

	// BassFrom and BassTo span the bass lengths that are as good at this
	// difference; of picks and the trade-off.
	BassFrom unit.Length `json:"bass_from_mm,omitempty"`
	BassTo   unit.Length `json:"bass_to_mm,omitempty"`
}

// setGeometry fills what a pair costs in geometry.
func (p *Plan) setGeometry(c *Pair, f *fan.Frame, bass, treble unit.Length) {
	c.Bass, c.Treble, c.Difference = bass, treble, bass-treble
	c.NutSlant = unit.Angle(math.Atan(f.TanSlant(0)))
	c.LastFretSlant = unit.Angle(math.Atan(f.TanSlant(float64(p.req.Neck.Frets))))
	c.SaddleSlant = unit.Angle(math.Atan(f.SaddleTan()))
	c.NutToFret1 = f.NutToFret1()
	blank := f.LeastBlank()
	c.BlankLength, c.BlankWidth, c.Blanks = blank.Length, blank.Width, blank.Fit(p.req.Blanks)
}

// limitSlack keeps a value that meets a limit exactly, but for the rounding of
// inches to metres, from counting as beyond it.
const limitSlack = 1e-9

// OfFan lists the limits that a fan breaks by its lines alone, in their order;
// frets are those of the board.
func (lim Limits) OfFan(f *fan.Frame, frets int) []Miss {
	var out []Miss
	over := func(l Limit, value, bound float64) {
		if bound > 0 && value > bound*(1+limitSlack) {
			out = append(out, Miss{Limit: l, Value: value, Bound: bound, Gauge: -1})
		}
	}
	// The slant rises or falls steadily along the board, so an end has the most.
	steepest := math.Atan(max(math.Abs(f.TanSlant(0)), math.Abs(f.TanSlant(float64(frets)))))
	over(DifferenceLimit, math.Abs(f.Difference().M()), lim.Difference.M())
	over(FretSlant, steepest, lim.FretSlant.Rad())
	over(SaddleSlant, math.Abs(math.Atan(f.SaddleTan())), lim.SaddleSlant.Rad())
	over(NutToFret1, f.NutToFret1().M(), lim.NutToFret1.M())
	return out
}

// PairLimits lists the limits that a fan breaks as a whole, whatever strings
// are put on it.
func (p *Plan) PairLimits(f *fan.Frame) []Miss {
	out := p.req.Limits.OfFan(f, p.req.Neck.Frets)
	if short := p.blankShort(f); short > limitSlack {
		out = append(out, Miss{Limit: BlankSize, Value: short, Gauge: -1})
	}
	return out
}

// blankShort is how much, in m, the best of the blanks on offer is too small, in
// the direction in which it lacks more; 0 or less where one fits, or where the
// board need not come out of one.
func (p *Plan) blankShort(f *fan.Frame) float64 {
	if !p.req.Limits.Blank {
		return 0
	}
	least := f.LeastBlank()
	short := math.Inf(1)
	for _, b := range p.req.Blanks {
		short = min(short, max(least.Length-b.Length, least.Width-b.Width).M())
	}
	return short
}

// frameOf settles a pair's geometry; the miss says where there is none.
func (p *Plan) frameOf(base *fan.Base, bass, treble unit.Length) (fan.Frame, Miss) {
	miss := Miss{Bass: bass, Treble: treble, Gauge: -1}
	if bass < treble && !p.req.Neck.AllowReverse {
		miss.Limit, miss.Value = ReverseFan, (bass - treble).M()
		return fan.Frame{}, miss
	}
	frame, reason := base.Frame(bass, treble)
	if reason != fan.Fits {
		miss.Limit, miss.Neck = Unbuildable, reason
	}
	return frame, miss
}

// setLimits lists the limits on a set as a whole that it breaks.
func (p *Plan) setLimits(set []int, places []place, inharmonicity unit.Cents) []Miss {
	var out []Miss
	if most := p.req.Limits.Inharmonicity; most > 0 && inharmonicity > most {
		out = append(out, Miss{Limit: InharmonicityLimit, Value: inharmonicity.Value(), Bound: most.Value(), Gauge: -1})
	}
	if most := p.req.Limits.SaddleTravel; most > 0 {
		if need := p.saddleNeed(set, places); need > most {
			out = append(out, Miss{Limit: SaddleTravel, Value: need.M(), Bound: most.M(), Gauge: -1})
		}
	}
	return out
}

// saddleSpare is left at either end of the saddles' travel (judgement).
const saddleSpare = 1 * unit.Millimetre

// saddleNeed is the travel that the saddles need: the bridge is placed so that
// the most forward saddle reaches its theoretical line less 1 mm, and the
// rearmost its upper end of the compensation and 1 mm, over all tunings. Strings
// whose core is not known are left out.
func (p *Plan) saddleNeed(set []int, places []place) unit.Length {
	var all fan.Compensation
	for i, g := range set {
		for _, n := range p.tuned[i].notes {
			if one, err := p.compensation(i, g, &places[i], unit.Frequency(n.pitch)); err == nil {
				all = all.With(one)
			}
		}
	}
	return all.Hi - all.Lo + 2*saddleSpare
}

// compensation is that of gauge g on string i at a pitch.
func (p *Plan) compensation(i, g int, at *place, pitch unit.Frequency) (fan.Compensation, error) {
	lo, hi, err := tension.Compensation(nil, p.wires[g], unit.Length(at.length), pitch, p.req.Action[i], p.req.Tails[i])
	return fan.Compensation{Lo: lo, Hi: hi}, err
}

// inharmonicity is that of the string of lowest pitch, of several tunings the
// greatest; 0 where its core is not known.
func (p *Plan) inharmonicity(set []int, places []place) unit.Cents {
	var most unit.Cents
	for c, low := range p.lowest {
		k := p.tuned[low].of[c]
		at, n := &places[low], &p.tuned[low].notes[k]
		t := tension.Stretched(p.wires[set[low]].LinearDensity.KgPerM()*at.notes[k].speed2, p.wires[set[low]].Compliance())
		most = max(most, tension.Inharmonicity(nil, p.wires[set[low]], unit.Force(t), unit.Length(at.length*n.capo.sounds)))
	}
	return most
}

// mean is E squared: the mean over the strings of their squared errors, so that
// a string counts once however often it is bent.
func mean(squares []float64) float64 {
	sum := 0.0
	for _, x := range squares {
		sum += x
	}
	return sum / float64(len(squares))
}
