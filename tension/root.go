package tension

import "math"

// rootStep ends the search for a root: a step of this share of the place is
// the last one. With the right slope it leaves the square of the step times half
// the second derivative over the first. For the bend's equation that half is
// under 1/y, so that at most 1e-12 of the place is left, as a rule 1e-14; for
// the compensation's it is about 1.5/L, which leaves 1.5e-12 s/L, a hundredth of
// that.
const rootStep = 1e-6

// rootSteps bounds the search; halving alone would need 53 to use up the
// digits of a bracket, and Newton's steps come on top.
const rootSteps = 120

// risingRoot finds where f, below 0 at lo, crosses 0 on the way to hi, or
// says that it does not: Newton's steps, and a halving where a step would
// leave the bracket. f gives value and slope; start lies in the bracket.
//
// hi is looked at only when a step would pass it, which saves a turn where
// the root is well inside.
func risingRoot(f func(y float64) (value, slope float64), lo, hi, start float64) (root float64, ok bool) {
	y, end, seen := start, hi, false
	for range rootSteps {
		value, slope := f(y)
		step := value / slope
		if slope > 0 && math.Abs(step) <= rootStep*math.Abs(y) && y-step <= end {
			return max(y-step, lo), true
		}
		switch {
		case value >= 0:
			hi, seen = y, true
		case y >= end:
			return 0, false
		default:
			lo = y
		}
		y -= step
		switch {
		case y > lo && y < hi:
		case !seen:
			y = hi
		default:
			y = lo + (hi-lo)/2
		}
	}
	return y, seen
}
