package draw

import (
	"math"

	"scalepair/fan"
)

const (
	faceDotMM = 6.0 // diameter of a face dot when none is given; inlays come in many sizes (judgement)
	sideDotMM = 2.0 // diameter of a side dot when none is given (judgement)
	dotPipMM  = 0.8 // half length of the cross in a dot, for the bradawl
)

// dots rings the face and side dots and crosses their centres.
func (s *sketch) dots() {
	d := s.o.Dots
	if d == nil {
		common := fan.CommonDots(s.layout.Spec.Frets)
		d = &Dots{Face: common.Face, Side: common.Side, Double: common.Double}
	}
	for _, dot := range s.layout.FaceDots(fan.Dots{Face: d.Face, Double: d.Double}) {
		s.dot(s.at(dot.At), orUsual(d.FaceMM, faceDotMM)/2)
	}
	for _, dot := range s.layout.SideDots(fan.Dots{Side: d.Side, Double: d.Double}) {
		s.dot(s.at(dot.At), orUsual(d.SideMM, sideDotMM)/2)
	}
}

func orUsual(mm, usual float64) float64 {
	if mm == 0 {
		return usual
	}
	return mm
}

func (s *sketch) dot(at Point, radius float64) {
	pip := math.Min(dotPipMM, radius)
	s.add(LayerDots,
		Circle{Centre: at, RadiusMM: radius, Stroke: DotStroke},
		Line{A: Point{at.X - pip, at.Y}, B: Point{at.X + pip, at.Y}, Stroke: DotStroke},
		Line{A: Point{at.X, at.Y - pip}, B: Point{at.X, at.Y + pip}, Stroke: DotStroke})
}
