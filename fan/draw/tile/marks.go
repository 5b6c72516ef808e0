package tile

import (
	"fmt"

	"scalepair/fan/draw"
)

// joinMarks draws the piece's joins. Both neighbours draw the same.
func (p Piece) joinMarks() []draw.Element {
	var out []draw.Element
	for i, join := range []draw.Line{p.Left, p.Right} {
		if join.Length() > 0 {
			out = append(out, joinMarks(join, p.Number-1+i)...)
		}
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
		d := []draw.Point{{X: at.X, Y: at.Y + armMM}, {X: at.X + armMM, Y: at.Y}, {X: at.X, Y: at.Y - armMM}, {X: at.X - armMM, Y: at.Y}}
		out = append(out, draw.Polyline{Points: d, Closed: true, Stroke: draw.CrossStroke},
			draw.Line{A: d[0], B: d[2], Stroke: draw.CrossStroke}, draw.Line{A: d[1], B: d[3], Stroke: draw.CrossStroke})
	}
	for _, at := range []draw.Point{join.At(cropMM / 2 / long), join.At(1 - cropMM/2/long)} {
		for side, n := range []int{number, number + 1} {
			x := at.X + float64(2*side-1)*asideMM
			out = append(out, draw.Text{At: draw.Point{X: x, Y: at.Y}, Height: tallMM, Align: draw.Centre, Body: fmt.Sprint(n)}.Middle())
		}
	}
	return out
}
