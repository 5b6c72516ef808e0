package tension

import "math"

// ExplainCompensation shows the work for the compensation of one string, as [Explain]
// does for its tension: every step can be followed with a pocket calculator
// from those above it, but for the compensation itself, which is found by trial.
//
// The arguments and the error are those of [Compensation]; with an error there are
// no steps. The symbols w, EA and EI are those of [Explain].
func ExplainCompensation(w Wire, lengthM, freqHz, heightM float64, tails Tails) ([]Step, error) {
	lo, _, err := Compensation(w, lengthM, freqHz, heightM, tails)
	if err != nil {
		return nil, err
	}
	k := &work{digits: bendDigits}
	k.given("L", "length, nut to theoretical saddle line", lengthM, "m", fromAsked)
	k.given("f", "pitch of the open string", freqHz, "Hz", fromAsked)
	k.given("h", "height of the open string over fret 12", heightM, "m", fromAsked)
	k.given("tails", "string beyond nut and saddle", tails.NutM+tails.SaddleM, "m", fromAsked)
	s := k.step("s", "compensation, least", "by trial, until the ratio below is 2", lo, "m", fromAbove)
	t := k.openCompensation(w, lengthM+s, freqHz)
	k.pressed(w, lengthM, freqHz, s, heightM, tails.NutM+tails.SaddleM, t)
	k.step("most", "compensation, most (ends clamped)", "s + 2 sqrt(EI/T)", s+2*math.Sqrt(w.EI/t), "m",
		"a clamped end shortens what swings by sqrt(EI/T); judgement that the saddle stands between")
	return k.steps, nil
}

// openCompensation is the open string with its saddle set back.
func (k *work) openCompensation(w Wire, lengthM, freqHz float64) float64 {
	q := k.step("q", "tension if it did not stretch", "w (2 (L + s) f)^2", Textbook(w.LinearDensity, lengthM, freqHz), "N", stringLaw)
	t := k.step("T", "tension, open", "2 q/(1 + sqrt(1 + 4 q/EA))", Stretched(q, w.Compliance()), "N",
		"string law, and a stretched string weighs w/(1 + T/EA) a metre")
	k.step("e", "strain, open", "T/EA", t*w.Compliance(), "", hookesLaw)
	k.step("B", "inharmonicity, open", "pi^2 EI/(T (L + s)^2)", Inharmonicity(w, t, lengthM), "", stiffString)
	return t
}

// pressed is the string pressed at fret 12.
func (k *work) pressed(w Wire, l, f, s, h, tails, t float64) {
	e := t / w.EA
	rest := k.step("R", "whole string, open", "L + s + tails", l+s+tails, "m", fromAbove)
	natural := k.step("R0", "the same, slack", "R/(1 + e)", rest/(1+e), "m", hookesLaw)
	front := k.step("F", "nut to fret 12, pressed", "sqrt((L/2)^2 + h^2)", math.Hypot(l/2, h), "m", "geometry")
	sounding := k.step("H", "fret 12 to saddle, pressed", "sqrt((L/2 + s)^2 + h^2)", math.Hypot(l/2+s, h), "m", "geometry")
	run := k.step("Rp", "whole string, pressed", "F + H + tails", front+sounding+tails, "m", "geometry")
	tp := k.step("Tp", "tension, pressed", "EA (Rp/R0 - 1)", w.EA*(run/natural-1), "N", hookesLaw)
	wp := k.step("wp", "linear density, pressed", "w R0/Rp", w.LinearDensity*natural/run, "kg/m", "the mass stays")
	bp := k.step("Bp", "inharmonicity, pressed", "pi^2 EI/(Tp H^2)", Inharmonicity(w, tp, sounding), "", stiffString)
	fp := k.step("fp", "pitch at fret 12", "sqrt(Tp/wp)/(2 H)", math.Sqrt(tp/wp)/(2*sounding), "Hz", stringLaw)
	b := Inharmonicity(w, t, l+s)
	k.step("ratio", "of both pitches, each raised by its stiffness", "fp sqrt(1 + Bp)/(f sqrt(1 + B))",
		fp*math.Sqrt(1+bp)/(f*math.Sqrt(1+b)), "", stiffString)
}
