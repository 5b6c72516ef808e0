package chart

import (
	"math"
	"slices"
)

// grid is the map's cells: the edges of its columns and rows, half way between
// neighbours, and the index of every cell's shade, dropped where there is no pair.
type grid struct {
	x, y  []float64
	shade [][]int // by column and row
}

const dropped = -1

func newGrid(pairs []Pair, shade func(Pair) int) grid {
	var xs, ys []float64
	for _, q := range pairs {
		xs, ys = append(xs, q.X), append(ys, q.Y)
	}
	slices.Sort(xs)
	slices.Sort(ys)
	xs, ys = slices.Compact(xs), slices.Compact(ys)
	g := grid{edges(xs), edges(ys), make([][]int, len(xs))}
	for i := range g.shade {
		g.shade[i] = slices.Repeat([]int{dropped}, len(ys))
	}
	for _, q := range pairs {
		i, _ := slices.BinarySearch(xs, q.X)
		j, _ := slices.BinarySearch(ys, q.Y)
		g.shade[i][j] = shade(q)
	}
	return g
}

// edges stand between neighbours; the first and the last cell are even about
// theirs, and a cell without neighbours is 1 wide.
func edges(at []float64) []float64 {
	n := len(at)
	first, last := 0.5, 0.5
	if n > 1 {
		first, last = (at[1]-at[0])/2, (at[n-1]-at[n-2])/2
	}
	out := []float64{at[0] - first}
	for i := 1; i < n; i++ {
		out = append(out, (at[i-1]+at[i])/2)
	}
	return append(out, at[n-1]+last)
}

// has reports whether any cell has a shade.
func (g grid) has(shade int) bool {
	return slices.ContainsFunc(g.shade, func(column []int) bool { return slices.Contains(column, shade) })
}

// placed gives the grid with its edges on the panel, on whole units, so that no
// seam shows between cells.
func (g grid) placed(p panel) grid {
	for i, x := range g.x {
		g.x[i] = math.Round(p.x.at(x))
	}
	for j, y := range g.y {
		g.y[j] = math.Round(p.y.at(y))
	}
	return g
}

// cells draws all rows of a placed grid, neighbours of one shade as one rectangle.
func (c *canvas) cells(g grid) {
	for j := range len(g.y) - 1 {
		start := 0
		for i := 1; i <= len(g.shade); i++ {
			shade := g.shade[start][j]
			if i < len(g.shade) && g.shade[i][j] == shade {
				continue
			}
			if shade != dropped {
				c.rect("sp-paper", 1, g.x[start], g.y[j+1], g.x[i]-g.x[start], g.y[j]-g.y[j+1])
				c.rect("sp-cell", shades[shade], g.x[start], g.y[j+1], g.x[i]-g.x[start], g.y[j]-g.y[j+1])
			}
			start = i
		}
	}
}

// outline draws the edges between the cells as good as the best and the others.
func (c *canvas) outline(g grid) {
	good := func(i, j int) bool {
		return i >= 0 && j >= 0 && i < len(g.x)-1 && j < len(g.y)-1 && g.shade[i][j] == 0
	}
	for i := range g.x {
		for j := range g.y {
			if j < len(g.y)-1 && good(i-1, j) != good(i, j) {
				c.path("sp-outline", g.x[i], g.y[j], g.x[i], g.y[j+1])
			}
			if i < len(g.x)-1 && good(i, j-1) != good(i, j) {
				c.path("sp-outline", g.x[i], g.y[j], g.x[i+1], g.y[j])
			}
		}
	}
}

// hatch fills the panel with slanted lines, 9 units apart.
func (p panel) hatch() {
	left, right, top, bottom := p.x.from, p.x.to, p.y.to, p.y.from
	for k := left + top; k < right+bottom; k += 9 { // x + y = k
		if x1, x2 := max(left, k-bottom), min(right, k-top); x1 < x2 {
			p.path("sp-grid", x1, k-x1, x2, k-x2)
		}
	}
}
