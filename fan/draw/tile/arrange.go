package tile

import (
	"slices"

	"scalepair/fan/draw"
)

// gapMM is left white between two pieces on one sheet.
const gapMM = 8

// way is one way of putting pieces on sheets of one size.
type way struct {
	width, height float64   // of the sheet, mm of paper
	content       draw.Rect // where pieces may lie on it, mm of the drawing
	perSheet      int
	joins         []int
}

func (w way) sheets() int { return (len(w.joins) + w.perSheet) / w.perSheet }

// waste is less for the better of two ways: paper first, then joins.
func (w way) waste() []float64 {
	return []float64{float64(w.sheets()) * w.width * w.height, float64(len(w.joins))}
}

// best gives the best of all ways to lay the strip out; ok is false when none
// fits.
func best(s strip, f format) (w way, ok bool) {
	for _, candidate := range ways(s, f) {
		if candidate.perSheet < 1 {
			continue
		}
		joins, fits := s.divide(candidate.content.Width())
		// A roll is cut to length, never joined across.
		if !fits || f.o.Paper.IsRoll() && len(joins) > 0 {
			continue
		}
		candidate.joins = joins
		if !ok || slices.Compare(candidate.waste(), w.waste()) < 0 {
			w, ok = candidate, true
		}
	}
	return w, ok
}

// ways lists every way to be tried, in a fixed order.
func ways(s strip, f format) []way {
	if f.fitted {
		return []way{f.fit(s, 0, 0)}
	}
	if f.o.Paper.IsRoll() {
		return f.rollWays(s)
	}
	var out []way
	long, wide := f.o.Paper.Length.MM(), f.o.Paper.Width.MM()
	for _, size := range [][2]float64{{long, wide}, {wide, long}} {
		w := way{width: size[0], height: size[1], content: f.content(size[0], size[1])}
		w.perSheet = int((w.content.Height() + gapMM) / (s.room.Height() + gapMM))
		if !f.o.Strips {
			w.perSheet = min(w.perSheet, 1)
		}
		out = append(out, w)
	}
	return out
}

// place puts the pieces on their sheets, below one another where they share one.
func (w way) place(pieces []Piece) []Piece {
	for i := range pieces {
		p := &pieces[i]
		p.Sheet = i / w.perSheet
		down := float64(i%w.perSheet) * (p.Window.Height() + gapMM)
		p.Place = draw.Move(w.content.Min.X-p.Window.Min.X, w.content.Max.Y-down-p.Window.Max.Y)
	}
	return pieces
}
