package draw_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"scalepair/fan/draw"
)

func TestQuarterTurnsAreExact(t *testing.T) {
	p := draw.Point{X: 3, Y: 1}
	want := []draw.Point{{X: 3, Y: 1}, {X: -1, Y: 3}, {X: -3, Y: -1}, {X: 1, Y: -3}}
	for i, w := range want {
		assert.Equal(t, w, draw.Turn(float64(i)*math.Pi/2).Point(p))
	}
}

func TestThenDoesTheFirstFirst(t *testing.T) {
	m := draw.Move(2, 0).Then(draw.Scale(10, 100))
	assert.Equal(t, draw.Point{X: 30, Y: 100}, m.Point(draw.Point{X: 1, Y: 1}))
	assert.InDelta(t, math.Pi/4, draw.Turn(math.Pi/4).Angle(0), 1e-12)
}

func TestScaleRefusesToMirror(t *testing.T) {
	assert.Panics(t, func() { draw.Scale(1, -1) })
	assert.Panics(t, func() { draw.Scale(0, 1) })
	assert.Panics(t, func() { draw.Scale(math.NaN(), 1) })
}

func TestUnlikeScalesMakeACircleARing(t *testing.T) {
	circle := draw.Circle{Centre: draw.Point{X: 10, Y: 0}, Radius: 5}
	turned, ok := circle.Through(draw.Turn(1)).(draw.Circle)
	require.True(t, ok, "a turned circle stays one")
	assert.InDelta(t, 5, turned.Radius, 1e-12)
	ring, ok := circle.Through(draw.Scale(1.1, 1)).(draw.Polyline)
	require.True(t, ok)
	assert.True(t, ring.Closed)
	b := ring.Bounds()
	assert.InDelta(t, 11, b.Width(), 1e-9)
	assert.InDelta(t, 10, b.Height(), 1e-9)
}

func TestBounds(t *testing.T) {
	assert.True(t, draw.Drawing{}.Bounds().Empty())
	d := draw.Drawing{Layers: []draw.Layer{{Name: draw.LayerDots, Elements: []draw.Element{
		draw.Line{A: draw.Point{X: 1, Y: 2}, B: draw.Point{X: -3, Y: 5}},
		draw.Circle{Centre: draw.Point{X: 10, Y: 0}, Radius: 2},
	}}}}
	assert.Equal(t, draw.Rect{Min: draw.Point{X: -3, Y: -2}, Max: draw.Point{X: 12, Y: 5}}, d.Bounds())
}
