// Package chart draws the pictures that help a builder judge, choose and set out,
// each as one complete svg element: the map of scale pairs, the readings against
// their fit, the bars of a set of strings, and sketches with dimensions. The same
// data give the same bytes.
//
// What matters is said by shape, line and label; colour only helps, so that a
// grey print and a colour-blind eye lose nothing. A chart holds its caption, and
// for those who cannot see it a text that says what it shows. Ink is currentColor,
// the other colours are CSS variables with defaults (--chart-accent, --chart-warn,
// --chart-quiet, --chart-paper), so that a chart follows its page into the dark.
// Lengths are in user units, 720 across, meant as pixels; x runs right, y down.
// Numbers that are not finite are a bug of the caller, and panic.
//
// In reading order: chart.go has the elements that all charts are made of,
// axis.go scales and panels, label.go names that look for room, then map.go and
// grid.go, fit.go, bars.go and sketch.go the charts.
package chart

import (
	"encoding/xml"
	"fmt"
	"math"
	"strings"

	"scalepair/cmd/scalepair/table"
	"scalepair/data/unit"
	"scalepair/fan/draw"
)

// width is the width of every chart in user units.
const width = 720.0

// style is what the classes look like. Readers without CSS variables pass over
// the second of two values.
const style = `<style>
.sp-end{text-anchor:end}.sp-middle{text-anchor:middle}.sp-bold{font-weight:700}.sp-small{font-size:13px}
.sp-over{paint-order:stroke;stroke:#fff;stroke:var(--chart-paper,#fff);stroke-width:4px;stroke-linejoin:round}
.sp-warn{fill:#a33c00;fill:var(--chart-warn,#a33c00)}
.sp-axis{fill:none;stroke:currentColor}
.sp-heavy{fill:none;stroke:currentColor;stroke-width:2.5px}
.sp-thin{fill:none;stroke:currentColor;stroke-width:.6px}
.sp-grid{fill:none;stroke:#6b6b6b;stroke:var(--chart-quiet,#6b6b6b);stroke-width:.5px;stroke-dasharray:1 3}
.sp-paper{fill:#fff;fill:var(--chart-paper,#fff)}
.sp-curve{fill:none;stroke:#6b6b6b;stroke:var(--chart-quiet,#6b6b6b);stroke-width:1.5px;stroke-dasharray:7 4}
.sp-reading{fill:#0b5c9e;fill:var(--chart-accent,#0b5c9e)}
.sp-open{fill:#fff;fill:var(--chart-paper,#fff);stroke:currentColor;stroke-width:1.5px}
.sp-suspect{fill:#fff;fill:var(--chart-paper,#fff);stroke:#a33c00;stroke:var(--chart-warn,#a33c00);stroke-width:2px}
.sp-bar{fill:#0b5c9e;fill:var(--chart-accent,#0b5c9e);fill-opacity:.25;stroke:#0b5c9e;stroke:var(--chart-accent,#0b5c9e)}
.sp-target{fill:none;stroke:#a33c00;stroke:var(--chart-warn,#a33c00);stroke-width:2.5px}
.sp-cell{fill:#0b5c9e;fill:var(--chart-accent,#0b5c9e)}
.sp-cell,.sp-paper{shape-rendering:crispEdges}
.sp-outline{fill:none;stroke:currentColor;stroke-width:2px;stroke-linecap:square}
</style>
`

// canvas gathers the elements of one chart.
type canvas struct{ b strings.Builder }

// newCanvas sets title and legend, and gives the y below them.
func newCanvas(title string, keys []key) (*canvas, float64) {
	c := &canvas{}
	y := 6.0
	if title != "" {
		y = 22
		c.text("sp-bold", 8, y, shorten(title, 72))
	}
	return c, c.legend(y+24, keys)
}

// done sets the caption from y down and closes the element. alt says what the
// chart shows to those who cannot see it.
func (c *canvas) done(y float64, caption, alt string) string {
	const letters = 106 // of 13 units in the width, at 0.51 em (judgement)
	if caption != "" {
		for _, line := range table.Wrap(draw.OneLine(caption), letters) {
			c.text("sp-small", 8, y+8, line)
			y += 18
		}
	}
	head := fmt.Sprintf(`<svg xmlns="http://www.w3.org/2000/svg" width="%s" height="%s" viewBox="0 0 %[1]s %[2]s" role="img" aria-label="%s" font-family="system-ui, sans-serif" font-size="14" fill="currentColor">`,
		num(width), num(y), escape(alt))
	return head + "\n" + style + c.b.String() + "</svg>\n"
}

// num prints a coordinate with fixed decimals.
func num(v float64) string { return unit.Fixed(v, 1) }

// path joins points, whose x and y stand in turn.
func (c *canvas) path(class string, xy ...float64) {
	fmt.Fprintf(&c.b, `<path class="%s" d="`, class)
	for i := 0; i < len(xy); i += 2 {
		c.b.WriteString(map[bool]string{true: "M", false: "L"}[i == 0] + num(xy[i]) + " " + num(xy[i+1]))
	}
	c.b.WriteString("\"/>\n")
}

// rect is a rectangle of an opacity.
func (c *canvas) rect(class string, opacity, x, y, w, h float64) {
	fmt.Fprintf(&c.b, `<rect class="%s" x="%s" y="%s" width="%s" height="%s"`, class, num(x), num(y), num(w), num(h))
	if opacity < 1 {
		fmt.Fprintf(&c.b, ` opacity="%s"`, unit.Fixed(opacity, 2))
	}
	c.b.WriteString("/>\n")
}

// shape is a circle, or with three corners and more a polygon on its base.
func (c *canvas) shape(class string, corners int, x, y, r float64) {
	if corners < 3 {
		fmt.Fprintf(&c.b, "<circle class=\"%s\" cx=\"%s\" cy=\"%s\" r=\"%s\"/>\n", class, num(x), num(y), num(r))
		return
	}
	var xy []float64
	for i := range corners + 1 {
		turn := math.Pi * (0.5 - float64(2*i+1)/float64(corners))
		xy = append(xy, x+1.25*r*math.Cos(turn), y+1.25*r*math.Sin(turn))
	}
	c.path(class, xy...)
}

// upright is a bar with caps from top to bottom at x; lying one between two places at
// y.
func (c *canvas) upright(x, top, bottom float64) {
	c.path("sp-axis", x-3, top, x+3, top, x, top, x, bottom, x-3, bottom, x+3, bottom)
}

func (c *canvas) lying(from, to, y float64) {
	c.path("sp-axis", from, y-4, from, y+4, from, y, to, y, to, y-4, to, y+4)
}

// text sets one line with its baseline at y; it begins at x unless the class
// says otherwise.
func (c *canvas) text(class string, x, y float64, s string) {
	if s = draw.OneLine(s); s != "" {
		fmt.Fprintf(&c.b, "<text class=\"%s\" x=\"%s\" y=\"%s\">%s</text>\n", class, num(x), num(y), escape(s))
	}
}

// escape makes any text safe within an element or an attribute.
func escape(s string) string {
	var b strings.Builder
	_ = xml.EscapeText(&b, []byte(draw.OneLine(s))) // a strings.Builder does not fail
	return b.String()
}

// shorten cuts a text to at most that many letters.
func shorten(s string, letters int) string {
	r := []rune(draw.OneLine(s))
	if len(r) <= letters {
		return string(r)
	}
	return string(r[:letters-1]) + "…"
}

// key is one entry of a legend, where it is on: draw puts the mark with its middle
// at x, y.
type key struct {
	on    bool
	label string
	draw  func(c *canvas, x, y float64)
}

// legend sets the keys in rows from y down and gives the y below them.
func (c *canvas) legend(y float64, keys []key) float64 {
	x, below := 8.0, y-22
	for _, k := range keys {
		if !k.on {
			continue
		}
		w := 34 + textWidth(k.label)
		if x > 8 && x+w > width-8 {
			x, y = 8, y+22
		}
		k.draw(c, x+12, y-5)
		c.text("", x+28, y, k.label)
		x, below = x+w+12, y
	}
	return below
}
