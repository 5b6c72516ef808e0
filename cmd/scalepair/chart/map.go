package chart

import (
	"math"
	"slices"
)

// Map is the choice as a map of scale pairs: bass across, treble up, both in
// one unit. The pairs as good as the best share one flat tint inside an
// outline; outside it the tint grows paler with the feel error; a place on the
// grid without a pair is hatched: a limit drops it.
type Map struct {
	Title, XLabel, YLabel string
	Pairs                 []Pair
	Picks                 []Pick
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

// shades are the opacities of the tint: of the pairs as good as the best, then
// of the others from the least error on. steps is how many bands of error the
// others are divided into at most.
var shades = []float64{0.75, 0.4, 0.28, 0.18, 0.1}

// SVG draws the map, "" without pairs.
func (m Map) SVG() string {
	if len(m.Pairs) == 0 {
		return ""
	}
	g := newGrid(m.Pairs)
	bounds := m.bounds()
	c, top := newCanvas(560, m.Title+": "+m.YLabel+" against "+m.XLabel, m.Title, m.keys(g, bounds))
	p := panel{c, extent{g.x[0].lo, g.x[len(g.x)-1].hi}.scale(0.02, 64, width-16), extent{g.y[0].lo, g.y[len(g.y)-1].hi}.scale(0.02, 500, top+34)}
	if g.gaps() {
		p.hatch()
	}
	for j := range g.y {
		p.row(g, bounds, j)
	}
	p.outline(g)
	ends := p.differences()
	p.axes(m.XLabel, m.YLabel)
	names := p.labels()
	p.picks(m.Picks, names)
	for _, e := range ends {
		x, y := p.x.at(e.X)+8, p.y.at(e.Y)-6
		if names.covers(box{x, y - 12, x + textWidth(e.Name), y + 4}) == 0 {
			p.text("sp-over", x, y, e.Name)
		}
	}
	return c.done()
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
	swatch := func(opacity float64) func(*canvas, float64, float64) {
		return func(c *canvas, x, y float64) {
			c.shaded("sp-cell", opacity, x-11, y-7, 22, 14)
			c.rect("sp-axis", x-11, y-7, 22, 14)
		}
	}
	var keys []key
	if slices.ContainsFunc(m.Pairs, func(q Pair) bool { return q.Good }) {
		keys = append(keys, key{"as good as the best", swatch(shades[0])})
	}
	if slices.ContainsFunc(m.Pairs, func(q Pair) bool { return !q.Good }) {
		for i, b := range bounds {
			keys = append(keys, key{"feel error under " + b.label + " %", swatch(shades[i+1])})
		}
		label := "more"
		if len(bounds) == 0 {
			label = "not as good"
		}
		keys = append(keys, key{label, swatch(shades[len(bounds)+1])})
	}
	if g.gaps() {
		keys = append(keys, key{"dropped by a limit", func(c *canvas, x, y float64) {
			for dx := -8.0; dx <= 8; dx += 8 {
				c.path("sp-grid", x+dx-4, y+7, x+dx+4, y-7)
			}
			c.rect("sp-axis", x-11, y-7, 22, 14)
		}})
	}
	return keys
}

// grid holds the pairs by column and row, and what every column and row extents:
// to half way to its neighbours.
type grid struct {
	x, y  []extent
	pairs map[[2]int]Pair
}

func newGrid(pairs []Pair) grid {
	var xs, ys []float64
	for _, q := range pairs {
		xs, ys = append(xs, q.X), append(ys, q.Y)
	}
	slices.Sort(xs)
	slices.Sort(ys)
	xs, ys = slices.Compact(xs), slices.Compact(ys)
	g := grid{extents(xs), extents(ys), map[[2]int]Pair{}}
	for _, q := range pairs {
		i, _ := slices.BinarySearch(xs, q.X)
		j, _ := slices.BinarySearch(ys, q.Y)
		g.pairs[[2]int{i, j}] = q
	}
	return g
}

func extents(at []float64) []extent {
	out := make([]extent, len(at))
	for i, v := range at {
		before, after := 0.5, 0.5
		if i > 0 {
			before = (v - at[i-1]) / 2
			after = before
		}
		if i < len(at)-1 {
			after = (at[i+1] - v) / 2
			if i == 0 {
				before = after
			}
		}
		out[i] = extent{v - before, v + after}
	}
	return out
}

// gaps reports whether a place of the grid has no pair.
func (g grid) gaps() bool { return len(g.pairs) < len(g.x)*len(g.y) }

// row draws row j, neighbours of one shade as one rectangle.
func (p panel) row(g grid, bounds []tick, j int) {
	top, bottom := p.y.at(g.y[j].hi), p.y.at(g.y[j].lo)
	for i := 0; i < len(g.x); {
		q, ok := g.pairs[[2]int{i, j}]
		last := i
		for ok && last+1 < len(g.x) {
			next, more := g.pairs[[2]int{last + 1, j}]
			if !more || next.shade(bounds) != q.shade(bounds) {
				break
			}
			last++
		}
		if ok {
			left, right := p.x.at(g.x[i].lo), p.x.at(g.x[last].hi)
			p.rect("sp-paper", left, top, right-left, bottom-top)
			p.shaded("sp-cell", shades[q.shade(bounds)], left, top, right-left, bottom-top)
		}
		i = last + 1
	}
}

// outline draws the edges between the pairs as good as the best and the others.
func (p panel) outline(g grid) {
	good := func(i, j int) bool { return g.pairs[[2]int{i, j}].Good }
	for i, x := range g.x {
		for j, y := range g.y {
			if !good(i, j) {
				continue
			}
			left, right, top, bottom := p.x.at(x.lo), p.x.at(x.hi), p.y.at(y.hi), p.y.at(y.lo)
			for _, side := range []struct {
				i, j           int
				x1, y1, x2, y2 float64
			}{{i - 1, j, left, top, left, bottom}, {i + 1, j, right, top, right, bottom}, {i, j - 1, left, bottom, right, bottom}, {i, j + 1, left, top, right, top}} {
				if !good(side.i, side.j) {
					p.path("sp-outline", side.x1, side.y1, side.x2, side.y2)
				}
			}
		}
	}
}

// hatch fills the panel with slanted lines, 9 units apart.
func (p panel) hatch() {
	left, right, top, bottom := p.x.at(p.x.lo), p.x.at(p.x.hi), p.y.at(p.y.hi), p.y.at(p.y.lo)
	for k := left + top; k < right+bottom; k += 9 { // x + y = k
		x1, x2 := math.Max(left, k-bottom), math.Min(right, k-top)
		if x1 < x2 {
			p.path("sp-grid", x1, k-x1, x2, k-x2)
		}
	}
}

// differences draws lines of equal difference, and gives their lower ends.
func (p panel) differences() []Pick {
	var ends []Pick
	all := scale{lo: p.x.lo - p.y.hi, hi: p.x.hi - p.y.lo}
	for _, t := range all.ticks(9) {
		x1, x2 := math.Max(p.x.lo, p.y.lo+t.value), math.Min(p.x.hi, p.y.hi+t.value)
		if x1 < x2 {
			p.path("sp-curve sp-dash1", p.x.at(x1), p.y.at(x1-t.value), p.x.at(x2), p.y.at(x2-t.value))
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
		names.mark(p.x.at(q.X), p.y.at(q.Y), 7)
		p.circle("sp-open", p.x.at(q.X), p.y.at(q.Y), 5)
	}
	for _, q := range placed {
		p.set(names, "sp-bold", p.x.at(q.X), p.y.at(q.Y), 7, shorten(q.Name, 50))
	}
}
