package report

import (
	"cmp"
	"math"
	"slices"
	"strings"

	"scalepair/cmd/scalepair/chart"
	"scalepair/data/unit"
	"scalepair/gauges"
)

const plotCaption = "Every reading over the outer diameter, as the density of a solid wire of that size and mass, with the fit of its kind. The bars are two standard uncertainties of its distance from the fit: of the reading, the diameter, the fit and the scatter of the kind. Gauges known by core and wraps alone are not drawn."

// FitPlot draws every reading of the stock against the fit of its kind.
func FitPlot(in *Input) chart.Fit {
	plot := chart.Fit{Title: in.title("Gauges of"), XLabel: "outer diameter, " + in.diameterUnit().Symbol(),
		YLabel: "equivalent density, g/cm³", Curves: in.fitCurves()}
	suspect := map[string]bool{}
	for _, s := range in.Job.Stock.Suspects() {
		suspect[s.Place.String()] = true
	}
	for _, g := range in.Job.Stock.Gauges {
		p := chart.Point{X: in.diameterUnit().Value(unit.Length(g.Outer)), Label: g.Label}
		if g.Estimated {
			p.Y, p.U, p.Kind = equivalent(float64(g.LinearDensity), g.Outer), equivalent(float64(g.U), g.Outer), chart.Estimated
			plot.Points = append(plot.Points, p)
		}
		for _, row := range g.Rows {
			w := in.weigh(row, g)
			p.Y, p.U, p.Kind = equivalent(w.linearDensity, g.Outer), equivalent(distanceU(g, w), g.Outer), chart.Reading
			if suspect[row.Place.String()] {
				p.Kind = chart.Suspect
			}
			plot.Points = append(plot.Points, p)
		}
	}
	return plot
}

// distanceU is the standard uncertainty, in kg/m, of one reading's distance
// from the fit: its own, and what the judgement of its gauge holds beside the
// gauge's own. Without a judgement it is the reading's alone.
func distanceU(g gauges.Gauge, w worked) float64 {
	if g.Judged == nil {
		return w.u
	}
	rest := math.Sqrt(float64(max(0, g.Judged.U*g.Judged.U-g.RelU()*g.RelU())))
	return w.linearDensity * math.Hypot(w.u/w.linearDensity, rest)
}

// weightValue is a linear density given in kg/m, in the printed unit.
func (in *Input) weightValue(kgM float64) float64 {
	if in.Units.Length == unit.Millimetres {
		return unit.LinearDensity(kgM).GramsPerMetre()
	}
	return unit.LinearDensity(kgM).PoundsPerInch()
}

// equivalent is the density, in g/cm³, of a solid wire of that outer diameter and
// linear density, given in kg/m: wire of one material lies on a level line.
func equivalent(kgM float64, outer unit.Length) float64 {
	d := outer.M()
	return kgM / (math.Pi / 4 * d * d) / 1000
}

// fitCurves draws a line through what each fit gives at the sizes of the
// gauges of its kind. Kinds of one size have no line.
func (in *Input) fitCurves() []chart.Curve {
	var out []chart.Curve
	for _, f := range in.Job.Stock.Fits {
		c := chart.Curve{Name: familyName(f.Family, f.Material)}
		for _, g := range in.Job.Stock.Gauges {
			if !strings.EqualFold(familyName(g.Family, g.Material), c.Name) {
				continue
			}
			if w, _ := f.LinearDensity(g.Outer, g.Core, g.Shape); w > 0 {
				c.X = append(c.X, in.diameterUnit().Value(unit.Length(g.Outer)))
				c.Y = append(c.Y, equivalent(float64(w), g.Outer))
			}
		}
		if rising(&c); len(c.X) > 1 {
			out = append(out, c)
		}
	}
	return out
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
