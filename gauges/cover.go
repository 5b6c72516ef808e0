package gauges

import (
	"math"

	"scalepair/data/unit"
)

// normal95 is how many standard uncertainties either side of a normal error
// hold 95 %. Source: the Guide, table G.1; NIST Technical Note 1297, 4.3.
const normal95 = 1.96

// coverage95 is how many standard uncertainties either side hold 95 % of a sum
// of independent errors.
//
//	k = 1.96 + 0.1 eta + 0.1085 eta^3
//
// eta: excess kurtosis of the sum, from -1.2 (one error that lies anywhere
// within its bounds) to 0 (normal); 1.65 and 1.96 there. Of any sum of such and
// normal errors that many hold 94.5 to 95.8 %. Source: I. P. Zakharov and
// O. A. Botsyura, Measurement Techniques 62 (2019) 327, the kurtosis method,
// from memory.
func coverage95(eta float64) float64 { return normal95 + 0.1*eta + 0.1085*eta*eta*eta }

// excess is the excess kurtosis of a value's error.
//
//	eta = -1.2 sum(b_i^4)/u^4
//
// b_i: standard uncertainties of its parts that have bounds, u: of the whole;
// fourth cumulants add up as variances do, -1.2 b^4 is that of an error
// anywhere within +-sqrt(3) b, and 0 that of a normal one. What widens an
// uncertainty since readings disagree has no known shape and counts as normal.
// Source: Abramowitz and Stegun 26.1 (cumulants), the kurtosis method as in
// coverage95.
func (v value) excess() float64 {
	sum := fourth(v.bounded)
	for _, p := range v.common {
		if p.Bounded {
			sum += fourth(p.U)
		}
	}
	if sum == 0 {
		return 0 // and no -0
	}
	return -1.2 * sum / fourth(v.u())
}

func fourth(x float64) float64 { return x * x * x * x }

// fourthSum puts parts with bounds together: the fourth root of the sum of
// their fourth powers, which keeps their fourth cumulant.
func fourthSum(bounded ...float64) float64 {
	sum := 0.0
	for _, b := range bounded {
		sum += fourth(b)
	}
	return math.Sqrt(math.Sqrt(sum))
}

// within95 is the half width of the 95 % interval.
func (v value) within95() float64 { return coverage95(v.excess()) * v.u() }

// less is the difference of two values of one quantity: what they share
// counts only where it moves them apart.
func (v value) less(b value) value {
	return value{
		w: v.w - b.w, indep: RootSum(v.indep, b.indep), bounded: fourthSum(v.bounded, b.bounded),
		common: v.common.plus(-1, b.common),
	}
}

// Within95 is the half width of the stated 95 % interval, kg/m: the true unit
// weight lies within LinearDensity +- Within95 in 95 % of cases. It is U times
// Coverage95, the Guide's expanded uncertainty (6.2.1).
func (g Gauge) Within95() unit.LinearDensity { return unit.LinearDensity(g.value().within95()) }

// Coverage95 is how many standard uncertainties U the stated 95 % interval
// reaches to either side: from 1.65, where one error with bounds such as a
// rounding is nearly all, to 1.96, where many errors or a normal one are.
func (g Gauge) Coverage95() float64 { return coverage95(g.value().excess()) }

func (g Gauge) value() value {
	return value{w: float64(g.LinearDensity), indep: float64(g.Indep), bounded: g.bounded, common: g.Common}
}
