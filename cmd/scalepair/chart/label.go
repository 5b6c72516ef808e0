package chart

import "math"

// textWidth is a guess on the safe side of a line's width: letters and figures
// of common sans fonts average 0.45 to 0.6 em (judgement), wide letters 1 em.
func textWidth(s string) float64 {
	w := 0.0
	for _, r := range s {
		if r >= 0x1100 {
			w += 14
			continue
		}
		w += 0.6 * 14
	}
	return w
}

// box is the room that a mark or a text takes.
type box struct{ x1, y1, x2, y2 float64 }

func around(x, y, r float64) box { return box{x - r, y - r, x + r, y + r} }

func (b box) grown(by float64) box { return box{b.x1 - by, b.y1 - by, b.x2 + by, b.y2 + by} }

func (b box) meets(o box) bool { return b.x1 < o.x2 && o.x1 < b.x2 && b.y1 < o.y2 && o.y1 < b.y2 }

// labels finds free places for texts: inside the room, on no mark and on no other
// text.
type labels struct {
	room         box
	marks, texts []box
}

func (p panel) labels() *labels {
	return &labels{room: box{p.x.from + 2, p.y.to - 8, p.x.to, p.y.from - 2}}
}

func (l *labels) mark(b box) { l.marks = append(l.marks, b) }

func meeting(list []box, b box) int {
	n := 0
	for _, o := range list {
		if o.meets(b) {
			n++
		}
	}
	return n
}

func (l *labels) free(b box) bool {
	inside := b.x1 >= l.room.x1 && b.x2 <= l.room.x2 && b.y1 >= l.room.y1 && b.y2 <= l.room.y2
	return inside && meeting(l.marks, b) == 0 && meeting(l.texts, b) == 0
}

// name sets a text by the mark of radius r at x, y, on a rim of paper: at its
// side, where no other mark is near that it might be taken to name; else further
// out, with a line to its mark that crosses no other. Where no place is free it
// is left out, and reports so.
func (p panel) name(l *labels, class string, x, y, r float64, s string) bool {
	w, directions := textWidth(s), []float64{0, 8, 4, 12, 2, 6, 14, 10, 1, 15, 7, 9, 3, 5, 11, 13} // sixteenths of a turn: at the sides first
	for _, away := range []float64{4, 18, 34, 52, 72, 94, 118, 144} {
		for _, d := range directions {
			sin, cos := math.Sincos(d * math.Pi / 8)
			ax, ay := x+(r+away)*cos, y-(r+away)*sin
			left, base := ax-w/2*(1-math.Round(cos)), ay+5-5*sin
			b := box{left - 1, base - 12, left + w + 1, base + 4}
			beside := away == 4
			switch {
			case !l.free(b), beside && meeting(l.marks, b.grown(8)) > 1, !beside && !l.open(x, y, r, ax, ay):
				continue
			case !beside:
				p.path("sp-thin", x+(r+1)*cos, y-(r+1)*sin, ax, ay)
			}
			l.texts = append(l.texts, b)
			p.text("sp-over "+class, left, base, s)
			return true
		}
	}
	return false
}

// open reports whether the line from the mark of radius r at x, y to a place
// crosses no other mark and no text.
func (l *labels) open(x, y, r, ax, ay float64) bool {
	const step = 3.0
	own, n := around(x, y, r), math.Ceil(math.Hypot(ax-x, ay-y)/step)
	for i := 1.0; i < n; i++ {
		at := around(x+(ax-x)*i/n, y+(ay-y)*i/n, 1)
		if !own.meets(at) && meeting(l.marks, at)+meeting(l.texts, at) > 0 {
			return false
		}
	}
	return true
}
