package draw

// The key's columns, in mm. Three of them go on the narrowest paper held upright.
const (
	keyColumns  = 3
	keyColumnMM = 59.0
	keyRowMM    = 5.0
	sampleMM    = 14.0
)

// key explains every stroke that is drawn, in columns from (x, y) down.
func (s *sketch) key(x, y float64) {
	n := 0
	entry := func(words string, sample ...Element) {
		at := Point{x + float64(n%keyColumns)*keyColumnMM, y - float64(n/keyColumns)*keyRowMM}
		n++
		s.add(LayerKey, moved(sample, Move(at.X, at.Y))...)
		s.add(LayerKey, Text{At: Point{at.X + sampleMM + 2, at.Y}, Height: keyMM, Room: keyColumnMM - sampleMM - 3, Body: words}.Middle())
	}
	for stroke := SlotStroke; stroke <= SideStroke; stroke++ {
		if s.used[stroke] {
			entry(stroke.String(), sample(stroke)...)
		}
	}
	if s.shows(LayerNumbers) {
		entry("from the nut, outer string", Text{At: Point{sampleMM / 2, 0}, Height: smallMM, Align: Centre, Body: s.fine(s.layout.Frets[1].Bass.FromNut)}.Middle())
	}
}

// sample draws a stroke as it looks on the drawing.
func sample(k Stroke) []Element {
	middle, line := Point{X: sampleMM / 2}, Line{B: Point{X: sampleMM}, Stroke: k}
	switch k {
	case KerfStroke:
		return []Element{line.Through(Move(0, 0.3)), line.Through(Move(0, -0.3))}
	case EndStroke:
		return []Element{Circle{Centre: middle, Radius: endRingMM, Stroke: k}}
	case DotStroke:
		return append(cross(middle, pipMM, k), Circle{Centre: middle, Radius: 1.8, Stroke: k})
	case SideStroke:
		return cross(middle, sideMM, k)
	case PointStroke:
		return append(cross(middle, saddleCrossMM, k), Circle{Centre: middle, Radius: saddleRingMM, Stroke: k})
	case RangeStroke:
		return rangeBar(Point{X: 4}, Point{X: sampleMM - 4})
	}
	return []Element{line}
}
