package tile

import (
	"fmt"
	"math"

	"scalepair/data/unit"
	"scalepair/fan/draw"
)

// job is one laying out, from which single sheets are drawn.
type job struct {
	drawing draw.Drawing
	format  format
	way     way
	pieces  []Piece
}

// sheet draws sheet i: its pieces, each through its own window, then bars, words
// and key map. Everything is drawn in true millimetres first and corrected for
// the printer last.
func (j job) sheet(i int) draw.Sheet {
	out := draw.Sheet{Name: j.drawing.Title, WidthMM: j.way.width, HeightMM: j.way.height}
	if j.way.sheets() > 1 {
		out.Name = fmt.Sprintf("Sheet %d of %d · %s", i+1, j.way.sheets(), j.drawing.Title)
	}
	correct := draw.Scale(j.format.sx, j.format.sy)
	for _, p := range j.pieces {
		if p.Sheet != i {
			continue
		}
		out.Parts = append(out.Parts, p.part(j.drawing, correct))
	}
	return draw.Sheet{
		Name: out.Name, WidthMM: out.WidthMM, HeightMM: out.HeightMM,
		Parts: append(out.Parts, draw.Part{Drawing: j.foot(i, out.Name).Through(correct)}),
	}
}

// part is what piece p shows of the drawing, with its joins. Elements that do
// not reach into the window are left out; the others stay whole, so that dashes
// meet across a join, and the window cuts them.
func (p Piece) part(d draw.Drawing, correct draw.Map) draw.Part {
	to := p.Place.Then(correct)
	shown := draw.Drawing{Title: d.Title}
	for _, l := range d.Layers {
		kept := draw.Layer{Name: l.Name}
		for _, e := range l.Elements {
			if e.Bounds().Touches(p.Window) {
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
			draw.Circle{Centre: at, RadiusMM: ringMM, Stroke: draw.CrossStroke},
			draw.Line{A: draw.Point{X: at.X - armMM, Y: at.Y}, B: draw.Point{X: at.X + armMM, Y: at.Y}, Stroke: draw.CrossStroke},
			draw.Line{A: draw.Point{X: at.X, Y: at.Y - armMM}, B: draw.Point{X: at.X, Y: at.Y + armMM}, Stroke: draw.CrossStroke},
			draw.Text{At: draw.Point{X: at.X - asideMM, Y: at.Y}, HeightMM: tallMM, Align: draw.Centre, Body: fmt.Sprint(number)}.Middle(),
			draw.Text{At: draw.Point{X: at.X + asideMM, Y: at.Y}, HeightMM: tallMM, Align: draw.Centre, Body: fmt.Sprint(number + 1)}.Middle())
	}
	return out
}

// foot draws what every sheet has besides its pieces.
func (j job) foot(i int, title string) draw.Drawing {
	area := j.format.inside(j.way.width, j.way.height)
	bars := append(
		draw.Bar(draw.Point{X: area.Min.X, Y: area.Min.Y + foundMM}, draw.BarMM, 0),
		draw.Bar(draw.Point{X: area.Min.X + uprightMM, Y: j.way.content.Min.Y}, draw.BarMM, math.Pi/2)...)
	lines := j.format.lines(area.Width())
	y := area.Min.Y + firstMM + lineMM*float64(len(lines))
	words := []draw.Element{draw.Text{
		At: draw.Point{X: area.Min.X, Y: y}, HeightMM: headMM, RoomMM: j.format.wordsRoom(area.Width()), Body: title,
	}}
	for _, l := range lines {
		y -= lineMM
		words = append(words, draw.Text{
			At: draw.Point{X: area.Min.X, Y: y}, HeightMM: smallMM, RoomMM: j.format.wordsRoom(area.Width()), Body: l,
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

// measured says what a bar measured; 0 stands for one that was not.
func measured(mm float64) string {
	if mm == 0 {
		mm = draw.BarMM
	}
	return unit.Fixed(mm, 2) + " mm"
}

// percent prints a factor.
func percent(factor float64) string { return unit.Fixed(100*factor, 2) + " %" }
