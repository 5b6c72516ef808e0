package fan

// Dot is a position dot. Side dots lie on the bass edge, face dots on the
// board.
type Dot struct {
	Fret int
	At   Point
}

// dots tells how many dots a fret has: one at 3, 5, 7 and 9, two at 12, and so
// on in every octave (common practice, no source).
func dots(fret int) int {
	switch fret % 12 {
	case 3, 5, 7, 9:
		return 1
	case 0:
		return 2
	}
	return 0
}

// FaceDots gives the face dots: 3, 5, 7, 9 and a pair at 12, and so on in every
// octave (common practice, no source), on the centreline midway between two
// fret lines; a pair stands a quarter of the outer strings' distance to either
// side, bass side first, on the line midway.
func (l *Layout) FaceDots() []Dot {
	var list []Dot
	for n := 1; n < len(l.Frets); n++ {
		before, after := l.Frets[n-1].Line, l.Frets[n].Line
		at := func(y float64) Dot {
			return Dot{Fret: n, At: Point{(on(before, y).X + on(after, y).X) / 2, y}}
		}
		switch dots(n) {
		case 1:
			list = append(list, at(0))
		case 2:
			y := l.Frame.half(at(0).At.X) / 2
			list = append(list, at(y), at(-y))
		}
	}
	return list
}

// SideDots gives the dots of the same frets on the bass edge, midway between
// the two slots' ends; a pair is two dots a third and two thirds of the way.
func (l *Layout) SideDots() []Dot {
	var list []Dot
	for n := 1; n < len(l.Frets); n++ {
		a, b := l.Frets[n-1].Slot.Bass, l.Frets[n].Slot.Bass
		count := dots(n)
		for i := range count {
			u := float64(i+1) / float64(count+1)
			list = append(list, Dot{Fret: n, At: Point{a.X + u*(b.X-a.X), a.Y + u*(b.Y-a.Y)}})
		}
	}
	return list
}
