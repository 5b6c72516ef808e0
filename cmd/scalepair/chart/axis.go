package chart

import (
	"math"

	"scalepair/data/unit"
)

// scale maps values from lo..hi to places from..to along one axis.
type scale struct{ lo, hi, from, to float64 }

// at gives the place of a value.
func (s scale) at(v float64) float64 { return s.from + (v-s.lo)/(s.hi-s.lo)*(s.to-s.from) }

// clamped gives the place of a value, or of the nearer end when outside.
func (s scale) clamped(v float64) float64 { return s.at(math.Min(math.Max(v, s.lo), s.hi)) }

// extent is the least and the greatest of the values that it was given.
type extent struct{ lo, hi float64 }

func newExtent() extent { return extent{math.Inf(1), math.Inf(-1)} }

func (s *extent) include(values ...float64) {
	for _, v := range values {
		s.lo, s.hi = math.Min(s.lo, v), math.Max(s.hi, v)
	}
}

// scale gives a scale with a share of room at both ends; an extent of one value
// gets a tenth of it, or 1, on either side.
func (s extent) scale(share, from, to float64) scale {
	room := share * (s.hi - s.lo)
	if size := math.Max(math.Abs(s.lo), math.Abs(s.hi)); s.hi-s.lo <= 1e-9*size {
		room = 0.1 * size
	}
	if room == 0 {
		room = 1
	}
	return scale{s.lo - room, s.hi + room, from, to}
}

// tick is one marked value of an axis.
type tick struct {
	value float64
	label string
}

// ticks gives at most that many round values within the scale, in the smallest
// step of 1, 2, 2.5 or 5 times a power of ten that gives few enough.
func (s scale) ticks(most int) []tick {
	power := int(math.Floor(math.Log10((s.hi - s.lo) / float64(most))))
	for ; ; power++ {
		for _, digit := range []float64{1, 2, 2.5, 5} {
			step, decimals := digit*math.Pow10(power), max(0, -power)
			if digit == 2.5 {
				decimals = max(0, 1-power)
			}
			// A millionth of a step: a value on the scale's end is on the scale.
			first, last := math.Ceil(s.lo/step-1e-6), math.Floor(s.hi/step+1e-6)
			if last-first+1 > float64(most) {
				continue
			}
			var out []tick
			for i := first; i <= last; i++ {
				out = append(out, tick{i * step, unit.Fixed(i*step, decimals)})
			}
			return out
		}
	}
}

// panel is where values are drawn: a canvas and its two scales. y.from is the
// bottom.
type panel struct {
	*canvas
	x, y scale
}

// grid draws the lines of the ticks.
func (p panel) grid() {
	for _, t := range p.y.ticks(7) {
		p.path("sp-grid", p.x.from, p.y.at(t.value), p.x.to, p.y.at(t.value))
	}
	for _, t := range p.x.ticks(9) {
		p.path("sp-grid", p.x.at(t.value), p.y.from, p.x.at(t.value), p.y.to)
	}
}

// axes draws both axes with their figures and labels. The y label stands that far
// above the axis, so that it reads without turning the head; the x label stands
// below its end.
func (p panel) axes(xLabel, yLabel string, above float64) {
	for _, t := range p.y.ticks(7) {
		p.text("sp-end", p.x.from-8, p.y.at(t.value)+5, t.label)
	}
	p.text("", 8, p.y.to-above, shorten(yLabel, 80))
	p.xAxis(xLabel)
	p.path("sp-axis", p.x.from, p.y.to, p.x.from, p.y.from)
}

func (p panel) xAxis(label string) {
	for _, t := range p.x.ticks(9) {
		x := p.x.at(t.value)
		p.path("sp-axis", x, p.y.from, x, p.y.from+5)
		p.text("sp-middle", x, p.y.from+21, t.label)
	}
	p.path("sp-axis", p.x.from, p.y.from, p.x.to, p.y.from)
	p.text("sp-end", p.x.to, p.y.from+42, shorten(label, 80))
}
