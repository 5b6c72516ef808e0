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
	frets := s.layout.Frets
	lines := make([]Line, 0, len(frets)+2)
	for _, f := range frets {
		lines = append(lines, s.across(f.Slot.Bass, f.Slot.Treble, JoinStroke))
	}
	var out []Line
	for i := 1; i < len(lines); i++ {
		out = append(out, between(lines[i-1], lines[i])...)
	}
	out = slices.DeleteFunc(out, s.besideSquare)
	last := lines[len(lines)-1]
	bodyEnd := s.layout.Board().BodyEnd
	end := Line{A: Point{s.endX + 10, last.A.Y}, B: Point{s.endX + 10, last.B.Y}}
	if s.shows(LayerSaddles) {
		saddle := s.layout.Saddle
		end = s.across(saddle.Bass, saddle.Treble, JoinStroke)
	}
	behind := s.across(bodyEnd.Bass, bodyEnd.Treble, JoinStroke)
	if behind.A.X < end.A.X && behind.B.X < end.B.X {
		out = append(out, between(behind, end)...)
	}
	return out
}

// besideSquare reports whether a join comes within 5 mm of a square line that
// lies between two frets.
func (s *sketch) besideSquare(j Line) bool {
	const nearMM = 5
	x := s.layout.Neutral.X.MM()
	return !s.layout.Parallel && !s.onSlot() && math.Min(j.A.X, j.B.X)-nearMM < x && x < math.Max(j.A.X, j.B.X)+nearMM
}

// between gives lines that divide the gap between a and b evenly, about 8 mm
// apart and at least one: the more there are, the better sheets can be filled.
func between(a, b Line) []Line {
	const apartMM = 8
	gap := min(b.A.X-a.A.X, b.B.X-a.B.X)
	count := max(1, int(gap/apartMM)-1)
	out := make([]Line, count)
	for i := range out {
		t := float64(i+1) / float64(count+1)
		out[i] = Line{A: mix(a.A, b.A, t), B: mix(a.B, b.B, t), Stroke: JoinStroke}
	}
	return out
}
