package chart_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"

	"scalepair/cmd/scalepair/chart"
)

func TestRefused(t *testing.T) {
	nan, inf := math.NaN(), math.Inf(1)
	point := func(p chart.FitPoint) func() (string, error) {
		return chart.Fit{Title: "t", Points: []chart.FitPoint{p}}.SVG
	}
	curve := func(k chart.Curve) func() (string, error) {
		return chart.Fit{Title: "t", Points: []chart.FitPoint{{X: 1, Y: 1}}, Curves: []chart.Curve{k}}.SVG
	}
	pair := func(p chart.Pair) func() (string, error) {
		return chart.TradeOff{Title: "t", Pairs: []chart.Pair{p}}.SVG
	}
	bar := func(b chart.Bar) func() (string, error) { return chart.Bars{Title: "t", Bars: []chart.Bar{b}}.SVG }
	for name, c := range map[string]struct {
		draw func() (string, error)
		want string
	}{
		"fit without points":      {chart.Fit{Title: "t"}.SVG, "chart t: no points to draw"},
		"x of 0":                  {point(chart.FitPoint{X: 0, Y: 1, Label: "p12"}), `chart t: x of a point is not above 0 ("p12"); a logarithmic axis needs values above 0`},
		"negative y":              {point(chart.FitPoint{X: 1, Y: -1, Label: "p12"}), `chart t: y of a point is not above 0 ("p12"); a logarithmic axis needs values above 0`},
		"nan y":                   {point(chart.FitPoint{X: 1, Y: nan}), "chart t: y of a point is no drawable number; give a finite value"},
		"infinite uncertainty":    {point(chart.FitPoint{X: 1, Y: 1, U: inf}), "chart t: uncertainty of a point is no drawable number; give a finite value"},
		"negative uncertainty":    {point(chart.FitPoint{X: 1, Y: 1, U: -1}), "chart t: uncertainty of a point is below 0; give a value from 0"},
		"unknown curve":           {point(chart.FitPoint{X: 1, Y: 1, Curve: "q"}), `chart t: no curve of that name ("q")`},
		"curve of one point":      {curve(chart.Curve{Name: "c", X: []float64{1}, Y: []float64{1}}), `chart t: a curve needs at least two points, and one y for each x ("c")`},
		"curve backwards":         {curve(chart.Curve{Name: "c", X: []float64{2, 1}, Y: []float64{1, 1}}), `chart t: a curve's x must rise ("c")`},
		"trade-off without pairs": {chart.TradeOff{Title: "t"}.SVG, "chart t: no pairs to draw"},
		"infinite cost":           {pair(chart.Pair{X: inf, Label: "692 / 660"}), `chart t: x of a pair is no drawable number ("692 / 660"); give a finite value`},
		"bars without bars":       {chart.Bars{Title: "t"}.SVG, "chart t: no bars to draw"},
		"negative bar":            {bar(chart.Bar{Value: -1, Label: "1"}), `chart t: value of a bar is below 0 ("1"); give a value from 0`},
		"nan target":              {bar(chart.Bar{Value: 1, Target: nan}), "chart t: target of a bar is no drawable number; give a finite value"},
		"bar beyond all measure":  {bar(chart.Bar{Value: 1e300}), "chart t: value of a bar is no drawable number; give a finite value"},
	} {
		t.Run(name, func(t *testing.T) {
			svg, err := c.draw()
			assert.EqualError(t, err, c.want)
			assert.Empty(t, svg)
		})
	}
}
