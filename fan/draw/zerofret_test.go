package draw_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"scalepair/data/unit"
	"scalepair/fan"
	"scalepair/fan/draw"
)

// A router cuts what lies on the slots' layer, so the zero fret's slot must.
func TestZeroFretIsDrawnAsASlot(t *testing.T) {
	s := layoutOf(t, "six").Spec
	s.ZeroFret, s.NutShelf = true, unit.MM(8)
	l, err := fan.New(s)
	require.NoError(t, err)
	d := draw.Fan(l, draw.Options{Hide: []draw.LayerName{draw.LayerNut}})
	nut := l.Frets[0].Slot
	want := draw.Line{A: draw.Point{X: nut.Bass.X.MM(), Y: -nut.Bass.Y.MM()}, B: draw.Point{X: nut.Treble.X.MM(), Y: -nut.Treble.Y.MM()}}
	var onLayer []draw.Line
	for _, layer := range d.Layers {
		for _, e := range layer.Elements {
			if line, ok := e.(draw.Line); ok && layer.Name == draw.LayerSlots {
				onLayer = append(onLayer, line)
			}
		}
	}
	require.Len(t, onLayer, s.Frets+1)
	assert.Less(t, nearest(want, onLayer), tolMM)

	s.ZeroFret = false
	plain, err := fan.New(s)
	require.NoError(t, err)
	assert.Len(t, drawn(t, plain, draw.Options{}).Lines(draw.SlotStroke), s.Frets+1, "its own slots and the key's sample")
	assert.Len(t, drawn(t, l, draw.Options{}).Lines(draw.SlotStroke), s.Frets+2)
}
