package draw

import (
	"math"

	"scalepair/fan"
)

// dotPipMM is half the length of the cross in a dot, for the bradawl.
const dotPipMM = 0.8

// dots rings the face and side dots and crosses their centres.
func (s *sketch) dots() {
	d := fan.CommonDots(s.layout.Spec.Frets)
	if s.o.Dots != nil {
		d = *s.o.Dots
	}
	for _, dot := range s.layout.FaceDots(d) {
		s.dot(s.at(dot.At), d.FaceDiameter.MM()/2)
	}
	for _, dot := range s.layout.SideDots(d) {
		s.dot(s.at(dot.At), d.SideDiameter.MM()/2)
	}
}

func (s *sketch) dot(at Point, radius float64) {
	pip := math.Min(dotPipMM, radius)
	s.add(LayerDots,
		Circle{Centre: at, Radius: radius, Stroke: DotStroke},
		Line{A: Point{at.X - pip, at.Y}, B: Point{at.X + pip, at.Y}, Stroke: DotStroke},
		Line{A: Point{at.X, at.Y - pip}, B: Point{at.X, at.Y + pip}, Stroke: DotStroke})
}
