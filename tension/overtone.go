package tension

import "math"

// Inharmonicity is B, how far the bending stiffness of the core spreads the
// partials of a string: f_n = n f sqrt(1 + B n^2).
//
//	B = pi^2 E I/(T L^2), for a round core pi^3 E d^4/(64 T L^2)
//
// EI: bending stiffness of the core, N m2; T: tension, N; L: sounding length,
// m; T and L above 0. Hinged ends. The wrap of a wound string adds stiffness
// that is not counted, so its B is 'at least'. 0 where EI is not known.
// Source: Fletcher, JASA 36 (1964), as given in Fletcher and Rossing, The
// Physics of Musical Instruments, 2nd ed., section 2.18.
func Inharmonicity(w Wire, tensionN, lengthM float64) float64 {
	return math.Pi * math.Pi * w.EI / (tensionN * lengthM * lengthM)
}

// InharmonicityCents is how far the 10th partial stands above ten times the
// fundamental that the string would have without stiffness, in cents.
//
//	rise = 600 log2(1 + 100 B)
//
// B: from [Inharmonicity], 0 or above. Over ten times the fundamental as it
// sounds the rise is less by 600 log2(1 + B), a hundredth of it. Follows from
// f_n = n f sqrt(1 + B n^2).
func InharmonicityCents(b float64) float64 { return 600 * math.Log1p(100*b) / math.Ln2 }
