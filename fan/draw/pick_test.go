package draw_test

import (
	"math"
	"testing"

	"scalepair/fan"
	"scalepair/fan/draw"
)

// tolMM is a rounding in the last of some fifty additions of numbers of 1000 mm.
const tolMM = 1e-9

// drawn draws a layout without a key, whose samples would be counted too.
func drawn(t testing.TB, l *fan.Layout, o draw.Options) draw.Drawing {
	t.Helper()
	o.Hide = append(o.Hide, draw.LayerKey)
	d := draw.Fan(l, o)
	return d
}

// all gives the elements of one kind on a layer, or on every one for "".
func all[E draw.Element](layer draw.LayerName, from ...draw.Drawing) []E {
	var out []E
	for _, d := range from {
		for _, l := range d.Layers {
			for _, e := range l.Elements {
				if one, ok := e.(E); ok && (layer == "" || layer == l.Name) {
					out = append(out, one)
				}
			}
		}
	}
	return out
}

// linesOf gives the lines of one stroke.
func linesOf(s draw.Stroke, from ...draw.Drawing) []draw.Line {
	var out []draw.Line
	for _, l := range all[draw.Line]("", from...) {
		if l.Stroke == s {
			out = append(out, l)
		}
	}
	return out
}

// wordsOn gives the words on a layer as they are shown.
func wordsOn(layer draw.LayerName, from ...draw.Drawing) []string {
	var out []string
	for _, t := range all[draw.Text](layer, from...) {
		out = append(out, t.Shown())
	}
	return out
}

// drawingsOn gives what a sheet holds.
func drawingsOn(s draw.Sheet) []draw.Drawing {
	var out []draw.Drawing
	for _, p := range s.Parts {
		out = append(out, p.Drawing)
	}
	return out
}

// face carries a point of the layout to the face of a right-handed board.
func face(p fan.Point) draw.Point { return draw.Point{X: p.X.MM(), Y: -p.Y.MM()} }

// nearest gives how far the nearest of the lines found is from the wanted one:
// the greater distance of the two ends, either way round, in mm.
func nearest(want draw.Line, found []draw.Line) float64 {
	best := math.Inf(1)
	for _, f := range found {
		same := math.Max(apart(want.A, f.A), apart(want.B, f.B))
		turned := math.Max(apart(want.A, f.B), apart(want.B, f.A))
		best = math.Min(best, math.Min(same, turned))
	}
	return best
}

func apart(a, b draw.Point) float64 { return math.Hypot(a.X-b.X, a.Y-b.Y) }
