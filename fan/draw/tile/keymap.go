package tile

import (
	"fmt"
	"math"

	"scalepair/fan/draw"
)

// keyMap draws the whole board small inside box, with its pieces and their
// numbers; the pieces of sheet i are framed heavily.
func (j layout) keyMap(i int, box draw.Rect) []draw.Element {
	all := draw.NoRect()
	for _, p := range j.pieces {
		all = all.Union(p.Window)
	}
	const frameMM = 1.0 // so that heavy frames stay inside the box
	small := math.Min((box.Width()-2*frameMM)/all.Width(), (box.Height()-2*frameMM)/all.Height())
	to := draw.Move(-all.Min.X, -all.Min.Y).Then(draw.Scale(small, small)).
		Then(draw.Move(box.Min.X+frameMM, box.Max.Y-frameMM-small*all.Height()))
	var out []draw.Element
	for _, e := range j.drawing.Layer(draw.LayerBoard).Elements {
		board := draw.Polyline{Closed: true, Stroke: draw.MapStroke}
		board.Points = append(board.Points, e.(draw.Polyline).Points...)
		out = append(out, board.Through(to))
	}
	for _, p := range j.pieces {
		out = append(out, p.onMap(to, p.Sheet == i)...)
	}
	return out
}

// onMap draws the piece from join to join, and its number in the middle.
func (p Piece) onMap(to draw.Map, here bool) []draw.Element {
	const tallMM = 3.2
	left, right := p.ends()
	corners := []draw.Point{to.Point(left.A), to.Point(left.B), to.Point(right.B), to.Point(right.A)}
	frame := draw.Polyline{Points: corners, Closed: true, Stroke: draw.MapStroke}
	if here {
		frame.Stroke = draw.HereStroke
	}
	middle := to.Point(draw.Point{X: (left.A.X + left.B.X + right.A.X + right.B.X) / 4, Y: (p.Window.Min.Y + p.Window.Max.Y) / 2})
	return []draw.Element{frame, draw.Text{
		At: middle, Height: tallMM, Align: draw.Centre, Body: fmt.Sprint(p.Number),
	}.Middle()}
}
