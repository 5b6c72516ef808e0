package tile

import (
	"math"

	"scalepair/fan/draw"
)

// Piece is a part of the drawing that comes on one sheet.
type Piece struct {
	Number int       // from 1 on, left to right
	Sheet  int       // index of its sheet
	Window draw.Rect // what it shows, in the drawing's axes, overlap included
	Place  draw.Map  // from the drawing to the printed sheet, without correction
	// Left and Right are the joins to its neighbours as they run over the
	// window's whole height; a line of no length where the drawing ends.
	Left, Right draw.Line
	overlap     float64
}

// strip is the drawing as it is to be divided: a band along x.
type strip struct {
	room    draw.Rect   // the whole, white edge included
	joins   []draw.Line // over the whole height, from top to bottom, left to right
	overlap float64
}

// newStrip takes a drawing's bounds and stretches its joins over them.
func newStrip(d draw.Drawing, edge, overlap float64) strip {
	s := strip{room: d.Bounds().Grow(edge), overlap: overlap}
	for _, j := range d.Joins {
		if full, ok := s.stretch(j); ok {
			s.joins = append(s.joins, full)
		}
	}
	return s
}

// stretch carries a join on over the strip's height. It refuses one that does
// not stay inside the strip or runs steeper than 60 degrees from square.
func (s strip) stretch(j draw.Line) (draw.Line, bool) {
	rise := j.A.Y - j.B.Y
	lean := (j.A.X - j.B.X) / rise
	if rise == 0 || math.Abs(lean) > math.Sqrt(3) {
		return j, false
	}
	full := j
	full.A = draw.Point{X: j.A.X + lean*(s.room.Max.Y-j.A.Y), Y: s.room.Max.Y}
	full.B = draw.Point{X: j.B.X + lean*(s.room.Min.Y-j.B.Y), Y: s.room.Min.Y}
	b := full.Bounds()
	return full, b.Min.X > s.room.Min.X && b.Max.X < s.room.Max.X
}

// divide gives the joins that divide the strip into the fewest pieces none of
// which is longer than most: from the nut on, each piece is as long as may be, so
// that cuts fall behind the board rather than on it where there is a choice; but the
// last is no sliver. ok is false when no such joins exist.
func (s strip) divide(most float64) (joins []int, ok bool) {
	left := -1
	for s.window(left, len(s.joins)).Width() > most {
		// Joins stand in order and do not cross, so that what comes after one
		// that is too far is farther still.
		right := left
		for right+1 < len(s.joins) && s.window(left, right+1).Width() <= most {
			right++
		}
		if right == left {
			return nil, false
		}
		joins = append(joins, right)
		left = right
	}
	// Enough for its words and numbers, and to be laid straight (judgement).
	const leastMM = 100
	if last := len(joins) - 1; last >= 0 {
		before := -1
		if last > 0 {
			before = joins[last-1]
		}
		for joins[last]-1 > before && s.window(joins[last], len(s.joins)).Width() < min(leastMM, most/2) {
			joins[last]--
		}
	}
	return joins, true
}

// window is what the piece between two joins shows; -1 and len(joins) stand for
// the strip's own ends.
func (s strip) window(left, right int) draw.Rect {
	w := s.room
	if left >= 0 {
		w.Min.X = math.Max(w.Min.X, s.joins[left].Bounds().Min.X-s.overlap)
	}
	if right < len(s.joins) {
		w.Max.X = math.Min(w.Max.X, s.joins[right].Bounds().Max.X+s.overlap)
	}
	return w
}

// pieces makes the pieces between the chosen joins, without their places.
func (s strip) pieces(joins []int) []Piece {
	var out []Piece
	left := -1
	for i, right := range append(append([]int{}, joins...), len(s.joins)) {
		p := Piece{Number: i + 1, Window: s.window(left, right), overlap: s.overlap}
		if left >= 0 {
			p.Left = s.joins[left]
		}
		if right < len(s.joins) {
			p.Right = s.joins[right]
		}
		out = append(out, p)
		left = right
	}
	return out
}
