package draw

const (
	faceDotMM = 3.0 // radius of a face dot as drawn; inlays come in many sizes (judgement)
	sideDotMM = 1.0 // radius of a side dot
	dotPipMM  = 0.8 // half length of the cross in a dot, for the bradawl
)

// dots rings the face and side dots and crosses their centres.
func (s *sketch) dots() {
	for _, d := range s.layout.FaceDots() {
		s.dot(s.at(d.At), faceDotMM)
	}
	for _, d := range s.layout.SideDots() {
		s.dot(s.at(d.At), sideDotMM)
	}
}

func (s *sketch) dot(at Point, radius float64) {
	s.add(LayerDots,
		Circle{Centre: at, RadiusMM: radius, Stroke: DotStroke},
		Line{A: Point{at.X - dotPipMM, at.Y}, B: Point{at.X + dotPipMM, at.Y}, Stroke: DotStroke},
		Line{A: Point{at.X, at.Y - dotPipMM}, B: Point{at.X, at.Y + dotPipMM}, Stroke: DotStroke})
}
