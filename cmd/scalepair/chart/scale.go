package chart

import (
	"math"
	"strconv"

	"scalepair/data/unit"
)

// scale maps values from lo..hi to places from..to along one axis.
type scale struct {
	lo, hi, from, to float64
	log              bool
}

// tick is one marked value of an axis.
type tick struct {
	value float64
	label string
}

// at gives the place of a value.
func (s scale) at(v float64) float64 {
	lo, hi := s.lo, s.hi
	if s.log {
		lo, hi, v = math.Log(lo), math.Log(hi), math.Log(v)
	}
	return s.from + (v-lo)/(hi-lo)*(s.to-s.from)
}

// clamped gives the place of a value, or of the nearer end when outside.
func (s scale) clamped(v float64) float64 { return s.at(math.Min(math.Max(v, s.lo), s.hi)) }

// span gives the least and the greatest value.
type span struct{ lo, hi float64 }

func newSpan() span { return span{math.Inf(1), math.Inf(-1)} }

func (s *span) include(values ...float64) {
	for _, v := range values {
		s.lo, s.hi = math.Min(s.lo, v), math.Max(s.hi, v)
	}
}

// logScale gives a logarithmic scale with a little room at both ends; a span
// of one value gets a fifth on either side.
func (s span) logScale(from, to float64) scale {
	room := math.Max(math.Pow(s.hi/s.lo, 0.06), 1.02)
	if s.hi/s.lo < 1.01 {
		room = 1.2
	}
	return scale{s.lo / room, s.hi * room, from, to, true}
}

// linearScale gives a linear scale with a little room at both ends, never
// below 0 for values from 0; a span of one value gets a tenth of it, or 1, on
// either side.
func (s span) linearScale(from, to float64) scale {
	room := 0.06 * (s.hi - s.lo)
	if size := math.Max(math.Abs(s.lo), math.Abs(s.hi)); room <= 1e-9*size {
		room = 0.1 * size
	}
	if room == 0 {
		room = 1
	}
	lo := s.lo - room
	if s.lo >= 0 {
		lo = math.Max(lo, 0)
	}
	return scale{lo, s.hi + room, from, to, false}
}

// ticks gives at most that many round values within the scale.
func (s scale) ticks(most int) []tick {
	if !s.log {
		return s.linearTicks(most)
	}
	if t := s.logTicks(most); len(t) >= 3 || s.hi/s.lo > 10 {
		return t
	}
	return s.linearTicks(most)
}

// linearTicks counts in the smallest step of 1, 2, 2.5 or 5 times a power of
// ten that gives few enough.
func (s scale) linearTicks(most int) []tick {
	power := int(math.Floor(math.Log10((s.hi - s.lo) / float64(most))))
	for ; ; power++ {
		for _, digit := range []float64{1, 2, 2.5, 5} {
			step, decimals := digit*math.Pow10(power), max(0, -power)
			if digit == 2.5 {
				decimals = max(0, 1-power)
			}
			first, last := math.Ceil(s.lo/step-1e-9), math.Floor(s.hi/step+1e-9)
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

// logDigits are the choices of leading digits of a logarithmic axis, the
// densest first.
var logDigits = [][]float64{
	{1, 1.2, 1.4, 1.6, 1.8, 2, 2.5, 3, 3.5, 4, 5, 6, 7, 8, 9},
	{1, 1.5, 2, 3, 4, 5, 7},
	{1, 2, 3, 5},
	{1, 2, 5},
	{1},
}

// logTicks takes the densest digits that give few enough, else every second,
// third and so on power of ten.
func (s scale) logTicks(most int) []tick {
	for _, digits := range logDigits {
		if t := s.powers(1, digits); len(t) <= most {
			return t
		}
	}
	for stride := 2; ; stride++ {
		if t := s.powers(stride, []float64{1}); len(t) <= most {
			return t
		}
	}
}

// powers gives the digits at every stride-th power of ten within the scale.
func (s scale) powers(stride int, digits []float64) []tick {
	var out []tick
	first, last := int(math.Floor(math.Log10(s.lo))), int(math.Ceil(math.Log10(s.hi)))
	for power := first; power <= last; power++ {
		for _, d := range digits {
			v := d * math.Pow10(power)
			if power%stride == 0 && v >= s.lo && v <= s.hi {
				out = append(out, tick{v, shortest(v)})
			}
		}
	}
	return out
}

// shortest prints a round value without needless digits.
func shortest(v float64) string {
	v, _ = strconv.ParseFloat(strconv.FormatFloat(v, 'e', 2, 64), 64)
	if v >= 1e6 || v < 1e-4 {
		return strconv.FormatFloat(v, 'g', -1, 64)
	}
	return strconv.FormatFloat(v, 'f', -1, 64)
}
