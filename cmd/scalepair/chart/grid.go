package chart

import (
	"math"
	"slices"
)

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

// row draws row j, neighbours of one shade as one rectangle. Edges lie on whole
// units, so that no seam shows.
func (p panel) row(g grid, bounds []tick, j int) {
	top, bottom := math.Round(p.y.at(g.y[j].hi)), math.Round(p.y.at(g.y[j].lo))
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
			left, right := math.Round(p.x.at(g.x[i].lo)), math.Round(p.x.at(g.x[last].hi))
			p.rect("sp-paper", 1, left, top, right-left, bottom-top)
			p.rect("sp-cell", shades[q.shade(bounds)], left, top, right-left, bottom-top)
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
			left, right, top, bottom := math.Round(p.x.at(x.lo)), math.Round(p.x.at(x.hi)), math.Round(p.y.at(y.hi)), math.Round(p.y.at(y.lo))
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
