package gauges

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
)

// How a dot leans on the unit weight and on both diameters, against differences
// of its height over the line, y - slope x; and weightAt undoes see.
func TestLeansAreDerivatives(t *testing.T) {
	const slope, h = 1.83, 1e-5
	for _, c := range []struct {
		name string
		kind FitKind
		g    Gauge
	}{
		{"plain", OneDensity, Gauge{Family: Plain, Outer: 0.33e-3, Core: 0.33e-3, UnitWeight: 6.7e-4}},
		{"power law", PowerLaw, Gauge{Outer: 1.1e-3, UnitWeight: 6e-3}},
		{"round core", WrapDensity, Gauge{Outer: 1.1e-3, Core: 0.42e-3, Shape: Round, DensityKgM3: 7850, UnitWeight: 6e-3}},
		{"hex core", WrapDensity, Gauge{Outer: 1.1e-3, Core: 0.42e-3, Shape: Hex, DensityKgM3: 7850, UnitWeight: 6e-3}},
		{"thick core, thin wrap", WrapDensity, Gauge{Outer: 0.6e-3, Core: 0.45e-3, Shape: Hex, DensityKgM3: 7850, UnitWeight: 2.1e-3}},
	} {
		t.Run(c.name, func(t *testing.T) {
			height := func(byWeight, byOuter, byCore float64) float64 {
				g := c.g
				g.Outer *= math.Exp(byOuter)
				g.Core *= math.Exp(byCore)
				x, y, _ := c.kind.see(g, g.UnitWeight*math.Exp(byWeight), slope)
				return y - slope*x
			}
			_, y, by := c.kind.see(c.g, c.g.UnitWeight, slope)
			assert.InDelta(t, (height(h, 0, 0)-height(-h, 0, 0))/(2*h), by.byWeight, 1e-7)
			assert.InDelta(t, (height(0, h, 0)-height(0, -h, 0))/(2*h), by.byOuter, 1e-7)
			assert.InDelta(t, (height(0, 0, h)-height(0, 0, -h))/(2*h), by.byCore, 1e-7)
			assert.InEpsilon(t, c.g.UnitWeight, c.kind.weightAt(c.g, y), 1e-12)
		})
	}
}
