package gauges

import (
	"fmt"
	"math"
	"slices"
	"strings"
)

// mean shows the mean of the values of one kind. kind ends its symbols.
func (k *works) mean(values []named, kind string) named {
	if len(values) == 1 {
		return values[0]
	}
	plain := valuesOf(values)
	all := mean(plain)
	weights := make([]string, len(values))
	for i, v := range values {
		weights[i] = fmt.Sprintf("1/%s^2", v.ownSym)
	}
	sum := strings.Join(weights, " + ")
	shares := k.shares(values, weights, sum, func(v value) float64 { return 1 / (v.indep * v.indep) }, kind)
	out := named{value: all.value, wSym: k.weighted("w"+kind, "linear density, mean", shares, values, all.w)}
	widen := k.widening(values, all, kind)
	out.ownSym = k.step("own"+kind, "standard uncertainty from errors of their own", strings.TrimSpace(widen+" 1/sqrt("+sum+")"), all.indep, "kg/m", guideMean)
	out.boundedSym = k.boundedMean(values, shares, all.value, kind)
	out.shared = k.sharedMeans(values, shares, all.value, kind)
	return out
}

// boundedMean shows what is left in a mean of errors that have bounds.
func (k *works) boundedMean(values []named, shares []string, all value, kind string) string {
	var terms []string
	for i, v := range values {
		if v.boundedSym != "" {
			terms = append(terms, "("+shares[i]+" "+v.boundedSym+")^4")
		}
	}
	if terms == nil {
		return ""
	}
	return k.step("b"+kind, "errors of their own that have bounds, by fourth powers", "sqrt(sqrt("+strings.Join(terms, " + ")+"))", all.bounded, "kg/m", fromShapes)
}

func valuesOf(values []named) []value {
	out := make([]value, len(values))
	for i, v := range values {
		out[i] = v.value
	}
	return out
}

// shares shows what each value counts for in a mean.
func (k *works) shares(values []named, weights []string, sum string, weight func(value) float64, kind string) []string {
	total := 0.0
	for _, v := range values {
		total += weight(v.value)
	}
	out := make([]string, len(values))
	for i, v := range values {
		out[i] = k.step(fmt.Sprintf("v%s%d", strings.ToLower(kind), i+1), "what "+v.wSym+" counts for", fmt.Sprintf("(%s)/(%s)", weights[i], sum),
			weight(v.value)/total, "", guideMean)
	}
	return out
}

// weighted shows the sum of the values' linear densities by their shares.
func (k *works) weighted(symbol, name string, shares []string, values []named, w float64) string {
	terms := make([]string, len(values))
	for i, v := range values {
		terms[i] = shares[i] + " " + v.wSym
	}
	return k.step(symbol, name, strings.Join(terms, " + "), w, "kg/m", guideMean)
}

// sharedMeans shows what is left of every shared error in a mean.
func (k *works) sharedMeans(values []named, shares []string, all value, kind string) []sharedSym {
	var out []sharedSym
	for _, p := range all.common {
		var terms []string
		for i, v := range values {
			if s := v.symbolOf(p.Source); s != "" {
				terms = append(terms, shares[i]+" "+s)
			}
		}
		if terms == nil {
			continue
		}
		symbol := k.stem(p.Source) + kind
		k.step(symbol, "standard uncertainty from the "+p.Source+", shared", strings.Join(terms, " + "), p.U, "kg/m", guideMean)
		out = append(out, sharedSym{p.Source, symbol})
	}
	return out
}

// byLeastSquares stands for a sum that takes more than a pocket calculator.
const byLeastSquares = "least squares over the linear density and the shared errors"

// widening shows how far values differ, and gives the symbol of the factor
// that widens their uncertainty, "" where they agree.
func (k *works) widening(values []named, all average, kind string) string {
	formula := byLeastSquares
	if len(values) == 2 {
		formula = apart(values[0], values[1])
	}
	chi2 := k.step("chi2"+kind, "how far they differ, squared, in their uncertainties", formula, all.chi2, "", "generalised least squares: A. C. Aitken (1935)")
	if all.chi2 <= float64(all.dof) {
		return ""
	}
	return k.step("wide"+kind, "factor, since they differ by more than that", fmt.Sprintf("sqrt(%s/%d)", chi2, all.dof), all.birge(), "",
		"R. T. Birge, Physical Review 40 (1932) 207")
}

// apart is how far two values differ, squared, over the variance of their
// difference.
func apart(a, b named) string {
	under := []string{a.ownSym + "^2", b.ownSym + "^2"}
	for _, s := range a.shared {
		if other := b.symbolOf(s.source); other != "" {
			under = append(under, fmt.Sprintf("(%s - %s)^2", s.symbol, other))
		} else {
			under = append(under, s.symbol+"^2")
		}
	}
	for _, s := range b.shared {
		if a.symbolOf(s.source) == "" {
			under = append(under, s.symbol+"^2")
		}
	}
	return fmt.Sprintf("(%s - %s)^2/(%s)", a.wSym, b.wSym, strings.Join(under, " + "))
}

// join shows how weighing, hanging and construction are put together.
func (k *works) join(kinds []named) named {
	if len(kinds) == 1 {
		return kinds[0]
	}
	all := combineKinds(valuesOf(kinds))
	weights := make([]string, len(kinds))
	for i, n := range kinds {
		weights[i] = "1/" + k.whole(n, fmt.Sprintf("u%d", i+1)) + "^2"
	}
	shares := k.shares(kinds, weights, strings.Join(weights, " + "), func(v value) float64 { return 1 / (v.u() * v.u()) }, "k")
	out := named{value: all.value, wSym: k.weighted("w", "linear density, of all kinds together", shares, kinds, all.w)}
	widen := k.widening(kinds, all, "k")
	own := make([]string, len(kinds))
	for i, n := range kinds {
		own[i] = shares[i] + " " + n.ownSym
	}
	formula := "sqrt((" + strings.Join(own, ")^2 + (") + ")^2)"
	out.boundedSym = k.boundedMean(kinds, shares, all.value, "k")
	out.shared = k.sharedMeans(kinds, shares, all.value, "k")
	before := k.step("ownk", "standard uncertainty from errors of their own", formula, ownBefore(kinds, all), "kg/m", guideSum)
	if widen == "" {
		out.ownSym = before
		return out
	}
	parts := []string{before}
	for _, s := range out.shared {
		parts = append(parts, s.symbol)
	}
	formula = fmt.Sprintf("sqrt(%s^2 (%s)", widen, squares(parts))
	for _, s := range out.shared {
		formula += " - " + s.symbol + "^2"
	}
	out.ownSym = k.step("ownx", "the same, widened so that the whole is", formula+")", all.indep, "kg/m", fromAbove)
	return out
}

// ownBefore is the independent part of a sum of kinds before it is widened.
func ownBefore(kinds []named, all average) float64 {
	whole := all.u() / all.birge()
	return math.Sqrt(max(0, whole*whole-math.Pow(all.common.size(), 2)))
}

// whole shows the whole uncertainty of a value.
func (k *works) whole(n named, symbol string) string {
	parts := []string{n.ownSym}
	for _, s := range n.shared {
		parts = append(parts, s.symbol)
	}
	return k.step(symbol, "standard uncertainty of "+n.wSym, "sqrt("+squares(parts)+")", n.u(), "kg/m", guideSum)
}

// settle ends with w, u(w), the share of each part, and the 95 % interval.
func (k *works) settle(n named) {
	if n.wSym != "w" {
		k.step("w", "linear density, slack", n.wSym, n.w, "kg/m", fromAbove)
	}
	u := k.whole(named{value: n.value, wSym: "w", ownSym: n.ownSym, shared: n.shared}, "u(w)")
	k.step("", "share of that from errors of its own", fmt.Sprintf("100 (%s/%s)^2", n.ownSym, u), share(n.indep, n.u()), "%", guideSum)
	for _, s := range slices.Clone(n.shared) {
		k.step("", "share of that from the "+s.source, fmt.Sprintf("100 (%s/%s)^2", s.symbol, u), share(partOf(n.value, s.source).U, n.u()), "%", guideSum)
	}
	k.within95(n, u)
}

// within95 shows the 95 % interval.
func (k *works) within95(n named, u string) {
	var bounded []string
	if n.boundedSym != "" {
		bounded = append(bounded, n.boundedSym+"^4")
	}
	for _, s := range n.shared {
		if partOf(n.value, s.source).Bounded {
			bounded = append(bounded, s.symbol+"^4")
		}
	}
	eta, formula := n.excess(), ""
	if bounded != nil {
		formula = fmt.Sprintf("-1.2 (%s)/%s^4", strings.Join(bounded, " + "), u)
	}
	k.step("eta", "excess kurtosis: -1.2 of one error within bounds, 0 of a normal one", formula, eta, "", fromShapes)
	k.step("k95", "standard uncertainties to either side that hold 95 %", "1.96 + 0.1 eta + 0.1085 eta^3", coverage95(eta), "", fromShapes)
	k.step("U95", "half width of the 95 % interval of w", "k95 "+u, n.within95(), "kg/m", guideExpanded)
}

func share(part, whole float64) float64 { return 100 * part / whole * part / whole }
