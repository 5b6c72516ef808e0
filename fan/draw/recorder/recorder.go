// Package recorder keeps what is drawn instead of writing it, so that a test
// can ask for the numbers of a drawing before any format has rounded them.
package recorder

import "scalepair/fan/draw"

// Mark is one recorded element with where it stood in the run of calls.
type Mark struct {
	Sheet  int // index into Recorder.Sheets
	Window []draw.Point
	Layer  draw.LayerName
	What   draw.Element
}

// Sheet is a recorded sheet's name and size in mm.
type Sheet struct {
	Name              string
	WidthMM, HeightMM float64
}

// Recorder is a draw.Canvas that remembers. The zero value is ready to use.
type Recorder struct {
	Sheets []Sheet
	Marks  []Mark

	window []draw.Point
	layer  draw.LayerName
}

var _ draw.Canvas = (*Recorder)(nil)

// Sheet implements draw.Canvas.
func (r *Recorder) Sheet(name string, widthMM, heightMM float64) {
	r.Sheets = append(r.Sheets, Sheet{Name: name, WidthMM: widthMM, HeightMM: heightMM})
	r.window, r.layer = nil, ""
}

// Window implements draw.Canvas.
func (r *Recorder) Window(corners []draw.Point) { r.window = corners }

// Layer implements draw.Canvas.
func (r *Recorder) Layer(name draw.LayerName) { r.layer = name }

// Line implements draw.Canvas.
func (r *Recorder) Line(l draw.Line) { r.keep(l) }

// Polyline implements draw.Canvas.
func (r *Recorder) Polyline(p draw.Polyline) { r.keep(p) }

// Circle implements draw.Canvas.
func (r *Recorder) Circle(ring draw.Circle) { r.keep(ring) }

// Text implements draw.Canvas.
func (r *Recorder) Text(t draw.Text) { r.keep(t) }

func (r *Recorder) keep(e draw.Element) {
	r.Marks = append(r.Marks, Mark{Sheet: len(r.Sheets) - 1, Window: r.window, Layer: r.layer, What: e})
}

// Lines gives the lines of one stroke, in drawing order.
func (r *Recorder) Lines(s draw.Stroke) []draw.Line {
	var out []draw.Line
	for _, m := range r.Marks {
		if l, ok := m.What.(draw.Line); ok && l.Stroke == s {
			out = append(out, l)
		}
	}
	return out
}

// Texts gives the words of one layer, as they are shown, in drawing order.
func (r *Recorder) Texts(layer draw.LayerName) []string {
	var out []string
	for _, m := range r.Marks {
		if t, ok := m.What.(draw.Text); ok && m.Layer == layer {
			out = append(out, t.Shown())
		}
	}
	return out
}
