package fan

import "slices"

// Dot is a position dot. Side dots lie on the bass edge, face dots on the
// board.
type Dot struct {
	Fret int
	At   Point
}

// CommonDots gives the frets up to the last that carry a dot, 3, 5, 7, 9, 12
// and so on in every octave, and those of them that carry two, 12, 24 and 36
// (common practice, no source).
func CommonDots(lastFret int) (frets, double []int) {
	for n := 1; n <= lastFret; n++ {
		switch n % 12 {
		case 3, 5, 7, 9:
			frets = append(frets, n)
		case 0:
			frets, double = append(frets, n), append(double, n)
		}
	}
	return frets, double
}

// FaceDots gives the face dots of CommonDots.
func (l *Layout) FaceDots() []Dot { return l.FaceDotsAt(CommonDots(l.Spec.Frets)) }

// SideDots gives the side dots of CommonDots.
func (l *Layout) SideDots() []Dot { return l.SideDotsAt(CommonDots(l.Spec.Frets)) }

// FaceDotsAt gives a dot for each of the frets, in their order, on the
// centreline midway between the fret line and the one before. A fret that is
// also among the double ones has a pair, a quarter of the outer strings'
// distance to either side, bass side first, on the line midway. Frets that the
// board does not have are left out.
func (l *Layout) FaceDotsAt(frets, double []int) []Dot {
	var list []Dot
	for _, n := range l.onBoard(frets) {
		before, after := l.Frets[n-1].Line, l.Frets[n].Line
		dot := func(y float64) Dot {
			return Dot{Fret: n, At: between(on(before, y), on(after, y), 0.5)}
		}
		if !slices.Contains(double, n) {
			list = append(list, dot(0))
			continue
		}
		y := l.Frame.half(dot(0).At.X.M()) / 2
		list = append(list, dot(y), dot(-y))
	}
	return list
}

// SideDotsAt gives the dots of the same frets on the bass edge, midway between
// the two slots' ends; a pair is two dots a third and two thirds of the way.
func (l *Layout) SideDotsAt(frets, double []int) []Dot {
	var list []Dot
	for _, n := range l.onBoard(frets) {
		a, b := l.Frets[n-1].Slot.Bass, l.Frets[n].Slot.Bass
		count := 1
		if slices.Contains(double, n) {
			count = 2
		}
		for i := range count {
			u := float64(i+1) / float64(count+1)
			list = append(list, Dot{Fret: n, At: between(a, b, u)})
		}
	}
	return list
}

func (l *Layout) onBoard(frets []int) []int {
	return slices.DeleteFunc(slices.Clone(frets), func(n int) bool { return n < 1 || n > l.Spec.Frets })
}
