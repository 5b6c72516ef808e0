package chart

import (
	"fmt"
	"slices"
	"strings"
)

// Map is the choice as a map of scale pairs: bass across, treble up, both in
// one unit. The pairs as good as the best share one flat tint inside an
// outline; outside it the tint grows paler with the feel error; a place on the
// grid without a pair is hatched: a limit drops it. Upper is a second scale over
// the bass lengths.
type Map struct {
	Title, XLabel, YLabel, Caption string
	Pairs                          []Pair
	Picks                          []Pick
	UpperLabel                     string
	Upper                          []Upper
}

// Pair is one scale pair of the grid: bass, treble, feel error in percent.
type Pair struct {
	X, Y, Error float64
	Good        bool // as good as the best
}

// Pick is a pair with a name. Picks of one place share one label.
type Pick struct {
	X, Y float64
	Name string
}

// Upper is a text over a bass length.
type Upper struct {
	X    float64
	Text string
}

// shades are the opacities of the tint: of the pairs as good as the best, then
// of the others from the least error on.
var shades = []float64{0.75, 0.4, 0.28, 0.18, 0.1}

// SVG draws the map, "" without pairs.
func (m Map) SVG() string {
	if len(m.Pairs) == 0 {
		return ""
	}
	bounds := m.bounds()
	g := newGrid(m.Pairs, func(q Pair) int { return q.shade(bounds) })
	c, top := newCanvas(m.Title, m.keys(g, bounds))
	above := 10.0
	if len(m.Upper) > 0 {
		top, above = top+24, 34
	}
	p := panel{c, extent{g.x[0], g.x[len(g.x)-1]}.scale(0.02, 64, width-16), extent{g.y[0], g.y[len(g.y)-1]}.scale(0.02, top+334, top+34)}
	if g.has(dropped) {
		p.hatch()
	}
	g = g.placed(p)
	p.cells(g)
	p.outline(g)
	ends := p.differences()
	p.axes(m.XLabel, m.YLabel, above)
	p.upper(m.UpperLabel, m.Upper)
	names := p.labels()
	p.picks(m.Picks, names)
	for _, e := range ends {
		x, y := p.x.at(e.X)+8, p.y.at(e.Y)-6
		if b := (box{x, y - 12, x + textWidth(e.Name), y + 4}); names.free(b) {
			names.texts = append(names.texts, b)
			p.text("sp-over", x, y, e.Name)
		}
	}
	return c.done(p.y.from+66, m.Caption, m.alt())
}

// alt says the ranges, how many pairs are as good, and where the picks are.
func (m Map) alt() string {
	x, y, good := newExtent(), newExtent(), 0
	for _, q := range m.Pairs {
		x.include(q.X)
		y.include(q.Y)
		if q.Good {
			good++
		}
	}
	words := []string{fmt.Sprintf("%s: map with %s from %g to %g across and %s from %g to %g up", m.Title, m.XLabel, x.lo, x.hi, m.YLabel, y.lo, y.hi)}
	if good > 0 {
		words = append(words, fmt.Sprintf("%d of the %d pairs drawn are as good as the best", good, len(m.Pairs)))
	}
	for _, q := range m.Picks {
		words = append(words, fmt.Sprintf("%s at %g / %g", q.Name, q.X, q.Y))
	}
	return strings.Join(words, "; ") + "."
}

// upper draws the second scale, as many of its texts as there is room for.
func (p panel) upper(label string, list []Upper) {
	end := 0.0
	for _, u := range list {
		x, half := p.x.at(u.X), textWidth(u.Text)/2
		if x-half < end+6 || x+half > width {
			continue
		}
		p.path("sp-axis", x, p.y.to, x, p.y.to-5)
		p.text("sp-middle", x, p.y.to-10, u.Text)
		end = x + half
	}
	if end > 0 {
		p.path("sp-axis", p.x.from, p.y.to, p.x.to, p.y.to)
		p.text("sp-end", p.x.to, p.y.to-34, shorten(label, 80))
	}
}

// bounds are the errors at which one shade ends and the next begins, rising.
func (m Map) bounds() []tick {
	others := newExtent()
	for _, q := range m.Pairs {
		if !q.Good {
			others.include(q.Error)
		}
	}
	if others.hi-others.lo < 0.01 { // less than is printed
		return nil
	}
	return slices.DeleteFunc(others.scale(0, 0, 1).ticks(len(shades)-2), func(t tick) bool { return t.value <= others.lo || t.value >= others.hi })
}

// shade is the index of a pair's shade.
func (q Pair) shade(bounds []tick) int {
	if q.Good {
		return 0
	}
	i := 1
	for _, b := range bounds {
		if q.Error >= b.value {
			i++
		}
	}
	return i
}

func (m Map) keys(g grid, bounds []tick) []key {
	others := slices.ContainsFunc(m.Pairs, func(q Pair) bool { return !q.Good })
	swatch := func(on bool, label string, shade int) key {
		return key{on, label, func(c *canvas, x, y float64) {
			c.rect("sp-cell", shades[shade], x-11, y-7, 22, 14)
			c.rect("sp-axis", 1, x-11, y-7, 22, 14)
		}}
	}
	keys := []key{swatch(g.has(0), "as good as the best", 0)}
	for i, b := range bounds {
		keys = append(keys, swatch(others, "feel error under "+b.label+" %", i+1))
	}
	last := map[bool]string{true: "more", false: "feel error"}[len(bounds) > 0]
	if last != "more" && g.has(0) {
		last = "not as good"
	}
	return append(keys, swatch(others, last, len(bounds)+1), key{g.has(dropped), "dropped by a limit", func(c *canvas, x, y float64) {
		for dx := -8.0; dx <= 8; dx += 8 {
			c.path("sp-grid", x+dx-4, y+7, x+dx+4, y-7)
		}
		c.rect("sp-axis", 1, x-11, y-7, 22, 14)
	}})
}

// differences draws lines of equal difference, and gives their lower ends.
func (p panel) differences() []Pick {
	var ends []Pick
	all := scale{lo: p.x.lo - p.y.hi, hi: p.x.hi - p.y.lo}
	for _, t := range all.ticks(9) {
		x1, x2 := max(p.x.lo, p.y.lo+t.value), min(p.x.hi, p.y.hi+t.value)
		if x1 < x2 {
			p.path("sp-curve", p.x.at(x1), p.y.at(x1-t.value), p.x.at(x2), p.y.at(x2-t.value))
			ends = append(ends, Pick{x1, x1 - t.value, "difference " + t.label})
		}
	}
	return ends
}

// picks marks and names the picks.
func (p panel) picks(picks []Pick, names *labels) {
	var placed []Pick
	for _, q := range picks {
		if i := slices.IndexFunc(placed, func(o Pick) bool { return o.X == q.X && o.Y == q.Y }); i >= 0 {
			placed[i].Name += ", " + q.Name
			continue
		}
		placed = append(placed, q)
	}
	for _, q := range placed {
		names.mark(around(p.x.at(q.X), p.y.at(q.Y), 7))
		p.shape("sp-open", 0, p.x.at(q.X), p.y.at(q.Y), 5)
	}
	for _, q := range placed {
		p.name(names, "sp-bold", p.x.at(q.X), p.y.at(q.Y), 7, shorten(q.Name, 50))
	}
}
