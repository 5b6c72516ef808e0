package draw

import (
	"fmt"
	"math"

	"scalepair/data/unit"
)

const barTickMM = 2.0 // half length of a bar's end ticks

// barStep is what check bars are whole numbers of, and how many steps stand
// between the small ticks.
func barStep(u unit.LengthUnit) (step unit.Length, every int) {
	if u == unit.Millimetres {
		return 10 * unit.Millimetre, 5
	}
	return unit.Inch, 1
}

// BarLength is the length of the longest check bar that roomMM take, in mm: whole
// tens of millimetres, or whole inches.
func BarLength(u unit.LengthUnit, roomMM float64) float64 {
	step, _ := barStep(u)
	// What was made to fit must not lose a step by a rounding.
	const roundingMM = 1e-6
	return step.MM() * math.Floor((roomMM+roundingMM)/step.MM())
}

// Bar gives the longest check bar that roomMM take, from a point in the direction
// rad: one line with a tick at either end, so that there is no inside and
// outside, small ticks between, and words that say what it must measure.
func Bar(u unit.LengthUnit, from Point, roomMM, rad float64) []Element {
	step, every := barStep(u)
	length := BarLength(u, roomMM)
	line := Line{B: Point{length, 0}, Stroke: BarStroke}
	out := []Element{line, line.tick(0, barTickMM), line.tick(length, barTickMM)}
	for at := float64(every) * step.MM(); at < length-step.MM()/2; at += float64(every) * step.MM() {
		out = append(out, line.tick(at, barTickMM/2))
	}
	out = append(out, Text{
		At: Point{length / 2, barTickMM}, Height: wordsMM, Align: Centre, Room: length,
		Body: fmt.Sprintf("%s %s from end to end: measure me with a steel rule", unit.Fixed(u.Value(unit.MM(length)), 0), u.Symbol()),
	})
	return moved(out, Turn(rad).Then(Move(from.X, from.Y)))
}

// tick crosses a level line x along it, half to either side.
func (l Line) tick(x, half float64) Line {
	return Line{A: Point{l.A.X + x, l.A.Y - half}, B: Point{l.A.X + x, l.A.Y + half}, Stroke: l.Stroke}
}

// moved gives elements carried by m.
func moved(elements []Element, m Map) []Element {
	out := make([]Element, len(elements))
	for i, e := range elements {
		out[i] = e.Through(m)
	}
	return out
}
