package draw_test

import (
	"fmt"
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"scalepair/data/testutil"
	"scalepair/data/unit"
	"scalepair/fan"
	"scalepair/fan/draw"
)

var _ = testutil.Seed("1")

// crosses reports whether two segments have a point in common, by the signs of
// the four areas that their ends enclose.
func crosses(a, b draw.Line) bool {
	side := func(l draw.Line, p draw.Point) float64 {
		return (l.B.X-l.A.X)*(p.Y-l.A.Y) - (l.B.Y-l.A.Y)*(p.X-l.A.X)
	}
	return side(a, b.A)*side(a, b.B) <= 0 && side(b, a.A)*side(b, a.B) <= 0
}

func TestNoJoinCrossesASlot(t *testing.T) {
	upright := draw.Line{A: draw.Point{X: 1, Y: 5}, B: draw.Point{X: 1, Y: -5}}
	require.True(t, crosses(upright, draw.Line{B: draw.Point{X: 2, Y: 1}}), "the yardstick can say yes")
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

// Strokes must differ without colour: no two of lines have the same weight and
// dashes. The saw's line is the finest, nut and edge are the heaviest, what
// recedes is grey.
func TestStrokesDifferByWeightOrDash(t *testing.T) {
	seen := map[string]draw.Stroke{}
	for s := draw.SlotStroke; s <= draw.SaddleStroke; s++ {
		if s == draw.EndStroke {
			continue // a ring
		}
		look := fmt.Sprintf("%.2f %.1f %v", s.Width(), s.Grey(), s.Dash())
		other, double := seen[look]
		assert.False(t, double, "%v looks like %v", s, other)
		seen[look] = s
		if s != draw.SlotStroke {
			assert.GreaterOrEqual(t, s.Width(), draw.SlotStroke.Width(), "%v", s)
		}
		if s != draw.BoardStroke && s != draw.NutStroke {
			assert.Less(t, s.Width(), draw.NutStroke.Width(), "%v", s)
		}
	}
	assert.Equal(t, 0.1, draw.SlotStroke.Width())
	for _, s := range []draw.Stroke{draw.KerfStroke, draw.StringStroke, draw.BlankStroke} {
		assert.GreaterOrEqual(t, s.Grey(), 0.5, "%v recedes", s)
	}
	for s := draw.SlotStroke; s <= draw.HereStroke; s++ {
		assert.LessOrEqual(t, s.Grey(), 0.6, "%v must show in a grey print", s)
		assert.GreaterOrEqual(t, s.Width(), 0.1, "%v must not break up", s)
		assert.Zero(t, len(s.Dash())%2, "%v: dashes and gaps in pairs", s)
	}
}

// Words are legible, and numbers and distances never stand on one another, also
// where slots stand close.
func TestNumbersStandClear(t *testing.T) {
	drawings := map[string]draw.Drawing{}
	for _, name := range instruments() {
		drawings[name] = drawingOf(t, name)
	}
	spec := layoutOf(t, "six").Spec
	spec.Bass, spec.Treble, spec.Frets = unit.MM(440), unit.MM(420), 27
	short, err := fan.New(spec)
	require.NoError(t, err)
	for name, u := range map[string]unit.LengthUnit{"short": unit.Millimetres, "in 64ths": unit.InchFractions} {
		drawings[name] = draw.Fan(short, draw.Options{Unit: u})
	}
	for name, d := range drawings {
		for layer, least := range map[draw.LayerName]float64{
			draw.LayerNumbers: 1.8, draw.LayerTitle: 2.6, draw.LayerBars: 3, draw.LayerNamed: 2.6, draw.LayerKey: 1.8,
		} {
			for _, words := range all[draw.Text](layer, d) {
				assert.GreaterOrEqual(t, words.Height, least, "%s: %q", name, words.Body)
			}
		}
		numbers := all[draw.Text](draw.LayerNumbers, d)
		for i, a := range numbers {
			for _, b := range numbers[:i] {
				assert.False(t, figures(a).Touches(figures(b)), "%s: %s and %s", name, a.Body, b.Body)
			}
		}
	}
}

// figures is the room of level, centred figures, which have no descenders.
func figures(t draw.Text) draw.Rect {
	return draw.Rect{Min: draw.Point{X: t.At.X - t.Width()/2, Y: t.At.Y}, Max: draw.Point{X: t.At.X + t.Width()/2, Y: t.At.Y + t.Height}}
}

func TestMaps(t *testing.T) {
	for i, w := range []draw.Point{{X: 3, Y: 1}, {X: -1, Y: 3}, {X: -3, Y: -1}, {X: 1, Y: -3}} {
		assert.Equal(t, w, draw.Turn(float64(i)*math.Pi/2).Point(draw.Point{X: 3, Y: 1}), "quarter turns are exact")
	}
	m := draw.Move(2, 0).Then(draw.Scale(10, 100))
	assert.Equal(t, draw.Point{X: 30, Y: 100}, m.Point(draw.Point{X: 1, Y: 1}), "the first is done first")
	assert.Panics(t, func() { draw.Scale(1, -1) }, "nothing mirrors")
	assert.Panics(t, func() { draw.Scale(math.NaN(), 1) })
	circle := draw.Circle{Centre: draw.Point{X: 10, Y: 0}, Radius: 5}
	turned, ok := circle.Through(draw.Turn(1)).(draw.Circle)
	require.True(t, ok, "a turned circle stays one")
	assert.InDelta(t, 5, turned.Radius, 1e-12)
	assert.InDelta(t, 5*math.Sqrt(1.01*0.99), circle.Through(draw.Scale(1.01, 0.99)).(draw.Circle).Radius, 1e-12)
	assert.True(t, draw.Drawing{}.Bounds().Empty())
}
