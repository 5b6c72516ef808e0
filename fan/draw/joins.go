package draw

import (
	"math"
	"slices"
)

// joins gives the lines along which paper may be cut without crossing a slot:
// they divide the gap between two neighbouring lines, and so lean as those do.
// One that would run beside the square line is left out, since it could be taken
// for it.
func (s *sketch) joins() []Line {
	var lines []Line
	for _, f := range s.layout.Frets {
		lines = append(lines, s.across(f.Slot.Bass, f.Slot.Treble, JoinStroke))
	}
	last, bodyEnd, saddle := lines[len(lines)-1], s.layout.Board().BodyEnd, s.layout.Saddle
	end := Line{A: Point{s.endX + 10, last.A.Y}, B: Point{s.endX + 10, last.B.Y}}
	if s.shows(LayerSaddles) {
		end = s.across(saddle.Bass, saddle.Treble, JoinStroke)
	}
	var out []Line
	a := lines[0]
	for _, b := range append(lines[1:], s.across(bodyEnd.Bass, bodyEnd.Treble, JoinStroke), end) {
		out = append(out, between(a, b)...)
		a = b
	}
	return slices.DeleteFunc(out, s.besideSquare)
}

// besideSquare reports whether a join comes within 5 mm of a square line that
// lies between two frets.
func (s *sketch) besideSquare(j Line) bool {
	const nearMM = 5
	x := s.layout.Neutral.X.MM()
	return !s.layout.Parallel && !s.onSlot() && math.Min(j.A.X, j.B.X)-nearMM < x && x < math.Max(j.A.X, j.B.X)+nearMM
}

// between gives lines that divide the gap between a and b evenly, about 8 mm
// apart and at least one where there is a gap: the more there are, the better
// sheets can be filled.
func between(a, b Line) []Line {
	const apartMM = 8
	gap := min(b.A.X-a.A.X, b.B.X-a.B.X)
	if gap <= 0 {
		return nil
	}
	count := max(1, int(gap/apartMM)-1)
	out := make([]Line, count)
	for i := range out {
		t := float64(i+1) / float64(count+1)
		out[i] = Line{A: Line{A: a.A, B: b.A}.At(t), B: Line{A: a.B, B: b.B}.At(t), Stroke: JoinStroke}
	}
	return out
}
