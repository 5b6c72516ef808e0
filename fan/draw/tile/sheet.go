package tile

import (
	"fmt"
	"math"
	"slices"

	"scalepair/fan/draw"
)

// layout is one laying out, from which single sheets are drawn.
type layout struct {
	drawing draw.Drawing
	format  format
	way     way
	pieces  []Piece
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
	for _, p := range j.pieces {
		if p.Sheet != i {
			continue
		}
		out.Parts = append(out.Parts, p.part(j.drawing, j.pieces, correct))
	}
	return draw.Sheet{
		Name: out.Name, Width: out.Width, Height: out.Height,
		Parts: append(out.Parts, draw.Part{Drawing: j.foot(i, out.Name).Through(correct)}),
	}
}

// part is what piece p shows of the drawing, with its joins. Elements that do
// not reach into the window are left out; the others stay whole, so that dashes
// meet across a join, and the window cuts them. Words that another piece shows whole
// are not shown in part.
func (p Piece) part(d draw.Drawing, all []Piece, correct draw.Map) draw.Part {
	to := p.Place.Then(correct)
	shown := draw.Drawing{Title: d.Title}
	for _, l := range d.Layers {
		kept := draw.Layer{Name: l.Name}
		for _, e := range l.Elements {
			if e.Bounds().Touches(p.Window) && !(p.cuts(e) && slices.ContainsFunc(all, func(o Piece) bool { return !o.cuts(e) })) {
				kept.Elements = append(kept.Elements, e)
			}
		}
		shown.Layers = append(shown.Layers, kept)
	}
	if joins := p.joinMarks(); len(joins) > 0 {
		shown.Layers = append(shown.Layers, draw.Layer{Name: draw.LayerJoins, Elements: joins})
	}
	part := draw.Part{Drawing: shown.Through(to)}
	for _, c := range p.Window.Corners() {
		part.Window = append(part.Window, to.Point(c))
	}
	return part
}

// cuts reports whether words lie in part or altogether beyond the window.
func (p Piece) cuts(e draw.Element) bool {
	_, words := e.(draw.Text)
	b, w := e.Bounds(), p.Window
	return words && !(b.Min.X >= w.Min.X && b.Max.X <= w.Max.X && b.Min.Y >= w.Min.Y && b.Max.Y <= w.Max.Y)
}

// foot draws what every sheet has besides its pieces.
func (j layout) foot(i int, title string) draw.Drawing {
	area := j.format.inside(j.way.width, j.way.height)
	bars := append(
		draw.Bar(draw.Point{X: area.Min.X, Y: area.Min.Y + foundMM}, draw.BarLength, 0),
		draw.Bar(draw.Point{X: area.Min.X + uprightMM, Y: j.way.content.Min.Y}, draw.BarLength, math.Pi/2)...)
	lines := j.format.lines(area.Width())
	y := area.Min.Y + firstMM + lineMM*float64(len(lines))
	words := []draw.Element{draw.Text{
		At: draw.Point{X: area.Min.X, Y: y}, Height: headMM, Room: j.format.wordsRoom(area.Width()), Body: title,
	}}
	for _, l := range lines {
		y -= lineMM
		words = append(words, draw.Text{
			At: draw.Point{X: area.Min.X, Y: y}, Height: smallMM, Room: j.format.wordsRoom(area.Width()), Body: l,
		})
	}
	if len(j.pieces) > 1 {
		box := draw.Rect{
			Min: draw.Point{X: area.Max.X - mapMM, Y: area.Min.Y},
			Max: draw.Point{X: area.Max.X, Y: j.way.content.Min.Y - airMM},
		}
		words = append(words, j.keyMap(i, box)...)
	}
	return draw.Drawing{Layers: []draw.Layer{
		{Name: draw.LayerBars, Elements: bars}, {Name: draw.LayerFrame, Elements: words},
	}}
}
