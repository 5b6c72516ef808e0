package fit

import (
	"cmp"
	"slices"

	"scalepair/data/unit"
	"scalepair/gauges"
	"scalepair/gauges/reading"
)

// ShortestPiece gives the total length (length times pieces) at which one
// weighing of a gauge of linear density w has the relative standard uncertainty
// wanted.
//
//	l = sqrt((u_m/w)^2 + u_l^2)/wanted
//	u_m^2 = d_m^2/12 + s^2 + a_m^2/3     u_l^2 = d_l^2/12 + a_l^2/3
//
// d: steps; s: repeatability; a: accuracies. One piece; several together are alike
// in u_m, and need no more than this in all. Source: gauges.Instruments.Value,
// solved for l.
func ShortestPiece(w unit.LinearDensity, wanted unit.Ratio, t gauges.Instruments) unit.Length {
	um := gauges.RootSum(gauges.StepU(t.BalanceResolution).Kg(), t.BalanceRepeatability.Kg(), gauges.BoundU(t.BalanceAccuracy).Kg())
	ul := gauges.RootSum(gauges.StepU(t.RulerResolution).M(), gauges.BoundU(t.RulerAccuracy).M())
	return unit.Length(gauges.RootSum(um/w.KgPerM(), ul) / float64(wanted))
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
// longest is the longest piece to be had, 20 mm to 5 m. Best first; gauges
// without influence are left out.
//
// The result's variance is the sum over gauges of (influence Indep/w)^2 and over
// shared errors of (sum of influence Common/w)^2. A weighing of an estimated
// gauge replaces the estimate; of any other it is averaged in. What it would do
// to the fit, and so to the other estimates, is not counted.
func (s Stock) WhatToWeigh(influence []float64, longest unit.Length) []Suggestion {
	before := s.spread(influence, -1, gauges.Gauge{})
	var out []Suggestion
	for i := range s.Gauges {
		if influence[i] != 0 {
			out = append(out, s.worth(influence, i, longest, before))
		}
	}
	slices.SortStableFunc(out, func(a, b Suggestion) int { return cmp.Compare(a.After, b.After) })
	return out
}

// worth finds what a weighing of gauge i is worth and how short it may be.
func (s Stock) worth(influence []float64, i int, longest unit.Length, before float64) Suggestion {
	after := func(l unit.Length) float64 { return s.spread(influence, i, s.weighedAgain(i, l)) }
	out := Suggestion{Gauge: s.Gauges[i].Label, Length: longest, Before: before, After: after(longest)}
	for cm := 2.0; unit.Length(cm/100) < longest; cm++ {
		if a := after(unit.Length(cm / 100)); before-a >= 0.9*(before-out.After) {
			out.Length, out.After = unit.Length(cm/100), a
			break
		}
	}
	return out
}

// weighedAgain is a gauge with one further weighing of a piece of length l that
// agrees with what is known.
func (s Stock) weighedAgain(i int, l unit.Length) gauges.Gauge {
	g := s.Gauges[i]
	fresh, _ := s.tools.Value(reading.Reading{Kind: reading.Weighed, Length: l, Mass: unit.Mass(g.LinearDensity.KgPerM() * l.M())}, 0, 0)
	both := []gauges.Value{g.Value(), fresh}
	switch {
	case g.Estimated:
		g.Set(fresh)
	case g.Readings == 0:
		g.Set(gauges.MeanOfKinds(both).Value)
	default:
		g.Set(gauges.Mean(both).Value)
	}
	return g
}

// spread is the standard uncertainty of the result, with gauge i replaced
// (none where i is -1).
func (s Stock) spread(influence []float64, i int, instead gauges.Gauge) float64 {
	var sum gauges.Value
	for j, g := range s.Gauges {
		if j == i {
			g = instead
		}
		if influence[j] != 0 {
			sum = sum.Plus(influence[j]/g.LinearDensity.KgPerM(), g.Value())
		}
	}
	return sum.U()
}
