package gauges

import "math"

// Average is a mean of values with how well they agree.
type Average struct {
	Value
	Chi2 float64 // how far they differ, see disagreement
	DoF  int     // how many differences that is made of
}

// Mean averages values of one gauge that are independent but for their common
// errors.
//
//	w = sum(v_i w_i)/sum(v_i),  v_i = 1/u_i^2
//	u^2 = 1/sum(v_i), times max(1, chi2/dof)
//
// u_i: independent part of each, above 0; common parts are averaged with the
// same v_i and so enter once, unaltered by the number of values. The widening
// when values lie further apart than their uncertainties say: R. T. Birge,
// Physical Review 40 (1932) 207. An empty list panics.
func Mean(values []Value) Average {
	out := weighted(values, func(v Value) float64 { return v.Indep })
	out.Indep *= out.birge()
	return out
}

// MeanOfKinds puts together what weighing, hanging and construction say of one
// gauge, each weighted by its whole uncertainty. Widened as in Mean, but the
// whole of it, since the kinds' own systematic errors may be to blame.
func MeanOfKinds(kinds []Value) Average {
	out := weighted(kinds, Value.U)
	wide := out.U() * out.birge()
	out.Indep = math.Sqrt(max(0, wide*wide-math.Pow(out.Common.U(), 2)))
	return out
}

// weighted is the mean with weights 1/u^2.
func weighted(values []Value, u func(Value) float64) Average {
	if len(values) == 1 {
		return Average{Value: values[0]}
	}
	total := 0.0
	for _, v := range values {
		total += 1 / (u(v) * u(v))
	}
	out := Average{DoF: len(values) - 1, Chi2: disagreement(values, u)}
	for _, v := range values {
		out.Value = out.Plus(1/(u(v)*u(v))/total, v)
	}
	return out
}

// birge is the factor by which disagreement widens the uncertainty.
func (a Average) birge() float64 {
	if a.DoF < 1 {
		return 1
	}
	return max(1, math.Sqrt(a.Chi2/float64(a.DoF)))
}

// disagreement is the sum of squares by which values of one quantity differ,
// each pair measured in the uncertainty of its difference, to which shared
// errors add only what they do not do to both.
//
//	chi2 = sum over pairs of (v_i + v_j)/sum(v) (w_i - w_j)^2/u_ij^2,  v_i = 1/u_i^2
//
// u_i: as in the mean; u_ij: of w_i - w_j. Without shared errors it
// is sum(v_i (w_i - w)^2), and for two values (w_1 - w_2)^2/u_12^2. Ours.
func disagreement(values []Value, u func(Value) float64) float64 {
	total, sum := 0.0, 0.0
	weight := func(v Value) float64 { return 1 / (u(v) * u(v)) }
	for _, v := range values {
		total += weight(v)
	}
	for i, a := range values {
		for _, b := range values[:i] {
			d := a.Plus(-1, b)
			sum += (weight(a) + weight(b)) / total * d.W * d.W / (d.U() * d.U())
		}
	}
	return sum
}

// ChanceBeyond is the chance that the sum of k squared standard normal values
// exceeds x.
//
//	Q(x|1) = erfc(sqrt(x/2)),  Q(x|2) = exp(-x/2)
//	Q(x|k+2) = Q(x|k) + (x/2)^(k/2) exp(-x/2)/Gamma(k/2 + 1)
//
// x: the sum found, 0 or more; k: degrees of freedom, 1 or more. Source:
// Abramowitz and Stegun, Handbook of Mathematical Functions, 26.4.4, 26.4.5 and
// 26.4.8.
func ChanceBeyond(x float64, k int) float64 {
	at, chance := 2-k%2, math.Exp(-x/2)
	if at == 1 {
		chance = math.Erfc(math.Sqrt(x / 2))
	}
	for ; at < k; at += 2 {
		half := float64(at) / 2
		lg, _ := math.Lgamma(half + 1)
		chance += math.Exp(half*math.Log(x/2) - x/2 - lg)
	}
	return chance
}
