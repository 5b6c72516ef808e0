package gauges

import (
	"math"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// How a dot leans on the linear density and on both diameters, against differences
// of its height over the line, y - slope x; and weightAt undoes see.
func TestLeansAreDerivatives(t *testing.T) {
	const slope, h = 1.83, 1e-5
	for _, c := range []struct {
		name string
		kind FitKind
		g    Gauge
	}{
		{"plain", OneDensity, Gauge{Family: Plain, Outer: 0.33e-3, Core: 0.33e-3, LinearDensity: 6.7e-4}},
		{"power law", PowerLaw, Gauge{Outer: 1.1e-3, LinearDensity: 6e-3}},
		{"round core", WrapDensity, Gauge{Outer: 1.1e-3, Core: 0.42e-3, Shape: Round, DensityKgM3: 7850, LinearDensity: 6e-3}},
		{"hex core", WrapDensity, Gauge{Outer: 1.1e-3, Core: 0.42e-3, Shape: Hex, DensityKgM3: 7850, LinearDensity: 6e-3}},
		{"thick core, thin wrap", WrapDensity, Gauge{Outer: 0.6e-3, Core: 0.45e-3, Shape: Hex, DensityKgM3: 7850, LinearDensity: 2.1e-3}},
	} {
		t.Run(c.name, func(t *testing.T) {
			height := func(byWeight, byOuter, byCore float64) float64 {
				g := c.g
				g.Outer *= math.Exp(byOuter)
				g.Core *= math.Exp(byCore)
				x, y := c.kind.see(&g, g.LinearDensity*math.Exp(byWeight))
				return y - slope*x
			}
			_, y := c.kind.see(&c.g, c.g.LinearDensity)
			by := c.kind.leans(&c.g, c.g.LinearDensity, slope)
			assert.InDelta(t, (height(h, 0, 0)-height(-h, 0, 0))/(2*h), by.byWeight, 1e-7)
			assert.InDelta(t, (height(0, h, 0)-height(0, -h, 0))/(2*h), by.byOuter, 1e-7)
			assert.InDelta(t, (height(0, 0, h)-height(0, 0, -h))/(2*h), by.byCore, 1e-7)
			assert.InEpsilon(t, c.g.LinearDensity, c.kind.weightAt(&c.g, y), 1e-12)
		})
	}
}

const familiesOfThree = `gauge,construction,outer_mm,core_mm,core_shape,length_mm,mass_g,kind
p10,plain,0.254,,,900,0.357,weighed
p13,plain,0.330,,,900,0.606,weighed
p17,plain,0.432,,,900,1.03,weighed
p15,plain,0.381,,,,,listed
w26,wound,0.66,0.33,hex,900,1.79,weighed
w36,wound,0.91,0.38,hex,900,3.45,weighed
w46,wound,1.17,0.42,hex,900,5.75,weighed
w52,wound,1.32,0.43,hex,900,7.30,weighed
w42,wound,1.07,0.40,hex,,,listed
c30,coreless,0.76,,,900,2.62,weighed
c36,coreless,0.91,,,900,3.75,weighed
c46,coreless,1.17,,,900,6.11,weighed
c56,coreless,1.42,,,900,8.95,weighed
c50,coreless,1.27,,,,,listed
`

// The uncertainty of an estimate from differences of what its law predicts: by
// the line, by the family's scatter about it, by its own sizes; errors of the
// same calipers in the fit and in its own sizes together.
func TestAnEstimateCountsEverythingOnce(t *testing.T) {
	rows, err := ReadReadings(strings.NewReader(familiesOfThree), "r.csv", nil)
	require.NoError(t, err)
	tools := DefaultInstruments()
	tools.CaliperAccuracy, tools.BalanceAccuracy = 1e-5, 1e-5
	for i := range rows {
		rows[i].OuterFrom, rows[i].CoreFrom = Measured, Measured
	}
	s, err := Combine(rows, nil, tools, Options{})
	require.NoError(t, err)
	require.Len(t, s.Fits, 3)
	for n, label := range []string{"p15", "w42", "c50"} {
		f, g := s.Fits[n], s.Gauges[slices.IndexFunc(s.Gauges, func(g Gauge) bool { return g.Label == label })]
		require.True(t, g.Estimated, label)
		l, at := f.law, 0.0
		predicted := func(dy, byOuter, byCore float64) float64 {
			g := g
			g.Outer *= math.Exp(byOuter)
			g.Core *= math.Exp(byCore)
			at = 0
			if f.Kind == PowerLaw {
				at = math.Log(g.Outer)
			}
			return f.Kind.weightAt(&g, l.level+l.slope*(at-l.centre)+dy)
		}
		const h = 1e-5
		perY := (predicted(h, 0, 0) - predicted(-h, 0, 0)) / (2 * h)
		perOuter := (predicted(0, h, 0) - predicted(0, -h, 0)) / (2 * h)
		perCore := (predicted(0, 0, h) - predicted(0, 0, -h)) / (2 * h)
		assert.InEpsilon(t, predicted(0, 0, 0), g.LinearDensity, 1e-12, label)

		u2 := perY * perY * (l.scatter*l.scatter + l.vLevel + math.Pow((at-l.centre)*math.Sqrt(l.vSlope), 2))
		u2 += math.Pow(perOuter*g.outer.relOwn(), 2)
		calipers := perOuter * g.outer.relCommon()
		if f.Kind == WrapDensity {
			u2 += math.Pow(perCore*g.core.relOwn(), 2)
			calipers += perCore * g.core.relCommon()
		}
		for k, source := range f.sources {
			if part := perY * l.shareAt(k, at); source == sourceCalipers {
				calipers += part
			} else {
				u2 += part * part
			}
		}
		u2 += calipers * calipers
		assert.InEpsilon(t, perY*l.widened(math.Sqrt(u2)/perY, at, 0.025), g.U, 1e-6, label)
	}
}
