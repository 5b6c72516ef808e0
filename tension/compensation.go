package tension

import (
	"math"

	"scalepair/data/trace"
	"scalepair/data/unit"
)

// Compensation is how far the saddle stands behind its theoretical line so that
// the string pressed at fret 12 sounds exactly the octave of the open string,
// in m: lo with hinged ends, hi with clamped ends.
//
// Frets stand at L k(n), the saddle at L + s. Open: the length L + s at the
// wanted pitch f. Pressed: the straight runs
//
//	hypot(L/2, h) and hypot(L/2 + s, h), and the tails
//
// with the tension from the stretch and the weight from the mass, sounding
// over the second run. Both notes carry sqrt(1 + B), each with its own length
// and tension. s is solved for the ratio 2; then
//
//	hi = lo + 2 sqrt(E I/T)
//
// since a clamped end shortens what swings by sqrt(E I/T), and a shortening D
// of both notes asks for s = D (judgement: the saddle stands between the two).
//
// L: theoretical length, m; f: pitch, Hz; h: height of the open string over
// fret 12, m, 0 or above. What is not counted (the dip of the finger behind
// the fret) asks for a little more. Ours; the parts it is made of are those of
// Varieschi and Gower, American Journal of Physics 78, 47 (2010), whose
// numbers were not seen. Only rubber with long tails asks for a saddle in
// front (s below 0). The error is [ErrNoStiffness] where EA or EI is not
// known, or [ErrInput].
func Compensation(tr *trace.Trace, w Wire, length unit.Length, pitch unit.Frequency, height unit.Length, tails Tails) (lo, hi unit.Length, err error) {
	if w.EA == 0 || w.EI == 0 {
		return 0, 0, ErrNoStiffness
	}
	p := pressed{w: w, compliance: w.Compliance(), length: length.M(), freq: pitch.Hz(), height: height.M(), tails: tails.Whole().M()}
	s := p.octave()
	lo = unit.Length(s)
	t := Open(nil, w, length+lo, pitch)
	if tr != nil {
		p.record(tr, s, t.N())
	}
	most := tr.Step("most, compensation, most (ends clamped)", "s + 2 sqrt(EI/T)", s+2*math.Sqrt(w.EI/t.N()), "m",
		"a clamped end shortens what swings by sqrt(EI/T); judgement that the saddle stands between")
	return lo, unit.Length(most), nil
}

// record follows a compensation s that was found by trial to the ratio of both
// pitches; the symbols w, EA and EI are those of [Explain].
func (p pressed) record(tr *trace.Trace, s, t float64) {
	tr.Carry(bendDigits)
	l, h, ea := p.length, p.height, p.w.EA.N()
	w, ei := p.w.LinearDensity.KgPerM(), p.w.EI
	tr.Given("L, length, nut to theoretical saddle line", l, "m", fromAsked)
	tr.Given("f, pitch of the open string", p.freq, "Hz", fromAsked)
	tr.Given("h, height of the open string over fret 12", h, "m", fromAsked)
	tr.Given("tails, string beyond nut and saddle", p.tails, "m", fromAsked)
	tr.Step("s, compensation, least", "by trial, until the ratio below is 2", s, "m", fromAbove)
	tr.Step("q, tension if it did not stretch", "w (2 (L + s) f)^2", w*math.Pow(2*(l+s)*p.freq, 2), "N", stringLaw)
	tr.Step("T, tension, open", "2 q/(1 + sqrt(1 + 4 q/EA))", t, "N", stretchLaw)
	e := tr.Step("e, strain, open", "T/EA", t/ea, "", hookesLaw)
	b := tr.Step("B, spread of the partials, open", "pi^2 EI/(T (L + s)^2)", B(ei, t, l+s), "", stiffString)
	rest := tr.Step("R, whole string, open", "L + s + tails", l+s+p.tails, "m", fromAbove)
	natural := tr.Step("R0, the same, slack", "R/(1 + e)", rest/(1+e), "m", hookesLaw)
	front := tr.Step("F, nut to fret 12, pressed", "sqrt((L/2)^2 + h^2)", math.Hypot(l/2, h), "m", "geometry")
	sounding := tr.Step("H, fret 12 to saddle, pressed", "sqrt((L/2 + s)^2 + h^2)", math.Hypot(l/2+s, h), "m", "geometry")
	run := tr.Step("Rp, whole string, pressed", "F + H + tails", front+sounding+p.tails, "m", "geometry")
	tp := tr.Step("Tp, tension, pressed", "EA (Rp/R0 - 1)", ea*(run/natural-1), "N", hookesLaw)
	wp := tr.Step("wp, linear density, pressed", "w R0/Rp", w*natural/run, "kg/m", "the mass stays")
	bp := tr.Step("Bp, spread of the partials, pressed", "pi^2 EI/(Tp H^2)", B(ei, tp, sounding), "", stiffString)
	fp := tr.Step("fp, pitch at fret 12", "sqrt(Tp/wp)/(2 H)", math.Sqrt(tp/wp)/(2*sounding), "Hz", stringLaw)
	tr.Step("ratio, of both pitches, each raised by its stiffness", "fp sqrt(1 + Bp)/(f sqrt(1 + B))",
		fp*math.Sqrt(1+bp)/(p.freq*math.Sqrt(1+b)), "", stiffString)
	tr.Carry(0)
}

// pressed is a string about to be pressed at fret 12.
type pressed struct {
	w                           Wire
	compliance                  float64 // of w, 1/N
	length, freq, height, tails float64
}

// octave is the s whose flatness is 0. That is so nearly straight in s that two or
// three secants have it: what a last one of 1e-9 L leaves is far below a picometre.
func (p pressed) octave() float64 {
	before, value := 0.0, p.flatness(0)
	s := -value / (2 * p.length)
	for range 20 {
		at := p.flatness(s)
		if at == value {
			break
		}
		step := at * (s - before) / (at - value)
		before, value = s, at
		if s -= step; math.Abs(step) < 1e-9*p.length {
			break
		}
	}
	return s
}

// flatness is how far, in m2, the note at fret 12 stands below the octave
// with the saddle s behind its line.
//
//	(f12/f)^2 = P ((L + s)/hypot(L/2 + s, h))^2, wanted 4
//	flatness = 4 hypot(L/2 + s, h)^2 - P (L + s)^2 = s (2 L + 3 s) + 4 h^2 - (P - 1) (L + s)^2
func (p pressed) flatness(s float64) float64 {
	l, open := p.length, p.length+s
	return float64(s*(2*l+float64(3*s))) + float64(4*p.height*p.height) - float64(p.sharpening(s)*open*open)
}

// sharpening is P - 1, by what part the square of the pitch rises from being
// pressed, apart from the shorter run.
//
//	P = (1 + k d) (1 + d) (1 + B12)/(1 + B)
//	d = (R12 - R)/R, k = (1 + e)/e, e = T/EA
//
// R: the whole wire open, R12 pressed; B, B12: inharmonicity open and pressed.
// R12 - R is the height's square over sums, so that no digits are lost.
func (p pressed) sharpening(s float64) float64 {
	open, half, behind := p.length+s, p.length/2, p.length/2+s
	hh := float64(p.height * p.height)
	front, sounding := math.Sqrt(float64(half*half)+hh), math.Sqrt(float64(behind*behind)+hh)
	d := (hh/(front+half) + hh/(sounding+behind)) / (open + p.tails)
	t := Stretched(Textbook(p.w.LinearDensity, unit.Length(open), unit.Frequency(p.freq)).N(), p.compliance)
	e := t * p.compliance
	kd := (1 + e) / e * d
	raise := d + float64(kd*(1+d))
	b := B(p.w.EI, t, open)
	spread := (B(p.w.EI, t*(1+kd), sounding) - b) / (1 + b)
	return raise + spread + float64(raise*spread)
}
