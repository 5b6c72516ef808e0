package report

import (
	"fmt"
	"math"

	"scalepair/cmd/scalepair/chart"
	"scalepair/data/unit"
	"scalepair/gauges"
)

const plotCaption = "Density of every gauge over its outer diameter, with the fit of its kind. A slip of a few per cent stands out here, where unit weights would hide it."

// FitPlot draws the stock against its fits: density over outer diameter, since
// a slip of five per cent shows there and would not over a hundredfold range
// of unit weights. curves are the lines of the fits.
func FitPlot(in *Input, curves []chart.Curve) chart.Fit {
	plot := chart.Fit{
		Title:  in.title("Gauges of"),
		XLabel: "outer diameter, " + in.diameterUnit().Symbol(),
		YLabel: "density, g/cm3",
		Curves: curves,
	}
	for _, g := range in.Job.Stock.Gauges {
		p := chart.FitPoint{X: in.diameterUnit().Value(unit.Length(g.Outer)), Y: g.ImpliedKgM3 / 1000, Label: g.Label}
		p.U = p.Y * g.RelU() * leverage(g)
		switch {
		case g.Suspect || g.Disagrees:
			p.Kind = chart.Suspect
		case g.Readings == 0:
			p.Kind = chart.Estimated
		}
		plot.Points = append(plot.Points, p)
	}
	return plot
}

// leverage is the relative change of the implied density per relative change
// of the unit weight: above 1 where the core's share is taken off first.
func leverage(g gauges.Gauge) float64 {
	if densityOf(g) != "wrap" {
		return 1
	}
	return g.UnitWeight / (g.UnitWeight - g.DensityKgM3*g.AreaM2)
}

// curvePoints is how many diameters a bent curve is drawn through.
const curvePoints = 24

// FitCurves draws the fits. A fit of one density is level. A power law is
// followed at gauges of its kind that are made up for the purpose: restock
// makes a stock of further readings beside the build's.
func FitCurves(in *Input, restock func(more []gauges.Reading) (gauges.Stock, error)) ([]chart.Curve, error) {
	var out []chart.Curve
	for _, f := range in.Job.Stock.Fits {
		c := chart.Curve{Name: familyName(f.Family, f.Material)}
		if f.MinOuterM == f.MaxOuterM {
			continue
		}
		diameters := spread(f.MinOuterM, f.MaxOuterM, curvePoints)
		densities, err := fitDensities(f, diameters, restock)
		if err != nil {
			return nil, err
		}
		for i, d := range diameters {
			c.X = append(c.X, in.diameterUnit().Value(unit.Length(d)))
			c.Y = append(c.Y, densities[i]/1000)
		}
		out = append(out, c)
	}
	return out, nil
}

// spread gives n values from low to high at equal ratios, the ends exact.
func spread(low, high float64, n int) []float64 {
	out := make([]float64, n)
	for i := range out {
		out[i] = low * math.Pow(high/low, float64(i)/float64(n-1))
	}
	out[n-1] = high
	return out
}

// fitDensities gives the density that a fit implies at each diameter, kg/m3.
func fitDensities(f gauges.Fit, diameters []float64, restock func([]gauges.Reading) (gauges.Stock, error)) ([]float64, error) {
	out := make([]float64, len(diameters))
	if f.Kind != gauges.PowerLaw {
		for i := range out {
			out[i] = f.DensityKgM3
		}
		return out, nil
	}
	var more []gauges.Reading
	for i, d := range diameters {
		more = append(more, gauges.Reading{Gauge: fmt.Sprintf("curve \x00 %d", i), Construction: f.Family, Material: f.Material, OuterM: d, Kind: gauges.Listed})
	}
	stock, err := restock(more)
	if err != nil {
		return nil, err
	}
	for i, g := range stock.Gauges[len(stock.Gauges)-len(more):] {
		out[i] = g.UnitWeight / (math.Pi / 4 * g.Outer * g.Outer)
	}
	return out, nil
}
