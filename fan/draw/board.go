package draw

// centreBeyondMM is how far the centreline runs on beyond what it belongs to, so
// that it can be laid on a line drawn on the wood.
const centreBeyondMM = 3

// blankAndBoard draws the two outlines, and the base lines, which are the ends of
// the smallest blank.
func (s *sketch) blankAndBoard() {
	s.add(LayerBlank, Polyline{Points: s.blank.Corners(), Closed: true, Stroke: BlankStroke})
	nut, last := s.numbers[0].line, s.numbers[len(s.numbers)-1].line
	s.baseLine(s.blank.Min.X, Right, "nut end's", nut.A.X > nut.B.X)
	s.baseLine(s.blank.Max.X, Left, "body end's", last.A.X < last.B.X)
	outline := Polyline{Closed: true, Stroke: BoardStroke}
	for _, corner := range s.layout.Board().Corners {
		outline.Points = append(outline.Points, s.at(corner))
	}
	s.add(LayerBoard, outline)
}

// baseLine draws one base line with its name outside the blank, above or below,
// where the numbers leave most room.
func (s *sketch) baseLine(x float64, align Align, whose string, above bool) {
	const asideMM, rowMM = 1, 1.4 * keyMM
	ends := []float64{s.blank.Max.Y + numberGapMM/2, s.blank.Min.Y - numberGapMM/2}
	words := s.blank.Min.Y - numberGapMM - rowMM - keyMM
	if above {
		words = s.blank.Max.Y + numberGapMM
		ends[0] = words + rowMM + keyMM
	} else {
		ends[1] = words
	}
	s.add(LayerBase, Line{A: Point{x, ends[0]}, B: Point{x, ends[1]}, Stroke: BaseStroke})
	for i, body := range []string{"base line", whose} {
		s.name(LayerBase, Text{At: Point{x + float64(align-1)*-asideMM, words + float64(i)*rowMM}, Align: align, Body: body})
	}
}

// centreline runs from before the blank to behind the last saddle point.
func (s *sketch) centreline() {
	s.add(LayerCentre, Line{
		A: Point{s.blank.Min.X - centreBeyondMM, 0}, B: Point{s.endX + centreBeyondMM, 0}, Stroke: CentreStroke,
	})
}

// name writes the name of a line that stands on a layer.
func (s *sketch) name(of LayerName, t Text) {
	if s.shows(of) {
		t.Height = keyMM
		s.add(LayerNamed, t)
	}
}
