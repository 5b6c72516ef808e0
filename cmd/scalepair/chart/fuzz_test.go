package chart_test

import (
	"math"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"scalepair/cmd/scalepair/chart"
)

// Any data with any words are refused, with no text, or drawn: well-formed, on
// the sheet, every number finite and zero without a sign, and each word shown.
func FuzzSVG(f *testing.F) {
	for _, s := range []string{"p12", "", "<b>&\"'", "25½", "漢字", "a\nb\x00", "\xff", "]]>", strings.Repeat("long ", 60)} {
		f.Add(s, "nickel wound", 0.254, 0.392, 0.002, 1.2, 8.8)
		f.Add("outer diameter mm", s, 710.0, 8.39, 0.0, 20.0, 9.2)
	}
	f.Add("x", "y", 1e-12, 1e12, 1e12, 1e-12, 1e12)
	f.Add("x", "y", 0.0, -1.0, math.Copysign(0, -1), 5.0, 1e-300)
	f.Add("x", "y", 3.0, 3.0, 0.0, 3.0, 3.0)
	f.Fuzz(func(t *testing.T, label, name string, x, y, u, x2, y2 float64) {
		fit := chart.Fit{Title: name, XLabel: label, YLabel: name, Points: []chart.FitPoint{
			{X: x, Y: y, U: u, Label: label, Kind: chart.Suspect}, {X: x2, Y: y2, Label: label, Kind: chart.Estimated}, {X: x, Y: y2, U: u},
		}}
		if x < x2 {
			fit.Curves = []chart.Curve{{Name: name, X: []float64{x, x2}, Y: []float64{y, y2}}}
			fit.Points[0].Curve = name
		}
		trade := chart.TradeOff{Title: label, XLabel: name, YLabel: label, Ringed: name, Pairs: []chart.Pair{
			{X: x, Y: y, Label: label, Front: true, Best: true}, {X: x2, Y: y2, Label: name, Front: true}, {X: u, Y: y2},
		}}
		bars := chart.Bars{Title: label, XLabel: name, Bars: []chart.Bar{
			{Label: label, Value: x, U: u, Target: y, Note: name}, {Label: name, Value: x2, Target: y2},
		}}
		for _, draw := range []func() (string, error){fit.SVG, trade.SVG, bars.SVG} {
			svg, err := draw()
			if err != nil {
				require.Empty(t, svg)
				continue
			}
			all := read(t, svg)
			requireInside(t, all)
			for _, e := range all {
				requireNumbers(t, e)
			}
		}
	})
}

// requireNumbers reads every number of an element.
func requireNumbers(t *testing.T, e element) {
	for _, name := range []string{"x", "y", "cx", "cy", "r", "width", "height", "viewBox", "d", "stroke-width"} {
		for _, word := range strings.Fields(strings.NewReplacer("M", " ", "L", " ", "Z", " ", ",", " ").Replace(e.attr[name])) {
			x, err := strconv.ParseFloat(word, 64)
			require.NoError(t, err, "%s of %s", name, e.name)
			require.False(t, math.IsNaN(x) || math.IsInf(x, 0) || x == 0 && strings.HasPrefix(word, "-"), "%s=%q of %s", name, e.attr[name], e.name)
		}
	}
}
