package gauges

import (
	"cmp"
	"errors"
	"math"
	"slices"

	"scalepair/data/fault"
	"scalepair/data/unit"
)

// ShortestPiece gives the total length (length times pieces, m) at which one
// weighing of a gauge of linear density w (kg/m) has the relative standard
// uncertainty rel, 0.01 being 1 %.
//
//	l = sqrt((u_m/w)^2 + u_l^2)/rel
//	u_m^2 = d_m^2/12 + s^2 + a_m^2/3     u_l^2 = d_l^2/12 + a_l^2/3
//
// d: steps; s: repeatability; a: accuracies. One piece; several together are
// alike in u_m, and need no more than this in all. An error where w or rel is
// not above 0 and finite, or a step is unknown. Source: Instruments.Work, solved
// for l.
func ShortestPiece(density unit.LinearDensity, wanted unit.Ratio, tools Instruments) (unit.Length, error) {
	w, rel := float64(density), float64(wanted)
	var faults fault.List
	tools = tools.filled()
	tools.check(&faults)
	if !(w > 0) || math.IsInf(w, 0) {
		faults.Add(fault.Place{Input: "linear density"}, "must be above 0", "", "")
	}
	if !(rel > 0) || rel >= 1 {
		faults.Add(fault.Place{Input: "wanted uncertainty"}, "must lie between 0 and 100 %", "", "1 % is a good weighing")
	}
	if tools.BalanceResolution <= 0 || tools.RulerResolution <= 0 {
		faults.Add(fault.Place{Input: "measuring"}, "the step of balance or ruler is not known", "", "state the step it reads to")
	}
	if err := faults.Err(); err != nil {
		return 0, err
	}
	um := RootSum(float64(StepU(tools.BalanceResolution)), float64(tools.BalanceRepeatability), float64(BoundU(tools.BalanceAccuracy)))
	ul := RootSum(float64(StepU(tools.RulerResolution)), float64(BoundU(tools.RulerAccuracy)))
	return unit.Length(RootSum(um/w, ul) / rel), nil
}

// Suggestion is one further weighing and what it would be worth.
type Suggestion struct {
	Gauge  string
	Length unit.Length // shortest piece, in whole centimetres, that gives nine tenths of the gain of the longest
	Before float64     // standard uncertainty of the result now, in its unit
	After  float64     // and with this weighing
}

// WhatToWeigh ranks the gauges by what one further weighing of each would do to
// the uncertainty of a result. influence[i] is the change of the result per
// relative change of the linear density of Gauges[i], in any unit, with its sign;
// longest is the longest piece to be had, 0.02 to 5 m. Best first; gauges
// without influence are left out.
//
// The result's variance is the sum over gauges of (influence Indep/w)^2 and over
// shared errors of (sum of influence Common/w)^2. A weighing of an estimated
// gauge replaces the estimate; of any other it is averaged in. What it would do
// to the fit, and so to the other estimates, is not counted.
func (s Stock) WhatToWeigh(tools Instruments, influence []float64, longest unit.Length) ([]Suggestion, error) {
	if len(influence) != len(s.Gauges) {
		panic("gauges: one influence for every gauge of the stock")
	}
	tools = tools.filled()
	if !(longest >= 0.02 && longest <= 5) {
		return nil, fault.Fault{Place: fault.Place{Input: "longest piece"}, What: "must lie between 20 mm and 5 m"}
	}
	if tools.BalanceResolution <= 0 || tools.RulerResolution <= 0 {
		return nil, fault.Fault{Place: fault.Place{Input: "measuring"}, What: "the step of balance or ruler is not known", Remedy: "state the step it reads to"}
	}
	before := s.spread(influence, -1, Gauge{})
	if math.IsNaN(before) || math.IsInf(before, 0) {
		return nil, errors.New("an influence is no number")
	}
	var out []Suggestion
	for i := range s.Gauges {
		if influence[i] != 0 {
			out = append(out, s.worth(tools, influence, i, float64(longest), before))
		}
	}
	slices.SortStableFunc(out, func(a, b Suggestion) int { return cmp.Compare(a.After, b.After) })
	return out, nil
}

// worth finds what a weighing of gauge i is worth and how short it may be.
func (s Stock) worth(tools Instruments, influence []float64, i int, longest, before float64) Suggestion {
	after := func(l float64) float64 { return s.spread(influence, i, s.Gauges[i].weighedAgain(tools, l)) }
	out := Suggestion{Gauge: s.Gauges[i].Label, Length: unit.Length(longest), Before: before, After: after(longest)}
	for cm := 2.0; cm/100 < longest; cm++ {
		if a := after(cm / 100); before-a >= 0.9*(before-out.After) {
			out.Length, out.After = unit.Length(cm/100), a
			break
		}
	}
	return out
}

// weighedAgain is the gauge with one further weighing of a piece of length l
// that agrees with what is known.
func (g Gauge) weighedAgain(tools Instruments, l float64) Gauge {
	fresh := tools.value(&Reading{Kind: Weighed, LengthM: l, MassKg: float64(g.LinearDensity) * l}, 0, 0, 1)
	now := g.value()
	switch {
	case g.Estimated:
		g.set(fresh)
	case g.Readings == 0:
		g.set(combineKinds([]value{now, fresh}).value)
	default:
		g.set(mean([]value{now, fresh}).value)
	}
	return g
}

// spread is the standard uncertainty of the result, with gauge i replaced
// (none where i is -1).
func (s Stock) spread(influence []float64, i int, instead Gauge) float64 {
	var shared parts
	own := 0.0
	for j, g := range s.Gauges {
		if influence[j] == 0 {
			continue
		}
		if j == i {
			g = instead
		}
		rel := influence[j] / float64(g.LinearDensity)
		own = RootSum(own, rel*float64(g.Indep))
		shared = shared.plus(rel, g.Common)
	}
	return RootSum(own, shared.size())
}
