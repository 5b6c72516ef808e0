package gauges

import (
	"fmt"
	"math"

	"scalepair/data/fault"
	"scalepair/data/unit"
	"scalepair/gauges/reading"
)

// HungCaution is what must be read before a weight is hung on a string.
const HungCaution = "A hung weight falls when the string breaks. Wear eye protection; keep the weight a hand's breadth over a padded floor, " +
	"hands and feet away from under it; never hang more than half the breaking load."

// What a hung string of unknown core may hide, as relative standard
// uncertainties of its linear density. Strings at pitch stretch by 0.3 to 0.9 %;
// cores of 0.30 to 0.65 mm under 60 to 80 N over 600 mm sound between 0.3 and
// 1.6 % sharp (counted in linear density) at their clamps. Both are left out of
// the value. Judgement.
const (
	unknownStretch = 0.006
	unknownClamps  = 0.008
)

// hang is the linear density of one hung-weight pitch test. The hung string
// has grown longer and so lighter per length than a slack one, by Mg/EA, and
// its clamped ends make it sound sharp.
//
//	w = M g/(2 l f)^2 (1 + M g/EA) K(eps),  eps = sqrt(EI/M g)/l
//
// M: everything that hangs, kg; g: gravity, m/s2; l: clamp to clamp, m; f:
// sounded pitch, Hz; EA, EI: stiffness of the core, N and N m2; K: clampFactor.
// EA 0 is unknown: both factors are 1, with unknownStretch and unknownClamps.
// Length and pitch count twice; the load counts once, and again in the stretch;
// gravity, the clamps and the accuracies are common. What eps adds to the parts
// of load, length and core is less than a hundredth of them for strings at pitch
// and is left out. Source: the stretched-string law (OpenStax, University Physics
// Volume 1, 16.3 and 16.6); the factor of stretch is ours: the mass of the string
// stays the same.
func (t Instruments) hang(r reading.Reading, ea, ei float64, k work) (Value, []Component) {
	mass, l, f := r.HungMass.Kg(), r.Speaking.M(), r.Pitch.Hz()
	g, uG := t.GravityUsed()
	step, lengthStep, cents := first(r.HungResolution, t.HungResolution), first(r.LengthResolution, t.RulerResolution), first(r.PitchU, t.pitch())
	load := mass * g

	k.given("M#, everything that hung"+k.when(r), mass, "kg", k.line(r))
	k.given("l#, clamp to clamp", l, "m", k.line(r))
	k.given("f#, sounded pitch", f, "Hz", k.line(r))
	k.given("g#, gravity", g, "m/s2", fromTools)
	formula := "M# g#/(2 l# f#)^2"
	stretch, ends := 0.0, 1.0
	stretched := Component{Name: "stretch, core unknown", RelU: unknownStretch, From: "judgement"}
	clamps := Component{Name: "clamps, core unknown", RelU: unknownClamps, Source: sourceClamps, From: "judgement"}
	if ea > 0 {
		stretch = k.step("e#, stretch under the load", "M# g#/EA@", load/ea, "", "Hooke's law: OpenStax, University Physics 1, section 12.3")
		eps := k.step("eps#, stiffness against pull and length (wound: the core's, at least)", "sqrt(EI@/(M# g#))/l#", slimness(ei, load, l), "", stiffLaw)
		factor, u := clampFactor(eps)
		ends = k.step("K#, factor of stiffness and clamps, the middle between hinged and firm",
			"(1 + pi^2 eps#^2) (1 + (1 + 2 eps# + 4 eps#^2)^2)/2", factor, "", "judgement: real clamps lie anywhere between ends free to turn and firm ones")
		stretched.RelU = 0
		clamps = Component{"clamps, between hinged and firm", u, sourceClamps, true, "((1 + 2 eps# + 4 eps#^2)^2 - 1)/(sqrt(3) ((1 + 2 eps# + 4 eps#^2)^2 + 1))", guideBound}
		formula += " (1 + e#) K#"
	}
	w := k.step("w#, linear density of that, slack", formula, load/math.Pow(2*l*f, 2)*(1+stretch)*ends, "kg/m", "string law: OpenStax, University Physics 1, sections 16.3 and 16.6")
	byLoad := k.step("by#, how the load counts, with its stretch", fmt.Sprintf("1 + %v/(1 + %v)", stretch, stretch), 1+stretch/(1+stretch), "", "differential of the linear density")
	inputs := []Component{
		{"hung mass, step of the scales", byLoad * StepU(step).Kg() / mass, "", true, fmt.Sprintf("by# %v kg/(sqrt(12) M#)", step.Kg()), guideStep},
		{"length, step of the ruler", 2 * StepU(lengthStep).M() / l, "", true, fmt.Sprintf("2 %v m/(sqrt(12) l#)", lengthStep.M()), guideStep},
		{"pitch", 2 * cents.Value() * math.Ln2 / 1200, "", false, fmt.Sprintf("2 %v ln(2)/1200", cents.Value()), "definition of the cent"},
		stretched,
		clamps,
		{"gravity", byLoad * uG / g, sourceGravity, false, fmt.Sprintf("by# %v/g#", uG), guideSum},
		{"hung mass, accuracy of the scales", byLoad * BoundU(t.HungAccuracy).Kg() / mass, sourceScales, true, fmt.Sprintf("by# %v kg/(sqrt(3) M#)", t.HungAccuracy.Kg()), guideBound},
		{"length, accuracy of the ruler", -2 * BoundU(t.RulerAccuracy).M() / l, sourceRuler, true, fmt.Sprintf("-2 %v m/(sqrt(3) l#)", t.RulerAccuracy.M()), guideBound},
	}
	return k.value(w, inputs), inputs
}

// slimness is how stiff a hung string is for its pull and length.
//
//	eps = sqrt(EI/T)/l
//
// ei: bending stiffness, N m2; pull T, N, above 0; l: clamp to clamp, m, above
// 0. A firm clamp keeps about sqrt(EI/T) of string from swinging. Source:
// Fletcher (1964), see clampFactor.
func slimness(ei, pull, l float64) float64 { return math.Sqrt(ei/pull) / l }

// clampFactor corrects the linear density of a hung string for its ends, which lie
// somewhere between hinged and clamped.
//
//	h = 1 + pi^2 eps^2             (f/f0)^2 where the ends are held but free to turn; exact
//	c = (1 + 2 eps + 4 eps^2)^2    what ends that cannot turn add to that; within 0.25 % at eps = 0.05
//	factor = h (1 + c)/2,  u/factor = (c - 1)/(sqrt(3) (c + 1))
//
// f0: pitch without stiffness. To first order 1 + 2 eps with the range
// +-2 eps; 1 and 0 where eps is 0. Core of a wound string only: its wrap adds a
// little, so that eps is a lower bound. That real clamps lie anywhere between is
// judgement; the rectangle's uncertainty: the Guide 4.3.7. Source: H. Fletcher,
// Journal of the Acoustical Society of America 36 (1964) 203, with
// B = pi^2 eps^2; Fletcher and Rossing, The Physics of Musical Instruments, 2nd
// ed., section 2.18, where c stands as 1 + (2/pi) sqrt(B) + (4/pi^2) B; both
// from memory.
func clampFactor(eps float64) (factor, relU float64) {
	h := 1 + math.Pi*math.Pi*eps*eps
	c := math.Pow(1+2*eps+4*eps*eps, 2)
	return h * (1 + c) / 2, BoundU((c - 1) / (c + 1))
}

// mostStiff is the greatest slimness that a hung test may have: there the ends
// raise the pitch by up to a tenth, and the linear density is known to 6 % at
// best. Judgement.
const mostStiff = 0.05

// checkStiff reports a hung test of a string too stiff for its load and length.
func checkStiff(r *reading.Reading, ei float64, faults *fault.List) {
	if r.Kind == reading.Hung && slimness(ei, r.HungMass.Kg()*unit.StandardGravity, r.Speaking.M()) > mostStiff {
		faults.Add(r.Place, fmt.Sprintf("gauge %q: too stiff a string for so light a weight on so short a length; its clamps alone may raise the pitch by a tenth", r.Gauge),
			entered(r), "hang it longer, or hang more, up to half the breaking load")
	}
}
