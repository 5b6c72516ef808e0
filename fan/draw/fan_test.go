package draw_test

import (
	"math"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"scalepair/fan"
	"scalepair/fan/draw"
)

// tolMM is a rounding in the last of some fifty additions of numbers of 1000 mm.
const tolMM = 1e-9

func record(d draw.Drawing) *recorder {
	r := &recorder{}
	d.On(r)
	return r
}

func drawn(t *testing.T, l *fan.Layout, o draw.Options) *recorder {
	t.Helper()
	return record(draw.Fan(l, o))
}

func TestSlotsStandWhereTheLayoutSays(t *testing.T) {
	for _, name := range instruments() {
		t.Run(name, func(t *testing.T) {
			l := layoutOf(t, name)
			found := drawn(t, l, optionsOf(l)).Lines(draw.SlotStroke)
			want := slotsOf(l)
			// One more in the key, as a sample.
			require.Len(t, found, len(want)+1)
			for i, w := range want {
				assert.Less(t, nearest(w, found), tolMM, "slot %d", i+1)
			}
		})
	}
}

func TestHandedness(t *testing.T) {
	l := layoutOf(t, "six")
	right := drawn(t, l, draw.Options{}).Lines(draw.SlotStroke)
	left := drawn(t, l, draw.Options{LeftHanded: true}).Lines(draw.SlotStroke)
	last := l.Frets[24].Slot
	require.Greater(t, last.Bass.Y.MM(), 0.0, "the layout's bass side is positive")
	// Seen on the face with the nut at the left, a right-handed board has its
	// bass side below: the lower end is the bass end, nearer the bridge here.
	assert.Less(t, nearest(draw.Line{
		A: draw.Point{X: last.Bass.X.MM(), Y: -last.Bass.Y.MM()}, B: draw.Point{X: last.Treble.X.MM(), Y: -last.Treble.Y.MM()},
	}, right), tolMM)
	assert.Less(t, nearest(draw.Line{
		A: draw.Point{X: last.Bass.X.MM(), Y: last.Bass.Y.MM()}, B: draw.Point{X: last.Treble.X.MM(), Y: last.Treble.Y.MM()},
	}, left), tolMM)
}

func TestEveryPartIsDrawn(t *testing.T) {
	l := layoutOf(t, "six")
	r := drawn(t, l, optionsOf(l))
	blank, board := l.LeastBlank(), l.Board()

	var outlines []draw.Polyline
	for _, m := range r.Marks {
		if p, ok := m.What.(draw.Polyline); ok && p.Closed {
			outlines = append(outlines, p)
		}
	}
	require.Len(t, outlines, 2, "blank and board")
	assert.Equal(t, draw.Rect{
		Min: draw.Point{X: blank.MinX.MM(), Y: -blank.MaxY.MM()}, Max: draw.Point{X: blank.MaxX.MM(), Y: -blank.MinY.MM()},
	}, outlines[0].Bounds())
	for i, c := range board.Corners {
		assert.Equal(t, draw.Point{X: c.X.MM(), Y: -c.Y.MM()}, outlines[1].Points[i])
	}

	strings := r.Lines(draw.StringStroke)
	for i, s := range l.Strings {
		assert.Equal(t, draw.Point{X: s.Nut.X.MM(), Y: -s.Nut.Y.MM()}, strings[i].A, "nut end of string %d", s.Number)
		assert.InDelta(t, s.Length.MM(), strings[i].Length(), tolMM, "length of string %d", s.Number)
	}
	nut := l.Frets[0].Slot
	assert.Less(t, nearest(draw.Line{
		A: draw.Point{X: nut.Bass.X.MM(), Y: -nut.Bass.Y.MM()}, B: draw.Point{X: nut.Treble.X.MM(), Y: -nut.Treble.Y.MM()},
	}, r.Lines(draw.NutStroke)), tolMM, "nut line")
	for _, centre := range r.Lines(draw.CentreStroke) {
		assert.Equal(t, centre.A.Y, centre.B.Y, "the centreline is level")
	}
	assert.Equal(t, 2*24, circles(r, draw.EndStroke)-1, "rings about end points, and one in the key")
	assert.Len(t, r.Texts(draw.LayerNumbers), 2*24, "a number at both ends of every slot")
}

func circles(r *recorder, s draw.Stroke) int {
	n := 0
	for _, m := range r.Marks {
		if k, ok := m.What.(draw.Circle); ok && k.Stroke == s {
			n++
		}
	}
	return n
}

func TestSaddlePoints(t *testing.T) {
	l := layoutOf(t, "six")
	o := optionsOf(l)
	r := drawn(t, l, o)
	var points []draw.Point
	for _, m := range r.Marks {
		if k, ok := m.What.(draw.Circle); ok && k.Stroke == draw.SaddleStroke {
			points = append(points, k.Centre)
		}
	}
	require.Len(t, points, 6)
	for i, s := range l.Strings {
		end := draw.Point{X: s.Saddle.X.MM(), Y: -s.Saddle.Y.MM()}
		middle := (o.Compensations[i].Lo.MM() + o.Compensations[i].Hi.MM()) / 2
		assert.InDelta(t, middle, math.Hypot(points[i].X-end.X, points[i].Y-end.Y), tolMM, "string %d stands back", s.Number)
		assert.Greater(t, points[i].X, end.X, "string %d stands behind", s.Number)
	}
	assert.Contains(t, r.Texts(draw.LayerLabels), "6 · E♭3 · 0.3 mm · back 2.2 to 2.8 mm")
}

func TestSquareLine(t *testing.T) {
	tests := []struct {
		name    string
		neutral fan.Neutral
		words   string
		through bool // one line right across, not two ends of a slot
	}{
		{"at a fret", fan.Neutral{Fret: 9}, "neutral 9", false},
		{"between frets", fan.Neutral{Fret: 7.25}, "neutral 7.25", true},
		{"at the nut", fan.Neutral{}, "square at the nut", false},
		{"at the bridge", fan.Neutral{Bridge: true}, "square at the bridge", true},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			spec := layoutOf(t, "six").Spec
			spec.Neutral = tt.neutral
			l, err := fan.New(spec)
			require.NoError(t, err)
			r := drawn(t, l, draw.Options{Hide: []draw.LayerName{draw.LayerKey}})
			lines := r.Lines(draw.SquareStroke)
			if tt.through {
				require.Len(t, lines, 1)
			} else {
				require.Len(t, lines, 2)
			}
			for _, line := range lines {
				assert.InDelta(t, l.Neutral.X.MM(), line.A.X, tolMM)
				assert.InDelta(t, line.A.X, line.B.X, tolMM, "square to the centreline")
			}
			assert.Contains(t, r.Texts(draw.LayerSquare), tt.words)
		})
	}
}

func TestParallelFretsHaveNoSquareLine(t *testing.T) {
	spec := layoutOf(t, "six").Spec
	spec.Treble = spec.Bass
	l, err := fan.New(spec)
	require.NoError(t, err)
	r := drawn(t, l, draw.Options{})
	assert.Empty(t, r.Lines(draw.SquareStroke))
	assert.Contains(t, strings.Join(r.Texts(draw.LayerTitle), "\n"), "frets parallel")
}

func TestHide(t *testing.T) {
	l := layoutOf(t, "eight")
	for _, name := range draw.ContentLayers() {
		t.Run(string(name), func(t *testing.T) {
			o := optionsOf(l)
			o.Hide = []draw.LayerName{name}
			whole := draw.Fan(l, optionsOf(l))
			d := draw.Fan(l, o)
			require.NotEmpty(t, whole.Layer(name).Elements)
			assert.Empty(t, d.Layer(name).Elements)
			assert.Len(t, d.Layers, len(whole.Layers)-1)
		})
	}
}

func TestWithoutSaddlesStringsEndAtTheBlank(t *testing.T) {
	l := layoutOf(t, "bass")
	r := drawn(t, l, draw.Options{Hide: []draw.LayerName{draw.LayerSaddles, draw.LayerKey}})
	for _, s := range r.Lines(draw.StringStroke) {
		assert.InDelta(t, l.LeastBlank().MaxX.MM(), s.B.X, tolMM)
	}
}

func TestDateOnlyWhenGiven(t *testing.T) {
	l := layoutOf(t, "six")
	with := drawn(t, l, draw.Options{Date: "2025-03-01"})
	assert.Contains(t, strings.Join(with.Texts(draw.LayerTitle), "\n"), "2025-03-01")
	without := drawn(t, l, draw.Options{})
	assert.NotContains(t, strings.Join(without.Texts(draw.LayerTitle), "\n"), "20")
}

func TestLayersByName(t *testing.T) {
	var got draw.Layers
	require.NoError(t, got.UnmarshalText([]byte("slots, Slot-Numbers,dots")))
	assert.Equal(t, draw.Layers{draw.LayerSlots, draw.LayerNumbers, draw.LayerDots}, got)
	assert.Len(t, got.Others(), len(draw.ContentLayers())-3)
	require.NoError(t, got.UnmarshalText([]byte("string_names,slot-ends")))
	assert.Equal(t, draw.Layers{draw.LayerLabels, draw.LayerEnds}, got, "an underscore counts as a hyphen")
	err := got.UnmarshalText([]byte("everything"))
	assert.ErrorContains(t, err, "there is no part of that name")
	assert.ErrorContains(t, err, "string-names, slots, slot-ends, slot-numbers")
	assert.ErrorContains(t, got.UnmarshalText([]byte("slotz")), "did you mean slots?")
	assert.ErrorContains(t, got.UnmarshalText([]byte("slots joins")), `"joins"`)
}
