package gauges

import (
	"math"
)

// average is a mean of values with how well they agree.
type average struct {
	value
	chi2 float64 // how far they differ, see disagreement
	dof  int     // values less one
}

// mean averages values of one gauge that are independent but for their common
// errors.
//
//	w = sum(v_i w_i),  v_i ~ 1/u_i^2
//	u^2 = 1/sum(1/u_i^2), times max(1, chi2/dof)
//
// u_i: independent part of each, above 0; common parts are averaged with the
// same v_i and so enter once, unaltered by the number of values. The widening
// when values stand further apart than their uncertainties say: R. T. Birge,
// Physical Review 40 (1932) 207. An empty list panics.
func mean(values []value) average {
	total := 0.0
	for _, v := range values {
		total += 1 / (v.indep * v.indep)
	}
	out := average{dof: len(values) - 1, chi2: disagreement(values)}
	out.common = make(parts, 0, len(values[0].common))
	for _, v := range values {
		share := 1 / (v.indep * v.indep) / total
		out.w += share * v.w
		out.bounded = fourthSum(out.bounded, share*v.bounded)
		out.common.addAll(share, v.common)
	}
	out.indep = math.Sqrt(1/total) * out.birge()
	return out
}

// birge is the factor by which disagreement widens the uncertainty.
func (a average) birge() float64 {
	if a.dof < 1 {
		return 1
	}
	return max(1, math.Sqrt(a.chi2/float64(a.dof)))
}

// combineKinds puts together what weighing, hanging and construction say of
// one gauge, each with its whole uncertainty.
//
//	w = sum(v_k w_k),  v_k ~ 1/u_k^2
//
// The uncertainty of that sum counts shared errors as shared. Widened as in
// mean, the whole of it, since the kinds' own systematic errors may be to
// blame.
func combineKinds(kinds []value) average {
	if len(kinds) == 1 {
		return average{value: kinds[0]}
	}
	total := 0.0
	for _, k := range kinds {
		total += 1 / (k.u() * k.u())
	}
	out := average{dof: len(kinds) - 1, chi2: disagreement(kinds)}
	for _, k := range kinds {
		share := 1 / (k.u() * k.u()) / total
		out.w += share * k.w
		out.indep, out.bounded = RootSum(out.indep, share*k.indep), fourthSum(out.bounded, share*k.bounded)
		out.common.addAll(share, k.common)
	}
	wide := out.u() * out.birge()
	out.indep = math.Sqrt(max(0, wide*wide-math.Pow(out.common.size(), 2)))
	return out
}

// Rows fall on the same step of the balance when their masses read the same
// and the pieces' true masses differ by less than sameStep of a step: rounding
// errors of values that near are alike (their correlation is 1 - 6x(1-x) at a
// distance of x steps: 0.46 at a tenth, 0.04 at a fifth). A balance that
// wanders by more than wander of a step breaks that up. Judgement.
const (
	sameStep = 0.2
	wander   = 0.4
)

// weighings makes one value of each group of rows that fell on one step of the
// balance. Weighing a piece again, or an equal one, does not show its rounding
// error, so such rows must not count as independent.
func (t Instruments) weighings(rows []Reading) []value {
	values := make([]value, 0, len(rows))
	grouped := make([]bool, len(rows))
	for i := range rows {
		if grouped[i] {
			continue
		}
		n, total := 1, rows[i].allLengthsM()
		for j := i + 1; j < len(rows); j++ {
			if !grouped[j] && t.sameRounding(&rows[i], &rows[j]) {
				grouped[j] = true
				n, total = n+1, total+rows[j].allLengthsM()
			}
		}
		r := middle(rows[i], total, n)
		values = append(values, t.value(&r, 0, 0, n))
	}
	return values
}

// allLengthsM is the length of all pieces of a weighing together.
func (r *Reading) allLengthsM() float64 { return r.LengthM * float64(r.pieces()) }

// middle is a row with the mean length of its group of n rows, whose lengths
// add up to total.
func middle(r Reading, total float64, n int) Reading {
	r.LengthM = total / float64(n*r.pieces())
	return r
}

func (t Instruments) sameRounding(a, b *Reading) bool {
	step := t.massStep(a)
	if step != t.massStep(b) || float64(t.BalanceRepeatability) > wander*step {
		return false
	}
	differ := a.perMetre() * math.Abs(a.allLengthsM()-b.allLengthsM())
	return math.Abs(a.MassKg-b.MassKg) < 1e-6*step && differ < sameStep*step
}
