package chart

import "math"

// Sketch is a drawing with dimensions; both axes have the same units and each its
// own scale, so that a long narrow thing can be read. y runs up.
type Sketch struct {
	Title, Caption, Alt string
	Strokes             []Stroke
	Dimensions          []Dimension
	Words               []Words
}

// Stroke is a line: heavy for what is to be drawn on wood, thin or dashed for what
// helps.
type Stroke struct {
	Look           Look
	X1, Y1, X2, Y2 float64
}

// Look is how a line looks.
type Look string

// The looks of lines.
const (
	Heavy  Look = "sp-heavy"
	Thin   Look = "sp-thin"
	Dashed Look = "sp-curve"
)

// Dimension is a length between two places, drawn away from them: by so many units
// of the chart to the side, or up for a level one, and as many as Lift to the
// right for an upright one.
type Dimension struct {
	X1, Y1, X2, Y2 float64
	Lift           float64
	Text           string
}

// Words stand at a place, moved by so many units of the chart; they are centred.
type Words struct {
	X, Y, Right, Up float64
	Text            string
}

// SVG draws the sketch, whose dimensions have room all about it.
func (s Sketch) SVG() string {
	const side, above, high, below = 92.0, 60.0, 190.0, 84.0
	x, y := newExtent(), newExtent()
	for _, l := range s.Strokes {
		x.include(l.X1, l.X2)
		y.include(l.Y1, l.Y2)
	}
	c, top := newCanvas(s.Title, nil)
	p := panel{c, x.scale(0, side, width-side), y.scale(0, top+above+high, top+above)}
	for _, l := range s.Strokes {
		p.path(string(l.Look), p.x.at(l.X1), p.y.at(l.Y1), p.x.at(l.X2), p.y.at(l.Y2))
	}
	for _, d := range s.Dimensions {
		p.dimension(d)
	}
	for _, w := range s.Words {
		p.words(p.x.at(w.X)+w.Right, p.y.at(w.Y)-w.Up, w.Text)
	}
	return c.done(p.y.from+below+6, s.Caption, s.Alt)
}

// dimension draws a length with its ends ticked. Its text stands on the line, or
// beside it where the line is short or upright.
func (p panel) dimension(d Dimension) {
	const tick, air = 4.0, 6.0
	ends := [2][2]float64{{p.x.at(d.X1), p.y.at(d.Y1)}, {p.x.at(d.X2), p.y.at(d.Y2)}}
	line, upright, w := ends, d.X1 == d.X2, textWidth(d.Text)
	for i := range line {
		switch {
		case upright:
			line[i][0] += d.Lift
		case d.Lift < 0:
			line[i][1] = max(ends[0][1], ends[1][1]) - d.Lift
		default:
			line[i][1] = min(ends[0][1], ends[1][1]) - d.Lift
		}
		x, y := line[i][0], line[i][1]
		p.path("sp-thin", ends[i][0], ends[i][1], x, y)
		p.path("sp-axis", x-tick, y+tick, x+tick, y-tick)
	}
	p.path("sp-axis", line[0][0], line[0][1], line[1][0], line[1][1])
	x, y := (line[0][0]+line[1][0])/2, (line[0][1]+line[1][1])/2+5
	if upright {
		x += math.Copysign(w/2+air, d.Lift)
	} else if long := math.Abs(line[1][0] - line[0][0]); long < w+2*air {
		x += long/2 + air + w/2
	}
	p.words(x, y, d.Text)
}

// words stand about x on paper, so that no line runs through them.
func (p panel) words(x, y float64, s string) {
	w := 0.9 * textWidth(s) // less than its guess, which is on the safe side
	p.rect("sp-paper", 1, x-w/2, y-12, w, 16)
	p.text("sp-middle", x, y, s)
}
