package chart

import (
	"encoding/xml"
	"fmt"
	"strings"

	"scalepair/data/unit"
	"scalepair/fan/draw"
)

// colour is one of the chart's few colours.
type colour int

const (
	none colour = iota
	ink
	accent
	warn
	quiet
	paper
)

// colours holds each colour's default and its CSS value. Readers without CSS
// variables ignore the latter and take the default.
var colours = [...]struct{ name, plain, css string }{
	none:   {"none", "none", "none"},
	ink:    {"ink", "currentColor", "currentColor"},
	accent: {"accent", "#0b5c9e", "var(--chart-accent,#0b5c9e)"},
	warn:   {"warn", "#a33c00", "var(--chart-warn,#a33c00)"},
	quiet:  {"quiet", "#6b6b6b", "var(--chart-quiet,#6b6b6b)"},
	paper:  {"paper", "#ffffff", "var(--chart-paper,#ffffff)"},
}

// canvas gathers the elements of one chart.
type canvas struct{ b strings.Builder }

// newCanvas opens the svg element. label is what a screen reader says.
func newCanvas(height float64, label string) *canvas {
	c := &canvas{}
	fmt.Fprintf(&c.b, `<svg xmlns="http://www.w3.org/2000/svg" width="%s" height="%s" viewBox="0 0 %[1]s %[2]s" role="img" aria-label="%s" font-family="system-ui, sans-serif" font-size="14">`,
		num(width), num(height), escape(label))
	c.b.WriteString("\n<style>")
	for k := accent; k <= paper; k++ {
		fmt.Fprintf(&c.b, ".sp-f-%s{fill:%s}.sp-s-%s{stroke:%s}", colours[k].name, colours[k].css, colours[k].name, colours[k].css)
	}
	c.b.WriteString("</style>\n")
	return c
}

// done closes the element and gives the text.
func (c *canvas) done() string {
	c.b.WriteString("</svg>\n")
	return c.b.String()
}

// num prints a coordinate with fixed decimals.
func num(v float64) string { return unit.Fixed(v, 1) }

// pen is how a shape is drawn. Dash is an SVG dash list, "" for a full line.
type pen struct {
	stroke  colour
	width   float64
	dash    string
	fill    colour
	opacity float64 // of the fill; 0 counts as 1
}

// attributes gives the pen's attributes with their leading blank.
func (p pen) attributes() string {
	var b strings.Builder
	var classes []string
	fmt.Fprintf(&b, ` fill="%s"`, colours[p.fill].plain)
	if p.fill >= accent {
		classes = append(classes, "sp-f-"+colours[p.fill].name)
	}
	if p.stroke != none {
		fmt.Fprintf(&b, ` stroke="%s" stroke-width="%s"`, colours[p.stroke].plain, num(p.width))
		if p.stroke >= accent {
			classes = append(classes, "sp-s-"+colours[p.stroke].name)
		}
	}
	if p.dash != "" {
		fmt.Fprintf(&b, ` stroke-dasharray="%s"`, p.dash)
	}
	if p.opacity > 0 {
		fmt.Fprintf(&b, ` fill-opacity="%s"`, unit.Fixed(p.opacity, 2))
	}
	if len(classes) > 0 {
		fmt.Fprintf(&b, ` class="%s"`, strings.Join(classes, " "))
	}
	return b.String()
}

// point is a place on the canvas.
type point struct{ x, y float64 }

// path draws a line through points, closed or open.
func (c *canvas) path(p pen, closed bool, points ...point) {
	c.b.WriteString(`<path d="`)
	for i, q := range points {
		c.b.WriteString(map[bool]string{true: "M", false: "L"}[i == 0] + num(q.x) + " " + num(q.y))
	}
	if closed {
		c.b.WriteString("Z")
	}
	fmt.Fprintf(&c.b, "\"%s/>\n", p.attributes())
}

func (c *canvas) line(p pen, x1, y1, x2, y2 float64) {
	c.path(p, false, point{x1, y1}, point{x2, y2})
}

func (c *canvas) rect(p pen, x, y, w, h float64) {
	c.path(p, true, point{x, y}, point{x + w, y}, point{x + w, y + h}, point{x, y + h})
}

func (c *canvas) circle(p pen, x, y, r float64) {
	fmt.Fprintf(&c.b, "<circle cx=\"%s\" cy=\"%s\" r=\"%s\"%s/>\n", num(x), num(y), num(r), p.attributes())
}

// anchor says which end of a text stands at its place.
type anchor string

const (
	start  anchor = "start"
	middle anchor = "middle"
	end    anchor = "end"
)

// lettering is how a text is set.
type lettering struct {
	anchor anchor
	colour colour
	bold   bool
	// halo puts a rim of paper around the letters, for texts over lines.
	halo bool
}

// text sets one line with its baseline at y.
func (c *canvas) text(l lettering, x, y float64, s string) {
	if s == "" {
		return
	}
	fill := pen{fill: l.colour}
	if l.halo {
		fill.stroke, fill.width = paper, 4
	}
	extra := ""
	if l.halo {
		extra += ` paint-order="stroke" stroke-linejoin="round"`
	}
	if l.bold {
		extra += ` font-weight="700"`
	}
	fmt.Fprintf(&c.b, "<text x=\"%s\" y=\"%s\" text-anchor=\"%s\"%s%s>%s</text>\n", num(x), num(y), l.anchor, fill.attributes(), extra, escape(s))
}

// escape makes any text safe within an element or an attribute.
func escape(s string) string {
	var b strings.Builder
	if err := xml.EscapeText(&b, []byte(draw.OneLine(s))); err != nil {
		panic(err) // a strings.Builder does not fail
	}
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

// textWidth is a guess on the safe side of a line's width: letters and figures
// of common sans fonts average 0.45 to 0.56 em (judgement), wide letters 1 em.
func textWidth(s string) float64 {
	w := 0.0
	for _, r := range s {
		if r >= 0x1100 {
			w += 14
			continue
		}
		w += 0.56 * 14
	}
	return w
}
