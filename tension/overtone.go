package tension

import "math"

// Inharmonicity is B, how much the bending stiffness of the core spreads the
// partials: f_n = n f sqrt(1 + B n^2), hinged ends.
//
//	B = pi^2 E I/(T L^2)
//
// EI of the core, N m2; T: tension, N; L: sounding length, m. 0 where EI is
// not known.
func Inharmonicity(w Wire, tensionN, lengthM float64) float64 {
	return math.Pi * math.Pi * w.EI / (tensionN * lengthM * lengthM)
}

// OvertoneRiseCents is how far the 10th partial stands above ten times the
// fundamental of the same string without stiffness, in cents.
//
//	rise = 600 log2(1 + 100 B)
func OvertoneRiseCents(b float64) float64 { return 600 * math.Log2(1+100*b) }
