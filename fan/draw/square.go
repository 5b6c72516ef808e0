package draw

import (
	"math"
	"strings"

	"scalepair/data/unit"
)

// nut draws the nut line from edge to edge of the board. With a zero fret it
// carries that fret's number, and its slot is drawn with the others.
func (s *sketch) nut() {
	slot := s.layout.Frets[0].Slot
	line := s.across(slot.Bass, slot.Treble, NutStroke)
	s.add(LayerNut, line)
	name := "nut"
	if s.layout.Spec.ZeroFret {
		name = "0"
	}
	s.carryOn(LayerNut, line, name, 0)
}

// square names the line at the neutral fret that is square to the centreline.
// Where a slot or the nut line lies on it, that line's own end is drawn as the
// square line already; between two frets and at the bridge it is drawn here.
func (s *sketch) square() {
	n := s.layout.Neutral
	if s.layout.Parallel {
		return
	}
	top, bottom := s.numbersBeyond()
	if !s.onSlot() {
		s.add(LayerSquare, Line{A: Point{n.X.MM(), top}, B: Point{n.X.MM(), bottom}, Stroke: SquareStroke})
	}
	s.add(LayerSquare, Text{
		At: Point{n.X.MM(), top + 1}, Height: wordsMM, Align: Centre, Body: s.squareLabel(),
	})
}

// onSlot reports whether a slot or the nut line lies on the square line.
func (s *sketch) onSlot() bool {
	n := s.layout.Neutral
	return !n.Bridge && n.Fret == math.Trunc(n.Fret)
}

// neutralName says which line stands square.
func (s *sketch) neutralName() string {
	n := s.layout.Neutral
	switch {
	case n.Bridge:
		return "saddle line"
	case n.Fret == 0:
		return "nut line"
	}
	return "neutral fret " + fretName(n.Fret)
}

// squareLabel is the short name that stands over the square line.
func (s *sketch) squareLabel() string {
	switch n := s.layout.Neutral; {
	case n.Bridge:
		return "square at the bridge"
	case n.Fret == 0:
		return "square at the nut"
	default:
		return "neutral " + fretName(n.Fret)
	}
}

// fretName prints a fret number that may lie between two: 7, 7.5.
func fretName(fret float64) string {
	return strings.TrimRight(strings.TrimRight(unit.Fixed(fret, 2), "0"), ".")
}
