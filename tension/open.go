package tension

import "math"

// Open is the tension in N that sounds an open string at a pitch, its
// stretch counted.
//
//	T (1 + T/EA) = w (2 L f)^2
//
// w: linear density of the slack string, kg/m; L: length from nut to saddle, m;
// f: pitch, Hz; EA: stretch stiffness, N. L and f are above 0. With EA not
// known (0) it is the textbook law T = w (2 L f)^2, which stands up to about
// 1 % above the tension of a steel string. Source: the string law
// f = sqrt(T/mu)/(2L) (OpenStax, University Physics 1, section 16.6) with
// mu = w/(1 + T/EA), which follows from keeping the mass of the string.
func Open(w Wire, lengthM, freqHz float64) float64 {
	return Stretched(Textbook(w.LinearDensity, lengthM, freqHz), w.Compliance())
}

// Textbook is the tension in N of a string that does not stretch.
//
//	q = w (2 L f)^2
//
// Symbols and source as for [Open].
func Textbook(linearDensity, lengthM, freqHz float64) float64 {
	v := 2 * lengthM * freqHz
	return linearDensity * (v * v)
}

// Stretched takes the textbook tension of a string to its tension with the
// stretch counted: the positive root of T (1 + c T) = q, in the form that
// loses no digits and goes to q as c goes to 0.
//
//	T = 2 q/(1 + sqrt(1 + 4 c q))
//
// q: N, from [Textbook]; c: compliance, 1/N, from [Wire.Compliance]. It is
// the inner step of a search over gauges and lengths, so it takes numbers.
func Stretched(q, compliance float64) float64 {
	return 2 * q / (1 + math.Sqrt(1+float64(4*q*compliance)))
}

// FreqAt is the pitch in Hz at which an open string sounds under a tension;
// the inverse of [Open].
//
//	f = sqrt(T (1 + T/EA)/w)/(2 L)
//
// Symbols and source as for [Open]; T is 0 or above, in N.
func FreqAt(w Wire, lengthM, tensionN float64) float64 {
	stretch := 1 + float64(tensionN*w.Compliance())
	return math.Sqrt(tensionN*stretch/w.LinearDensity) / (2 * lengthM)
}
