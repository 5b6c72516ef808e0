package chart

import (
	"fmt"
	"slices"
	"strings"
)

// Kind says what a point of a fit is.
type Kind int

// The kinds of points: a reading, a reading that deviates from the fit, a gauge
// estimated from the fit.
const (
	Reading Kind = iota
	Suspect
	Estimated
)

// kinds are the words and the looks of the kinds.
var kinds = []struct {
	name, class string
	r           float64
}{{"reading", "sp-reading", 3.5}, {"suspect reading", "sp-suspect", 6}, {"estimated from the fit", "sp-open", 3.5}}

// Point is one gauge or reading: its distance from the fit over X, in the units of
// the axes; U is its own standard uncertainty, 0 for none. Label is printed beside
// suspects only.
type Point struct {
	X, Y, U float64
	Label   string
	Kind    Kind
	Family  int // index into Fit.Families
}

// Fit is a chart of how far readings lie from their fits. Every family has its
// own shape; bars show two standard uncertainties.
type Fit struct {
	Title, XLabel, YLabel, Caption string
	Families                       []string
	Points                         []Point
}

// SVG draws the chart, "" without points.
func (f Fit) SVG() string {
	if len(f.Points) == 0 {
		return ""
	}
	c, top := newCanvas(f.Title, f.keys())
	x, y := f.extents()
	p := panel{c, x.scale(0.06, 64, width-16), y.scale(0.06, top+384, top+34)}
	p.grid()
	p.axes(f.XLabel, f.YLabel, 10)
	p.path("sp-curve", p.x.from, p.y.at(0), p.x.to, p.y.at(0))
	names := p.labels()
	for _, q := range f.Points {
		x, y, look := p.x.at(q.X), p.y.clamped(q.Y), kinds[q.Kind]
		names.mark(around(x, y, look.r+2))
		if q.U > 0 {
			upper, lower := p.y.clamped(q.Y+2*q.U), p.y.clamped(q.Y-2*q.U)
			p.upright(x, upper, lower)
			names.mark(box{x - 3, upper, x + 3, lower})
		}
	}
	for _, q := range f.Points { // above every bar
		p.shape(kinds[q.Kind].class, corners(q.Family), p.x.at(q.X), p.y.clamped(q.Y), kinds[q.Kind].r)
	}
	for _, q := range f.Points {
		if q.Kind == Suspect {
			p.name(names, "sp-warn sp-bold", p.x.at(q.X), p.y.clamped(q.Y), 8, shorten(q.Label, 40))
		}
	}
	return c.done(p.y.from+66, f.Caption, f.alt())
}

// corners give every family its shape: circle, square, triangle, then more.
func corners(family int) int {
	return append([]int{0, 4, 3}, family+2)[min(family, 3)]
}

// extents gives the ranges of both axes; the fit is 0. A suspect so far away that
// it would press the others flat (more than three times as high a picture;
// judgement) is drawn at the edge.
func (f Fit) extents() (x, y extent) {
	x, y = newExtent(), newExtent()
	y.include(0)
	for _, q := range f.Points {
		x.include(q.X)
		if q.Kind != Suspect {
			y.include(q.Y-2*q.U, q.Y+2*q.U)
		}
	}
	all := y
	for _, q := range f.Points {
		all.include(q.Y-2*q.U, q.Y+2*q.U)
	}
	if y.hi == y.lo || all.hi-all.lo <= 3*(y.hi-y.lo) {
		return x, all
	}
	return x, y
}

// keys gives the legend of the families and kinds that occur.
func (f Fit) keys() []key {
	some := func(is func(Point) bool) bool { return slices.ContainsFunc(f.Points, is) }
	var keys []key
	for i, name := range f.Families {
		keys = append(keys, key{true, name, func(c *canvas, x, y float64) { c.shape("sp-axis", corners(i), x, y, 5) }})
	}
	for kind, look := range kinds {
		keys = append(keys, key{some(func(q Point) bool { return int(q.Kind) == kind }), look.name, func(c *canvas, x, y float64) { c.shape(look.class, 0, x, y, look.r) }})
	}
	return append(keys, key{some(func(q Point) bool { return q.U > 0 }), "two standard uncertainties", func(c *canvas, x, y float64) { c.upright(x, y-7, y+7) }})
}

// alt counts the points and names the suspects.
func (f Fit) alt() string {
	words := []string{f.Title, f.YLabel + " over " + f.XLabel}
	var count [3]int
	for _, q := range f.Points {
		if count[q.Kind]++; q.Kind == Suspect {
			words = append(words, "suspect "+q.Label)
		}
	}
	for kind, n := range count {
		if n > 0 {
			words = append(words, fmt.Sprintf("points of the kind '%s': %d", kinds[kind].name, n))
		}
	}
	return strings.Join(words, "; ") + "."
}
