package draw_test

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"scalepair/data/unit"
	"scalepair/fan"
	"scalepair/fan/draw"
	"scalepair/fan/draw/tile"
)

func options(p tile.Paper, strips bool) tile.Options {
	o := tile.DefaultOptions()
	o.Paper, o.Strips = p, strips
	return o
}

// paper gives a paper by its name.
func paper(name string) tile.Paper {
	var p tile.Paper
	if err := p.UnmarshalText([]byte(name)); err != nil {
		panic(err)
	}
	return p
}

func laid(t require.TestingT, d draw.Drawing, o tile.Options) tile.Plan {
	p, err := tile.Lay(d, o)
	require.NoError(t, err)
	return p
}

// everyWay calls check for the trial instruments on all papers.
func everyWay(t *testing.T, check func(t *testing.T, l *fan.Layout, p tile.Plan, o tile.Options)) {
	for _, name := range instruments() {
		for _, on := range []string{"A4", "Letter", "A3", "roll 297 mm", "roll 914 mm"} {
			for _, strips := range []bool{false, true} {
				t.Run(fmt.Sprintf("%s %s strips %v", name, on, strips), func(t *testing.T) {
					o := options(paper(on), strips)
					check(t, layoutOf(t, name), laid(t, drawingOf(t, name), o), o)
				})
			}
		}
	}
}

// bars gives the check bars of one sheet, and not their ticks.
func bars(s draw.Sheet) (level, upright []draw.Line) {
	r := &recorder{}
	s.On(r)
	for _, l := range r.Lines(draw.BarStroke) {
		switch {
		case l.Length() < 50:
		case l.A.Y == l.B.Y:
			level = append(level, l)
		case l.A.X == l.B.X:
			upright = append(upright, l)
		}
	}
	return level, upright
}

func TestEverySheetHasABarAlongBothAxes(t *testing.T) {
	everyWay(t, func(t *testing.T, _ *fan.Layout, p tile.Plan, o tile.Options) {
		for i, s := range p.Sheets {
			level, upright := bars(s)
			require.Len(t, level, 1, "sheet %d", i+1)
			require.Len(t, upright, 1, "sheet %d", i+1)
			assert.InDelta(t, 100, level[0].Length(), tolMM)
			assert.InDelta(t, 100, upright[0].Length(), tolMM)
			r := &recorder{}
			s.On(r)
			assert.Equal(t, []string{"100 mm: measure me with a steel rule", "100 mm: measure me with a steel rule"}, r.Texts(draw.LayerBars))
		}
	})
}

func TestNothingComesIntoTheWhiteMargin(t *testing.T) {
	everyWay(t, func(t *testing.T, _ *fan.Layout, p tile.Plan, o tile.Options) {
		for i, s := range p.Sheets {
			inside := draw.Rect{Max: draw.Point{X: s.Width, Y: s.Height}}.Grow(-o.Margin.MM() + 1e-5)
			for n, part := range s.Parts {
				shown := draw.NoRect().Include(part.Window...)
				if len(part.Window) == 0 {
					shown = part.Drawing.Bounds()
				}
				assert.Equal(t, inside.Union(shown), inside, "sheet %d, part %d", i+1, n)
			}
		}
	})
}

func TestPiecesOnASheetKeepApart(t *testing.T) {
	everyWay(t, func(t *testing.T, _ *fan.Layout, p tile.Plan, _ tile.Options) {
		for _, s := range p.Sheets {
			for i, a := range s.Parts {
				for _, b := range s.Parts[:i] {
					if len(a.Window) > 0 && len(b.Window) > 0 {
						assert.False(t, draw.NoRect().Include(a.Window...).Touches(draw.NoRect().Include(b.Window...)))
					}
				}
			}
		}
	})
}

// between reports whether a slot lies wholly between a piece's joins.
func between(p tile.Piece, slot draw.Line) bool {
	for _, at := range []draw.Point{slot.A, slot.B} {
		if p.Left.Length() > 0 && at.X <= xAt(p.Left, at.Y) || p.Right.Length() > 0 && at.X >= xAt(p.Right, at.Y) {
			return false
		}
	}
	return true
}

func xAt(l draw.Line, y float64) float64 {
	return l.A.X + (l.B.X-l.A.X)*(y-l.A.Y)/(l.B.Y-l.A.Y)
}

// check holds what must be true of every plan: each slot whole on just one
// piece, and neighbours overlapping by what was asked along the whole join.
func check(t require.TestingT, slots []draw.Line, p tile.Plan, o tile.Options) {
	for i, s := range slots {
		whole := 0
		for _, piece := range p.Pieces {
			if between(piece, s) {
				whole++
				shown := piece.Window.Union(s.Bounds())
				require.Equal(t, piece.Window, shown, "slot %d is shown whole", i+1)
			}
		}
		require.Equal(t, 1, whole, "slot %d is whole on one piece", i+1)
	}
	for i, piece := range p.Pieces[1:] {
		join := piece.Left
		require.Equal(t, p.Pieces[i].Right, join, "neighbours share the join")
		b := join.Bounds()
		require.LessOrEqual(t, piece.Window.Min.X, b.Min.X-o.Overlap.MM()+tolMM)
		require.GreaterOrEqual(t, p.Pieces[i].Window.Max.X, b.Max.X+o.Overlap.MM()-tolMM)
	}
}

func TestSlotsAreNeverCut(t *testing.T) {
	everyWay(t, func(t *testing.T, l *fan.Layout, p tile.Plan, o tile.Options) {
		check(t, slotsOf(l), p, o)
	})
}

func TestSlotsAreNeverCutOnAnyNeck(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		l := anyNeck(rt)
		d := draw.Fan(l, draw.Options{})
		o := options(paper("A4"), rapid.Bool().Draw(rt, "strips"))
		o.Overlap = unit.MM(rapid.Float64Range(5, 20).Draw(rt, "overlap"))
		check(rt, slotsOf(l), laid(rt, d, o), o)
	})
}

func TestStripsNeverTakeMoreSheets(t *testing.T) {
	saved := 0
	for _, name := range instruments() {
		for _, on := range []string{"A4", "Letter", "A3"} {
			one := laid(t, drawingOf(t, name), options(paper(on), false))
			strips := laid(t, drawingOf(t, name), options(paper(on), true))
			assert.LessOrEqual(t, len(strips.Sheets), len(one.Sheets), "%s on %s", name, on)
			saved += len(one.Sheets) - len(strips.Sheets)
		}
	}
	assert.Positive(t, saved)
}

// A narrow ruler of 290 mm is too long for A4 laid straight (266 mm inside the
// margins and the bar's column), but not for its diagonal.
func TestANarrowThingLiesOnTheDiagonal(t *testing.T) {
	ruler := draw.Drawing{Title: "ruler", Layers: []draw.Layer{{Name: draw.LayerBoard, Elements: []draw.Element{
		draw.Line{A: draw.Point{X: 0, Y: 0}, B: draw.Point{X: 265, Y: 1}, Stroke: draw.BoardStroke},
	}}}}
	p := laid(t, ruler, options(paper("A4"), true))
	require.Len(t, p.Pieces, 1)
	assert.Greater(t, p.Turn, 0.0)
	assert.InDelta(t, 265, math.Hypot(265, 1), 0.01)
	r := &recorder{}
	p.Sheets[0].On(r)
	assert.InDelta(t, math.Hypot(265, 1), r.Lines(draw.BoardStroke)[0].Length(), tolMM, "turned, not stretched")
	straight := laid(t, ruler, options(paper("A4"), false))
	assert.Len(t, straight.Pieces, 2)
}

func TestPrinterCorrection(t *testing.T) {
	o := options(paper("A4"), false)
	o.BarAcross, o.BarUp = unit.MM(99.6), unit.MM(100.25)
	p := laid(t, drawingOf(t, "six"), o)
	for _, s := range p.Sheets {
		assert.Equal(t, []float64{297, 210}, []float64{s.Width, s.Height}, "paper stays paper")
		level, upright := bars(s)
		// What the printer makes of them: 0.996 and 1.0025 of what it is sent.
		assert.InDelta(t, 100, level[0].Length()*0.996, tolMM)
		assert.InDelta(t, 100, upright[0].Length()*1.0025, tolMM)
		r := &recorder{}
		s.On(r)
		assert.Contains(t, strings.Join(r.Texts(draw.LayerFrame), " "),
			"CORRECTED for a printer whose bars measured 99.60 mm across and 100.25 mm up: drawn 100.40 % of x and 99.75 % of y.")
		inside := draw.Rect{Max: draw.Point{X: 297, Y: 210}}.Grow(-10 + 1e-5)
		for _, part := range s.Parts {
			shown := draw.NoRect().Include(part.Window...)
			assert.Equal(t, inside.Union(shown), inside)
		}
	}
	// A slot on the print, after the printer's own stretch, is as long as on wood.
	l := layoutOf(t, "six")
	part := partOf(p, 0)
	first := part.Drawing.Layer(draw.LayerSlots).Elements[0].(draw.Line)
	assert.InDelta(t, l.Frets[1].Slot.Length.MM(), math.Hypot((first.B.X-first.A.X)*0.996, (first.B.Y-first.A.Y)*1.0025), tolMM)
}

func TestOneSheet(t *testing.T) {
	for _, name := range instruments() {
		d := drawingOf(t, name)
		p, err := tile.One(d, tile.DefaultOptions())
		require.NoError(t, err)
		require.Len(t, p.Sheets, 1)
		level, upright := bars(p.Sheets[0])
		assert.Len(t, level, 1)
		assert.Len(t, upright, 1)
		assert.NotEmpty(t, p.Sheets[0].Parts[0].Drawing.Layer(draw.LayerTitle).Elements)
	}
}
