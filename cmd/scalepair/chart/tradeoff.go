package chart

import (
	"cmp"
	"fmt"
	"slices"
)

// SVG draws the chart. Values that are not finite, and a chart without pairs,
// are errors, and the text is "".
func (t TradeOff) SVG() (string, error) {
	if err := t.check(); err != nil {
		return "", err
	}
	c := newCanvas(472, t.Title+": "+t.YLabel+" against "+t.XLabel)
	top := c.heading(t.Title, t.keys(c)) + 34
	xs, ys := newSpan(), newSpan()
	for _, p := range t.Pairs {
		xs.include(p.X)
		ys.include(p.Y)
	}
	p := plot{c, xs.linearScale(64, width-16), ys.linearScale(412, top)}
	p.frame(t.XLabel, t.YLabel)
	t.drawOthers(p)
	t.drawFront(p)
	t.drawLabels(p)
	return c.done(), nil
}

func (t TradeOff) check() error {
	c := check{title: t.Title}
	if len(t.Pairs) == 0 {
		c.refuse("no pairs to draw", "", "")
	}
	for _, p := range t.Pairs {
		c.within(p.X, "x of a pair", p.Label)
		c.within(p.Y, "y of a pair", p.Label)
	}
	return c.faults.Err()
}

func (t TradeOff) keys(c *canvas) []key {
	has := func(f func(Pair) bool) bool { return slices.ContainsFunc(t.Pairs, f) }
	var keys []key
	if has(func(p Pair) bool { return p.Best }) {
		keys = append(keys, key{cmp.Or(t.Ringed, "best"), func(x, y float64) { c.best(x, y) }})
	}
	if has(func(p Pair) bool { return p.Front }) {
		keys = append(keys, key{"no pair is better in everything", func(x, y float64) {
			c.line(frontPen, x-12, y, x+12, y)
			c.front(x, y)
		}})
	}
	if has(Pair.other) {
		keys = append(keys, key{"other pairs", func(x, y float64) { c.other(x, y) }})
	}
	return keys
}

var frontPen = pen{stroke: accent, width: 1.5}

func (p Pair) other() bool { return !p.Front && !p.Best }

// best draws a full diamond in a ring, front a full diamond, other a small
// open circle.
func (c *canvas) best(x, y float64) {
	c.circle(pen{stroke: ink, width: 2}, x, y, 10)
	c.front(x, y)
}

func (c *canvas) front(x, y float64) {
	c.diamond(pen{fill: accent, stroke: paper, width: 0.8}, x, y, 5.5)
}

func (c *canvas) other(x, y float64) { c.circle(pen{stroke: quiet, width: 1}, x, y, 2.5) }

// drawOthers draws each place once, however many pairs share it.
func (t TradeOff) drawOthers(p plot) {
	drawn := map[string]bool{}
	for _, q := range t.Pairs {
		x, y := p.x.at(q.X), p.y.at(q.Y)
		place := fmt.Sprint(num(x), num(y))
		if q.other() && !drawn[place] {
			drawn[place] = true
			p.canvas.other(x, y)
		}
	}
}

// drawFront draws the line along the front's lower edge, then its marks.
func (t TradeOff) drawFront(p plot) {
	var edge []point
	for _, q := range t.edge() {
		edge = append(edge, point{p.x.at(q.X), p.y.at(q.Y)})
	}
	if len(edge) > 1 {
		p.canvas.path(frontPen, false, edge...)
	}
	for _, q := range t.Pairs {
		if q.Best {
			p.canvas.best(p.x.at(q.X), p.y.at(q.Y))
		} else if q.Front {
			p.canvas.front(p.x.at(q.X), p.y.at(q.Y))
		}
	}
}

// edge gives the pairs of the front that no other of them beats in the two
// costs shown, in rising x. A front over a third cost holds more.
func (t TradeOff) edge() []Pair {
	var front []Pair
	for _, q := range t.Pairs {
		if q.Front {
			front = append(front, q)
		}
	}
	slices.SortStableFunc(front, func(a, b Pair) int { return cmp.Or(cmp.Compare(a.X, b.X), cmp.Compare(a.Y, b.Y)) })
	var edge []Pair
	for _, q := range front {
		if len(edge) == 0 || q.Y < edge[len(edge)-1].Y {
			edge = append(edge, q)
		}
	}
	return edge
}

// sparse is the number of pairs up to which labels keep clear of all of them;
// in a dense cloud that would leave the front without names.
const sparse = 400

// drawLabels names the best pairs always, those of the front where there is
// room, the edge first.
func (t TradeOff) drawLabels(p plot) {
	names := labels{room: box{p.x.from + 2, p.y.to - 8, p.x.to, p.y.from - 2}}
	for _, q := range t.Pairs {
		switch {
		case !q.other():
			names.mark(p.x.at(q.X), p.y.at(q.Y), 6)
		case len(t.Pairs) <= sparse:
			names.mark(p.x.at(q.X), p.y.at(q.Y), 3)
		}
	}
	set := func(q Pair, r float64, must bool) {
		p.label(&names, p.x.at(q.X), p.y.at(q.Y), r, shorten(q.Label, 30), ink, must)
	}
	for _, q := range t.Pairs {
		if q.Best {
			set(q, 11, true)
		}
	}
	for _, q := range t.edge() {
		if !q.Best {
			set(q, 6, false)
		}
	}
}
