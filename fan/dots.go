package fan

import (
	"slices"

	"scalepair/data/unit"
)

// Dots says which frets carry a position dot on the face and on the side of the
// board, and which of them carry two; each dot lies in the space before its fret.
type Dots struct {
	Face         []int       `toml:"face" range:"1, 36"`
	Side         []int       `toml:"side" range:"1, 36"`
	Double       []int       `toml:"double" range:"1, 36"`
	FaceDiameter unit.Length `toml:"face_diameter" range:"0.5 mm, 20 mm"`
	SideDiameter unit.Length `toml:"side_diameter" range:"0.5 mm, 10 mm"`
}

// CommonDots has dots at the frets up to the last that carry one by custom: 3,
// 5, 7, 9, 12 and so on in every octave, two at 12, 24 and 36 (common practice, no
// source), of 6 and 2 mm (judgement).
func CommonDots(lastFret int) Dots {
	d := Dots{FaceDiameter: 6 * unit.Millimetre, SideDiameter: 2 * unit.Millimetre}
	for n := 1; n <= lastFret; n++ {
		switch n % 12 {
		case 0:
			d.Double = append(d.Double, n)
			fallthrough
		case 3, 5, 7, 9:
			d.Face = append(d.Face, n)
		}
	}
	d.Side = slices.Clone(d.Face)
	return d
}

// Dot is one position dot.
type Dot struct {
	Fret int
	At   Point
}

// FaceDots gives a dot for each of the face's frets, in their order, on the
// centreline midway between the fret line and the one before. A fret that is
// also among the double ones has a pair, a quarter of the outer strings'
// distance to either side, bass side first, on the line midway. Frets that the
// board does not have are left out.
func (l *Layout) FaceDots(d Dots) []Dot {
	var list []Dot
	for _, n := range l.onBoard(d.Face) {
		before, after := l.Frets[n-1].Line, l.Frets[n].Line
		dot := func(y float64) Dot {
			return Dot{Fret: n, At: between(on(before, y), on(after, y), 0.5)}
		}
		if !slices.Contains(d.Double, n) {
			list = append(list, dot(0))
			continue
		}
		y := l.Frame.half(dot(0).At.X.M()) / 2
		list = append(list, dot(y), dot(-y))
	}
	return list
}

// SideDots gives the dots of the side's frets on the bass edge, midway between
// the two slots' ends; a pair is two dots a third and two thirds of the way.
func (l *Layout) SideDots(d Dots) []Dot {
	var list []Dot
	for _, n := range l.onBoard(d.Side) {
		a, b := l.Frets[n-1].Slot.Bass, l.Frets[n].Slot.Bass
		count := 1
		if slices.Contains(d.Double, n) {
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
