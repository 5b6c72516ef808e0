package gauges

import (
	"cmp"
	"fmt"
	"math"
	"slices"

	"scalepair/data/unit"
)

// suspect says of one reading what would fit and which slips would explain it.
func (c combiner) suspect(e *entry, g Gauge, r Reading, at standing, why string) Suspect {
	out := Suspect{Place: r.Place, Gauge: g.Label, Why: why, Off: unit.Ratio(at.off)}
	numbers := c.tools.numbers(r, g)
	a, b := numbers[0], numbers[1]
	out.Fits = fmt.Sprintf("%s (not %s) or %s (not %s) would fit", a.reckoned(a.fitting(at.off)), a.given(), b.reckoned(b.fitting(at.off)), b.given())
	if len(e.rows) > 1 && !g.Disagrees {
		outer := numbers[len(numbers)-1]
		out.Fits = fmt.Sprintf("its readings agree; an outer diameter of %s (not %s) would fit them", outer.reckoned(outer.fitting(at.off)), outer.given())
		numbers = []entered{outer}
	}
	out.Slips = likely(numbers, at)
	return out
}

// fitting is the value that would have agreed with the fit.
func (e entered) fitting(off float64) float64 { return e.x * math.Pow(1+off, -1/e.power) }

// likely words the slips that would bring the reading to the fit: within its
// combined uncertainty or a hundredth. A misread digit explains nearly
// anything, so it is named only where nothing else fits; at most three.
func likely(numbers []entered, at standing) []string {
	type found struct {
		slip
		of   entered
		miss float64
	}
	var all []found
	tol := max(0.01, normal95*at.u)
	for _, n := range numbers {
		miss := func(value float64) float64 { return math.Abs(math.Log1p(at.off) + n.power*math.Log(value/n.x)) }
		for _, s := range n.slips(func(value float64) bool { return miss(value) <= tol }) {
			all = append(all, found{s, n, miss(s.value)})
		}
	}
	slices.SortStableFunc(all, func(a, b found) int {
		return cmp.Or(cmp.Compare(a.rank, b.rank), cmp.Compare(a.miss, b.miss))
	})
	var out []string
	for _, f := range all {
		if len(out) == 3 || f.rank == rankDigit && len(out) > 0 {
			break
		}
		out = append(out, fmt.Sprintf("%s would fit; %s was entered: %s", f.text, f.of.given(), f.what))
	}
	return out
}
