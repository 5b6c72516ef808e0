package report

import (
	"cmp"
	"fmt"
	"math"
	"slices"
	"strings"

	"scalepair/cmd/scalepair/chart"
	"scalepair/data/unit"
	"scalepair/gauges"
)

const plotCaption = "Every reading over the outer diameter, with the fit of its kind, and below how far it is off. The bars are two standard uncertainties of that distance: of the reading, the diameter, the fit and the scatter of the kind. Gauges known by core and wraps alone are not drawn."

// FitPlot draws every reading of the stock against the fit of its kind.
func FitPlot(in *Input) (chart.Fit, error) {
	plot := chart.Fit{Title: in.title("Gauges of"), XLabel: "outer diameter, " + in.diameterUnit().Symbol(), YLabel: "unit weight, " + in.weightUnit()}
	suspect := map[string]bool{}
	for _, s := range in.Job.Stock.Suspects {
		suspect[s.Place.String()] = true
	}
	var err error
	if plot.Curves, err = in.fitCurves(); err != nil {
		return plot, err
	}
	for _, g := range in.Job.Stock.Gauges {
		p := chart.FitPoint{X: in.diameterUnit().Value(unit.Length(g.Outer)), Label: g.Label, Curve: curveOf(g, plot.Curves)}
		if g.Estimated {
			p.Y, p.U, p.Kind = in.weightValue(g.UnitWeight), in.weightValue(g.U), chart.Estimated
			plot.Points = append(plot.Points, p)
		}
		for _, row := range g.Rows {
			w := in.weigh(row, g)
			p.Y, p.U, p.Kind = in.weightValue(w.unitWeight), in.weightValue(distanceU(g, w)), chart.Reading
			if suspect[row.Place.String()] {
				p.Kind = chart.Suspect
			}
			plot.Points = append(plot.Points, p)
		}
	}
	return plot, nil
}

// distanceU is the standard uncertainty, in kg/m, of one reading's distance
// from the fit: its own, and what the judgement of its gauge holds beside the
// gauge's own. Without a judgement it is the reading's alone.
func distanceU(g gauges.Gauge, w worked) float64 {
	if g.Judged == nil {
		return w.u
	}
	rest := math.Sqrt(max(0, g.Judged.U*g.Judged.U-g.RelU()*g.RelU()))
	return w.unitWeight * math.Hypot(w.u/w.unitWeight, rest)
}

// curveOf names the curve that a gauge is held against; "" where its kind has
// none, or it lies beyond its ends.
func curveOf(g gauges.Gauge, curves []chart.Curve) string {
	name := familyName(g.Family, g.Material)
	for _, c := range curves {
		if strings.EqualFold(c.Name, name) {
			return c.Name
		}
	}
	return ""
}

// weightValue is a unit weight given in kg/m, in the printed unit.
func (in *Input) weightValue(kgM float64) float64 {
	if in.Units.Length == unit.Millimetres {
		return unit.UnitWeight(kgM).GramsPerMetre()
	}
	return unit.UnitWeight(kgM).PoundsPerInch()
}

// fitCurves draws a line through what the fits give to every gauge of their
// kind: to one of its outer and core diameter that was never weighed.
func (in *Input) fitCurves() ([]chart.Curve, error) {
	var twins []gauges.Reading
	var kinds []string
	for _, f := range in.Job.Stock.Fits {
		name := familyName(f.Family, f.Material)
		for _, g := range in.Job.Stock.Gauges {
			if strings.EqualFold(familyName(g.Family, g.Material), name) {
				twins = append(twins, twin(g, len(twins)))
				kinds = append(kinds, name)
			}
		}
	}
	if twins == nil {
		return nil, nil
	}
	stock, err := in.Job.StockWith(twins)
	if err != nil {
		return nil, err
	}
	var out []chart.Curve
	for i, g := range stock.Gauges[len(stock.Gauges)-len(twins):] {
		if len(out) == 0 || out[len(out)-1].Name != kinds[i] {
			out = append(out, chart.Curve{Name: kinds[i]})
		}
		c := &out[len(out)-1]
		c.X, c.Y = append(c.X, in.diameterUnit().Value(unit.Length(g.Outer))), append(c.Y, in.weightValue(g.UnitWeight))
	}
	for i := range out {
		rising(&out[i])
	}
	return slices.DeleteFunc(out, func(c chart.Curve) bool { return len(c.X) < 2 }), nil
}

// twin is a gauge of the same size that was never weighed.
func twin(g gauges.Gauge, n int) gauges.Reading {
	r := gauges.Reading{Gauge: fmt.Sprintf("\x01twin %d", n), Construction: g.Family, Material: g.Material, OuterM: g.Outer, Kind: gauges.Listed,
		DensityKgM3: g.DensityKgM3, YoungsPa: g.YoungsPa, StrengthPa: g.StrengthPa}
	if g.Family != gauges.Plain {
		r.CoreM, r.Shape = g.Core, g.Shape
	}
	return r
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
