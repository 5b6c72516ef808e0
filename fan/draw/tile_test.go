package draw_test

import (
	"fmt"
	"math"
	"slices"
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
					o.Unit = optionsOf(layoutOf(t, name)).Unit
					check(t, layoutOf(t, name), laid(t, drawingOf(t, name), o), o)
				})
			}
		}
	}
}

// bars gives the check bars of one sheet, and not their ticks.
func bars(s draw.Sheet) (level, upright []draw.Line) {
	for _, l := range linesOf(draw.BarStroke, drawingsOn(s)...) {
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

// The lengths are worked out by hand: A4 on its side leaves 277 mm inside 10 mm of
// margin, and 183 mm above the level bar; Letter 259.4 mm, which are 10 inches, and
// 188.9 mm.
func TestBarsAreAsLongAsThePaperTakes(t *testing.T) {
	for _, tt := range []struct {
		paper      string
		unit       unit.LengthUnit
		across, up float64
		words      string
		ticks      int // along the level bar, ends included
	}{
		{"A4", unit.Millimetres, 270, 180, "270 mm from end to end: measure me with a steel rule", 7},
		{"A3", unit.Millimetres, 400, 270, "400 mm from end to end", 9},
		{"Letter", unit.DecimalInches, 254, 177.8, "10 in from end to end", 11},
		{"Letter", unit.InchFractions, 254, 177.8, "10 in from end to end", 11},
	} {
		o := options(paper(tt.paper), false)
		o.Unit = tt.unit
		p := laid(t, drawingOf(t, "six"), o)
		assert.InDelta(t, tt.across, p.Across.MM(), tolMM)
		assert.InDelta(t, tt.up, p.Up.MM(), tolMM)
		for i, s := range p.Sheets {
			level, upright := bars(s)
			require.Len(t, level, 1, "sheet %d", i+1)
			require.Len(t, upright, 1, "sheet %d", i+1)
			assert.InDelta(t, tt.across, level[0].Length(), tolMM)
			assert.InDelta(t, tt.up, upright[0].Length(), tolMM)
			ticks := 0
			for _, l := range linesOf(draw.BarStroke, drawingsOn(s)...) {
				if l.A.X == l.B.X && math.Abs(l.At(0.5).Y-level[0].A.Y) < tolMM {
					ticks++
				}
			}
			assert.Equal(t, tt.ticks, ticks, "one line with two ends, and a small tick at every 50 mm or inch")
			assert.Contains(t, strings.Join(wordsOn(draw.LayerBars, drawingsOn(s)...), "\n"), tt.words)
		}
	}
}

// Nothing comes into the white margin, and pieces on one sheet keep apart, with a
// line between them along which they are cut.
func TestPiecesLieOnTheirSheets(t *testing.T) {
	everyWay(t, func(t *testing.T, _ *fan.Layout, p tile.Plan, o tile.Options) {
		for i, s := range p.Sheets {
			inside := draw.Rect{Max: draw.Point{X: s.Width, Y: s.Height}}.Grow(-o.Margin.MM() + 1e-5)
			var windows []draw.Rect
			for n, part := range s.Parts {
				shown := draw.NoRect().Include(part.Window...)
				if len(part.Window) == 0 {
					shown = part.Drawing.Bounds()
				} else {
					windows = append(windows, shown)
				}
				assert.Equal(t, inside.Union(shown), inside, "sheet %d, part %d", i+1, n)
			}
			for n, upper := range windows[:len(windows)-1] {
				lower := windows[n+1]
				assert.False(t, upper.Touches(lower))
				cut := slices.ContainsFunc(linesOf(draw.CrossStroke, s.Parts[len(s.Parts)-1].Drawing), func(l draw.Line) bool {
					return l.A.Y == l.B.Y && l.A.Y < upper.Min.Y && l.A.Y > lower.Max.Y && l.A.X <= upper.Min.X && l.B.X >= max(upper.Max.X, lower.Max.X)
				})
				assert.True(t, cut, "sheet %d says where strips %d and %d are cut apart", i+1, n+1, n+2)
				assert.Contains(t, wordsOn(draw.LayerFrame, drawingsOn(s)...), "cut the strips apart here")
			}
		}
	})
}

// within reports whether a slot lies wholly between a piece's joins.
func within(p tile.Piece, slot draw.Line) bool {
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

// requireWhole holds what must be true of every plan: each slot whole on just one
// piece, and neighbours overlapping by what was asked along the whole join.
func requireWhole(t require.TestingT, slots []draw.Line, p tile.Plan, o tile.Options) {
	for i, s := range slots {
		whole := 0
		for _, piece := range p.Pieces {
			if within(piece, s) {
				whole++
				require.Equal(t, piece.Window, piece.Window.Union(s.Bounds()), "slot %d is shown whole", i+1)
			}
		}
		require.Equal(t, 1, whole, "slot %d is whole on one piece", i+1)
	}
	for i, piece := range p.Pieces[1:] {
		require.Equal(t, p.Pieces[i].Right, piece.Left, "neighbours share the join")
		b := piece.Left.Bounds()
		require.LessOrEqual(t, piece.Window.Min.X, b.Min.X-o.Overlap.MM()+tolMM)
		require.GreaterOrEqual(t, p.Pieces[i].Window.Max.X, b.Max.X+o.Overlap.MM()-tolMM)
	}
}

func TestSlotsAreNeverCut(t *testing.T) {
	everyWay(t, func(t *testing.T, l *fan.Layout, p tile.Plan, o tile.Options) { requireWhole(t, slotsOf(l), p, o) })
	rapid.Check(t, func(rt *rapid.T) {
		l := anyNeck(rt)
		d := draw.Fan(l, draw.Options{})
		o := options(paper("A3"), rapid.Bool().Draw(rt, "strips"))
		o.Overlap = unit.MM(rapid.Float64Range(5, 20).Draw(rt, "overlap"))
		requireWhole(rt, slotsOf(l), laid(rt, d, o), o)
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

func TestPrinterCorrection(t *testing.T) {
	o := options(paper("A4"), false)
	// A printer that makes 0.996 of what it is sent across and 1.0025 up.
	o.BarAcross, o.BarUp = unit.MM(270*0.996), unit.MM(180*1.0025)
	p := laid(t, drawingOf(t, "six"), o)
	for _, s := range p.Sheets {
		assert.Equal(t, []float64{297, 210}, []float64{s.Width, s.Height}, "paper stays paper")
		level, upright := bars(s)
		assert.InDelta(t, 270, level[0].Length()*0.996, tolMM)
		assert.InDelta(t, 180, upright[0].Length()*1.0025, tolMM)
		assert.Contains(t, strings.Join(wordsOn(draw.LayerFrame, drawingsOn(s)...), " "),
			"CORRECTED for a printer that made 268.92 mm of the bar of 270 mm across and 180.45 mm of the bar of 180 mm up.")
		inside := draw.Rect{Max: draw.Point{X: 297, Y: 210}}.Grow(-10 + 1e-5)
		for _, part := range s.Parts {
			shown := draw.NoRect().Include(part.Window...)
			assert.Equal(t, inside.Union(shown), inside)
		}
	}
	// A slot on the print, after the printer's own stretch, is as long as on wood.
	first := linesOf(draw.SlotStroke, p.Sheets[0].Parts[0].Drawing)[0]
	assert.InDelta(t, layoutOf(t, "six").Frets[1].Slot.Length.MM(), math.Hypot((first.B.X-first.A.X)*0.996, (first.B.Y-first.A.Y)*1.0025), tolMM)
	o.BarAcross, o.BarUp = unit.MM(100), 0
	_, err := tile.Lay(drawingOf(t, "six"), o)
	assert.EqualError(t, err, `bar-across: this is no measure of that bar ("100.0 mm"); give what the bar of 270 mm measured on a print of the same paper`)
}

func TestPapersByName(t *testing.T) {
	for in, want := range map[string]tile.Paper{
		"A4": {Name: "A4", Width: unit.MM(210), Length: unit.MM(297)}, " letter ": {Name: "Letter", Width: unit.MM(215.9), Length: unit.MM(279.4)},
		"a3": {Name: "A3", Width: unit.MM(297), Length: unit.MM(420)}, "roll 610 mm": {Name: "roll", Width: unit.MM(610)},
		"Roll 24 in": {Name: "roll", Width: unit.MM(609.6)},
	} {
		got := paper(in)
		assert.Equal(t, want.Name, got.Name)
		assert.InDelta(t, want.Width.MM(), got.Width.MM(), tolMM)
		assert.InDelta(t, want.Length.MM(), got.Length.MM(), tolMM)
	}
	for in, want := range map[string]string{
		"A5": `did you mean "A4"?`, "roll": "write it as `roll 610 mm`", "roll 610": "write it as `roll 610 mm`",
		"roll 9 m": "it goes from 150 to 5000 mm", "foolscap": `use "A4" or "A3" or "Letter" or "Legal" or "Tabloid" or "roll 610 mm"`,
	} {
		var got tile.Paper
		assert.ErrorContains(t, got.UnmarshalText([]byte(in)), want)
		assert.Zero(t, got)
	}
}

func TestPaperTooNarrow(t *testing.T) {
	o := options(tile.Roll(unit.MM(152.4)), false)
	_, err := tile.Lay(drawingOf(t, "eight"), o)
	require.Error(t, err)
	assert.Regexp(t, `^paper: the board is too wide for this paper \("roll, 152.4 mm wide"\); take a roll at least \d+ mm wide, or hide layers`, err.Error())
	o.Unit = unit.DecimalInches
	_, err = tile.Lay(drawingOf(t, "eight"), o)
	require.Error(t, err)
	assert.Regexp(t, `\("roll, 6.000 in wide"\); take a roll at least \d\.\d\d in wide`, err.Error())
	_, err = tile.Lay(drawingOf(t, "eight"), options(tile.Paper{Name: "card", Width: unit.MM(150), Length: unit.MM(160)}, true))
	assert.ErrorContains(t, err, "take larger paper")
}
