package svg_test

import (
	"bytes"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"scalepair/fan/draw"
	"scalepair/fan/draw/svg"
)

func sheet(e ...draw.Element) draw.Sheet {
	return draw.Sheet{Name: "a <b> & c", Width: 100, Height: 50, Parts: []draw.Part{
		{Drawing: draw.Drawing{Layers: []draw.Layer{{Name: draw.LayerSlots, Elements: e}}}},
	}}
}

func written(t testing.TB, s draw.Sheet) string {
	t.Helper()
	var b bytes.Buffer
	require.NoError(t, svg.Write(&b, s))
	return b.String()
}

func TestTrueSize(t *testing.T) {
	got := written(t, sheet(
		draw.Line{A: draw.Point{X: 10, Y: 20}, B: draw.Point{X: 30.00001, Y: 50}, Stroke: draw.SlotStroke},
		draw.Polyline{Points: []draw.Point{{X: 1, Y: 1}, {X: 2, Y: 1}, {X: 2, Y: 0}}, Stroke: draw.SlotStroke},
		draw.Circle{Centre: draw.Point{X: 5, Y: 45}, Radius: 2, Stroke: draw.BlankStroke},
		draw.Text{At: draw.Point{X: 5, Y: 5}, Height: 5 * draw.CapShare, Align: draw.Right, Body: "7 < 8"},
	))
	// Worked by hand: y runs down from the upper edge, 50 mm above the lower.
	assert.Equal(t, `<?xml version="1.0" encoding="UTF-8"?>
<svg xmlns="http://www.w3.org/2000/svg" xmlns:inkscape="http://www.inkscape.org/namespaces/inkscape" role="img" width="100.0000mm" height="50.0000mm" viewBox="0 0 100.0000 50.0000">
<title>a &lt;b&gt; &amp; c</title>
<g id="slots" class="slots" inkscape:groupmode="layer" inkscape:label="slots" fill="none">
<line x1="10.0000" y1="30.0000" x2="30.0000" y2="0.0000" stroke="#ff0000" stroke-width="0.10"/>
<polyline points="1.0000,49.0000 2.0000,49.0000 2.0000,50.0000" stroke="#ff0000" stroke-width="0.10"/>
<circle cx="5.0000" cy="5.0000" r="2.0000" stroke="#ff0000" stroke-width="0.25" stroke-dasharray="7 2"/>
<text x="5.0000" y="45.0000" font-family="Helvetica, Arial, 'Liberation Sans', sans-serif" font-size="5.0000" fill="#000" text-anchor="end">7 &lt; 8</text>
</g>
</svg>
`, got)
}

func TestTurnedTextTurnsLeft(t *testing.T) {
	got := written(t, sheet(draw.Text{At: draw.Point{X: 5, Y: 5}, Height: 3, Angle: 0.5235987755982988, Body: "up"}))
	assert.Contains(t, got, `transform="rotate(-30.0000 5.0000 45.0000)"`)
}

func TestIdsAreUnique(t *testing.T) {
	s := sheet(draw.Line{B: draw.Point{X: 1}})
	s.Parts[0].Window = draw.Rect{Max: draw.Point{X: 10, Y: 10}}.Corners()
	s.Parts = append(s.Parts, s.Parts[0])
	got := written(t, s)
	for _, id := range []string{`id="window"`, `id="window-2"`, `id="slots"`, `id="slots-2"`, `url(#window-2)`} {
		assert.Equal(t, 1, strings.Count(got, id), id)
	}
}
