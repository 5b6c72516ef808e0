package draw

import (
	"math"
	"strconv"
)

// nut draws the nut line from edge to edge of the board. With a zero fret its
// slot is drawn with the others.
func (s *sketch) nut() {
	slot := s.layout.Frets[0].Slot
	s.add(LayerNut, s.across(slot.Bass, slot.Treble, NutStroke))
}

// square names the line at the neutral fret that is square to the centreline, as
// the setting-out list does. Where a slot or the nut line lies on it, that line's
// own end is drawn as the square line already; between two frets and at the
// bridge it is drawn here.
func (s *sketch) square() {
	n := s.layout.Neutral
	if s.layout.Parallel {
		return
	}
	top := s.numbersBeyond(1)
	if !s.onSlot() {
		s.add(LayerSquare, Line{A: Point{n.X.MM(), top}, B: Point{n.X.MM(), s.numbersBeyond(-1)}, Stroke: SquareStroke})
	}
	s.name(LayerSquare, Text{At: Point{n.X.MM(), top + 0.6}, Align: Centre, Body: "square line at " + s.neutralName()})
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
		return "the bridge"
	case n.Fret == 0:
		return "the nut"
	}
	return "fret " + strconv.FormatFloat(n.Fret, 'f', -1, 64)
}
