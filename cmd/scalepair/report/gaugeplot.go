package report

import (
	"cmp"
	"math"
	"slices"

	"scalepair/cmd/scalepair/chart"
	"scalepair/data/unit"
	"scalepair/gauges"
	"scalepair/gauges/reading"
)

const plotCaption = "Every reading over the outer diameter, as the density of a solid wire of that size and mass, with the fit of its kind. The bars are two standard uncertainties of its distance from the fit: of the reading, the diameter, the fit and the scatter of the kind. Gauges known by core and wraps alone are not drawn."

// FitPlot draws every reading of the stock against the fit of its kind.
func FitPlot(in *Input) chart.Fit {
	u := in.Units.Decimal()
	plot := chart.Fit{Title: in.title("Gauges of"), XLabel: "outer diameter, " + u.Length.Symbol(), YLabel: "equivalent density, g/cm³"}
	suspect := map[string]bool{}
	for _, s := range in.Run.Stock.Suspects() {
		suspect[s.Place.String()] = true
	}
	for _, g := range in.Run.Stock.Gauges {
		p := chart.Point{X: u.Length.Value(g.Outer), Label: g.Label}
		if g.Estimated {
			p.Y, p.U, p.Kind = equivalent(g.LinearDensity, g.Outer), equivalent(g.U, g.Outer), chart.Estimated
			plot.Points = append(plot.Points, p)
		}
		for _, r := range g.Rows {
			one := in.oneReading(r, g)
			p.Y, p.U, p.Kind = equivalent(one.density.Value, g.Outer), equivalent(distanceU(g, one), g.Outer), chart.Reading
			if suspect[r.Place.String()] {
				p.Kind = chart.Suspect
			}
			plot.Points = append(plot.Points, p)
		}
	}
	for _, f := range in.Run.Stock.Fits {
		c := chart.Curve{Name: familyName(f.Family, f.Material)}
		for _, g := range in.Run.Stock.Gauges {
			if reading.Key(familyName(g.Family, g.Material)) != reading.Key(c.Name) {
				continue
			}
			if w := f.LinearDensity(g.Outer, g.Core, g.Shape); w > 0 {
				c.X, c.Y = append(c.X, u.Length.Value(g.Outer)), append(c.Y, equivalent(w, g.Outer))
			}
		}
		if rising(&c); len(c.X) > 1 { // kinds of one size have no line
			plot.Curves = append(plot.Curves, c)
		}
	}
	return plot
}

// distanceU is the standard uncertainty of one reading's distance from the fit:
// its own, and what the judgement of its gauge holds beside the gauge's own.
// Without a judgement it is the reading's alone.
func distanceU(g gauges.Gauge, r oneReading) unit.LinearDensity {
	if g.Judged == nil {
		return r.density.U
	}
	rest := math.Sqrt(float64(max(0, g.Judged.U*g.Judged.U-g.RelU()*g.RelU())))
	return unit.LinearDensity(math.Hypot(r.density.U.KgPerM(), rest*r.density.Value.KgPerM()))
}

// equivalent is the density, in g/cm³, of a solid wire of that outer diameter and
// linear density: wire of one material lies on a level line.
func equivalent(w unit.LinearDensity, outer unit.Length) float64 {
	return unit.Density(w.KgPerM() / reading.Round.Area(outer)).GramsPerCM3()
}

// rising sorts a curve by x and keeps the first of points that share one.
func rising(c *chart.Curve) {
	order := make([]int, len(c.X))
	for i := range order {
		order[i] = i
	}
	slices.SortStableFunc(order, func(a, b int) int { return cmp.Compare(c.X[a], c.X[b]) })
	var x, y []float64
	for _, i := range order {
		if len(x) == 0 || c.X[i] > x[len(x)-1] {
			x, y = append(x, c.X[i]), append(y, c.Y[i])
		}
	}
	c.X, c.Y = x, y
}
