package report

import (
	"fmt"
	"slices"

	"scalepair/cmd/scalepair/chart"
	"scalepair/data/unit"
	"scalepair/gauges/reading"
)

// FitPlot draws how far every reading of the stock lies from the fit of its kind
// that was made without it.
func FitPlot(in *Input) chart.Fit {
	u := in.Units.Decimal()
	plot := chart.Fit{Title: in.title("Gauges of"), XLabel: "outer diameter, " + u.Length.Symbol(), YLabel: "heavier than the fit, %",
		Caption: "Every reading against the fit of its kind, made without that gauge; 0 is the fit. The bars are two standard uncertainties of the reading alone; " +
			"what makes one suspect counts diameter, fit and scatter of the kind as well. Gauges that no fit could judge are not drawn."}
	suspect := map[string]bool{}
	for _, s := range in.Run.Stock.Suspects() {
		suspect[s.Place.String()] = true
	}
	for _, g := range in.Run.Stock.Gauges {
		if g.Judged == nil && !g.Estimated {
			continue
		}
		p := chart.Point{X: u.Length.Value(g.Outer), Label: g.Label, Family: len(plot.Families)}
		name := familyName(g.Family, g.Material)
		if i := slices.IndexFunc(plot.Families, func(n string) bool { return reading.Key(n) == reading.Key(name) }); i >= 0 {
			p.Family = i
		} else {
			plot.Families = append(plot.Families, name)
		}
		if g.Estimated {
			p.U, p.Kind = g.RelU().Percent(), chart.Estimated
			plot.Points = append(plot.Points, p)
			continue
		}
		for _, r := range g.Rows {
			one := in.oneReading(r, g)
			against := func(w unit.LinearDensity) float64 { return unit.Ratio(w / g.Judged.Fit).Percent() }
			p.Y, p.U, p.Kind = against(one.density.Value)-100, against(one.density.U), chart.Reading
			if suspect[r.Place.String()] {
				p.Kind, p.Label = chart.Suspect, fmt.Sprintf("%s, %+.1f %%", g.Label, p.Y)
			}
			plot.Points = append(plot.Points, p)
		}
	}
	return plot
}
