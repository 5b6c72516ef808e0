package draw_test

import (
	"fmt"
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"scalepair/data/unit"
	"scalepair/fan"
	"scalepair/fan/draw"
)

// crosses reports whether two segments have a point in common, by the signs of
// the four areas that their ends enclose.
func crosses(a, b draw.Line) bool {
	side := func(l draw.Line, p draw.Point) float64 {
		return (l.B.X-l.A.X)*(p.Y-l.A.Y) - (l.B.Y-l.A.Y)*(p.X-l.A.X)
	}
	return side(a, b.A)*side(a, b.B) <= 0 && side(b, a.A)*side(b, a.B) <= 0
}

func TestNoJoinCrossesASlot(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		l := anyNeck(rt)
		d := draw.Fan(l, draw.Options{})
		require.GreaterOrEqual(rt, len(d.Joins), len(l.Frets)-3, "a join in every gap but beside the square line")
		for i, j := range d.Joins {
			for n, slot := range slotsOf(l) {
				require.False(rt, crosses(j, slot), "join %d and slot %d", i, n+1)
			}
			at := l.Neutral.X.MM()
			if !l.Parallel && l.Neutral.Fret != math.Trunc(l.Neutral.Fret) {
				require.False(rt, j.A.X-5 < at && at < j.A.X+5, "join %d runs beside the square line", i)
			}
			if i > 0 {
				require.Greater(rt, j.A.X, d.Joins[i-1].A.X, "joins run from the nut to the bridge")
			}
		}
	})
}

// The test's own yardstick must be able to say yes.
func TestCrosses(t *testing.T) {
	upright := draw.Line{A: draw.Point{X: 1, Y: 5}, B: draw.Point{X: 1, Y: -5}}
	assert.True(t, crosses(upright, draw.Line{A: draw.Point{X: 0, Y: 0}, B: draw.Point{X: 2, Y: 1}}))
	assert.False(t, crosses(upright, draw.Line{A: draw.Point{X: 1.1, Y: 5}, B: draw.Point{X: 2, Y: -5}}))
}

// Strokes must differ without colour: no two on a board have the same
// weight and the same dashes unless they differ in form (rings, crosses, words).
func TestStrokesDifferByWeightOrDash(t *testing.T) {
	lines := []draw.Stroke{
		draw.SlotStroke, draw.LeaderStroke, draw.BoardStroke, draw.BlankStroke, draw.CentreStroke,
		draw.StringStroke, draw.NutStroke, draw.SquareStroke, draw.JoinStroke,
	}
	seen := map[string]draw.Stroke{}
	for _, s := range lines {
		look := fmt.Sprintf("%.2f %v", s.Width(), s.Dash())
		other, double := seen[look]
		assert.False(t, double, "%v looks like %v", s, other)
		seen[look] = s
	}
	for s := draw.SlotStroke; s <= draw.HereStroke; s++ {
		assert.LessOrEqual(t, s.Grey(), 0.6, "%v must show in a grey print", s)
		assert.GreaterOrEqual(t, s.Width(), 0.12, "%v must not break up", s)
		assert.Zero(t, len(s.Dash())%2, "%v: dashes and gaps in pairs", s)
	}
}

// Capitals that name slots are at least 3 mm high, also on crowded boards.
func TestNumbersAreLegible(t *testing.T) {
	for _, name := range instruments() {
		for _, l := range []draw.LayerName{draw.LayerNumbers, draw.LayerTitle, draw.LayerBars, draw.LayerSquare} {
			for _, e := range drawingOf(t, name).Layer(l).Elements {
				if words, ok := e.(draw.Text); ok {
					assert.GreaterOrEqual(t, words.Height, 3.0, "%s: %q", l, words.Body)
				}
			}
		}
	}
}

// No two slot numbers stand on each other, also where slots stand close.
func TestNumbersStandClear(t *testing.T) {
	drawings := map[string]draw.Drawing{}
	for _, name := range instruments() {
		drawings[name] = drawingOf(t, name)
	}
	spec := layoutOf(t, "six").Spec
	spec.Bass, spec.Treble, spec.Frets = unit.MM(440), unit.MM(420), 27
	short, err := fan.New(spec)
	require.NoError(t, err)
	drawings["short"] = draw.Fan(short, draw.Options{})
	for name, d := range drawings {
		var boxes []draw.Rect
		for _, e := range d.Layer(draw.LayerNumbers).Elements {
			if words, ok := e.(draw.Text); ok {
				for _, b := range boxes {
					assert.False(t, b.Touches(words.Bounds().Grow(0.2)), "%s: number %s", name, words.Body)
				}
				boxes = append(boxes, words.Bounds())
			}
		}
	}
}
