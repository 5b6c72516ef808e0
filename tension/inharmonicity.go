package tension

import (
	"math"

	"scalepair/data/trace"
	"scalepair/data/unit"
)

// B says how far the bending stiffness of the core spreads the partials of a
// string: f_n = n f sqrt(1 + B n^2).
//
//	B = pi^2 E I/(T L^2), for a round core pi^3 E d^4/(64 T L^2)
//
// ei: bending stiffness E I of the core, N m2; t: tension, N; l: sounding
// length, m; t and l above 0. Hinged ends. The wrap of a wound string adds
// stiffness that is not counted, so its B is 'at least'. 0 where EI is not known.
// Source: Fletcher, JASA 36 (1964), as given in Fletcher and Rossing, The
// Physics of Musical Instruments, 2nd ed., section 2.18.
func B(ei, t, l float64) float64 { return math.Pi * math.Pi * ei / (t * l * l) }

// Inharmonicity is how far the 10th partial stands above ten times the
// fundamental that the string would have without stiffness.
//
//	600 log2(1 + 100 B) cents
//
// Over ten times the fundamental as it sounds the rise is less by
// 600 log2(1 + B), a hundredth of it. Follows from f_n = n f sqrt(1 + B n^2).
func Inharmonicity(tr *trace.Trace, w Wire, t unit.Force, length unit.Length) unit.Cents {
	if w.EI == 0 {
		return 0
	}
	tr.Given("EI, bending stiffness of the core", w.EI, "N m2", fromGauge)
	b := tr.Step("B, spread of the partials", "pi^2 EI/(T L^2)", B(w.EI, t.N(), length.M()), "", stiffString)
	name := ", inharmonicity"
	if !w.Plain {
		name = ", inharmonicity, at least"
	}
	return unit.Cents(tr.Step("rise of partial 10"+name, "600 log2(1 + 100 B)", 600*math.Log1p(100*b)/math.Ln2, "cents", stiffString))
}
