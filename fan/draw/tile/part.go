package tile

import (
	"math"
	"slices"

	"scalepair/fan/draw"
)

// part is what piece p shows of the drawing, with its joins and the names of its
// sides. Elements that do not reach into the window are left out; the others stay
// whole, so that dashes meet across a join, and the window cuts them.
func (p Piece) part(d draw.Drawing, all []Piece, correct draw.Map) draw.Part {
	to := p.Place.Then(correct)
	shown := draw.Drawing{Title: d.Title}
	for _, l := range d.Layers {
		kept := draw.Layer{Name: l.Name}
		for _, e := range l.Elements {
			if !e.Bounds().Touches(p.Window) {
				continue
			}
			if words, ok := e.(draw.Text); ok {
				if words, ok = p.whole(words, all); !ok {
					continue
				}
				e = words
			}
			kept.Elements = append(kept.Elements, e)
		}
		shown.Layers = append(shown.Layers, kept)
	}
	shown.Layers = append(shown.Layers, draw.Layer{Name: draw.LayerJoins, Elements: append(p.joinMarks(), p.sides(d)...)})
	part := draw.Part{Drawing: shown.Through(to)}
	for _, c := range p.Window.Corners() {
		part.Window = append(part.Window, to.Point(c))
	}
	return part
}

// whole gives words as the piece shows them, if it does: whole, and clear of its
// joins. What stands in an overlap is short and shown by both neighbours; longer
// words that no piece has room for where they are move behind the last join that
// they cross, and are cut to the room there.
func (p Piece) whole(t draw.Text, all []Piece) (draw.Text, bool) {
	const clearMM = 4
	box := t.Bounds()
	if slices.ContainsFunc(all, func(o Piece) bool { l, r := o.between(box); return l <= box.Min.X && box.Max.X <= r }) {
		l, r := p.between(box)
		return t, l <= box.Min.X && box.Max.X <= r || p.short(box)
	}
	if slices.ContainsFunc(all, func(o Piece) bool { return o.short(box) }) {
		return t, p.short(box)
	}
	last := len(all) - 1
	for l, _ := all[last].between(box); last > 0 && box.Max.X < l; l, _ = all[last].between(box) {
		last--
	}
	if p.Number != all[last].Number {
		return t, false
	}
	l, r := p.between(box)
	if room := r - l - 2*clearMM; box.Width() > room {
		t.Room = max(room, 1)
		box = t.Bounds()
	}
	along := max(l+clearMM-box.Min.X, min(0, r-clearMM-box.Max.X))
	t.At.X += along
	t.At.Y += along * math.Tan(t.Angle) // words on a string stay on it
	return t, true
}

// short reports whether the window shows a box whole that is no longer than what
// neighbours overlap by on either side of a join.
func (p Piece) short(box draw.Rect) bool {
	return box.Width() <= p.overlap && p.Window.Union(box) == p.Window
}

// between is the room between the piece's joins where a box lies.
func (p Piece) between(box draw.Rect) (left, right float64) {
	a, b := p.ends()
	return max(a.XAt(box.Min.Y), a.XAt(box.Max.Y)), min(b.XAt(box.Min.Y), b.XAt(box.Max.Y))
}

// sides names the board's two sides along the piece's edges.
func (p Piece) sides(d draw.Drawing) []draw.Element {
	const tallMM, insideMM = 3.0, 1.2
	left, right := p.ends()
	name := func(y float64, body string) draw.Element {
		return draw.Text{At: draw.Point{X: (left.At(0.5).X + right.At(0.5).X) / 2, Y: y}, Height: tallMM, Align: draw.Centre, Body: body}
	}
	if d.Upper == "" {
		return nil
	}
	return []draw.Element{name(p.Window.Max.Y-insideMM-tallMM, d.Upper), name(p.Window.Min.Y+insideMM, d.Lower)}
}

// ends are the joins at the piece's left and right, or its window's own sides where
// the drawing ends, from top to bottom.
func (p Piece) ends() (left, right draw.Line) {
	c := p.Window.Corners()
	left, right = draw.Line{A: c[3], B: c[0]}, draw.Line{A: c[2], B: c[1]}
	if p.Left.Length() > 0 {
		left = p.Left
	}
	if p.Right.Length() > 0 {
		right = p.Right
	}
	return left, right
}
