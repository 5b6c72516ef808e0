package tile

import (
	"fmt"

	"scalepair/fan/draw"
)

// joinMarks draws the piece's joins: the dotted join, solid crop marks at both
// ends, two crosses, and the numbers of the pieces on either side. Both
// neighbours draw the same.
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

// joinMarks draws the join between pieces number and number+1.
func joinMarks(join draw.Line, number int) []draw.Element {
	const (
		cropMM  = 4.5 // crop mark, and from the end to the cross
		armMM   = 3.5 // half length of the cross
		ringMM  = 2.0 // radius of its ring
		asideMM = 6.5 // from the cross to the pieces' numbers
		tallMM  = 4.0 // their height
	)
	long := join.Length()
	upper, lower := join.At(cropMM/long), join.At(1-cropMM/long)
	out := []draw.Element{
		draw.Line{A: join.A, B: upper, Stroke: draw.CrossStroke},
		draw.Line{A: upper, B: lower, Stroke: draw.JoinStroke},
		draw.Line{A: lower, B: join.B, Stroke: draw.CrossStroke},
	}
	for _, at := range []draw.Point{upper, lower} {
		out = append(out,
			draw.Circle{Centre: at, Radius: ringMM, Stroke: draw.CrossStroke},
			draw.Line{A: draw.Point{X: at.X - armMM, Y: at.Y}, B: draw.Point{X: at.X + armMM, Y: at.Y}, Stroke: draw.CrossStroke},
			draw.Line{A: draw.Point{X: at.X, Y: at.Y - armMM}, B: draw.Point{X: at.X, Y: at.Y + armMM}, Stroke: draw.CrossStroke},
			draw.Text{At: draw.Point{X: at.X - asideMM, Y: at.Y}, Height: tallMM, Align: draw.Centre, Body: fmt.Sprint(number)}.Middle(),
			draw.Text{At: draw.Point{X: at.X + asideMM, Y: at.Y}, Height: tallMM, Align: draw.Centre, Body: fmt.Sprint(number + 1)}.Middle())
	}
	return out
}
