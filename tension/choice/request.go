package choice

import (
	"math"

	"scalepair/data/unit"
	"scalepair/fan"
	"scalepair/gauges"
	"scalepair/tension"
)

// Request is all that a choice depends on. Slices over strings start at
// string 1, the highest.
type Request struct {
	// Cases are the tunings of one set of gauges, at least one.
	Cases []Case
	// By says how several cases are put together.
	By Combining

	// Stock holds every gauge that is spoken of, the reference's among them.
	Stock []gauges.Gauge
	// Usable lists the indexes into Stock that may be chosen; nil means all.
	Usable []int
	// Given fixes the gauges, by string, as indexes into Stock; nil leaves
	// them free.
	Given []int
	// Ordering keeps the linear density from falling from string to string towards
	// the bass, and plain strings on the treble side of wound ones.
	Ordering bool

	// Neck is the wanted neck; its pair of lengths is ignored.
	Neck fan.Spec
	// Bass and Treble span the grid of pairs, each rising, both ends included.
	Bass, Treble []unit.Length
	// Blanks are on offer, whether or not they are a limit.
	Blanks []fan.Blank

	// Tails by string; TailsAssumed says that nobody gave them.
	Tails        []tension.Tails
	TailsAssumed bool
	// Action by string: height over fret 12, for the compensation;
	// ActionAssumed says that nobody gave them.
	Action        []unit.Length
	ActionAssumed bool

	Feel      Feel
	Reference *Reference
	Limits    Limits
}

// Case is one tuning of the instrument.
type Case struct {
	Name string
	// Pitches are those of the open strings, capo aside.
	Pitches []unit.Frequency
	// CapoFret is the fret where a capo lies; 0 for none. Bend frets still
	// count from the nut.
	CapoFret int
	// Weight is the case's part in a mean; only its proportion to the others
	// counts. It must be above 0.
	Weight float64
}

// Reference is the instrument whose feel is wanted.
type Reference struct {
	Neck    fan.Spec
	Pitches []unit.Frequency
	// Gauges by string, indexes into the request's Stock.
	Gauges       []int
	Tails        []tension.Tails
	TailsAssumed bool
}

// Lengths lists the lengths of a range: both ends are among them, and the last
// step is shortened to meet the end. It needs a step above 0 and from <= to.
func Lengths(from, to, step unit.Length) []unit.Length {
	var out []unit.Length
	for i := 0; ; i++ {
		// To the picometre: a length in millimetres, thousandths of an inch or
		// 1/64 in is a whole number of them, and so is any sum of such lengths.
		l := unit.Length(math.Round(float64(from+unit.Length(i)*step)*1e12) / 1e12)
		if l >= to {
			return append(out, to)
		}
		out = append(out, l)
	}
}

// DefaultRange is what is tried against a reference of two lengths unless stated,
// for a tuning with a highest string: treble lengths from 30 mm below the
// reference's up to it, since low tunings and unbent strings set no other limit, and
// bass lengths from that low end to 80 mm above the reference's, by 5 mm; on basses
// 40 and 105 mm. In inches all of them are eighths, the ends the nearest (judgement).
func DefaultRange(bass, treble unit.Length, highest unit.Frequency, inches bool) (basses, trebles []unit.Length) {
	below, above, step := unit.MM(30), unit.MM(80), unit.MM(5)
	if highest < bassTop {
		below, above = unit.MM(40), unit.MM(105)
	}
	low, high, top := treble-below, bass+above, treble
	if inches {
		step = unit.Inches(1) / 8
		for _, end := range []*unit.Length{&low, &high, &top} {
			*end = unit.Length(math.Round(float64(*end/step))) * step
		}
	}
	return Lengths(low, high, step), Lengths(low, top, step)
}

// beyond gives the lengths of a grid with one step more at each end: the first
// gap between its lengths. One length alone has no step.
func beyond(lengths []unit.Length) []unit.Length {
	if len(lengths) < 2 {
		return lengths
	}
	step := lengths[1] - lengths[0]
	out := append([]unit.Length{lengths[0] - step}, lengths...)
	return append(out, lengths[len(lengths)-1]+step)
}
