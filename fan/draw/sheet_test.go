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
	"scalepair/fan/draw/tile"
)

// What every sheet says, the first and the last besides.
func TestWordsOfASheet(t *testing.T) {
	everyWay(t, func(t *testing.T, l *fan.Layout, p tile.Plan, o tile.Options) {
		d, n := drawingOf(t, fmt.Sprint(map[int]string{6: "six", 8: "eight", 4: "bass"}[len(l.Strings)])), len(p.Sheets)
		keys := 0
		for i, s := range p.Sheets {
			words := wordsOn(draw.LayerFrame, drawingsOn(s)...)
			text := strings.Join(words, " ")
			assert.Equal(t, s.Name, words[0])
			assert.Contains(t, text, d.PlanLine)
			assert.Contains(t, text, "The paper shows and checks; the marks decide where the saw goes.")
			assert.Equal(t, i == 0, strings.Contains(text, strings.Join(d.Notes, " ")))
			assert.Equal(t, i == 0 || i == n-1, strings.Contains(text, strings.Join(d.Checks, " ")), "what to measure stands on the first and the last")
			if !o.Paper.IsRoll() {
				if n > 1 {
					assert.Equal(t, fmt.Sprintf("Sheet %d of %d · Trial of %d strings", i+1, n, len(l.Strings)), s.Name)
				}
				assert.Equal(t, i == 0 && n > 1, strings.Contains(text, "Print this one alone, at full size, not fitted to the page, on one side of the paper. Measure both bars from end to end, then print the rest."))
				assert.Contains(t, text, "so that the diamonds meet")
				assert.Equal(t, numbersOn(p, i), framed(drawingsOn(s)), "the key map frames this sheet's pieces")
			}
			sides := wordsOn(draw.LayerJoins, drawingsOn(s)...)
			assert.Contains(t, sides, "BASS")
			assert.Contains(t, sides, "TREBLE")
			if len(all[draw.Text](draw.LayerKey, drawingsOn(s)...)) > 0 {
				keys++
				for _, part := range s.Parts[:len(s.Parts)-1] {
					assert.False(t, keyBox(s).Touches(draw.NoRect().Include(part.Window...)), "the key stands clear of the pieces")
				}
			}
			assert.Empty(t, wordsOn(draw.LayerTitle, drawingsOn(s)...))
		}
		assert.Equal(t, map[bool]int{true: 0, false: 1}[p.NoKey], keys)
	})
}

// Words that move clear of a join stay on their string; the last piece is no sliver.
func TestWordsKeepTheirPlace(t *testing.T) {
	everyWay(t, func(t *testing.T, l *fan.Layout, p tile.Plan, o tile.Options) {
		name := map[int]string{6: "six", 8: "eight", 4: "bass"}[len(l.Strings)]
		if n := len(p.Pieces); n > 1 {
			assert.Greater(t, p.Pieces[n-1].Window.Width(), 95.0)
		}
		was := map[string]draw.Text{}
		for _, words := range all[draw.Text](draw.LayerLabels, drawingOf(t, name)) {
			was[words.Body] = words
		}
		for i, piece := range p.Pieces {
			from := piece.Place.Point(draw.Point{})
			part := p.Sheets[piece.Sheet].Parts[i-slices.IndexFunc(p.Pieces, func(o tile.Piece) bool { return o.Sheet == piece.Sheet })]
			for _, words := range all[draw.Text](draw.LayerLabels, part.Drawing) {
				at := was[words.Body].At
				assert.InDelta(t, (words.At.X-from.X-at.X)*math.Tan(words.Angle), words.At.Y-from.Y-at.Y, 1e-9, words.Body)
			}
		}
	})
}

// The nut's name stands clear of the base line, however close: of a fan this small
// the nut lies 2 mm behind it.
func TestNutIsNotStruckThrough(t *testing.T) {
	spec := layoutOf(t, "eight").Spec
	spec.Treble, spec.NutShelf = spec.Bass-unit.MM(3), 0
	l, err := fan.New(spec)
	require.NoError(t, err)
	d := drawn(t, l, draw.Options{})
	for _, words := range all[draw.Text](draw.LayerNumbers, d) {
		for _, base := range linesOf(draw.BaseStroke, d) {
			assert.False(t, words.Bounds().Touches(base.Bounds().Grow(0.5)), words.Body)
		}
	}
}

func keyBox(s draw.Sheet) draw.Rect {
	box := draw.NoRect()
	for _, words := range all[draw.Text](draw.LayerKey, drawingsOn(s)...) {
		box = box.Union(words.Bounds())
	}
	return box
}

// A key that has no room on the first sheet stands on another.
func TestKeyStandsWhereThereIsRoom(t *testing.T) {
	for name, want := range map[string]int{"A4": 1, "Letter": 0, "A3": 0} {
		p := laid(t, drawingOf(t, "six"), options(paper(name), false))
		at := slices.IndexFunc(p.Sheets, func(s draw.Sheet) bool { return len(all[draw.Text](draw.LayerKey, drawingsOn(s)...)) > 0 })
		assert.Equal(t, want, at, name)
	}
	none := laid(t, drawingOf(t, "six").Without(draw.LayerKey), options(paper("A4"), false))
	assert.False(t, none.NoKey, "none was asked for")
}

// numbersOn gives the numbers of the pieces on a sheet.
func numbersOn(p tile.Plan, sheet int) []string {
	var out []string
	for _, piece := range p.Pieces {
		if piece.Sheet == sheet {
			out = append(out, fmt.Sprint(piece.Number))
		}
	}
	return out
}

// framed gives the numbers inside the key map's heavy frames.
func framed(from []draw.Drawing) []string {
	var out []string
	for _, frame := range all[draw.Polyline](draw.LayerFrame, from...) {
		if frame.Stroke != draw.HereStroke {
			continue
		}
		box, middle := frame.Bounds(), 0.0
		for _, corner := range frame.Points {
			middle += corner.X / 4
		}
		for _, words := range all[draw.Text](draw.LayerFrame, from...) {
			if math.Abs(words.At.X-middle) < 1 && words.At.Y > box.Min.Y && words.At.Y < box.Max.Y {
				out = append(out, words.Body)
			}
		}
	}
	return out
}

// Date, remark and a long title are on the first sheet, whatever the paper.
func TestNotesNeverVanish(t *testing.T) {
	o := optionsOf(layoutOf(t, "six"))
	o.Date, o.Remarks = "3 May", "for Joe\nash from the shed"
	o.Title = "Trial of a name that is too long for the heading of one sheet of paper that is held upright, or on its side"
	d := draw.Fan(layoutOf(t, "six"), o)
	for _, on := range append(tile.Papers(), paper("roll 420 mm")) {
		for _, strips := range []bool{false, true} {
			words := strings.Join(wordsOn(draw.LayerFrame, drawingsOn(laid(t, d, options(on, strips)).Sheets[0])...), " ")
			for _, part := range []string{"date 3 May", "for Joe", "ash from the shed", "face of the board", "or on its side"} {
				assert.Contains(t, words, part, "%s, %v", on.Name, strips)
			}
		}
	}
	one, err := tile.One(drawingOf(t, "six"), tile.DefaultOptions())
	require.NoError(t, err)
	require.Len(t, one.Sheets, 1)
	assert.NotEmpty(t, wordsOn(draw.LayerTitle, drawingsOn(one.Sheets[0])...))
	assert.NotEmpty(t, wordsOn(draw.LayerKey, drawingsOn(one.Sheets[0])...))
}

// No window cuts a word; none that is longer than an overlap lies across a join;
// and every word of the drawing stands on some sheet.
func TestNoWordIsCut(t *testing.T) {
	everyWay(t, func(t *testing.T, l *fan.Layout, p tile.Plan, o tile.Options) {
		seen := map[string]bool{}
		n := 0
		for _, s := range p.Sheets {
			for _, part := range s.Parts {
				if len(part.Window) == 0 {
					continue
				}
				place, window := p.Pieces[n].Place, draw.NoRect().Include(part.Window...).Grow(1e-6)
				joins := linesOf(draw.JoinStroke, part.Drawing)
				n++
				for _, words := range all[draw.Text]("", part.Drawing) {
					seen[words.Body] = true
					if box := words.Bounds(); place.XY == 0 {
						assert.Equal(t, window, window.Union(box), "%s: %q", s.Name, words.Body)
						for _, j := range joins {
							beside := box.Max.X < math.Min(xAt(j, box.Min.Y), xAt(j, box.Max.Y)) || box.Min.X > math.Max(xAt(j, box.Min.Y), xAt(j, box.Max.Y))
							assert.True(t, beside || box.Width() <= o.Overlap.MM(), "%s: %q across a join", s.Name, words.Body)
						}
					}
				}
			}
		}
		whole := drawn(t, l, optionsOf(l))
		for _, layer := range []draw.LayerName{draw.LayerNumbers, draw.LayerLabels, draw.LayerNamed} {
			for _, words := range wordsOn(layer, whole) {
				assert.True(t, seen[words], "%q stands nowhere", words)
			}
		}
	})
}

// Join marks stand at the quarter points of the edge, and the numbers of the two
// pieces at its ends, in the same places on both neighbours.
func TestJoinMarksAgreeOnBothNeighbours(t *testing.T) {
	everyWay(t, func(t *testing.T, _ *fan.Layout, p tile.Plan, _ tile.Options) {
		for i := 1; i < len(p.Pieces); i++ {
			join := p.Pieces[i].Left
			for _, n := range []int{i - 1, i} {
				part := partOf(p, n)
				shown := draw.NoRect().Include(part.Window...).Grow(1e-6)
				var found []float64
				for _, diamond := range all[draw.Polyline](draw.LayerJoins, part.Drawing) {
					assert.Equal(t, shown, shown.Union(diamond.Bounds()), "shown whole")
					middle := back(p.Pieces[n].Place, draw.Line{A: diamond.Points[0], B: diamond.Points[2]}.At(0.5))
					if math.Abs(middle.X-xAt(join, middle.Y)) < 1e-6 {
						found = append(found, (join.A.Y-middle.Y)/(join.A.Y-join.B.Y))
					}
				}
				require.Len(t, found, 2)
				assert.InDelta(t, 0.25, found[0], 1e-9)
				assert.InDelta(t, 0.75, found[1], 1e-9)
				for _, number := range []string{fmt.Sprint(i), fmt.Sprint(i + 1)} {
					assert.GreaterOrEqual(t, len(slices.DeleteFunc(wordsOn(draw.LayerJoins, part.Drawing), func(w string) bool { return w != number })), 2)
				}
			}
		}
	})
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
