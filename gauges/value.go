package gauges

import "math"

// Value is a linear density with the parts of its uncertainty, kg/m.
type Value struct {
	W       float64
	Indep   float64 // what no other value shares
	Bounded float64 // the parts of Indep that have bounds, by fourth powers: see excess
	Common  Parts
}

// U is the whole standard uncertainty.
func (v Value) U() float64 { return RootSum(v.Indep, v.Common.U()) }

// Component is one input of a reading and what it does to the linear density.
type Component struct {
	Name    string  // in plain words: "mass, step of the balance"
	RelU    float64 // sensitivity times relative standard uncertainty; the sign matters only where Source is shared
	Source  string  // the error that other readings share; "" where it is this reading's own
	Bounded bool    // anywhere within +-sqrt(3) RelU, as a rounding is; else normal

	Formula, From string // how RelU is found and by whose rule, for the work shown
}

// Add puts one more error to a value: under its source, or as its own where that
// is "".
func (v *Value) Add(p Part) {
	switch {
	case p.Source != "":
		v.Common = v.Common.Plus(1, p)
	case p.Bounded:
		v.Indep, v.Bounded = RootSum(v.Indep, p.U), fourthSum(v.Bounded, p.U)
	default:
		v.Indep = RootSum(v.Indep, p.U)
	}
}

// normal95 is how many standard uncertainties either side of a normal error
// hold 95 %. Source: the Guide, table G.1; NIST Technical Note 1297, 4.3.
const normal95 = 1.96

// Coverage95 is how many standard uncertainties either side hold 95 % of a sum
// of independent errors.
//
//	k = 1.96 + 0.1 eta + 0.1085 eta^3
//
// eta: excess kurtosis of the sum, from -1.2 (one error that lies anywhere
// within its bounds) to 0 (normal); 1.65 and 1.96 there. Of any sum of such and
// normal errors that many hold 94.5 to 95.8 %. Source: I. P. Zakharov and
// O. A. Botsyura, Measurement Techniques 62 (2019) 327, the kurtosis method,
// from memory.
func (v Value) Coverage95() float64 {
	eta := v.excess()
	return normal95 + 0.1*eta + 0.1085*eta*eta*eta
}

// Within95 is the half width of the 95 % interval, the Guide's expanded
// uncertainty (6.2.1).
func (v Value) Within95() float64 { return v.Coverage95() * v.U() }

// excess is the excess kurtosis of a value's error.
//
//	eta = -1.2 sum(b_i^4)/u^4
//
// b_i: standard uncertainties of its parts that have bounds, u: of the whole;
// fourth cumulants add up as variances do, -1.2 b^4 is that of an error
// anywhere within +-sqrt(3) b, and 0 that of a normal one. What widens an
// uncertainty since readings disagree has no known shape and counts as normal.
// Source: Abramowitz and Stegun 26.1 (cumulants), the kurtosis method as in
// Coverage95.
func (v Value) excess() float64 {
	b := v.Bounded
	for _, p := range v.Common {
		if p.Bounded {
			b = fourthSum(b, p.U)
		}
	}
	if b == 0 {
		return 0 // and no -0
	}
	return -1.2 * math.Pow(b/v.U(), 4)
}

// fourthSum puts parts with bounds together: the fourth root of the sum of
// their fourth powers, which keeps their fourth cumulant.
func fourthSum(bounded ...float64) float64 {
	sum := 0.0
	for _, b := range bounded {
		sum += b * b * b * b
	}
	return math.Sqrt(math.Sqrt(sum))
}

// Plus adds scale times a value: what both share adds up before it is squared, so
// that of a difference it counts only where it moves them apart.
func (v Value) Plus(scale float64, b Value) Value {
	return Value{
		W: v.W + scale*b.W, Indep: RootSum(v.Indep, scale*b.Indep), Bounded: fourthSum(v.Bounded, scale*b.Bounded),
		Common: v.Common.Plus(scale, b.Common...),
	}
}
