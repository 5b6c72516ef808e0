package tension

import "math"

// Sensitivity tells by how many percent the tension of an open string moves
// when an input moves by one percent.
type Sensitivity struct {
	LinearDensity float64 // of w
	Length        float64 // of L
	Freq          float64 // of f
	CoreDia       float64 // of the core's diameter, through EA, at the same weight
}

// Sensitivities at the strain e = T/EA of the open string (0 where EA is not
// known).
//
//	dlnT/dlnw = (1 + e)/(1 + 2 e), dlnT/dlnL = dlnT/dlnf = 2 (1 + e)/(1 + 2 e)
//	dlnT/dlnd = 2 e/(1 + 2 e)
//
// Ours: the differential of T (1 + T/EA) = w (2 L f)^2, with EA as d^2 for a
// round or hexagonal core. At e = 0 they are 1, 2, 2 and 0.
func Sensitivities(strain float64) Sensitivity {
	weight := (1 + strain) / (1 + float64(2*strain))
	return Sensitivity{
		LinearDensity: weight,
		Length:        2 * weight,
		Freq:          2 * weight,
		CoreDia:       2 * strain / (1 + float64(2*strain)),
	}
}

// Parts are the standard uncertainties of a tension by where they come from,
// in N. Total is the root of their summed squares.
type Parts struct{ LinearDensity, Length, Freq, CoreDia float64 }

// Total combines the parts, taken as independent.
//
//	u^2 = sum (c_i u_i)^2
//
// Source: JCGM 100:2008 (GUM), 5.1.
func (p Parts) Total() float64 {
	return math.Sqrt(float64(p.LinearDensity*p.LinearDensity) + float64(p.Length*p.Length) +
		float64(p.Freq*p.Freq) + float64(p.CoreDia*p.CoreDia))
}

// OpenParts is [Open] with its uncertainty split by input. uLengthM and
// uFreqHz are 0 where length and pitch are exact by choice.
func OpenParts(w Wire, lengthM, uLengthM, freqHz, uFreqHz float64) (t float64, parts Parts) {
	t = Open(w, lengthM, freqHz)
	by := Sensitivities(t * w.Compliance())
	parts = Parts{
		LinearDensity: t * by.LinearDensity * w.ULinearDensity / w.LinearDensity,
		Length:        t * by.Length * uLengthM / lengthM,
		Freq:          t * by.Freq * uFreqHz / freqHz,
	}
	if w.CoreDiaM != 0 {
		parts.CoreDia = t * by.CoreDia * w.UCoreDiaM / w.CoreDiaM
	}
	return t, parts
}

// OpenWithU is [Open] with its standard uncertainty in N, to first order,
// from the linear density, the core's diameter, the length and the pitch; see
// [OpenParts].
func OpenWithU(w Wire, lengthM, uLengthM, freqHz, uFreqHz float64) (t, u float64) {
	t, parts := OpenParts(w, lengthM, uLengthM, freqHz, uFreqHz)
	return t, parts.Total()
}
