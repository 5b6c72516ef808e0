package draw_test

import (
	"fmt"
	"testing"

	"github.com/stretchr/testify/assert"

	"scalepair/fan"
	"scalepair/fan/draw"
	"scalepair/fan/draw/tile"
)

func TestRegistrationMarksAgreeOnBothNeighbours(t *testing.T) {
	everyWay(t, func(t *testing.T, _ *fan.Layout, p tile.Plan, _ tile.Options) {
		for i := 1; i < len(p.Pieces); i++ {
			left, shared := marks(t, p, i-1), map[string]int{}
			for mark, what := range marks(t, p, i) {
				if left[mark] != "" {
					shared[what]++
				}
			}
			// Two crosses, and beside each the two pieces' numbers.
			assert.Equal(t, map[string]int{"cross": 2, fmt.Sprint(i): 2, fmt.Sprint(i + 1): 2}, shared)
		}
	})
}

// marks gives what piece n has on its joins, by its place on the drawing.
func marks(t *testing.T, p tile.Plan, n int) map[string]string {
	part, seen := partOf(p, n), map[string]string{}
	shown := draw.NoRect().Include(part.Window...)
	for _, e := range part.Drawing.Layer(draw.LayerJoins).Elements {
		switch e := e.(type) {
		case draw.Circle:
			at := back(p.Pieces[n].Place, e.Centre)
			seen[fmt.Sprintf("cross at %.6f %.6f", at.X, at.Y)] = "cross"
			assert.Equal(t, shown, shown.Union(e.Bounds()), "crosses are shown whole")
		case draw.Text:
			at := back(p.Pieces[n].Place, e.At)
			seen[fmt.Sprintf("%s at %.6f %.6f", e.Body, at.X, at.Y)] = e.Body
		}
	}
	return seen
}

// partOf finds the part that shows piece n: pieces come in order on each sheet.
func partOf(p tile.Plan, n int) draw.Part {
	before := 0
	for _, piece := range p.Pieces[:n] {
		if piece.Sheet == p.Pieces[n].Sheet {
			before++
		}
	}
	return p.Sheets[p.Pieces[n].Sheet].Parts[before]
}

// back carries a point of the sheet to the drawing, by Cramer's rule.
func back(m draw.Map, p draw.Point) draw.Point {
	x, y, det := p.X-m.X0, p.Y-m.Y0, m.XX*m.YY-m.XY*m.YX
	return draw.Point{X: (x*m.YY - y*m.XY) / det, Y: (m.XX*y - m.YX*x) / det}
}
