package draw

import "scalepair/fan"

const (
	pipMM     = 0.8 // half the cross in a face dot, for the bradawl
	sideMM    = 1.4 // half the cross of a side dot
	sideOffMM = 3   // of its middle from the board's edge, clear of the slots' ends
)

// dots rings the face dots and crosses their centres; a side dot is a cross
// beside the edge, as far along as the dot.
func (s *sketch) dots() {
	d := fan.CommonDots(s.layout.Spec.Frets)
	if s.o.Dots != nil {
		d = *s.o.Dots
	}
	for _, dot := range s.layout.FaceDots(d) {
		at := s.at(dot.At)
		s.add(LayerDots, Circle{Centre: at, Radius: d.FaceDiameter.MM() / 2, Stroke: DotStroke})
		s.add(LayerDots, cross(at, min(pipMM, d.FaceDiameter.MM()/2), DotStroke)...)
	}
	for _, dot := range s.layout.SideDots(d) {
		at := s.at(dot.At)
		if at.Y += sideOffMM; at.Y < sideOffMM {
			at.Y -= 2 * sideOffMM
		}
		s.add(LayerDots, cross(at, sideMM, SideStroke)...)
	}
}

// cross is an upright cross.
func cross(at Point, half float64, stroke Stroke) []Element {
	return []Element{
		Line{A: Point{at.X - half, at.Y}, B: Point{at.X + half, at.Y}, Stroke: stroke},
		Line{A: Point{at.X, at.Y - half}, B: Point{at.X, at.Y + half}, Stroke: stroke},
	}
}
