package tension

import (
	"math"

	"scalepair/data/trace"
	"scalepair/data/unit"
)

// Where the steps of the work come from.
const (
	fromReadings = "from the readings"
	fromAsked    = "as asked"
	fromAbove    = "follows from the steps above"
	fromGauge    = "from the core and its material"
	stringLaw    = "string law: OpenStax, University Physics 1, section 16.6"
	stretchLaw   = "string law, and a stretched string weighs w/(1 + T/EA) a metre"
	hookesLaw    = "Hooke's law: OpenStax, University Physics 1, section 12.3"
	stiffString  = "stiff string: Fletcher, JASA 36 (1964)"
	errorSum     = "JCGM 100:2008, 5.1"
)

// bendDigits are carried where a result lives from small differences of lengths.
const bendDigits = 11

// Open is the tension that sounds an open string at a pitch, its stretch
// counted.
//
//	T (1 + T/EA) = w (2 L f)^2
//
// w: linear density of the slack string, kg/m; L: length from nut to saddle, m;
// f: pitch, Hz; EA: stretch stiffness, N. L and f are above 0. With EA not
// known (0) it is the textbook law T = w (2 L f)^2, which stands up to about
// 1 % above the tension of a steel string. Source: the string law
// f = sqrt(T/mu)/(2L) (OpenStax, University Physics 1, section 16.6) with
// mu = w/(1 + T/EA), which follows from keeping the mass of the string.
func Open(tr *trace.Trace, w Wire, length unit.Length, pitch unit.Frequency) unit.Force {
	tr.Given("w, linear density, slack", w.LinearDensity.KgPerM(), "kg/m", fromReadings)
	tr.Given("L, length, nut to saddle", length.M(), "m", fromAsked)
	tr.Given("f, pitch", pitch.Hz(), "Hz", fromAsked)
	q := Textbook(w.LinearDensity, length, pitch).N()
	tr.Step("q, tension if it did not stretch", "w (2 L f)^2", q, "N", stringLaw)
	if w.EA == 0 {
		return unit.Force(tr.Step("T, tension (core not known: taken not to stretch)", "q", q, "N", stringLaw))
	}
	if w.CoreDia != 0 {
		tr.Given("d, core diameter", w.CoreDia.M(), "m", fromGauge)
	}
	tr.Given("EA, stretch stiffness of the core", w.EA.N(), "N", fromGauge)
	t := tr.Step("T, tension", "2 q/(1 + sqrt(1 + 4 q/EA))", Stretched(q, w.Compliance()), "N", stretchLaw)
	tr.Step("e, strain", "T/EA", t*w.Compliance(), "", hookesLaw)
	return unit.Force(t)
}

// Textbook is the tension of a string that does not stretch.
//
//	q = w (2 L f)^2
//
// Symbols and source as for [Open].
func Textbook(w unit.LinearDensity, length unit.Length, pitch unit.Frequency) unit.Force {
	v := 2 * length.M() * pitch.Hz()
	return unit.Force(w.KgPerM() * (v * v))
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
