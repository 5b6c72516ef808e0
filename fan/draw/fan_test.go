package draw_test

import (
	"fmt"
	"math"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"scalepair/data/unit"
	"scalepair/fan"
	"scalepair/fan/draw"
)

func TestSlotsStandWhereTheLayoutSays(t *testing.T) {
	for _, name := range instruments() {
		l := layoutOf(t, name)
		right, o := drawn(t, l, optionsOf(l)), optionsOf(l)
		o.LeftHanded = true
		left := drawn(t, l, o)
		want := slotsOf(l)
		require.Len(t, linesOf(draw.SlotStroke, right), len(want), name)
		for i, w := range want {
			assert.Less(t, nearest(w, linesOf(draw.SlotStroke, right)), tolMM, "%s, slot %d", name, i+1)
			// A left-handed board is the mirror image: its bass side lies above.
			w.A.Y, w.B.Y = -w.A.Y, -w.B.Y
			assert.Less(t, nearest(w, linesOf(draw.SlotStroke, left)), tolMM, "%s, left, slot %d", name, i+1)
		}
		assert.Negative(t, want[0].A.Y, "seen with the nut at the left, a right-handed board has its bass side below")
		assert.Equal(t, []string{"TREBLE", "BASS", "BASS", "TREBLE"}, []string{right.Upper, right.Lower, left.Upper, left.Lower})
	}
}

// An outline is as wide as the saw's cut and runs on beyond the slot's ends.
func TestSlotOutlines(t *testing.T) {
	l := layoutOf(t, "six")
	for _, overrun := range []float64{0, 3} {
		d := drawn(t, l, draw.Options{Kerf: unit.MM(0.6), Overrun: unit.MM(overrun)})
		outlines := all[draw.Polyline](draw.LayerKerf, d)
		require.Len(t, outlines, 24)
		for i, slot := range slotsOf(l) {
			p := outlines[i].Points
			require.Len(t, p, 4)
			require.True(t, outlines[i].Closed)
			long, short := draw.Line{A: p[0], B: p[1]}, draw.Line{A: p[1], B: p[2]}
			assert.InDelta(t, slot.Length()+2*overrun, long.Length(), tolMM)
			assert.InDelta(t, 0.6, short.Length(), tolMM)
			assert.Less(t, apart(slot.At(0.5), draw.Line{A: p[0], B: p[2]}.At(0.5)), tolMM, "the slot is its middle")
			along := (long.B.X-long.A.X)*(short.B.X-short.A.X) + (long.B.Y-long.A.Y)*(short.B.Y-short.A.Y)
			assert.InDelta(t, 0, along, 1e-7, "square corners")
		}
	}
	assert.Empty(t, drawn(t, l, draw.Options{}).Layer(draw.LayerKerf).Elements, "the saw's cut is not known")
}

func TestEveryPartIsDrawn(t *testing.T) {
	l := layoutOf(t, "six")
	d := drawn(t, l, optionsOf(l))
	blank, box := l.LeastBlank(), all[draw.Polyline](draw.LayerBlank, d)[0].Bounds()
	assert.Equal(t, draw.Rect{
		Min: draw.Point{X: blank.MinX.MM(), Y: -blank.MaxY.MM()}, Max: draw.Point{X: blank.MaxX.MM(), Y: -blank.MinY.MM()},
	}, box)
	for i, c := range l.Board().Corners {
		assert.Equal(t, face(c), all[draw.Polyline](draw.LayerBoard, d)[0].Points[i])
	}
	for i, line := range linesOf(draw.BaseStroke, d) {
		x := []float64{box.Min.X, box.Max.X}[i]
		assert.Equal(t, []float64{x, x}, []float64{line.A.X, line.B.X}, "base lines are the ends of the smallest blank")
		assert.True(t, line.A.Y > box.Max.Y && line.B.Y < box.Min.Y)
	}
	assert.ElementsMatch(t, []string{"base line", "nut end's", "base line", "body end's", "saddle line", "square line at fret 7"}, wordsOn(draw.LayerNamed, d))
	for i, s := range l.Strings {
		line := linesOf(draw.StringStroke, d)[i]
		assert.Equal(t, face(s.Nut), line.A)
		assert.InDelta(t, s.Length.MM(), line.Length(), tolMM, "length of string %d", s.Number)
	}
	nut := l.Frets[0].Slot
	assert.Less(t, nearest(draw.Line{A: face(nut.Bass), B: face(nut.Treble)}, linesOf(draw.NutStroke, d)), tolMM)
	centre := linesOf(draw.CentreStroke, d)[0]
	assert.Equal(t, []float64{0, 0}, []float64{centre.A.Y, centre.B.Y})
	assert.Len(t, all[draw.Circle](draw.LayerEnds, d), 2*24)
	without := drawn(t, l, draw.Options{Hide: draw.Layers{draw.LayerSaddles}})
	for _, s := range linesOf(draw.StringStroke, without) {
		assert.InDelta(t, box.Max.X, s.B.X, tolMM, "without saddles a string ends at the blank")
	}
}

// The distance from the nut stands beside every number, at both edges: that of
// the edge's own outer string, by the rule of equal temperament.
func TestDistancesStandBesideTheNumbers(t *testing.T) {
	for _, name := range instruments() {
		l := layoutOf(t, name)
		o := optionsOf(l)
		for _, left := range []bool{false, true} {
			o.LeftHanded = left
			words := all[draw.Text](draw.LayerNumbers, drawn(t, l, o))
			for n := 1; n <= l.Spec.Frets; n++ {
				for side, length := range map[float64]float64{-1: l.Spec.Bass.MM(), 1: l.Spec.Treble.MM()} {
					want := fmt.Sprintf("%.2f", length*(1-math.Pow(2, -float64(n)/12)))
					if o.Unit != unit.Millimetres {
						want = fmt.Sprintf("%.3f", length*(1-math.Pow(2, -float64(n)/12))/25.4)
					}
					if left {
						side = -side
					}
					number, distance := standing(words, fmt.Sprint(n), side), standing(words, want, side)
					require.NotNil(t, number, "%s: %d", name, n)
					require.NotNil(t, distance, "%s: %s at fret %d", name, want, n)
					assert.Less(t, apart(number.At, distance.At), 6.0, "%s: %s beside %d", name, want, n)
				}
			}
		}
	}
}

// standing finds words above (1) or below (-1) the board.
func standing(words []draw.Text, body string, side float64) *draw.Text {
	i := slices.IndexFunc(words, func(t draw.Text) bool { return t.Body == body && t.At.Y*side > 0 })
	if i < 0 {
		return nil
	}
	return &words[i]
}

// What is to be measured on the whole drawing is what its own lines measure.
func TestChecksAreMeasuredOnTheDrawing(t *testing.T) {
	l := layoutOf(t, "six")
	d := drawn(t, l, optionsOf(l))
	strings_ := linesOf(draw.StringStroke, d)
	treble, bass := strings_[0], strings_[5]
	text := strings.Join(d.Checks, "\n")
	for what, nominal := range map[string]float64{
		"bass nut to fret 12: ":                                  apart(bass.A, bass.At(0.5)),
		"bass nut to fret 12: 343.00 __________, to fret 24: ":   apart(bass.A, bass.At(0.75)),
		"treble nut to fret 12: ":                                apart(treble.A, treble.At(0.5)),
		"treble nut to fret 12: 323.85 __________, to fret 24: ": apart(treble.A, treble.At(0.75)),
		"bass nut to treble fret 24: ":                           apart(bass.A, treble.At(0.75)),
		"treble nut to bass fret 24: ":                           apart(treble.A, bass.At(0.75)),
	} {
		assert.Contains(t, text, fmt.Sprintf("%s%.2f __________", what, nominal+tolMM)) // 485.775 is rounded up
	}
	assert.Subset(t, wordsOn(draw.LayerTitle, d), d.Checks, "they stand under the title")
	assert.Contains(t, strings.Join(drawn(t, layoutOf(t, "bass"), draw.Options{}).Checks, "\n"), "to fret 20: ")
}

// One string's unknown compensation does not take the others' away.
func TestSaddlePoints(t *testing.T) {
	l := layoutOf(t, "six")
	o := optionsOf(l)
	o.Compensations[2] = nil
	d := drawn(t, l, o)
	rings := all[draw.Circle](draw.LayerSaddles, d)
	require.Len(t, rings, 6)
	for i, s := range l.Strings {
		end, along := face(s.Saddle), (s.Saddle.X-s.Nut.X).MM()/s.Length.MM()
		if o.Compensations[i] == nil {
			assert.Less(t, apart(end, rings[i].Centre), tolMM)
			continue
		}
		lo, hi := o.Compensations[i].Lo.MM(), o.Compensations[i].Hi.MM()
		assert.InDelta(t, (lo+hi)/2, apart(end, rings[i].Centre), tolMM, "string %d stands back", s.Number)
		assert.Greater(t, rings[i].Centre.X, end.X)
		want := draw.Line{A: draw.Point{X: end.X + lo*along}, B: draw.Point{X: end.X + hi*along}}
		beside := 0
		for _, r := range linesOf(draw.RangeStroke, d) {
			if math.Abs(r.A.X-want.A.X) < tolMM && math.Abs(r.B.X-want.B.X) < tolMM {
				beside++
				off := math.Abs(r.A.Y - end.Y)
				assert.True(t, off > 3 && off < 4, "clear of the string, and nearer to it than to the next")
			}
		}
		assert.Equal(t, 1, beside, "a bar from the least to the greatest compensation of string %d", s.Number)
	}
	assert.Len(t, linesOf(draw.PointStroke, d), 2*5, "no cross where nothing is known")
	assert.Len(t, linesOf(draw.RangeStroke, d), 3*5, "a bar with a tick at either end")
	labels := wordsOn(draw.LayerLabels, d)
	assert.Contains(t, labels, "6 · E♭3 · 0.3 mm · back 2.3 to 2.8 mm")
	assert.Contains(t, labels, "3 · E♭4 · 0.3 mm · compensation not known")
}

func TestSquareLine(t *testing.T) {
	for words, tt := range map[string]struct {
		neutral fan.Neutral
		lines   int // two ends of a slot, or one line right across
	}{
		"square line at fret 9": {fan.Neutral{Fret: 9}, 2}, "square line at fret 7.25": {fan.Neutral{Fret: 7.25}, 1},
		"square line at the nut": {fan.Neutral{}, 2}, "square line at the bridge": {fan.Neutral{Bridge: true}, 1},
	} {
		spec := layoutOf(t, "six").Spec
		spec.Neutral = tt.neutral
		l, err := fan.New(spec)
		require.NoError(t, err)
		d := drawn(t, l, draw.Options{})
		lines := linesOf(draw.SquareStroke, d)
		require.Len(t, lines, tt.lines, words)
		for _, line := range lines {
			assert.InDelta(t, l.Neutral.X.MM(), line.A.X, tolMM)
			assert.InDelta(t, line.A.X, line.B.X, tolMM, "square to the centreline")
		}
		assert.Contains(t, wordsOn(draw.LayerNamed, d), words)
	}
	spec := layoutOf(t, "six").Spec
	spec.Treble = spec.Bass
	l, err := fan.New(spec)
	require.NoError(t, err)
	straight := drawn(t, l, draw.Options{})
	assert.Empty(t, linesOf(draw.SquareStroke, straight))
	assert.Contains(t, strings.Join(straight.Notes, "\n"), "frets parallel")
}

func TestHide(t *testing.T) {
	l := layoutOf(t, "eight")
	whole := draw.Fan(l, optionsOf(l))
	for _, name := range draw.ContentLayers() {
		o := optionsOf(l)
		o.Hide = draw.Layers{name}
		d := draw.Fan(l, o)
		require.NotEmpty(t, whole.Layer(name).Elements, name)
		assert.Empty(t, d.Layer(name).Elements, name)
		assert.Len(t, d.Layers, len(whole.Layers)-1, name)
	}
}

func TestDots(t *testing.T) {
	l := layoutOf(t, "six")
	o := draw.Options{Dots: &fan.Dots{Face: []int{5, 12}, Side: []int{7}, Double: []int{12}, FaceDiameter: unit.MM(8), SideDiameter: unit.MM(1.5)}}
	d := drawn(t, l, o)
	found := all[draw.Circle](draw.LayerDots, d)
	require.Len(t, found, 3, "one at 5, two at 12")
	for i, dot := range l.FaceDots(*o.Dots) {
		assert.Equal(t, 4.0, found[i].Radius)
		assert.Less(t, apart(face(dot.At), found[i].Centre), tolMM)
	}
	side := linesOf(draw.SideStroke, d)
	require.Len(t, side, 2, "a side dot is a cross")
	six, seven := l.Frets[6].Slot.Bass, l.Frets[7].Slot.Bass
	assert.InDelta(t, (six.X+seven.X).MM()/2, side[0].At(0.5).X, tolMM)
	assert.Less(t, side[1].A.Y, -math.Max(six.Y.MM(), seven.Y.MM())-1, "wholly off the edge, clear of the rings about slots' ends")
	assert.Empty(t, drawn(t, l, draw.Options{Dots: &fan.Dots{}}).Layer(draw.LayerDots).Elements, "none asked for")
	common := fan.CommonDots(24)
	assert.Len(t, all[draw.Circle](draw.LayerDots, drawn(t, l, draw.Options{})), len(common.Face)+len(common.Double))
}

// A router cuts what lies on the slots' layer, so the zero fret's slot must.
func TestZeroFretIsDrawnAsASlot(t *testing.T) {
	s := layoutOf(t, "six").Spec
	s.ZeroFret, s.NutShelf = true, unit.MM(8)
	l, err := fan.New(s)
	require.NoError(t, err)
	slots := all[draw.Line](draw.LayerSlots, drawn(t, l, draw.Options{Hide: draw.Layers{draw.LayerNut}}))
	require.Len(t, slots, s.Frets+1)
	nut := l.Frets[0].Slot
	assert.Less(t, nearest(draw.Line{A: face(nut.Bass), B: face(nut.Treble)}, slots), tolMM)
}

func TestLayersByName(t *testing.T) {
	var got draw.Layers
	require.NoError(t, got.UnmarshalText([]byte("slots, Slot-Numbers,dots")))
	assert.Equal(t, draw.Layers{draw.LayerSlots, draw.LayerNumbers, draw.LayerDots}, got)
	assert.Len(t, got.Others(), len(draw.ContentLayers())-3)
	require.NoError(t, got.UnmarshalText([]byte("string_names,slot-ends")))
	assert.Equal(t, draw.Layers{draw.LayerLabels, draw.LayerEnds}, got, "an underscore counts as a hyphen")
	assert.ErrorContains(t, got.UnmarshalText([]byte("everything")), "no such word")
	assert.ErrorContains(t, got.UnmarshalText([]byte("slotz")), `did you mean "slots"?`)
	assert.ErrorContains(t, got.UnmarshalText([]byte("slots joins")), `"joins"`)
}

// A plan's number follows what the build says, and neither the day nor what is
// hidden.
func TestPlanNumber(t *testing.T) {
	l := layoutOf(t, "six")
	number := func(l *fan.Layout, change func(*draw.Options)) string {
		o := optionsOf(l)
		change(&o)
		first, _, _ := strings.Cut(drawn(t, l, o).PlanLine, " ·")
		return first
	}
	plain := number(l, func(*draw.Options) {})
	assert.Regexp(t, `^plan [0-9A-F]{4}-[0-9A-F]{4}$`, plain)
	assert.Equal(t, plain, number(l, func(o *draw.Options) {
		o.Date, o.Remarks, o.Hide = "another day", "for Joe", draw.Layers{draw.LayerDots}
	}))
	spec := l.Spec
	spec.Bass += unit.MM(0.1)
	longer, err := fan.New(spec)
	require.NoError(t, err)
	seen := map[string]bool{plain: true, number(longer, func(*draw.Options) {}): true}
	seen[number(l, func(o *draw.Options) { o.Strings[3].Gauge = "0.31 mm" })] = true
	seen[number(l, func(o *draw.Options) { o.Compensations[3].Hi += unit.MM(0.1) })] = true
	seen[number(l, func(o *draw.Options) { o.LeftHanded = true })] = true
	assert.Len(t, seen, 5, "five builds, five numbers")
	assert.Contains(t, drawn(t, l, draw.Options{Date: "3 May"}).PlanLine, "full size · date 3 May")
	assert.Contains(t, drawn(t, l, draw.Options{}).PlanLine, "date __________", "the same every day")
}

// Every stroke of a drawing is in its key, once, and no other.
func TestKeyExplainsEveryStroke(t *testing.T) {
	for _, hide := range []draw.Layers{nil, {draw.LayerSaddles, draw.LayerDots}} {
		l := layoutOf(t, "six")
		o := optionsOf(l)
		o.Hide = hide
		used := map[string]bool{"from the nut, outer string": true}
		d := drawn(t, l, o)
		for s := draw.SlotStroke; s <= draw.SideStroke; s++ {
			if len(linesOf(s, d)) > 0 {
				used[s.String()] = true
			}
		}
		for _, p := range all[draw.Polyline]("", d) {
			used[p.Stroke.String()] = true
		}
		for _, c := range all[draw.Circle]("", d) {
			used[c.Stroke.String()] = true
		}
		keyed := draw.Fan(l, draw.Options{Hide: hide, Kerf: o.Kerf, Compensations: o.Compensations})
		words := slices.DeleteFunc(wordsOn(draw.LayerKey, keyed), func(w string) bool { return strings.HasPrefix(w, "38.") })
		assert.Len(t, words, len(used))
		for _, w := range words {
			assert.True(t, used[w], w)
		}
	}
}
