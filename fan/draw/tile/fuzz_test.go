package tile_test

import (
	"math"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"scalepair/data/unit"
	"scalepair/fan/draw"
	"scalepair/fan/draw/internal/trial"
	"scalepair/fan/draw/tile"
)

// Any drawing on any paper is refused, with no plan, or laid out on sound sheets
// of that paper whose pieces show all of it; and on one sheet that holds it.
func FuzzLay(f *testing.F) {
	for i, s := range trial.AnyShapes() {
		for j, paper := range []tile.Paper{tile.A4(), tile.Tabloid(), tile.Roll(610)} {
			f.Add(s.X1, s.Y1, s.X2, s.Y2, s.SizeMM, paper.WidthMM, paper.LengthMM, 10.0, 12.0, 99.2, byte(i+j), s.Body)
		}
	}
	// A drawing of which a piece comes to lie far off its sheet.
	f.Add(-4879.375, -40.0, 8790.0, 57.0, 0.7, 210.0, 297.0, 10.0, 12.0, 99.2, byte(0), "0")
	// Words that reach farther than any board.
	f.Add(0.0, -2.4, -1e-05, 5.0, 73.0, 190.0, 297.0, 10.0, 12.0, 99.2, byte(0), strings.Repeat("\xcc", 900))
	// Thousands of places to join at, on paper that takes a strip of a few.
	f.Add(0.0, 311.5, -2.7, 188.7, 31.6, 216.0, 2970.0, 10.0, 12.0, 98.2, byte(13), strings.Repeat("k", 1000))
	f.Fuzz(func(t *testing.T, x1, y1, x2, y2, size, width, length, margin, overlap, bar float64, arrange byte, body string) {
		d := trial.AnyDrawing(trial.Shapes{X1: x1, Y1: y1, X2: x2, Y2: y2, SizeMM: size, Body: body})
		d.Notes = []string{body}
		if arrange&2 != 0 {
			d.Joins = []draw.Line{{A: draw.Point{X: (x1 + x2) / 2, Y: y1}, B: draw.Point{X: (x1 + x2) / 2, Y: y2}}}
		}
		o := tile.Options{
			Paper: tile.Paper{Name: "any", WidthMM: width, LengthMM: length}, Arrange: tile.Arrangement(arrange & 1),
			MarginMM: margin, OverlapMM: overlap, BarAcrossMM: bar, Unit: unit.LengthUnit(arrange % 3),
		}
		p, err := tile.Lay(d, o)
		if err != nil {
			require.Equal(t, tile.Plan{}, p)
			require.NotEmpty(t, err.Error())
		} else {
			requirePlan(t, d, p, o)
		}
		one, err := tile.One(d, o)
		if err != nil {
			require.Equal(t, tile.Plan{}, one)
			return
		}
		require.Len(t, one.Sheets, 1)
		require.Len(t, one.Pieces, 1)
	})
}

func requirePlan(t *testing.T, d draw.Drawing, p tile.Plan, o tile.Options) {
	require.NotEmpty(t, p.Sheets)
	require.NotEmpty(t, p.Pieces)
	require.True(t, p.Used > 0 && p.Used <= 1+1e-9, p.Used)
	require.False(t, math.IsNaN(p.Turn))
	for _, s := range p.Sheets {
		require.NoError(t, s.Sound())
		if !o.Paper.IsRoll() {
			require.ElementsMatch(t, []float64{o.Paper.WidthMM, o.Paper.LengthMM}, []float64{s.WidthMM, s.HeightMM})
		}
	}
	all, board := draw.NoRect(), d.Without(draw.LayerTitle, draw.LayerKey, draw.LayerBars).Bounds()
	for i, piece := range p.Pieces {
		require.Equal(t, i+1, piece.Number)
		require.Less(t, piece.Sheet, len(p.Sheets))
		all = all.Union(piece.Window)
	}
	require.Equal(t, all, all.Union(board), "every piece together shows the drawing")
}

// A paper's name and width read, or are refused with what would do.
func FuzzParsePaper(f *testing.F) {
	for _, s := range []string{"A4", " letter ", "roll 610 mm", "Roll 24 in", "roll", "roll -1 mm", "roll 1e300 m", "roll1e307 m", "", "A5", "\xff", "ROLL½in"} {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, s string) {
		p, err := tile.ParsePaper(s)
		if err != nil {
			require.Zero(t, p)
			require.NotEmpty(t, err.Error())
			return
		}
		require.False(t, math.IsNaN(p.WidthMM) || math.IsInf(p.WidthMM, 0))
		again, err := tile.ParsePaper(p.Name)
		if p.IsRoll() {
			again, err = tile.ParsePaper("roll " + unit.MM(p.WidthMM).String())
			require.InDelta(t, p.WidthMM, again.WidthMM, 4e-16*math.Abs(p.WidthMM))
			again.WidthMM = p.WidthMM
		}
		require.NoError(t, err)
		require.Equal(t, p, again)
	})
}
