package tension

import "math"

// Step is one line of the work for one string: a number and where it came
// from.
type Step struct {
	Symbol  string  // as the formulas of later steps write it
	Name    string  // what it is, in plain words
	Formula string  // in the symbols of the steps above; "" for a given number
	Value   float64 // in Unit
	Unit    string  // SI, "cents" or "%"; "" for a pure number
	Source  string  // of the formula or of the number
	Digits  int     // significant digits to carry, so that later steps come out
}

// Where steps come from.
const (
	fromReadings = "from the readings"
	fromAsked    = "as asked"
	fromAbove    = "follows from the steps above"
	fromGauge    = "from the core and its material"
	stringLaw    = "string law: OpenStax, University Physics 1, section 16.6"
	hookesLaw    = "Hooke's law: OpenStax, University Physics 1, section 12.3"
	stiffString  = "stiff string: Fletcher, JASA 36 (1964)"
	errorSum     = "JCGM 100:2008, 5.1"
	strengthFrom = "music wire: ASTM A228 minima, second-hand, linear between rows; else given with the gauge"
)

// How many digits steps carry: bends live from small differences of lengths.
const (
	usualDigits = 7
	bendDigits  = 11
)

// work gathers steps.
type work struct {
	steps  []Step
	digits int
}

func (k *work) given(symbol, name string, value float64, unit, source string) float64 {
	return k.step(symbol, name, "", value, unit, source)
}

func (k *work) step(symbol, name, formula string, value float64, unit, source string) float64 {
	k.steps = append(k.steps, Step{symbol, name, formula, value, unit, source, k.digits})
	return value
}

// Explain shows the work for one string: from its linear density to the tension
// with its uncertainty and what share of the variance each input has, the
// stress, the inharmonicity, and, where at has a fret, the bend with its bending force.
// Every step can be followed with a pocket calculator from those above it,
// but for the travel, which is found by trial.
//
// uLengthM and uFreqHz are as in [OpenWithU]. What needs a number that is not
// known is left out. The error is that of [Bending force], and the steps up to the
// bend stand even then; only with [ErrInput] there may be none.
func Explain(w Wire, at BendAt, uLengthM, uFreqHz float64) ([]Step, error) {
	if !(at.sane() && w.LinearDensity > 0 && w.LinearDensity <= mostLinearDensity) {
		return nil, ErrInput
	}
	k := &work{digits: usualDigits}
	t := k.open(w, at)
	k.uncertainty(w, at, uLengthM, uFreqHz)
	k.breaking("S", "share", "open", "T", t, w)
	k.overtones(w, t, at.LengthM)
	if at.Fret == 0 {
		return k.steps, nil
	}
	bend, err := BendingForce(w, at)
	if err != nil {
		return k.steps, err
	}
	k.digits = bendDigits
	k.bend(w, at, t, bend)
	return k.steps, nil
}

// open goes from the linear density to the tension.
func (k *work) open(w Wire, at BendAt) float64 {
	k.given("w", "linear density, slack", w.LinearDensity, "kg/m", fromReadings)
	k.given("L", "length, nut to saddle", at.LengthM, "m", fromAsked)
	k.given("f", "pitch", at.FreqHz, "Hz", fromAsked)
	q := k.step("q", "tension if it did not stretch", "w (2 L f)^2", Textbook(w.LinearDensity, at.LengthM, at.FreqHz), "N", stringLaw)
	if w.EA == 0 {
		return k.step("T", "tension (core not known: taken not to stretch)", "q", q, "N", stringLaw)
	}
	if w.CoreDiaM != 0 {
		k.given("d", "core diameter", w.CoreDiaM, "m", fromGauge)
	}
	k.given("EA", "stretch stiffness of the core", w.EA, "N", fromGauge)
	t := k.step("T", "tension", "2 q/(1 + sqrt(1 + 4 q/EA))", Stretched(q, w.Compliance()), "N",
		"string law, and a stretched string weighs w/(1 + T/EA) a metre")
	k.step("e", "strain", "T/EA", t*w.Compliance(), "", hookesLaw)
	return t
}

// uncertainty gives the parts of u(T) and their shares.
func (k *work) uncertainty(w Wire, at BendAt, uLengthM, uFreqHz float64) {
	_, parts := OpenParts(w, at.LengthM, uLengthM, at.FreqHz, uFreqHz)
	total := parts.Total()
	if total == 0 {
		return
	}
	k.step("u", "standard uncertainty of the tension", "root of the summed squares of its parts", total, "N", errorSum)
	for _, part := range []struct {
		name, formula string
		u             float64
	}{
		{"linear density", "100 (T (1 + e)/(1 + 2 e) u(w)/w / u)^2", parts.LinearDensity},
		{"core diameter", "100 (T 2 e/(1 + 2 e) u(d)/d / u)^2", parts.CoreDia},
		{"length", "100 (T 2 (1 + e)/(1 + 2 e) u(L)/L / u)^2", parts.Length},
		{"pitch", "100 (T 2 (1 + e)/(1 + 2 e) u(f)/f / u)^2", parts.Freq},
	} {
		share := part.u / total
		k.step("", "share of that from the "+part.name, part.formula, 100*share*share, "%", errorSum)
	}
}

// breaking gives stress and breaking share at a tension.
func (k *work) breaking(strength, symbol, when, tension string, t float64, w Wire) {
	if w.CoreAreaM2 == 0 {
		return
	}
	if when == "open" {
		k.given("A", "area of the core", w.CoreAreaM2, "m2", fromGauge)
	}
	stress := k.step("stress "+when, "stress in the core, "+when, tension+"/A", t/w.CoreAreaM2, "Pa", "definition")
	if w.StrengthPa == 0 {
		return
	}
	if when == "open" {
		k.given(strength, "least strength of the core", w.StrengthPa, "Pa", strengthFrom)
	}
	k.step(symbol, "breaking share, "+when, "100 x stress "+when+"/"+strength, 100*stress/w.StrengthPa, "%", fromAbove)
}

// overtones gives B and the inharmonicity.
func (k *work) overtones(w Wire, t, lengthM float64) {
	if w.EI == 0 {
		return
	}
	k.given("EI", "bending stiffness of the core", w.EI, "N m2", fromGauge)
	b := k.step("B", "inharmonicity", "pi^2 EI/(T L^2)", Inharmonicity(w, t, lengthM), "", stiffString)
	k.step("rise of partial 10", overtoneName(w), "600 log2(1 + 100 B)", InharmonicityCents(b), "cents", stiffString)
}

func overtoneName(w Wire) string {
	if w.Plain {
		return "inharmonicity"
	}
	return "inharmonicity, at least"
}

// bend goes from the open string to the bending force.
func (k *work) bend(w Wire, at BendAt, t float64, bend Bend) {
	e, y, tan := t/w.EA, bend.BendDistanceM, at.TanSlant
	k.given("n", "fret", at.Fret, "", fromAsked)
	x := k.step("x", "nut to fret", "L (1 - 2^(-n/12))", at.LengthM*-math.Expm1(-at.Fret/12*math.Ln2), "m", "equal temperament")
	s := k.step("s", "fret to saddle", "L - x", at.LengthM-x, "m", fromAbove)
	k.given("t", "tangent of the fret's slant, + where the bend leads towards the saddle", tan, "", fromAsked)
	k.given("tails", "string beyond nut and saddle", at.Tails.NutM+at.Tails.SaddleM, "m", fromAsked)
	rest := k.step("R", "whole string at rest", "L + tails", at.LengthM+at.Tails.NutM+at.Tails.SaddleM, "m", fromAbove)
	natural := k.step("R0", "the same, slack", "R/(1 + e)", rest/(1+e), "m", hookesLaw)
	f0 := k.step("f0", "pitch at the fret", "sqrt(T (1 + e)/w)/(2 s)", math.Sqrt(t*(1+e)/w.LinearDensity)/(2*s), "Hz", stringLaw)
	k.step("y", "travel", "by trial, until the rise below is the one asked", y, "m", fromAbove)
	a := k.step("a", "nut to contact, along", "x + y t", x+y*tan, "m", "geometry")
	b := k.step("b", "contact to saddle, along", "s - y t", s-y*tan, "m", "geometry")
	front := k.step("F", "run in front", "sqrt(a^2 + y^2)", math.Hypot(a, y), "m", "geometry")
	behind := k.step("H", "run that sounds", "sqrt(b^2 + y^2)", math.Hypot(b, y), "m", "geometry")
	bent := k.step("Ry", "whole string, bent", "F + H + tails", front+behind+at.Tails.NutM+at.Tails.SaddleM, "m", "geometry")
	ty := k.step("Ty", "tension, bent", "EA (Ry/R0 - 1)", w.EA*(bent/natural-1), "N", hookesLaw)
	wy := k.step("wy", "linear density, bent", "w R0/Ry", w.LinearDensity*natural/bent, "kg/m", "the mass stays")
	fy := k.step("fy", "pitch, bent", "sqrt(Ty/wy)/(2 H)", math.Sqrt(ty/wy)/(2*behind), "Hz", stringLaw)
	k.step("rise", "rise of the bend", "1200 log2(fy/f0)", 1200*math.Log2(fy/f0), "cents", "definition")
	k.breaking("S", "share bent", "bent", "Ty", ty, w)
	k.step("bending force", "bending force of the finger", "Ty ((y + t a)/F + (y - t b)/H)", ty*((y+tan*a)/front+(y-tan*b)/behind), "N", "the slope of the stored work")
}
