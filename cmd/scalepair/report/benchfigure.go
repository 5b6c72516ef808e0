package report

import (
	"fmt"

	"scalepair/cmd/scalepair/chart"
	"scalepair/data/unit"
)

// linesFigure shows the lines of the first steps with their measures, by letter.
// Widths are drawn larger than lengths. Seen on the face, nut at the left, a
// right-handed board has its bass side below.
func (b *Bench) linesFigure(rows []measure) string {
	l, need, f := b.l, b.l.LeastBlank(), b.l.Frame
	side, hand := -1.0, "A right-handed board, bass side below"
	top, bottom, outside, inside := need.MinY, need.MaxY, -18.0, 8.0 // of the bass line
	if b.left {
		side, hand = 1, "A left-handed board, bass side above"
		top, bottom, outside, inside = bottom, top, inside, outside
	}
	s := chart.Sketch{Title: "The first lines, seen on the face of the blank, nut at the left", Alt: "The face of the blank with centreline, base lines, string lines and nut line.",
		Caption: hand + ". Lengths as in the tables; widths are drawn larger. Heavy lines are drawn on the wood; thin ones are the edges of the smallest blank and the frets to come."}
	line := func(look chart.Look, x1, y1, x2, y2 unit.Length) {
		s.Strokes = append(s.Strokes, chart.Stroke{Look: look, X1: x1.MM(), Y1: side * y1.MM(), X2: x2.MM(), Y2: side * y2.MM()})
	}
	words := func(x, y unit.Length, right, up float64, text string) {
		s.Words = append(s.Words, chart.Words{X: x.MM(), Y: side * y.MM(), Right: right, Up: up, Text: text})
	}
	x0, x1 := need.MinX, need.MaxX
	nut, body := f.HalfSpread(x0), f.HalfSpread(x1)
	line(chart.Thin, x0, need.MaxY, x1, need.MaxY)
	line(chart.Thin, x0, need.MinY, x1, need.MinY)
	for _, fret := range l.Frets[1:] {
		line(chart.Thin, fret.Line.Bass.X, fret.Line.Bass.Y, fret.Line.Treble.X, fret.Line.Treble.Y)
	}
	line(chart.Dashed, x0, 0, x1, 0)
	line(chart.Heavy, x0, need.MinY, x0, need.MaxY)
	line(chart.Heavy, x1, need.MinY, x1, need.MaxY)
	line(chart.Heavy, x0, nut, x1, body)
	line(chart.Heavy, x0, -nut, x1, -body)
	line(chart.Heavy, l.Nut.Bass.X, l.Nut.Bass.Y, l.Nut.Treble.X, l.Nut.Treble.Y)
	line(chart.Dashed, l.Nut.Bass.X, l.Nut.Bass.Y, l.Nut.Bass.X, -f.HalfSpread(l.Nut.Bass.X))
	words(x0, top, -44, -10, "base line")
	words(x1, top, 44, -10, "base line")
	mid := (x0 + x1) / 2
	words(mid, f.HalfSpread(mid), 0, outside, "bass line")
	words(mid, -f.HalfSpread(mid), 0, inside, "treble line")
	words(mid, 0, 0, -4, "centreline")
	words(l.Nut.Treble.X, l.Nut.Treble.Y/2, 40, -14*side, "nut line")
	square := b.l.Neutral.X
	for _, m := range rows {
		text := m.letter + " " + b.text(m.Rounded)
		s.Alt += fmt.Sprintf(" %s: %s, %s.", m.letter, m.name, b.text(m.Rounded))
		dim := func(x1, y1, x2, y2 unit.Length, lift float64) {
			if y1 == y2 { // level: to the side on which it lies
				lift *= side
			}
			s.Dimensions = append(s.Dimensions, chart.Dimension{X1: x1.MM(), Y1: side * y1.MM(), X2: x2.MM(), Y2: side * y2.MM(), Lift: lift, Text: text})
		}
		switch m.letter {
		case "a":
			dim(x0, bottom, x1, bottom, -68*side)
		case "b":
			dim(x0, 0, 0, 0, 0)
		case "c":
			dim(x0, 0, x0, nut, -16)
			dim(x0, 0, x0, -nut, -16)
		case "d":
			dim(x1, 0, x1, body, 16)
			dim(x1, 0, x1, -body, 16)
		case "e":
			dim(x0, need.MaxY, l.Nut.Bass.X, need.MaxY, 44)
		case "f":
			dim(l.Nut.Bass.X, need.MaxY, square, need.MaxY, 20)
			line(chart.Heavy, square, need.MaxY, square, need.MinY)
			words(square, body/2, 50, 0, "square line")
		case "g":
			dim(l.Nut.Treble.X, need.MinY, square, need.MinY, -20)
		case "h":
			dim(l.Nut.Bass.X, need.MinY, l.Nut.Treble.X, need.MinY, -44)
		}
	}
	return s.SVG()
}
