package tile

import (
	"math"

	"scalepair/fan/draw"
)

// gapMM is left white between two pieces on one sheet.
const gapMM = 8

// way is one way of putting pieces on sheets of one size.
type way struct {
	width, height float64   // of the sheet, mm of paper
	content       draw.Rect // where pieces may lie on it, mm of the drawing
	turn          float64   // of the pieces, radians
	perSheet      int
	joins         []int
}

func (w way) sheets() int { return (len(w.joins) + w.perSheet) / w.perSheet }

// better reports whether w wastes less paper than o, or as much with fewer
// joins, or with as many lies straight.
func (w way) better(o way) bool {
	if a, b := w.area(), o.area(); a != b {
		return a < b
	}
	if len(w.joins) != len(o.joins) {
		return len(w.joins) < len(o.joins)
	}
	return w.turn == 0 && o.turn != 0
}

func (w way) area() float64 { return float64(w.sheets()) * w.width * w.height }

// best gives the best of all ways to lay the strip out; ok is false when none
// fits.
func best(s strip, f format) (w way, ok bool) {
	for _, candidate := range ways(s, f) {
		if candidate.perSheet < 1 {
			continue
		}
		joins, fits := s.divide(candidate.longest(s.room.Height()))
		// A roll is cut to length, never joined across.
		if !fits || f.o.Paper.IsRoll() && len(joins) > 0 {
			continue
		}
		candidate.joins = joins
		if !ok || candidate.better(w) {
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
		straight := way{width: size[0], height: size[1], content: f.content(size[0], size[1])}
		fit := int((straight.content.Height() + gapMM) / (s.room.Height() + gapMM))
		straight.perSheet = min(fit, 1)
		if f.o.Strips {
			straight.perSheet = fit
			out = append(out, straight.diagonals()...)
		}
		out = append(out, straight)
	}
	return out
}

// diagonals are the ways with the piece turned, degree by degree.
func (w way) diagonals() []way {
	var out []way
	for degrees := 1; degrees <= 60; degrees++ {
		turned := w
		turned.turn, turned.perSheet = float64(degrees)*math.Pi/180, 1
		out = append(out, turned)
	}
	return out
}

// longest is the longest piece of the given height that fits the content area,
// 0 or less when none does.
func (w way) longest(height float64) float64 {
	sin, cos := math.Sincos(w.turn)
	long := (w.content.Width() - height*sin) / cos
	if sin == 0 {
		return long
	}
	return math.Min(long, (w.content.Height()-height*cos)/sin)
}

// place puts the pieces on their sheets.
func (w way) place(pieces []Piece) []Piece {
	for i := range pieces {
		p := &pieces[i]
		p.Sheet = i / w.perSheet
		turned := draw.Turn(w.turn)
		box := turned.Rect(p.Window)
		x, y := w.content.Min.X, w.content.Max.Y
		if w.turn == 0 {
			y -= float64(i%w.perSheet) * (p.Window.Height() + gapMM)
		}
		p.Place = turned.Then(draw.Move(x-box.Min.X, y-box.Max.Y))
	}
	return pieces
}
