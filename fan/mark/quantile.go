package mark

import "math"

// normalQuantile gives the z that a standard normal number exceeds in size
// with chance p (two-sided), 0 < p < 1: z = sqrt(2) erfinv(1 - p).
func normalQuantile(p float64) float64 { return math.Sqrt2 * math.Erfinv(1-p) }

// manyFreedoms is the number of degrees of freedom from which the normal
// quantile stands for Student's: 1 % too small there at p = 1e-4.
const manyFreedoms = 400

// studentQuantile gives the t that a Student number of nu degrees of freedom
// exceeds in size with chance p (two-sided), 1e-8 < p < 1. nu is rounded down
// to a whole number, 1 at least, which makes t larger if anything. Bisection
// on within.
func studentQuantile(p, nu float64) float64 {
	if nu >= manyFreedoms {
		return normalQuantile(p)
	}
	whole := max(1, int(nu))
	low, high := 0.0, math.Pi/2
	for range 60 {
		middle := (low + high) / 2
		if within(middle, whole) < 1-p {
			low = middle
		} else {
			high = middle
		}
	}
	return math.Sqrt(float64(whole)) * math.Tan(low)
}

// within is the chance that a Student number of nu degrees of freedom is no
// larger in size than sqrt(nu) tan(theta):
//
//	nu even: sin(theta) (1 + 1/2 cos^2 + 1*3/(2*4) cos^4 + ... + 1*3..(nu-3)/(2*4..(nu-2)) cos^(nu-2))
//	nu odd:  2/pi (theta + sin(theta) (cos + 2/3 cos^3 + ... + 2*4..(nu-3)/(1*3..(nu-2)) cos^(nu-2)))
//
// Abramowitz and Stegun 26.7.3 and 26.7.4 (from memory).
func within(theta float64, nu int) float64 {
	sin, cos := math.Sincos(theta)
	term, sum := 1.0, 0.0
	first := 2 // the lower factor of the first quotient
	if nu%2 == 1 {
		term, first = cos, 3
	}
	for k := first; k <= nu; k += 2 {
		sum += term
		term *= cos * cos * float64(k-1) / float64(k)
	}
	if nu%2 == 1 {
		return 2 / math.Pi * (theta + sin*sum)
	}
	return sin * sum
}
