package mark

import (
	"scalepair/data/fault"
	"scalepair/data/odd"
	"slices"
)

// Rows of the table.
const (
	watchTolerance = iota
	watchToleranceCents
	watchOffsetTolerance
	watchRulerResolution
	watchCaliperResolution
	watchZero
)

const checkUnit = "check the number and its unit"

// watched are the usual ranges of what a check is held to.
var watched = [...]odd.Usual{
	watchTolerance: {Quantity: "tolerance of a mark", Measure: odd.Millimetres, Low: 0.02, High: 1,
		Check: checkUnit, Source: "judgement: a knife line is 0.05 mm wide, and 1 mm at fret 12 is 5 cents"},
	watchToleranceCents: {Quantity: "tolerance of a mark in pitch", Measure: odd.Cents, Low: 0.2, High: 6,
		Check: checkUnit, Source: "judgement: 2 cents unless given; about 6 is heard between two notes"},
	watchOffsetTolerance: {Quantity: "tolerance of the nut offset", Measure: odd.Millimetres, Low: 0.05, High: 2,
		Check: checkUnit, Source: "judgement: 0.5 mm unless given"},
	watchRulerResolution: {Quantity: "step of the ruler on marks", Measure: odd.Millimetres, Low: 0.1, High: 1.6,
		Check: "what is the distance between two of its lines?", Source: "0.5 or 1 mm, 1/64 to 1/16 in (common practice, no source)"},
	watchCaliperResolution: {Quantity: "step of the calipers on marks", Measure: odd.Millimetres, Low: 0.005, High: 0.5,
		Check: "is the unit right? calipers show 0.01 mm or 0.0005 in", Source: "judgement: 0.01 to 0.1 mm shown, less trusted on drawn marks"},
	watchZero: {Quantity: "zero error", Measure: odd.Millimetres, Low: 0, High: 1,
		Check: checkUnit, Source: "judgement: a worn ruler's end is half a millimetre short"},
}

// Watched gives the usual ranges of what a check is held to, row by row.
func Watched() []odd.Usual { return slices.Clone(watched[:]) }

// Odd watches tolerances and tools. Places name the build file's keys; a 0 that
// stands for 'not given' is left alone.
func (o Options) Odd() odd.List {
	var out odd.List
	look := func(row int, key string, x float64) {
		if x != 0 {
			out.Look(&watched[row], fault.Place{Input: "marking." + key}, "", x)
		}
	}
	look(watchTolerance, "tolerance", o.Tolerance.MM)
	look(watchToleranceCents, "tolerance_cents", o.Tolerance.Cents)
	look(watchOffsetTolerance, "nut_offset_tolerance", o.OffsetToleranceMM)
	look(watchRulerResolution, "ruler_resolution", o.Ruler.StepMM)
	look(watchCaliperResolution, "caliper_resolution", o.Caliper.StepMM)
	look(watchZero, "ruler_zero", o.Ruler.ZeroMM)
	look(watchZero, "caliper_zero", o.Caliper.ZeroMM)
	return out
}
