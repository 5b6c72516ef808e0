package gauges

import (
	"fmt"
	"math"

	"scalepair/gauges/reading"
)

// piece is all weighings of one piece of string: rows of one gauge that share
// pieces and length. How often it was weighed does not show the rounding of its
// length, and shows that of its mass only where the display differs.
type piece struct {
	r      reading.Reading // the first row, with the mean of all masses
	masses []float64       // kg
}

// pieces groups weighings.
func pieces(rows []reading.Reading) []piece {
	var out []piece
next:
	for _, r := range rows {
		if r.Kind != reading.Weighed {
			continue
		}
		for i := range out {
			if p := &out[i]; p.r.Length == r.Length && p.r.NumPieces() == r.NumPieces() {
				p.masses = append(p.masses, r.Mass.Kg())
				continue next
			}
		}
		out = append(out, piece{r, []float64{r.Mass.Kg()}})
	}
	return out
}

// sameStep is how far masses may differ and still be one step of the display
// apart at most, as a share of the step: rounding of a conversion.
const sameStep = 1 + 1e-6

// weigh is the linear density of one piece, however often it was weighed.
//
//	w = m/(l n)
//	(u/w)^2 = u_m^2/m^2 + (d_l^2/12)/l^2
//	common: +(a_m/sqrt 3)/m from the balance, -(a_l/sqrt 3)/l from the ruler
//	weighings alike: u_m^2 = d_m^2/12 + s_b^2/N
//	else:            u_m^2 = max(s^2, d_m^2/12 + s_b^2)/N, within one step not above d_m^2/12 + s_b^2
//
// m: mean mass of all pieces, kg; l: length of each, m; n: pieces; N: weighings;
// s: their scatter; d: steps; s_b: the balance's repeatability; a: accuracies.
// The row's steps stand before the file's. Source: the product rule of the
// Guide, 5.1.6; type A and B evaluations, 4.2 and 4.3.
//
// Weighings further apart than one step count as readings that disagree, with
// chi2 = sum (m_i - m)^2/(d_m^2/12 + s_b^2).
func (t Instruments) weigh(p piece, k work) (Average, []Component) {
	r, count := p.r, float64(len(p.masses))
	m, scatter, spread := meanScatter(p.masses)
	l, n := r.Length.M(), float64(r.NumPieces())
	step, repeat, lengthStep := first(r.MassResolution, t.BalanceResolution), t.BalanceRepeatability, first(r.LengthResolution, t.RulerResolution)
	am, al := t.BalanceAccuracy, t.RulerAccuracy

	k.given("m#, mass together"+k.when(r), m, "kg", k.line(r))
	k.given("n#, pieces of that", n, "", k.line(r))
	k.given("l#, length of each piece", l, "m", k.line(r))
	w := k.step("w#, linear density of that", "m#/(l# n#)", m/(l*n), "kg/m", "definition")
	k.given("dm#, resolution of the balance", step.Kg(), "kg", fromTools)
	k.given("dl#, resolution of the ruler", lengthStep.M(), "m", fromTools)

	inputs := []Component{
		{"mass, step of the balance", StepU(step).Kg() / m, "", true, "dm#/(sqrt(12) m#)", guideStep},
		{"mass, repeatability of the balance", repeat.Kg() / (m * math.Sqrt(count)), "", false,
			fmt.Sprintf("%v kg/(sqrt(%v) m#)", repeat.Kg(), count), fromTools},
		{"length, step of the ruler", StepU(lengthStep).M() / l, "", true, "dl#/(sqrt(12) l#)", guideStep},
		{"mass, accuracy of the balance", BoundU(am).Kg() / m, sourceBalance, true, fmt.Sprintf("%v kg/(sqrt(3) m#)", am.Kg()), guideBound},
		{"length, accuracy of the ruler", -BoundU(al).M() / l, sourceRuler, true, fmt.Sprintf("-%v m/(sqrt(3) l#)", al.M()), guideBound},
	}
	one := RootSum(StepU(step).Kg(), repeat.Kg())
	out := Average{}
	if spread > 1e-6*step.Kg() {
		u := max(scatter, one) / math.Sqrt(count)
		if spread <= sameStep*step.Kg() {
			u = min(u, one)
		} else {
			out.DoF, out.Chi2 = len(p.masses)-1, scatter*scatter*(count-1)/(one*one)
		}
		inputs[0] = Component{Name: "mass, scatter of its weighings", RelU: u / m, Formula: fmt.Sprintf("s#/(sqrt(%v) m#)", count), From: "the Guide (JCGM 100:2008), 4.2.3"}
		inputs[1].RelU = 0
		k.given("s#, scatter of its weighings, or their rounding", u*math.Sqrt(count), "kg", k.line(r))
	}
	out.Value = k.value(w, inputs)
	return out, inputs
}

// meanScatter gives the mean of values, their standard deviation (0 for one) and
// the greatest less the least.
func meanScatter(values []float64) (mean, scatter, spread float64) {
	low, high := math.Inf(1), math.Inf(-1)
	for _, x := range values {
		mean += x / float64(len(values))
		low, high = min(low, x), max(high, x)
	}
	if len(values) == 1 {
		return values[0], 0, 0
	}
	for _, x := range values {
		scatter += (x - mean) * (x - mean) / float64(len(values)-1)
	}
	return mean, math.Sqrt(scatter), high - low
}
