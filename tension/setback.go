package tension

import "math"

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
func Compensation(w Wire, lengthM, freqHz, heightM float64, tails Tails) (lo, hi float64, err error) {
	if w.EA == 0 || w.EI == 0 {
		return 0, 0, ErrNoStiffness
	}
	at := BendAt{LengthM: lengthM, FreqHz: freqHz, Tails: tails}
	strain := Open(w, lengthM, freqHz) * w.Compliance()
	if !(at.sane() && heightM >= 0 && heightM <= lengthM && strain >= leastStrain && strain <= mostStrain) {
		return 0, 0, ErrInput
	}
	p := pressed{w: w, compliance: w.Compliance(), length: lengthM, freq: freqHz, height: heightM, tails: tails.NutM + tails.SaddleM}
	lo, ok := risingRoot(p.flatness, -lengthM/8, lengthM/4, lengthM/1e3)
	if !ok {
		return 0, 0, ErrInput
	}
	return lo, lo + 2*math.Sqrt(w.EI/Open(w, lengthM+lo, freqHz)), nil
}

// pressed is a string about to be pressed at fret 12.
type pressed struct {
	w                           Wire
	compliance                  float64 // of w, 1/N
	length, freq, height, tails float64
}

// flatness is how far, in m2, the note at fret 12 stands below the octave
// with the saddle set back by s, and how fast that rises with s.
//
//	(f12/f)^2 = P ((L + s)/hypot(L/2 + s, h))^2, wanted 4
//	flatness = 4 hypot(L/2 + s, h)^2 - P (L + s)^2 = s (2 L + 3 s) + 4 h^2 - (P - 1) (L + s)^2
func (p pressed) flatness(s float64) (value, slope float64) {
	l := p.length
	open := l + s
	sharp, rising := p.sharpening(s)
	value = float64(s*(2*l+float64(3*s))) + float64(4*p.height*p.height) - float64(sharp*open*open)
	return value, 2*l + float64(6*s) - float64(open*(2*sharp+float64(rising*open)))
}

// sharpening is P - 1, by what share the square of the pitch rises from being
// pressed, apart from the shorter run, and its slope by s.
//
//	P = (1 + k d) (1 + d) (1 + B12)/(1 + B)
//	d = (R12 - R)/R, k = (1 + e)/e, e = T/EA
//
// R: the whole wire open, R12 pressed; B, B12: inharmonicity open and pressed.
// R12 - R is the height's square over sums, so that no digits are lost. The
// slopes follow, with H the sounding run pressed, from
//
//	H' = (L/2 + s)/H, R' = 1, T'/T = 2 (1 + e)/((1 + 2 e) (L + s)), k' = -T'/(T e)
func (p pressed) sharpening(s float64) (value, slope float64) {
	open, half, behind := p.length+s, p.length/2, p.length/2+s
	hh, whole := float64(p.height*p.height), open+p.tails
	front, sounding := math.Sqrt(float64(half*half)+hh), math.Sqrt(float64(behind*behind)+hh)
	longer := hh / (sounding + behind)
	d := (hh/(front+half) + longer) / whole
	slopeD := -(longer/sounding + d) / whole
	t := Stretched(Textbook(p.w.LinearDensity, open, p.freq), p.compliance)
	e := t * p.compliance
	perT := 2 * (1 + e) / (float64(1+float64(2*e)) * open)
	kd := (1 + e) / e * d
	slopeKD := ((1+e)*slopeD - float64(perT*d)) / e
	raise := d + float64(kd*(1+d))
	slopeRaise := float64(slopeD*(1+kd)) + float64(slopeKD*(1+d))

	b := Inharmonicity(p.w, t, open)
	b12 := Inharmonicity(p.w, t*(1+kd), sounding)
	slopeB := -b * (perT + 2/open)
	slopeB12 := -b12 * (perT + slopeKD/(1+kd) + 2*behind/(sounding*sounding))
	spread := (b12 - b) / (1 + b)
	slopeSpread := (slopeB12 - slopeB - float64(spread*slopeB)) / (1 + b)
	value = raise + spread + float64(raise*spread)
	return value, float64(slopeRaise*(1+spread)) + float64(slopeSpread*(1+raise))
}
