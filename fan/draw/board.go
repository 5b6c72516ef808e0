package draw

// centreBeyondMM is how far the centreline and the square line run on beyond
// what they belong to, so that they can be laid on a line drawn on the wood.
const centreBeyondMM = 3

// blankAndBoard draws the two outlines.
func (s *sketch) blankAndBoard() {
	s.add(LayerBlank, Polyline{Points: s.blank.Corners(), Closed: true, Stroke: BlankStroke})
	outline := Polyline{Closed: true, Stroke: BoardStroke}
	for _, corner := range s.layout.Board().Corners {
		outline.Points = append(outline.Points, s.at(corner))
	}
	s.add(LayerBoard, outline)
}

// centreline runs from before the blank to behind the last saddle point.
func (s *sketch) centreline() {
	s.add(LayerCentre, Line{
		A: Point{s.blank.Min.X - centreBeyondMM, 0}, B: Point{s.endX + centreBeyondMM, 0}, Stroke: CentreStroke,
	})
}
