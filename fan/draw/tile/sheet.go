package tile

import (
	"fmt"
	"math"

	"scalepair/fan/draw"
)

// layout is one laying out, from which single sheets are drawn.
type layout struct {
	drawing draw.Drawing
	format  format
	way     way
	pieces  []Piece
	key     draw.Layer
	keyOn   int      // index of the sheet that has the key, -1 for none
	keyAt   draw.Map // from the drawing to that sheet
}

// sheet draws sheet i: its pieces, each through its own window, then bars, words
// and key map. Everything is drawn in true millimetres first and corrected for
// the printer last.
func (j layout) sheet(i int) draw.Sheet {
	out := draw.Sheet{Name: j.drawing.Title, Width: j.way.width, Height: j.way.height}
	if j.way.sheets() > 1 {
		out.Name = fmt.Sprintf("Sheet %d of %d · %s", i+1, j.way.sheets(), j.drawing.Title)
	}
	correct := draw.Scale(j.format.sx, j.format.sy)
	for _, p := range j.on(i) {
		out.Parts = append(out.Parts, p.part(j.drawing, j.pieces, correct))
	}
	rest := j.foot(i, out.Name)
	if i == j.keyOn {
		rest.Layers = append(rest.Layers, draw.Drawing{Layers: []draw.Layer{j.key}}.Through(j.keyAt).Layers...)
	}
	out.Parts = append(out.Parts, draw.Part{Drawing: rest.Through(correct)})
	return out
}

// on gives the pieces on sheet i.
func (j layout) on(i int) []Piece {
	return j.pieces[i*j.way.perSheet : min((i+1)*j.way.perSheet, len(j.pieces))]
}

// footHeight is that of sheet i's own foot, which may be less than what every
// sheet leaves for one.
func (j layout) footHeight(i int) float64 {
	width := j.format.inside(j.way.width, j.way.height).Width()
	return j.format.footHeight(width, i == 0, i == j.way.sheets()-1)
}

// roomForKey finds the first sheet with room for the key below or behind its
// pieces, and where it stands there; -1 when there is none.
func (j layout) roomForKey() (int, draw.Map) {
	key := draw.Drawing{Layers: []draw.Layer{j.key}}.Bounds().Grow(airMM)
	for i := range j.way.sheets() {
		taken, free := draw.NoRect(), j.way.content
		for _, p := range j.on(i) {
			taken = taken.Union(p.Place.Rect(p.Window))
		}
		free.Min.Y = j.format.inside(j.way.width, j.way.height).Min.Y + j.footHeight(i)
		below, behind := free, free
		below.Max.Y, behind.Min.X = taken.Min.Y, taken.Max.X
		for _, at := range []draw.Rect{below, behind} {
			if !key.Empty() && at.Width() >= key.Width() && at.Height() >= key.Height() {
				return i, draw.Move(at.Min.X-key.Min.X, at.Max.Y-key.Max.Y)
			}
		}
	}
	return -1, draw.Map{}
}

// foot draws what every sheet has besides its pieces.
func (j layout) foot(i int, title string) draw.Drawing {
	f, area := j.format, j.format.inside(j.way.width, j.way.height)
	bars := append(
		draw.Bar(f.o.Unit, draw.Point{X: area.Min.X, Y: area.Min.Y + foundMM}, area.Width(), 0),
		draw.Bar(f.o.Unit, draw.Point{X: area.Min.X + uprightMM, Y: area.Min.Y + overMM}, area.Height()-overMM, math.Pi/2)...)
	lines := f.lines(area.Width(), i == 0, i == j.way.sheets()-1)
	at := draw.Point{X: area.Min.X + columnMM, Y: area.Min.Y + firstMM + lineMM*float64(len(lines))}
	var words []draw.Element
	room := f.besideMap(area.Width())
	write := func(height float64, body string) {
		words = append(words, draw.Text{At: at, Height: height, Room: room, Body: body})
		at.Y -= lineMM
	}
	top := at.Y + headMM
	write(headMM, title)
	for _, l := range lines {
		write(smallMM, l)
		room = area.Width() - columnMM
	}
	if len(j.pieces) > 1 {
		words = append(words, j.keyMap(i, draw.Rect{
			Min: draw.Point{X: area.Max.X - mapMM, Y: top - headMM - lineMM},
			Max: draw.Point{X: area.Max.X, Y: top + airMM},
		})...)
	}
	if n := len(j.on(i)); n > 1 {
		words = append(words, j.apart(n)...)
	}
	return draw.Drawing{Layers: []draw.Layer{
		{Name: draw.LayerBars, Elements: bars}, {Name: draw.LayerFrame, Elements: words},
	}}
}

// apart draws the lines along which the n strips of a sheet are cut apart.
func (j layout) apart(n int) []draw.Element {
	const wordMM = 2.6
	var out []draw.Element
	box := j.way.content
	high := j.pieces[0].Window.Height() + gapMM
	for i := range n - 1 {
		y := box.Max.Y - float64(i+1)*high + gapMM/2
		out = append(out,
			draw.Line{A: draw.Point{X: box.Min.X, Y: y}, B: draw.Point{X: box.Max.X, Y: y}, Stroke: draw.CrossStroke},
			draw.Text{At: draw.Point{X: (box.Min.X + box.Max.X) / 2, Y: y + 0.8}, Height: wordMM, Align: draw.Centre, Body: "cut the strips apart here"})
	}
	return out
}
