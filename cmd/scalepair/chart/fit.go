package chart

import "fmt"

// Kind says what a point of a fit is.
type Kind int

// The kinds of points: a reading, a reading that deviates from the fit, a gauge
// estimated from the fit.
const (
	Reading Kind = iota
	Suspect
	Estimated
)

// Point is one gauge or reading, in the units of the axes; U is the standard
// uncertainty of Y, 0 for none. Label is printed beside suspects only.
type Point struct {
	X, Y, U float64
	Label   string
	Kind    Kind
}

// Curve is one fitted line through its points, in rising X. Its name stands at
// its end.
type Curve struct {
	Name string
	X, Y []float64
}

// Fit is a chart of readings against their fit. Bars show two standard
// uncertainties.
type Fit struct {
	Title, XLabel, YLabel string
	Curves                []Curve
	Points                []Point
}

// SVG draws the chart, "" without points.
func (f Fit) SVG() string {
	if len(f.Points) == 0 {
		return ""
	}
	c, top := newCanvas(480, f.Title+": "+f.YLabel+" against "+f.XLabel, f.Title, f.keys())
	x, y := f.extents()
	p := panel{c, x.scale(0.06, 64, width-16), y.scale(0.06, 420, top+34)}
	p.grid()
	p.axes(f.XLabel, f.YLabel)
	names := p.labels()
	for i, k := range f.Curves {
		p.curve(i, k)
	}
	for _, q := range f.Points {
		names.mark(p.x.at(q.X), p.y.clamped(q.Y), 6)
		if q.U > 0 {
			x, upper, lower := p.x.at(q.X), p.y.clamped(q.Y+2*q.U), p.y.clamped(q.Y-2*q.U)
			p.whisker(x, upper, lower)
			names.taken = append(names.taken, box{x - 3, upper, x + 3, lower})
		}
		c.kind(q.Kind, p.x.at(q.X), p.y.clamped(q.Y))
	}
	for _, q := range f.Points {
		if q.Kind == Suspect {
			p.set(names, "sp-warn sp-bold", p.x.at(q.X), p.y.clamped(q.Y), 8, shorten(q.Label, 40))
		}
	}
	for _, k := range f.Curves {
		last := len(k.X) - 1
		p.set(names, "", p.x.at(k.X[last]), p.y.clamped(k.Y[last]), 6, shorten(k.Name, 30))
	}
	return c.done()
}

// extents gives the ranges of both axes. A suspect so far away that it would press
// the others flat (more than three times as high a picture; judgement) is drawn
// at the edge.
func (f Fit) extents() (x, y extent) {
	x, y = newExtent(), newExtent()
	for _, k := range f.Curves {
		x.include(k.X...)
		y.include(k.Y...)
	}
	all := y
	for _, q := range f.Points {
		x.include(q.X)
		all.include(q.Y)
		if q.Kind != Suspect {
			y.include(q.Y-2*q.U, q.Y+2*q.U)
		}
	}
	all.include(y.lo, y.hi)
	if y.lo > y.hi || all.hi-all.lo <= 3*(y.hi-y.lo) {
		return x, all
	}
	return x, y
}

// keys gives the legend of the kinds that occur.
func (f Fit) keys() []key {
	names := []string{Reading: "reading", Suspect: "suspect reading", Estimated: "estimated from the fit"}
	found, bars := map[Kind]bool{}, false
	for _, q := range f.Points {
		found[q.Kind], bars = true, bars || q.U > 0
	}
	var keys []key
	for kind, name := range names {
		if found[Kind(kind)] {
			keys = append(keys, key{name, func(c *canvas, x, y float64) { c.kind(Kind(kind), x, y) }})
		}
	}
	if bars {
		keys = append(keys, key{"two standard uncertainties", func(c *canvas, x, y float64) { c.whisker(x, y-7, y+7) }})
	}
	return keys
}

// kind draws the mark of a kind of point: a full circle, a large open diamond
// with a stroke in it, a small open square.
func (c *canvas) kind(k Kind, x, y float64) {
	switch k {
	case Suspect:
		c.diamond("sp-suspect", x, y, 7)
		c.path("sp-suspect", x, y-3, x, y+3)
	case Estimated:
		c.rect("sp-open", x-3.5, y-3.5, 7, 7)
	default:
		c.circle("sp-reading", x, y, 3.5)
	}
}

// curve draws the i-th curve; dashes set curves apart without colour.
func (p panel) curve(i int, k Curve) {
	var xy []float64
	for j := range k.X {
		xy = append(xy, p.x.at(k.X[j]), p.y.clamped(k.Y[j]))
	}
	p.path(fmt.Sprintf("sp-curve sp-dash%d", i%5), xy...)
}
