package draw_test

import (
	"math"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"scalepair/data/unit"
	"scalepair/fan"
	"scalepair/fan/draw"
)

// ringsOf gives the middles of all rings of a stroke, by radius.
func ringsOf(r *recorder, layer draw.LayerName) map[float64][]draw.Point {
	out := map[float64][]draw.Point{}
	for _, m := range r.Marks {
		if c, ok := m.What.(draw.Circle); ok && m.Layer == layer {
			out[c.Radius] = append(out[c.Radius], c.Centre)
		}
	}
	return out
}

// The dots asked for, with their diameters, and no others.
func TestDotsAsGiven(t *testing.T) {
	l := layoutOf(t, "six")
	o := draw.Options{Dots: &fan.Dots{Face: []int{5, 12}, Side: []int{7}, Double: []int{12}, FaceDiameter: unit.MM(8), SideDiameter: unit.MM(1.5)}}
	found := ringsOf(drawn(t, l, o), draw.LayerDots)
	require.Len(t, found, 2)
	require.Len(t, found[4], 3, "one at 5, two at 12")
	require.Len(t, found[0.75], 1)
	for i, dot := range l.FaceDots(*o.Dots) {
		assert.InDelta(t, dot.At.X.MM(), found[4][i].X, tolMM)
		assert.InDelta(t, -dot.At.Y.MM(), found[4][i].Y, tolMM, "a right-handed face has its bass side below")
	}
	edge := l.Frets[6].Slot.Bass.X.MM() + l.Frets[7].Slot.Bass.X.MM()
	assert.InDelta(t, edge/2, found[0.75][0].X, tolMM)
	assert.Empty(t, ringsOf(drawn(t, l, draw.Options{Dots: &fan.Dots{}}), draw.LayerDots), "none asked for")
}

func TestDotsByCustom(t *testing.T) {
	l := layoutOf(t, "six")
	d := fan.CommonDots(24)
	found := ringsOf(drawn(t, l, draw.Options{}), draw.LayerDots)
	assert.Len(t, found[3], len(d.Face)+len(d.Double))
	assert.Len(t, found[1], len(d.Face)+len(d.Double))
}

// A string without a compensation does not take the others' away: its own point is
// a ring on the theoretical line, without a cross, and named.
func TestOneCompensationNotKnown(t *testing.T) {
	l := layoutOf(t, "six")
	o := optionsOf(l)
	whole := ringsOf(drawn(t, l, o), draw.LayerSaddles)
	o.Compensations[2] = nil
	r := drawn(t, l, o)
	require.Len(t, whole, 1)
	for radius, points := range ringsOf(r, draw.LayerSaddles) {
		require.Len(t, points, 6)
		for i, at := range points {
			if i != 2 {
				assert.Equal(t, whole[radius][i], at)
				continue
			}
			assert.InDelta(t, l.Strings[2].Saddle.X.MM(), at.X, tolMM)
			assert.InDelta(t, -l.Strings[2].Saddle.Y.MM(), at.Y, tolMM)
			for _, line := range r.Lines(draw.SaddleStroke) {
				middle := line.At(0.5)
				assert.False(t, line.Length() < 10 && math.Hypot(middle.X-at.X, middle.Y-at.Y) < tolMM, "no cross on it")
			}
		}
	}
	named := 0
	for _, words := range r.Texts(draw.LayerLabels) {
		if strings.HasSuffix(words, " · compensation not known") {
			named++
			assert.Regexp(t, "^3 · ", words)
		}
	}
	assert.Equal(t, 1, named)
	assert.Contains(t, strings.Join(r.Texts(draw.LayerLabels), "\n"), "back 1.0 to 1.5 mm", "string 1 keeps its own")
}
