package chart

import "math"

const (
	barPitch  = 30.0 // from bar to bar
	barHeight = 16.0
)

// SVG draws the chart. Values that are not finite or below 0, and a chart
// without bars, are errors, and the text is "".
func (b Bars) SVG() (string, error) {
	if err := b.check(); err != nil {
		return "", err
	}
	rows := barPitch * float64(len(b.Bars))
	c := newCanvas(98+rows+22*b.legendRows(), b.Title+": "+b.XLabel)
	top := c.heading(b.Title, b.keys(c)) + 16
	left, right := b.margins()
	p := plot{c, scale{0, b.most(), left, width - right, false}, scale{0, 1, top + rows, top, false}}
	b.axis(p)
	for i, bar := range b.Bars {
		b.draw(p, bar, top+barPitch*(float64(i)+0.5))
	}
	c.line(axisPen, left, p.y.to, left, p.y.from)
	return c.done(), nil
}

func (b Bars) check() error {
	c := check{title: b.Title}
	if len(b.Bars) == 0 {
		c.refuse("no bars to draw", "", "")
	}
	for _, bar := range b.Bars {
		c.notNegative(bar.Value, "value of a bar", bar.Label)
		c.notNegative(bar.U, "uncertainty of a bar", bar.Label)
		c.notNegative(bar.Target, "target of a bar", bar.Label)
	}
	return c.faults.Err()
}

// most gives the end of the axis: a little beyond the longest bar, whisker or
// target.
func (b Bars) most() float64 {
	most := 0.0
	for _, bar := range b.Bars {
		most = math.Max(most, math.Max(bar.Value+2*bar.U, bar.Target))
	}
	if most < 1/drawable {
		return 1
	}
	return 1.03 * most
}

// margins leaves room for the labels on the left and the notes on the right.
func (b Bars) margins() (left, right float64) {
	for _, bar := range b.Bars {
		left = math.Max(left, textWidth(barLabel(bar.Label)))
		right = math.Max(right, textWidth(barLabel(bar.Note)))
	}
	return left + 18, right + 18
}

func barLabel(s string) string { return shorten(s, 24) }

// legendRows is 1 when whiskers or targets need a legend, else 0.
func (b Bars) legendRows() float64 {
	if len(b.keys(nil)) > 0 {
		return 1
	}
	return 0
}

func (b Bars) keys(c *canvas) []key {
	var u, target bool
	for _, bar := range b.Bars {
		u, target = u || bar.U > 0, target || bar.Target > 0
	}
	var keys []key
	if target {
		keys = append(keys, key{"target", func(x, y float64) { c.target(x, y-9, y+9) }})
	}
	if u {
		keys = append(keys, key{"two standard uncertainties", func(x, y float64) { c.alongX(x-10, x+10, y) }})
	}
	return keys
}

// axis draws the grid, the figures and the label below.
func (b Bars) axis(p plot) {
	c := p.canvas
	for _, t := range p.x.ticks(7) {
		x := p.x.at(t.value)
		c.line(gridPen, x, p.y.from, x, p.y.to)
		c.line(axisPen, x, p.y.from, x, p.y.from+5)
		c.text(lettering{anchor: middle, colour: ink}, x, p.y.from+21, t.label)
	}
	c.line(axisPen, p.x.from, p.y.from, p.x.to, p.y.from)
	c.text(lettering{anchor: end, colour: ink}, p.x.to, p.y.from+42, shorten(b.XLabel, 60))
}

// draw draws one bar with its label, whisker, target and note about y.
func (b Bars) draw(p plot, bar Bar, y float64) {
	c := p.canvas
	c.text(lettering{anchor: end, colour: ink}, p.x.from-8, y+5, barLabel(bar.Label))
	c.rect(pen{stroke: accent, width: 1, fill: accent, opacity: 0.25}, p.x.from, y-barHeight/2, p.x.at(bar.Value)-p.x.from, barHeight)
	if bar.Target > 0 {
		c.target(p.x.at(bar.Target), y-barHeight/2-4, y+barHeight/2+4)
	}
	if bar.U > 0 {
		c.alongX(p.x.clamped(bar.Value-2*bar.U), p.x.at(bar.Value+2*bar.U), y)
	}
	c.text(words, p.x.to+10, y+5, barLabel(bar.Note))
}

// target draws a thick upright tick with a foot and a head.
func (c *canvas) target(x, top, bottom float64) {
	k := pen{stroke: warn, width: 2.5}
	c.line(k, x, top, x, bottom)
	c.line(k, x-4, top, x+4, top)
	c.line(k, x-4, bottom, x+4, bottom)
}

// alongX draws a lying whisker with caps.
func (c *canvas) alongX(from, to, y float64) {
	k := pen{stroke: ink, width: 1.5}
	c.line(k, from, y, to, y)
	c.line(k, from, y-4, from, y+4)
	c.line(k, to, y-4, to, y+4)
}
