package report

import (
	"scalepair/cmd/scalepair/chart"
	"scalepair/cmd/scalepair/document"
	"scalepair/data/unit"
)

// mostPairs is how many pairs the map shows; a finer grid is thinned (judgement:
// more than a picture has room for).
const mostPairs = 40_000

// rounding keeps a pair on the edge of what is as good from falling beside it.
const rounding unit.Ratio = 1e-9

// Map draws the choice as a map of scale pairs: one SVG, "" where nothing was
// kept.
func (a *Advice) Map() string {
	u, r := a.in.Units, a.Result
	at := func(l unit.Length) float64 { return u.Length.Value(l) }
	m := chart.Map{Title: a.in.title("Scale pairs for"), XLabel: "bass, " + u.Length.Symbol(), YLabel: "treble, " + u.Length.Symbol()}
	pairs, _ := r.Map(mostPairs)
	for _, p := range pairs {
		m.Pairs = append(m.Pairs, chart.Pair{X: at(p.Bass), Y: at(p.Treble), Error: p.Error.Percent(), Good: !r.NoneNear && p.Error <= r.Allowed+rounding})
	}
	for _, p := range r.Picks {
		m.Picks = append(m.Picks, chart.Pick{X: at(p.Bass), Y: at(p.Treble), Name: p.Kind.String()})
	}
	return m.SVG()
}

// mapFigure is the map as a figure of the document.
func (a *Advice) mapFigure() document.Figure {
	return document.Figure{
		Caption: "Every scale pair with its best set. Inside the outline are the pairs as good as the best; outside it the tint grows paler with the feel error.",
		Alt:     "A map of scale pairs, bass across and treble up, with the picks named; the tables hold its numbers.", SVG: a.Map(),
	}
}
