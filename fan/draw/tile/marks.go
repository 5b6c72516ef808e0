package tile

import (
	"fmt"

	"scalepair/fan/draw"
)

// joinMarks draws the piece's joins. Both neighbours draw the same.
func (p Piece) joinMarks() []draw.Element {
	var out []draw.Element
	if p.Left.Length() > 0 {
		out = append(out, joinMarks(p.Left, p.Number-1)...)
	}
	if p.Right.Length() > 0 {
		out = append(out, joinMarks(p.Right, p.Number)...)
	}
	return out
}

// joinMarks draws the join between pieces number and number+1: the dotted join,
// solid crop marks at both ends with the numbers of the pieces on either side, and
// crossed diamonds, which no other sign on a board resembles, at the quarter
// points.
func joinMarks(join draw.Line, number int) []draw.Element {
	const (
		cropMM  = 7.0 // crop mark, square to the board
		armMM   = 3.0 // half of a diamond and its cross
		asideMM = 4.5 // from the crop mark to the pieces' numbers
		tallMM  = 4.0 // their height
	)
	long := join.A.Y - join.B.Y
	upper, lower := join.At(cropMM/long), join.At(1-cropMM/long)
	out := []draw.Element{
		draw.Line{A: join.A, B: upper, Stroke: draw.CrossStroke},
		draw.Line{A: upper, B: lower, Stroke: draw.JoinStroke},
		draw.Line{A: lower, B: join.B, Stroke: draw.CrossStroke},
	}
	for _, at := range []draw.Point{join.At(0.25), join.At(0.75)} {
		up, right := draw.Line{A: at, B: at}, draw.Line{A: at, B: at}
		up.A.Y, up.B.Y, right.A.X, right.B.X = at.Y+armMM, at.Y-armMM, at.X+armMM, at.X-armMM
		up.Stroke, right.Stroke = draw.CrossStroke, draw.CrossStroke
		out = append(out, up, right,
			draw.Polyline{Points: []draw.Point{up.A, right.A, up.B, right.B}, Closed: true, Stroke: draw.CrossStroke})
	}
	for _, at := range []draw.Point{join.At(cropMM / 2 / long), join.At(1 - cropMM/2/long)} {
		for side, n := range []int{number, number + 1} {
			x := at.X + float64(2*side-1)*asideMM
			out = append(out, draw.Text{At: draw.Point{X: x, Y: at.Y}, Height: tallMM, Align: draw.Centre, Body: fmt.Sprint(n)}.Middle())
		}
	}
	return out
}
