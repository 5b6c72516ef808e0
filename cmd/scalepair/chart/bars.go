package chart

import (
	"fmt"
	"math"
	"slices"
	"strings"
)

// Bar is one string: its value, the standard uncertainty (0 for none), the
// target (0 for none), all in the unit of the axis and not negative. Note is
// printed at the end of its line.
type Bar struct {
	Label            string
	Value, U, Target float64
	Note             string
}

// Bars is a chart of horizontal bars, the first on top. Whiskers show two
// standard uncertainties, a tick the target.
type Bars struct {
	Title, XLabel string
	Bars          []Bar
}

// SVG draws the chart, "" without bars.
func (b Bars) SVG() string {
	if len(b.Bars) == 0 {
		return ""
	}
	const pitch = 30.0 // from bar to bar
	most, left, right := 0.0, 0.0, 0.0
	for _, bar := range b.Bars {
		most = max(most, bar.Value+2*bar.U, bar.Target)
		left, right = math.Max(left, textWidth(barLabel(bar.Label))), math.Max(right, textWidth(barLabel(bar.Note)))
	}
	if most == 0 {
		most = 1
	}
	c, top := newCanvas(b.Title, b.keys())
	p := panel{c, scale{0, 1.03 * most, left + 18, width - right - 18}, scale{0, 1, top + 16 + pitch*float64(len(b.Bars)), top + 16}}
	for _, t := range p.x.ticks(9) {
		p.path("sp-grid", p.x.at(t.value), p.y.from, p.x.at(t.value), p.y.to)
	}
	p.xAxis(b.XLabel)
	for i, bar := range b.Bars {
		p.bar(bar, p.y.to+pitch*(float64(i)+0.5))
	}
	p.path("sp-axis", p.x.from, p.y.to, p.x.from, p.y.from)
	return c.done(p.y.from+52, "", b.alt())
}

// alt says every bar.
func (b Bars) alt() string {
	words := []string{fmt.Sprintf("%s, %s, as bars", b.Title, b.XLabel)}
	for _, bar := range b.Bars {
		text := fmt.Sprintf("%s: %.1f", bar.Label, bar.Value)
		if bar.U > 0 {
			text += fmt.Sprintf(" ± %.1f", bar.U)
		}
		if bar.Target > 0 {
			text += fmt.Sprintf(", target %.1f", bar.Target)
		}
		words = append(words, text)
	}
	return strings.Join(words, "; ") + "."
}

func barLabel(s string) string { return shorten(s, 24) }

func (b Bars) keys() []key {
	return []key{
		{slices.ContainsFunc(b.Bars, func(o Bar) bool { return o.Target > 0 }), "target", func(c *canvas, x, y float64) { c.target(x, y-9, y+9) }},
		{slices.ContainsFunc(b.Bars, func(o Bar) bool { return o.U > 0 }), "two standard uncertainties, from the readings", func(c *canvas, x, y float64) { c.lying(x-10, x+10, y) }},
	}
}

// bar draws one bar with its label, whisker, target and note about y.
func (p panel) bar(b Bar, y float64) {
	const half = 8.0
	p.text("sp-end", p.x.from-8, y+5, barLabel(b.Label))
	p.rect("sp-bar", 1, p.x.from, y-half, p.x.at(b.Value)-p.x.from, 2*half)
	if b.Target > 0 {
		p.target(p.x.at(b.Target), y-half-4, y+half+4)
	}
	if b.U > 0 {
		p.lying(p.x.clamped(b.Value-2*b.U), p.x.at(b.Value+2*b.U), y)
	}
	p.text("", p.x.to+10, y+5, barLabel(b.Note))
}

// target draws a thick upright tick with a foot and a head.
func (c *canvas) target(x, top, bottom float64) {
	c.path("sp-target", x-4, top, x+4, top, x, top, x, bottom, x-4, bottom, x+4, bottom)
}
