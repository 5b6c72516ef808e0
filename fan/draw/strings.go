package draw

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"scalepair/data/unit"
	"scalepair/fan"
)

const (
	saddleRingMM  = 1.2 // radius of the ring about a saddle point
	rangeOffMM    = 3.4 // from the string to the range of its compensation
	rangeTickMM   = 0.8 // half length of the range's end ticks
	saddleCrossMM = 2.2 // half length of the cross on it
	saddleOverMM  = 5   // what the saddle line runs on beyond the outer strings
)

// saddles draws the theoretical saddle line, and every saddle point with the
// range of its compensation. It settles where the string lines end.
func (s *sketch) saddles() {
	if !s.shows(LayerSaddles) {
		return
	}
	compensations := make([]fan.Compensation, len(s.layout.Strings))
	for i, known := range s.o.Compensations {
		if known != nil {
			compensations[i] = *known
		}
	}
	line := s.across(s.layout.Saddle.Bass, s.layout.Saddle.Treble, SaddleStroke)
	top, bottom := line.A.Y+saddleOverMM, line.B.Y-saddleOverMM
	s.add(LayerSaddles,
		Line{A: Point{line.XAt(top), top}, B: Point{line.XAt(bottom), bottom}, Stroke: SaddleStroke})
	if !s.layout.Neutral.Bridge || s.layout.Parallel {
		s.name(LayerSaddles, Text{At: Point{line.XAt(top), top + 1.5}, Align: Centre, Body: "saddle line"})
	}
	s.endX = math.Max(s.endX, math.Max(line.A.X, line.B.X))
	for i, p := range s.layout.Saddles(compensations).Points {
		s.saddlePoint(p, s.o.Compensations[i] != nil)
	}
}

// saddlePoint rings and crosses one saddle point; beside the string, clear of its
// line, a bar runs from the least to the greatest compensation. A theoretical point, of
// a string whose compensation is not known, has no cross: nothing is drilled there.
func (s *sketch) saddlePoint(p fan.SaddlePoint, known bool) {
	at, least, most := s.at(p.At), s.at(p.Least), s.at(p.Most)
	s.add(LayerSaddles, Circle{Centre: at, Radius: saddleRingMM, Stroke: PointStroke})
	s.endX = math.Max(s.endX, most.X)
	if !known {
		return
	}
	s.add(LayerSaddles, cross(at, saddleCrossMM, PointStroke)...)
	beside := Move(0, rangeOffMM)
	if at.Y < 0 {
		beside = Move(0, -rangeOffMM)
	}
	s.add(LayerSaddles, rangeBar(beside.Point(least), beside.Point(most))...)
}

// rangeBar is a line with a tick at either end.
func rangeBar(from, to Point) []Element {
	line := Line{A: from, B: to, Stroke: RangeStroke}
	end := line.Through(Move(to.X-from.X, to.Y-from.Y)).(Line)
	return []Element{line, line.tick(0, rangeTickMM), end.tick(0, rangeTickMM)}
}

// strings draws the string lines and their names. With saddles a line runs to
// its saddle's theoretical end, else to the blank's edge.
func (s *sketch) strings() {
	for i, str := range s.layout.Strings {
		line := Line{A: s.at(str.Nut), B: s.at(str.Saddle), Stroke: StringStroke}
		if !s.shows(LayerSaddles) {
			line.B = line.At((s.endX - line.A.X) / (line.B.X - line.A.X))
		}
		s.add(LayerStrings, line)
		s.nameString(i, line)
	}
}

// nameString writes number and note before the nut, and number, note, gauge and
// compensation on the line between the board and the saddle.
func (s *sketch) nameString(i int, line Line) {
	height := math.Min(wordsMM, 0.55*s.closest(i))
	short := fmt.Sprint(s.layout.Strings[i].Number)
	long := "string " + short
	if s.o.Strings != nil {
		words := s.o.Strings[i]
		short = join(short, words.Note)
		long = join(short, words.Gauge)
	}
	s.add(LayerLabels, Text{
		At: Point{s.blank.Min.X - centreBeyondMM - 1.5, line.A.Y}, Height: height, Align: Right, Room: 22, Body: short,
	}.Middle())
	from, to := s.blank.Max.X+4, line.B.X-saddleCrossMM-4
	if !s.shows(LayerSaddles) || to-from < 20 {
		return
	}
	start := line.At((from - line.A.X) / (line.B.X - line.A.X))
	// Words keep to the side away from the centreline.
	const clearMM = 0.8
	start.Y += clearMM
	if line.A.Y < 0 {
		start.Y -= 2*clearMM + height
	}
	s.add(LayerLabels, Text{
		At: start, Height: height, Angle: math.Atan2(line.B.Y-line.A.Y, line.B.X-line.A.X), Room: to - from,
		Body: join(long, s.compensationWords(i)),
	})
}

// compensationWords says a string's compensation, or that its saddle point is the
// theoretical one.
func (s *sketch) compensationWords(i int) string {
	b := s.o.Compensations[i]
	if b == nil {
		return "compensation not known"
	}
	lo, hi := s.length(b.Lo), s.length(b.Hi)
	if lo == hi {
		return "back " + lo + " " + s.o.Unit.Symbol()
	}
	return "back " + lo + " to " + hi + " " + s.o.Unit.Symbol()
}

// closest is the least distance at the nut from string i to a neighbour, mm.
func (s *sketch) closest(i int) float64 {
	all := s.layout.Strings
	least := math.Inf(1)
	for _, j := range []int{i - 1, i + 1} {
		if j >= 0 && j < len(all) {
			least = math.Min(least, math.Abs(all[i].Nut.Y.MM()-all[j].Nut.Y.MM()))
		}
	}
	return least
}

// length prints a length in the options' unit, without its symbol.
func (s *sketch) length(l unit.Length) string { return s.o.Unit.Format(l, 1) }

// join joins what is not empty.
func join(parts ...string) string {
	return strings.Join(slices.DeleteFunc(parts, func(p string) bool { return p == "" }), " · ")
}
