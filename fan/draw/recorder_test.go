package draw_test

import "scalepair/fan/draw"

// mark is one recorded element on its layer.
type mark struct {
	Layer draw.LayerName
	What  draw.Element
}

// recorder is a draw.Canvas that keeps what is drawn, so that a test can ask for
// its numbers before any format has rounded them. The zero value is ready to use.
type recorder struct {
	Marks []mark
	layer draw.LayerName
}

var _ draw.Canvas = (*recorder)(nil)

// Sheet implements draw.Canvas.
func (r *recorder) Sheet(string, float64, float64) {}

// Window implements draw.Canvas.
func (r *recorder) Window([]draw.Point) {}

// Layer implements draw.Canvas.
func (r *recorder) Layer(name draw.LayerName) { r.layer = name }

// Line implements draw.Canvas.
func (r *recorder) Line(l draw.Line) { r.keep(l) }

// Polyline implements draw.Canvas.
func (r *recorder) Polyline(p draw.Polyline) { r.keep(p) }

// Circle implements draw.Canvas.
func (r *recorder) Circle(ring draw.Circle) { r.keep(ring) }

// Text implements draw.Canvas.
func (r *recorder) Text(t draw.Text) { r.keep(t) }

func (r *recorder) keep(e draw.Element) {
	r.Marks = append(r.Marks, mark{r.layer, e})
}

// Lines gives the lines of one stroke, in drawing order.
func (r *recorder) Lines(s draw.Stroke) []draw.Line {
	var out []draw.Line
	for _, m := range r.Marks {
		if l, ok := m.What.(draw.Line); ok && l.Stroke == s {
			out = append(out, l)
		}
	}
	return out
}

// Texts gives the words of one layer, as they are shown, in drawing order.
func (r *recorder) Texts(layer draw.LayerName) []string {
	var out []string
	for _, m := range r.Marks {
		if t, ok := m.What.(draw.Text); ok && m.Layer == layer {
			out = append(out, t.Shown())
		}
	}
	return out
}
