package gauges

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"gonum.org/v1/gonum/stat/distuv"
)

// gonum is the second opinion on every quantile and tail.
func TestNormalQuantileAgreesWithGonum(t *testing.T) {
	for _, p := range []float64{0.4, 0.1, 0.025, 0.025 / 40, 0.025 / 400, 1e-6} {
		assert.InEpsilon(t, -distuv.UnitNormal.Quantile(p), normalQuantile(p), 1e-7, "p=%v", p)
	}
}

func TestChi2TailAgreesWithGonum(t *testing.T) {
	for _, k := range []float64{1, 2, 3, 7, 39} {
		for _, x := range []float64{1e-9, 0.3, 1, k - 0.9, k, k + 2, 3 * k, 12 * k} {
			assert.InDelta(t, distuv.ChiSquared{K: k}.Survival(x), chi2Tail(x, k), 1e-12, "x=%v k=%v", x, k)
		}
		assert.Equal(t, 1.0, chi2Tail(0, k))
	}
}

func TestChancesOutsideTheirRangePanic(t *testing.T) {
	for _, p := range []float64{0, 1, -0.1, math.NaN()} {
		assert.Panics(t, func() { normalQuantile(p) })
	}
}
