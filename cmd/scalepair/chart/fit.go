package chart

import (
	"math"
	"strings"
)

// SVG draws the chart: the readings and curves on logarithmic axes, and below
// them how far each point with a curve is off it. Values that are not finite
// or not above 0, curves of fewer than two points or not in rising X, unknown
// curve names and a chart without points are errors, and the text is "".
func (f Fit) SVG() (string, error) {
	if err := f.check(); err != nil {
		return "", err
	}
	offs := f.offs()
	height := 452.0
	if len(offs) > 0 {
		height = 600
	}
	c := newCanvas(height, f.Title+": "+f.YLabel+" against "+f.XLabel)
	top := c.heading(f.Title, f.keys(c)) + 34
	xs, ys := f.spans()
	main := plot{c, xs.logScale(64, width-16), ys.logScale(392, top)}
	xLabel := f.XLabel
	if len(offs) > 0 {
		xLabel = ""
	}
	main.frame(xLabel, f.YLabel)
	f.drawMain(main)
	if len(offs) > 0 {
		f.drawOffs(c, main.x, offs)
	}
	return c.done(), nil
}

func (f Fit) check() error {
	c := check{title: f.Title}
	if len(f.Points) == 0 {
		c.refuse("no points to draw", "", "")
	}
	known := map[string]bool{"": true}
	for _, k := range f.Curves {
		known[k.Name] = true
		if len(k.X) < 2 || len(k.X) != len(k.Y) {
			c.refuse("a curve needs at least two points, and one y for each x", k.Name, "")
			continue
		}
		for i := range k.X {
			c.positive(k.X[i], "x of a curve", k.Name)
			c.positive(k.Y[i], "y of a curve", k.Name)
			if i > 0 && k.X[i] <= k.X[i-1] {
				c.refuse("a curve's x must rise", k.Name, "")
			}
		}
	}
	for _, p := range f.Points {
		c.positive(p.X, "x of a point", p.Label)
		c.positive(p.Y, "y of a point", p.Label)
		c.notNegative(p.U, "uncertainty of a point", p.Label)
		if !known[p.Curve] {
			c.refuse("no curve of that name", p.Curve, "")
		}
	}
	return c.faults.Err()
}

// spans gives the ranges of both axes; curves widen y only where points are.
func (f Fit) spans() (x, y span) {
	x, y = newSpan(), newSpan()
	for _, p := range f.Points {
		x.include(p.X)
		y.include(p.Y)
	}
	for _, k := range f.Curves {
		x.include(k.X[0], k.X[len(k.X)-1])
		y.include(k.Y[0], k.Y[len(k.Y)-1])
	}
	return x, y
}

// keys gives the legend of the kinds that occur.
func (f Fit) keys(c *canvas) []key {
	names := []string{"reading", "suspect reading", "estimated from the fit"}
	var keys []key
	for kind, name := range names {
		for _, p := range f.Points {
			if p.Kind == Kind(kind) {
				keys = append(keys, key{name, func(x, y float64) { c.kind(Kind(kind), x, y) }})
				break
			}
		}
	}
	for _, p := range f.Points {
		if p.U > 0 {
			return append(keys, key{"two standard uncertainties", func(x, y float64) {
				k := pen{stroke: ink, width: 1}
				c.line(k, x, y-7, x, y+7)
				c.line(k, x-3, y-7, x+3, y-7)
				c.line(k, x-3, y+7, x+3, y+7)
			}})
		}
	}
	return keys
}

// kind draws the mark of a kind of point: a full circle, a large open
// diamond with a cross stroke, an open square.
func (c *canvas) kind(k Kind, x, y float64) {
	switch k {
	case Suspect:
		c.diamond(pen{stroke: warn, width: 2, fill: paper}, x, y, 7)
		c.line(pen{stroke: warn, width: 2}, x, y-3, x, y+3)
	case Estimated:
		c.square(pen{stroke: ink, width: 1.2, fill: paper}, x, y, 3.5)
	default:
		c.circle(pen{fill: accent}, x, y, 3.5)
	}
}

// dashes tell curves apart without colour.
var dashes = []string{"", "7 4", "2 3", "10 3 2 3", "12 5", "5 2 1 2 1 2"}

// curvePen gives the line of the i-th curve.
func curvePen(i int) pen {
	return pen{stroke: quiet, width: 1.5, dash: dashes[i%len(dashes)]}
}

// drawMain draws curves, bars, marks and labels; suspects last, so that
// nothing hides them.
func (f Fit) drawMain(p plot) {
	names := labels{room: box{p.x.from + 2, p.y.to + 2, p.x.to - 2, p.y.from - 2}}
	for i, k := range f.Curves {
		line := make([]point, len(k.X))
		for j := range k.X {
			line[j] = point{p.x.at(k.X[j]), p.y.at(k.Y[j])}
		}
		p.canvas.path(curvePen(i), false, line...)
	}
	for _, q := range f.Points {
		names.mark(p.x.at(q.X), p.y.at(q.Y), 7)
	}
	f.eachPoint(func(q FitPoint) {
		p.whisker(pen{stroke: ink, width: 1}, q.X, math.Max(q.Y-2*q.U, p.y.lo), q.Y+2*q.U)
		p.canvas.kind(q.Kind, p.x.at(q.X), p.y.at(q.Y))
	})
	f.eachPoint(func(q FitPoint) {
		if q.Kind == Suspect && q.Label != "" {
			p.label(&names, p.x.at(q.X), p.y.at(q.Y), 8, shorten(q.Label, 40), warn, true)
		}
	})
	for _, k := range f.Curves {
		last := len(k.X) - 1
		x, y := p.x.at(k.X[last]), p.y.at(k.Y[last])
		p.label(&names, x, y, 6, shorten(k.Name, 30), ink, true)
	}
}

// eachPoint visits the readings and estimates, then the suspects.
func (f Fit) eachPoint(visit func(FitPoint)) {
	for _, late := range []bool{false, true} {
		for _, q := range f.Points {
			if (q.Kind == Suspect) == late {
				visit(q)
			}
		}
	}
}

// label sets a text beside a mark where there is room.
func (p plot) label(l *labels, x, y, r float64, s string, k colour, must bool) {
	if strings.TrimSpace(s) == "" {
		return
	}
	if at, a, ok := l.place(x, y, r, s, must); ok {
		p.canvas.text(lettering{anchor: a, colour: k, halo: true, bold: k == warn}, at.x, at.y, s)
	}
}
