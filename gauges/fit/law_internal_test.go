package fit

import (
	"math"
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"gonum.org/v1/gonum/mat"
	"gonum.org/v1/gonum/stat"
	"gonum.org/v1/gonum/stat/distuv"

	"scalepair/data/testutil"
	"scalepair/data/unit"
	"scalepair/gauges"
	"scalepair/gauges/reading"
)

func someDots(rng *rand.Rand, n int) []dot {
	dots := make([]dot, n)
	for i := range dots {
		x := rng.Float64()
		dots[i] = dot{x: x, y: 1 + 2*x + 0.02*rng.NormFloat64(), lean: 1, u: 0.005 + 0.02*rng.Float64(), shared: []float64{0.01 * rng.Float64(), -0.02}}
	}
	return dots
}

// gonum fits the same weights: level and slope must agree to rounding.
func TestLawAgreesWithGonumRegression(t *testing.T) {
	rng := rand.New(rand.NewPCG(3, 20))
	for range 50 {
		dots := someDots(rng, 3+rng.IntN(12))
		l, ok := fitLaw(dots, form{sloped: true, expected: woundScatter})
		require.True(t, ok)
		var x, y, w []float64
		for _, d := range dots {
			x, y, w = append(x, d.x), append(y, d.y), append(w, 1/(d.u*d.u+l.scatter*l.scatter))
		}
		alpha, beta := stat.LinearRegression(x, y, w, false)
		assert.InDelta(t, beta, l.slope, 1e-10)
		assert.InDelta(t, alpha+beta*0.3, l.y(0.3), 1e-10)
	}
}

// The variance of the line, shared errors included, is that of the linear
// estimator x'(X'WX)^-1 X'W y with the full covariance of y, in gonum's
// matrices.
func TestLawCarriesSharedErrorsThrough(t *testing.T) {
	rng := rand.New(rand.NewPCG(4, 20))
	dots := someDots(rng, 7)
	l, _ := fitLaw(dots, form{sloped: true, expected: woundScatter})
	n := len(dots)
	x, w, c := mat.NewDense(n, 2, nil), mat.NewDiagDense(n, nil), mat.NewDense(n, n, nil)
	for i, d := range dots {
		x.SetRow(i, []float64{1, d.x})
		w.SetDiag(i, 1/(d.u*d.u+l.scatter*l.scatter))
		for j, e := range dots {
			c.Set(i, j, d.shared[0]*e.shared[0]+d.shared[1]*e.shared[1])
		}
		c.Set(i, i, c.At(i, i)+d.u*d.u+l.scatter*l.scatter)
	}
	var xtw, normal, inverse, estimator, half, full mat.Dense
	xtw.Mul(x.T(), w)
	normal.Mul(&xtw, x)
	require.NoError(t, inverse.Inverse(&normal))
	estimator.Mul(&inverse, &xtw)
	half.Mul(&estimator, c)
	full.Mul(&half, estimator.T())
	for _, at := range []float64{-1, 0.2, 3} {
		got := l.vAt(at) + math.Pow(l.shareAt(0, at), 2) + math.Pow(l.shareAt(1, at), 2)
		want := full.At(0, 0) + 2*at*full.At(0, 1) + at*at*full.At(1, 1)
		assert.InEpsilon(t, want, got, 1e-9)
	}
}

// Where every gauge is known for sure the scatter is that of the dots, the guess
// counted; many gauges override the guess. Nothing to see leaves the guess.
func TestScatter(t *testing.T) {
	rng := rand.New(rand.NewPCG(5, 20))
	const u = 0.002
	for _, scatter := range []float64{0.004, 0.03} {
		dots, squares := make([]dot, 400), 0.0
		for i := range dots {
			dots[i] = dot{y: math.Hypot(scatter, u) * rng.NormFloat64(), u: u, lean: 1}
			squares += dots[i].y * dots[i].y
		}
		l, ok := fitLaw(dots, form{expected: woundScatter})
		require.True(t, ok)
		assert.InEpsilon(t, math.Sqrt(squares/400-u*u), l.scatter, 0.01)
	}
	l, ok := fitLaw([]dot{{x: 0, u: 1e-4}, {x: 1, y: 1, u: 1e-4}}, form{sloped: true, expected: woundScatter})
	require.True(t, ok)
	assert.InEpsilon(t, woundScatter, l.scatter, 0.01)
	assert.True(t, l.assumed())
}

// The quantiles are gonum's, Student's within what its formula states.
func TestQuantilesAreGonums(t *testing.T) {
	for _, p := range []float64{0.025, 0.01, 0.0005, 0.0001} {
		assert.InEpsilon(t, distuv.UnitNormal.Quantile(1-p), normalQuantile(p), 1e-9)
		for nu, within := range map[float64]float64{3: 0.15, 5: 0.04, 10: 0.005, 40: 0.0005} {
			assert.InEpsilon(t, distuv.StudentsT{Sigma: 1, Nu: nu}.Quantile(1-p), studentQuantile(p, nu), within, "%v, %v", p, nu)
		}
	}
}

func TestPublishedQuantiles(t *testing.T) {
	checked := 0
	for _, r := range testutil.LoadPublished(t, "uncertainty.csv") {
		switch r.Quantity {
		case "normal quantile":
			r.Check(t, normalQuantile(r.Input(t, "p")))
			checked++
		case "inverse normal quantile":
			r.Check(t, 1/normalQuantile(r.Input(t, "p")))
			checked++
		}
	}
	assert.Positive(t, checked)
}

// A weighted median is the point where the weights balance; bad dots do not move
// the robust line.
func TestRobustLine(t *testing.T) {
	assert.Equal(t, 3.0, weightedMedian([]float64{5, 1, 3}, []float64{1, 1, 1}))
	assert.Equal(t, 2.0, weightedMedian([]float64{1, 3}, []float64{1, 1}))
	assert.Equal(t, 5.0, weightedMedian([]float64{5, 1, 3}, []float64{9, 1, 1}))
	assert.Zero(t, weightedMedian(nil, nil))
	var dots []dot
	for i := range 9 {
		dots = append(dots, dot{x: float64(i), y: 2 + 0.5*float64(i), u: 0.01})
	}
	dots[2].y, dots[7].y = 40, -30
	level, slope := robustLine(dots, true)
	assert.InDelta(t, 2, level, 1e-9)
	assert.InDelta(t, 0.5, slope, 1e-9)
}

// The leans are the derivatives of what the law sees, and weightAt undoes it.
func TestLeansAreDerivatives(t *testing.T) {
	const slope, h = 1.93, 1e-5
	for _, c := range []struct {
		name string
		law  Law
		g    gauges.Gauge
	}{
		{"plain", OneDensity, gauges.Gauge{Family: gauges.Plain, Outer: 0.33e-3, Core: 0.33e-3, LinearDensity: 6.7e-4}},
		{"power law", PowerLaw, gauges.Gauge{Outer: 1.1e-3, LinearDensity: 6e-3}},
		{"round core", WrapDensity, gauges.Gauge{Outer: 1.1e-3, Core: 0.42e-3, Shape: reading.Round, DensityKgM3: 7850, LinearDensity: 6e-3}},
		{"hex core", WrapDensity, gauges.Gauge{Outer: 1.1e-3, Core: 0.42e-3, Shape: reading.Hex, DensityKgM3: 7850, LinearDensity: 6e-3}},
	} {
		t.Run(c.name, func(t *testing.T) {
			w := c.g.LinearDensity.KgPerM()
			height := func(byWeight, byOuter, byCore float64) float64 {
				g := c.g
				g.Outer *= unit.Length(math.Exp(byOuter))
				g.Core *= unit.Length(math.Exp(byCore))
				x, y := c.law.see(&g, w*math.Exp(byWeight))
				return y - slope*x
			}
			by := c.law.leans(&c.g, w, slope)
			_, y := c.law.see(&c.g, w)
			assert.InDelta(t, (height(h, 0, 0)-height(-h, 0, 0))/(2*h), by.byWeight, 1e-7)
			assert.InDelta(t, (height(0, h, 0)-height(0, -h, 0))/(2*h), by.byOuter, 1e-7)
			assert.InDelta(t, (height(0, 0, h)-height(0, 0, -h))/(2*h), by.byCore, 1e-7)
			assert.InEpsilon(t, w, c.law.weightAt(&c.g, y), 1e-12)
		})
	}
}
