package gauges

import (
	"math"
	"slices"
	"strings"
)

// StepU is the standard uncertainty of a value rounded to whole steps.
//
//	u = d/sqrt(12)
//
// d: least step of display or scale, in the unit of u; the true value lies
// anywhere within half a step. Source: the Guide F.2.2.1.
func StepU[Q ~float64](d Q) Q { return d / Q(math.Sqrt(12)) }

// BoundU is the standard uncertainty of a value known to lie within +-a.
//
//	u = a/sqrt(3)
//
// a: half width of the range, in the unit of u. Source: the Guide 4.3.7.
func BoundU[Q ~float64](a Q) Q { return a / Q(math.Sqrt(3)) }

// RootSum puts independent parts of an uncertainty together: the root of the
// sum of their squares. Each part is sensitivity times uncertainty.
// Source: the Guide 5.1.2.
func RootSum(parts ...float64) float64 {
	sum := 0.0
	for _, p := range parts {
		sum += p * p
	}
	return math.Sqrt(sum)
}

// parts is a set of shared errors by source. A set is small, so a sorted slice
// serves and keeps every sum in one order.
type parts []CommonPart

// plus adds scale times each part of b.
func (a parts) plus(scale float64, b parts) parts {
	out := append(make(parts, 0, len(a)+len(b)), a...)
	out.addAll(scale, b)
	return out
}

// addAll is plus for a set that nobody else holds.
func (a *parts) addAll(scale float64, b parts) {
	for _, p := range b {
		a.add(CommonPart{p.Source, scale * p.U, p.Bounded})
	}
}

// add puts one more part into a set that nobody else holds.
func (a *parts) add(p CommonPart) {
	if p.U == 0 {
		return
	}
	i, found := slices.BinarySearchFunc(*a, p.Source, func(c CommonPart, s string) int { return strings.Compare(c.Source, s) })
	if !found {
		*a = slices.Insert(*a, i, p)
		return
	}
	(*a)[i].U += p.U
	(*a)[i].Bounded = (*a)[i].Bounded && p.Bounded
}

// size is the standard uncertainty that the parts make together.
func (a parts) size() float64 {
	sum := 0.0
	for _, p := range a {
		sum += p.U * p.U
	}
	return math.Sqrt(sum)
}

// dot is the covariance that two values have from what they share.
func (a parts) dot(b parts) float64 {
	sum := 0.0
	for _, p := range a {
		for _, q := range b {
			if p.Source == q.Source {
				sum += p.U * q.U
			}
		}
	}
	return sum
}

// dropZeros leaves out the parts that are exactly 0. Without any it is the set
// itself.
func (a parts) dropZeros() parts {
	zero := func(p CommonPart) bool { return p.U == 0 }
	if !slices.ContainsFunc(a, zero) {
		return a
	}
	return slices.DeleteFunc(slices.Clone(a), zero)
}

// one makes a set of one part, or of none where u is 0.
func one(source string, u float64) parts {
	if u == 0 {
		return nil
	}
	return parts{{Source: source, U: u}}
}

// within makes a set of one error that has bounds, see CommonPart.
func within(source string, u float64) parts {
	set := one(source, u)
	for i := range set {
		set[i].Bounded = true
	}
	return set
}
