package build

import "math"

// highestBass is the MIDI number of the highest note that a first string of a
// bass is taken to have, E3; anything higher is a guitar (judgement).
const highestBass = 52

// span is a range of scale lengths to begin the search with: the first length
// and the last.
type span [2]both

// startRange holds the lengths to try for instruments down to a lowest note.
type startRange struct {
	lowest       int // MIDI number
	bass, treble span
}

// Lengths to begin with, by the lowest note (judgement, from what such
// instruments are commonly built with; the file says that they are an example).
var (
	guitarRanges = []startRange{
		{40, span{{648, 25.5}, {673, 26.5}}, span{{628, 24.75}, {648, 25.5}}},
		{35, span{{660, 26}, {700, 27.5}}, span{{635, 25}, {655, 25.75}}},
		{30, span{{685, 27}, {735, 29}}, span{{635, 25}, {670, 26.5}}},
		{0, span{{710, 28}, {760, 30}}, span{{645, 25.5}, {685, 27}}},
	}
	bassRanges = []startRange{
		{28, span{{865, 34}, {890, 35}}, span{{840, 33}, {865, 34}}},
		{0, span{{865, 34}, {940, 37}}, span{{815, 32}, {865, 34}}},
	}
	// A first string no higher than C#4 is no shorter than a guitar's, and one
	// above E4 breaks at a guitar's length.
	baritoneTreble = span{{645, 25.5}, {685, 27}}
	shortTreble    = span{{545, 21.5}, {575, 22.5}}
)

func rangeFor(bass bool, lowest, highest int) startRange {
	list := guitarRanges
	if bass {
		list = bassRanges
	}
	r := list[len(list)-1]
	for i := len(list) - 1; i >= 0; i-- {
		if lowest >= list[i].lowest {
			r = list[i]
		}
	}
	switch {
	case bass:
	case highest > 65:
		r.treble = shortTreble
	case highest <= 61:
		r.treble = baritoneTreble
	}
	return r
}

// ceil gives the least whole number of steps that is not below x, with room
// for rounding.
func ceil(x, step float64) float64 { return math.Ceil(x/step-1e-9) * step }
