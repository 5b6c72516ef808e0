package draw

// BarLength is the length of a check bar.
const BarLength = 100.0

const barTickMM = 2.0 // half length of a bar's end ticks

// Bar gives a check bar that begins at from and runs length in the direction
// rad, with ticks at both ends, a small one in the middle, and words that ask
// to have it measured. The words always say 100 mm, since that is what the
// print must measure.
func Bar(from Point, length, rad float64) []Element {
	place := Turn(rad).Then(Move(from.X, from.Y))
	tick := func(x, half float64) Element {
		return Line{A: Point{x, -half}, B: Point{x, half}, Stroke: BarStroke}.Through(place)
	}
	return []Element{
		Line{A: Point{0, 0}, B: Point{length, 0}, Stroke: BarStroke}.Through(place),
		tick(0, barTickMM), tick(length, barTickMM), tick(length/2, barTickMM/2),
		Text{
			At: Point{length / 2, barTickMM}, Height: wordsMM, Align: Centre, Room: length,
			Body: "100 mm: measure me with a steel rule",
		}.Through(place),
	}
}
