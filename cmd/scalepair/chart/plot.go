package chart

// plot is one panel: where it stands and its two scales. y.from is the bottom.
type plot struct {
	canvas *canvas
	x, y   scale
}

var (
	gridPen = pen{stroke: quiet, width: 0.5, dash: "1 3"}
	axisPen = pen{stroke: ink, width: 1}
	words   = lettering{anchor: start, colour: ink}
)

// frame draws grid, axes, ticks and labels. The y label stands above the
// axis, so that it reads without turning the head; the x label stands below
// its end, and an empty one leaves the x figures out too.
func (p plot) frame(xLabel, yLabel string) {
	c := p.canvas
	for _, t := range p.y.ticks(7) {
		y := p.y.at(t.value)
		c.line(gridPen, p.x.from, y, p.x.to, y)
		c.text(lettering{anchor: end, colour: ink}, p.x.from-8, y+5, t.label)
	}
	for _, t := range p.x.ticks(9) {
		x := p.x.at(t.value)
		c.line(gridPen, x, p.y.from, x, p.y.to)
		if xLabel != "" {
			c.line(axisPen, x, p.y.from, x, p.y.from+5)
			c.text(lettering{anchor: middle, colour: ink}, x, p.y.from+21, t.label)
		}
	}
	c.path(axisPen, false, point{p.x.from, p.y.to}, point{p.x.from, p.y.from}, point{p.x.to, p.y.from})
	c.text(words, 8, p.y.to-10, shorten(yLabel, 80))
	c.text(lettering{anchor: end, colour: ink}, p.x.to, p.y.from+42, shorten(xLabel, 80))
}

// whisker draws an uncertainty bar with caps, along y.
func (p plot) whisker(k pen, v, lo, hi float64) {
	x, top, bottom := p.x.at(v), p.y.clamped(hi), p.y.clamped(lo)
	if bottom-top < 1 { // no longer than the line is wide
		return
	}
	p.canvas.line(k, x, bottom, x, top)
	p.canvas.line(k, x-3, top, x+3, top)
	p.canvas.line(k, x-3, bottom, x+3, bottom)
}

// diamond draws a square on its corner.
func (c *canvas) diamond(p pen, x, y, r float64) {
	c.path(p, true, point{x, y - r}, point{x + r, y}, point{x, y + r}, point{x - r, y})
}

// square draws an upright square.
func (c *canvas) square(p pen, x, y, r float64) { c.rect(p, x-r, y-r, 2*r, 2*r) }

// key is one entry of a legend: draw puts the mark with its middle at x, y.
type key struct {
	label string
	draw  func(x, y float64)
}

// legend sets the keys in rows from y down and gives the y below them.
func (c *canvas) legend(y float64, keys []key) float64 {
	x := 8.0
	for _, k := range keys {
		w := 34 + textWidth(k.label)
		if x > 8 && x+w > width-8 {
			x, y = 8, y+22
		}
		k.draw(x+12, y-5)
		c.text(words, x+28, y, k.label)
		x += w + 12
	}
	if len(keys) == 0 {
		return y - 22
	}
	return y
}

// heading sets the title and the legend and gives the y below them.
func (c *canvas) heading(title string, keys []key) float64 {
	y := 6.0
	if title != "" {
		y = 22
		c.text(lettering{anchor: start, colour: ink, bold: true}, 8, y, shorten(title, 72))
	}
	return c.legend(y+24, keys)
}

// box is the room that a mark or a text takes.
type box struct{ x1, y1, x2, y2 float64 }

func (b box) overlaps(o box) bool { return b.x1 < o.x2 && o.x1 < b.x2 && b.y1 < o.y2 && o.y1 < b.y2 }

// labels finds free places for texts beside their marks.
type labels struct {
	room  box // texts stay inside
	taken []box
}

// mark keeps the room of a mark free of texts.
func (l *labels) mark(x, y, r float64) {
	l.taken = append(l.taken, box{x - r, y - r, x + r, y + r})
}

// place finds a place for a text beside a mark of radius r: right, left,
// above, below, then the corners. Without must, no free place gives false;
// with it, the place that covers least is taken.
func (l *labels) place(x, y, r float64, s string, must bool) (point, anchor, bool) {
	w, gap := textWidth(s), r+4
	best, least := 0, -1
	places := []struct {
		dx, dy float64
		a      anchor
	}{
		{gap, 5, start}, {-gap, 5, end}, {0, -gap, middle}, {0, gap + 11, middle},
		{gap, -gap, start}, {-gap, -gap, end}, {gap, gap + 11, start}, {-gap, gap + 11, end},
		{0, -gap - 18, middle}, {0, gap + 29, middle},
	}
	for i, p := range places {
		if n := l.covers(textBox(x+p.dx, y+p.dy, w, p.a)); least < 0 || n < least {
			best, least = i, n
		}
	}
	p := places[best]
	if least > 0 && !must {
		return point{}, start, false
	}
	l.taken = append(l.taken, textBox(x+p.dx, y+p.dy, w, p.a))
	return point{x + p.dx, y + p.dy}, p.a, true
}

// textBox gives the room of a text of width w with its baseline at y.
func textBox(x, y, w float64, a anchor) box {
	switch a {
	case middle:
		x -= w / 2
	case end:
		x -= w
	}
	return box{x - 1, y - 12, x + w + 1, y + 4}
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
