package chart

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

func (b box) overlaps(o box) bool { return b.x1 < o.x2 && o.x1 < b.x2 && b.y1 < o.y2 && o.y1 < b.y2 }

// labels finds free places for texts beside their marks.
type labels struct {
	room  box // texts stay inside
	taken []box
}

// labels gives the labels of a panel.
func (p panel) labels() *labels {
	return &labels{room: box{p.x.from + 2, p.y.to - 8, p.x.to, p.y.from - 2}}
}

// mark keeps the room of a mark free of texts.
func (l *labels) mark(x, y, r float64) { l.taken = append(l.taken, box{x - r, y - r, x + r, y + r}) }

// set sets a text beside a mark of radius r, with a rim of paper about it: right,
// left, above, below, then the corners, and further away. Where no place is
// free it takes the one that covers least.
func (p panel) set(l *labels, class string, x, y, r float64, s string) {
	w, gap := textWidth(s), r+4
	var best box
	var at [2]float64
	least := -1
	for _, place := range [][3]float64{ // dx, dy, share of the width to the left of x
		{gap, 5, 0}, {-gap, 5, 1}, {0, -gap, 0.5}, {0, gap + 11, 0.5},
		{gap, -gap, 0}, {-gap, -gap, 1}, {gap, gap + 11, 0}, {-gap, gap + 11, 1},
		{0, -gap - 18, 0.5}, {0, gap + 29, 0.5}, {0, -gap - 36, 0.9}, {0, gap + 47, 0.9},
	} {
		left, base := x+place[0]-place[2]*w, y+place[1]
		b := box{left - 1, base - 12, left + w + 1, base + 4}
		if n := l.covers(b); least < 0 || n < least {
			best, at, least = b, [2]float64{left, base}, n
		}
	}
	l.taken = append(l.taken, best)
	p.text("sp-over "+class, at[0], at[1], s)
}

// covers counts what a text would cover; leaving the room weighs most.
func (l *labels) covers(b box) int {
	n := 0
	if b.x1 < l.room.x1 || b.x2 > l.room.x2 || b.y1 < l.room.y1 || b.y2 > l.room.y2 {
		n += 100
	}
	for _, t := range l.taken {
		if b.overlaps(t) {
			n++
		}
	}
	return n
}
