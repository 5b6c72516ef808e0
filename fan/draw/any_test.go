package draw_test

import (
	"math"

	"scalepair/fan/draw"
)

// shapes are numbers from which anyDrawing makes one element of every kind.
type shapes struct {
	X1, Y1, X2, Y2 float64 // ends of a line, corners of a triangle
	Size           float64 // radius and height of the words
	Angle          float64
	Body           string
}

// anyShapes gives numbers to begin fuzzing with: of a real board, tiny, huge,
// on the bounds, and no numbers at all.
func anyShapes() []shapes {
	return []shapes{
		{0, 18.5, 355, 21.7, 3.6, 0, "12"},
		{-12.25, -40, 889, 57, 0.7, 0.5235987755982988, "E♭2 0.052 in"},
		{1e-9, -1e-9, -0.00004, 0.00005, 0.002, -1e-12, "½ <b> & \"c\""},
		{9999.99995, -10000, 10000, 0, 10000, 1e6, ""},
		{1e300, 1, 2, 3, 4, 5, "far"},
		{1, 2, 3, 4, -5, 0, "inside out"},
		{math.Copysign(0, -1), 0, -0.00001, 5, 1, 6.283185307179586, "endstream endobj ) Tj"},
	}
}

// anyDrawing puts a line, a triangle, a circle and words onto three layers.
func anyDrawing(s shapes) draw.Drawing {
	a, b := draw.Point{X: s.X1, Y: s.Y1}, draw.Point{X: s.X2, Y: s.Y2}
	return draw.Drawing{Title: s.Body, Layers: []draw.Layer{
		{Name: draw.LayerBoard, Elements: []draw.Element{
			draw.Polyline{Points: []draw.Point{a, b, {X: s.X1, Y: s.Y2}}, Closed: true, Stroke: draw.BoardStroke},
		}},
		{Name: draw.LayerSlots, Elements: []draw.Element{draw.Line{A: a, B: b, Stroke: draw.SlotStroke}}},
		{Name: draw.LayerDots, Elements: []draw.Element{
			draw.Circle{Centre: b, Radius: s.Size, Stroke: draw.DotStroke},
			draw.Text{At: a, Height: s.Size, Angle: s.Angle, Align: draw.Centre, Room: s.X2, Body: s.Body},
		}},
	}}
}
