package gauges

import "math"

// normalQuantile is how many standard deviations leave the chance p above
// them.
//
//	z = sqrt(2) erfinv(1 - 2p)
//
// p: chance in the upper tail, 1e-9 < p < 1 (1-2p keeps seven digits down to
// there); outside 0 to 1 it panics.
// Source: Abramowitz and Stegun, Handbook of Mathematical Functions, 26.2.
func normalQuantile(p float64) float64 {
	mustBeChance(p)
	return math.Sqrt2 * math.Erfinv(1-2*p)
}

// chi2Tail is the chance that the sum of k squared standard normal values
// exceeds x.
//
//	P = Q(k/2, x/2), Q the upper regularised incomplete gamma function
//
// x: the sum found, 0 or more; k: degrees of freedom, above 0.
// Source: Abramowitz and Stegun 26.4.1 and 26.4.19; Q by the series 6.5.29
// below a+1 and the continued fraction 6.5.31 above it.
func chi2Tail(x, k float64) float64 {
	a, h := k/2, x/2
	if h <= 0 {
		return 1
	}
	lg, _ := math.Lgamma(a)
	front := math.Exp(a*math.Log(h) - h - lg)
	if h < a+1 {
		return 1 - front*gammaSeries(a, h)
	}
	return front * gammaFraction(a, h)
}

// gammaSeries is A&S 6.5.29: the lower function over front. Its terms fall at
// least as h/(a+n), so they end below the last digit.
func gammaSeries(a, h float64) float64 {
	term := 1 / a
	sum := term
	for n := 1.0; term > sum*1e-16; n++ {
		term *= h / (a + n)
		sum += term
	}
	return sum
}

// gammaFraction is A&S 6.5.31 in its even form, the upper function over
// front, evaluated forward by Lentz's method (W. J. Lentz, Applied Optics 15
// (1976) 668). For h >= a+1 a hundred steps reach the last digit.
func gammaFraction(a, h float64) float64 {
	const tiny = 1e-300
	b := h + 1 - a
	c, d := 1/tiny, 1/b
	f := d
	for n := 1.0; n < 1000; n++ {
		an := -n * (n - a)
		b += 2
		d = 1 / orTiny(an*d+b, tiny)
		c = orTiny(b+an/c, tiny)
		f *= c * d
		if math.Abs(c*d-1) < 1e-16 {
			break
		}
	}
	return f
}

func orTiny(x, tiny float64) float64 {
	if math.Abs(x) < tiny {
		return tiny
	}
	return x
}

func mustBeChance(p float64) {
	if !(p > 0 && p < 1) {
		panic("gauges: a chance must lie between 0 and 1")
	}
}
