package gauges

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"gonum.org/v1/gonum/stat/distuv"
)

// gonum is the second opinion on every quantile and tail. The Student
// quantile's algorithm promises 1e-4; the others are good to rounding.
func TestQuantilesAgreeWithGonum(t *testing.T) {
	for _, p := range []float64{0.4, 0.1, 0.025, 0.025 / 40, 0.025 / 400, 1e-6} {
		assert.InEpsilon(t, -distuv.UnitNormal.Quantile(p), normalQuantile(p), 1e-7, "p=%v", p)
		for _, dof := range []float64{3, 3.5, 4, 5, 8, 12.5, 38, 200, 1e5, 1e7, math.Inf(1)} {
			want := normalQuantile(p)
			if dof < 1e7 {
				want = -distuv.StudentsT{Mu: 0, Sigma: 1, Nu: dof}.Quantile(p)
			}
			assert.InEpsilon(t, want, studentQuantile(p, dof), 1e-3, "p=%v dof=%v", p, dof)
		}
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
		assert.Panics(t, func() { studentQuantile(p, 5) })
	}
	assert.Panics(t, func() { studentQuantile(0.025, 2.9) })
}

func TestWideningFollowsTheDegreesOfFreedom(t *testing.T) {
	assert.Equal(t, 2.0, widenedTo(2, math.Inf(1)))
	assert.InDelta(t, 2*2.5706/1.95996, widenedTo(2, 5), 1e-3, "printed tables have 2.571 for 5 and 1.960")
	assert.True(t, math.IsInf(EffectiveFreedom(2, 0, 5), 1))
	assert.Equal(t, 5.0, EffectiveFreedom(2, 2, 5))
}
