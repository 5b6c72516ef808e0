package report

import (
	"cmp"
	"fmt"
	"slices"

	"scalepair/cmd/scalepair/chart"
	"scalepair/data/unit"
	"scalepair/tension/choice"
)

// mostPairs is how many pairs the map shows; a finer grid is thinned (judgement:
// more than a picture has room for).
const mostPairs = 40_000

// rounding keeps a pair on the edge of what is as good from falling beside it.
const rounding unit.Ratio = 1e-9

// Map draws the choice as a map of scale pairs: one SVG, "" where nothing was
// kept.
func (a *Advice) Map() string {
	u, r := a.in.Units.Decimal(), a.Result
	at := func(l unit.Length) float64 { return u.Length.Value(l) }
	m := chart.Map{Title: a.in.title("Scale pairs for"), XLabel: "bass, " + u.Length.Symbol(), YLabel: "treble, " + u.Length.Symbol(),
		UpperLabel: "inharmonicity of the lowest string, cents", Caption: a.mapCaption()}
	pairs, _ := r.Map(mostPairs)
	nearest := map[unit.Length]choice.Pair{} // of each bass length, the pair of least error
	for _, p := range pairs {
		m.Pairs = append(m.Pairs, chart.Pair{X: at(p.Bass), Y: at(p.Treble), Error: p.Error.Percent(), Good: !r.NoneNear && p.Error <= r.Allowed+rounding})
		if best, ok := nearest[p.Bass]; p.Inharmonicity > 0 && (!ok || p.Error < best.Error) {
			nearest[p.Bass] = p
		}
	}
	for _, p := range nearest {
		m.Upper = append(m.Upper, chart.Upper{X: at(p.Bass), Text: unit.Fixed(p.Inharmonicity.Value(), 1)})
	}
	slices.SortFunc(m.Upper, func(a, b chart.Upper) int { return cmp.Compare(a.X, b.X) })
	for _, p := range r.Picks {
		m.Picks = append(m.Picks, chart.Pick{X: at(p.Bass), Y: at(p.Treble), Name: p.Kind.String()})
	}
	return m.SVG()
}

// mapCaption says how the map is read, and why pairs are missing.
func (a *Advice) mapCaption() string {
	text := "Every scale pair with its best set. Inside the outline pairs are as good as the best; outside it the tint grows paler with the feel error."
	if a.NoneNear {
		text = "Every scale pair with its best set. No pair comes near the wanted feel; the tint grows paler with the feel error."
	}
	if len(a.Dropped) > 0 {
		var why []string
		for _, d := range a.Dropped {
			why = append(why, fmt.Sprintf("%s (%s)", d.Limit, plural(d.Pairs, "pair")))
		}
		text += " Hatched: dropped by " + listed(why) + "."
	}
	if a.Pair.Inharmonicity > 0 {
		text += " The upper scale is that of the best pair at each bass length, a lower bound where the string is wound."
	}
	return text
}
