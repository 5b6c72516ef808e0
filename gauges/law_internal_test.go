package gauges

import (
	"math"
	"math/rand/v2"
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"gonum.org/v1/gonum/integrate/quad"
	"gonum.org/v1/gonum/mat"
	"gonum.org/v1/gonum/stat"
)

func someDots(rng *rand.Rand, n int) []dot {
	dots := make([]dot, n)
	for i := range dots {
		x := rng.Float64()
		dots[i] = dot{x: x, y: 1 + 2*x + 0.02*rng.NormFloat64(), lean: 1, u: 0.005 + 0.02*rng.Float64(), shared: []float64{0.01 * rng.Float64(), -0.02}}
	}
	return dots
}

// fitLaw fits all dots.
func fitLaw(dots []dot, of form) (law, bool) { return newMoments(dots, of).law(nobody) }

// gonum fits the same weights: level and slope must agree to rounding.
func TestLawAgreesWithGonumRegression(t *testing.T) {
	rng := rand.New(rand.NewPCG(3, 20))
	for range 50 {
		dots := someDots(rng, 3+rng.IntN(12))
		l, ok := fitLaw(dots, form{sloped: true, usual: usualScatter})
		require.True(t, ok)
		var x, y, w []float64
		for _, d := range dots {
			x, y, w = append(x, d.x), append(y, d.y), append(w, 1/(d.u*d.u+l.scatter*l.scatter))
		}
		alpha, beta := stat.LinearRegression(x, y, w, false)
		assert.InDelta(t, beta, l.slope, 1e-10)
		assert.InDelta(t, alpha+beta*0.3, l.y(0.3), 1e-10)
		flat, ok := fitLaw(dots, form{usual: usualScatter})
		require.True(t, ok)
		for i, d := range dots {
			w[i] = 1 / (d.u*d.u + flat.scatter*flat.scatter)
		}
		assert.InDelta(t, stat.Mean(y, w), flat.level, 1e-12)
	}
}

// The variance of the line, shared errors included, is that of the linear
// estimator x'(X'WX)^-1 X'W y with the full covariance of y, in gonum's
// matrices.
func TestLawCarriesSharedErrorsThrough(t *testing.T) {
	rng := rand.New(rand.NewPCG(4, 20))
	dots := someDots(rng, 7)
	l, _ := fitLaw(dots, form{sloped: true, usual: usualScatter})
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

// likelihoodOf is the restricted likelihood of a scatter, ln, with the variances
// and residuals written out one by one.
func likelihoodOf(dots []dot, of form, tau float64) float64 {
	l := law{form: of}
	l.solve(dots, nobody, tau)
	ln := math.Log(l.vLevel)
	if of.sloped {
		ln += math.Log(l.vSlope)
	}
	for _, d := range dots {
		v := d.u*d.u + tau*tau
		ln -= math.Log(v) + math.Pow(d.y-l.y(d.x), 2)/v
	}
	return ln / 2
}

// A law with a dot taken off the sums is the law made of the others, and each
// scatter's likelihood that of the residuals; also where one dot is a slip.
func TestLeavingOutIsFittingTheOthers(t *testing.T) {
	rng := rand.New(rand.NewPCG(9, 20))
	for n := range 60 {
		of := form{sloped: n%2 == 0, usual: usualScatter}
		dots := someDots(rng, 4+n%9)
		for i := range dots {
			dots[i].u /= 50
			if !of.sloped {
				dots[i].y -= 2 * dots[i].x
			}
		}
		dots[2].y += 0.3 * float64(n%3)
		m := newMoments(dots, of)
		for i := range dots {
			others := slices.Delete(slices.Clone(dots), i, i+1)
			got, ok := m.law(i)
			require.True(t, ok)
			want, _ := fitLaw(others, of)
			assert.InEpsilon(t, want.scatter, got.scatter, 1e-9)
			assert.InDelta(t, want.y(0.7), got.y(0.7), 1e-12)
			assert.InEpsilon(t, want.vAt(0.7), got.vAt(0.7), 1e-9)
			assert.InDeltaSlice(t, want.slopeShare, got.slopeShare, 1e-9)
			for k, tau := range scatterGrid {
				assert.InDelta(t, likelihoodOf(others, of, tau), m.without(i, k).likelihood(of.sloped), 1e-6, "scatter %v", tau)
			}
		}
	}
}

// The belief's mean square against the same integral by gonum's quadrature,
// over the same range: the grid is fine enough for a hundredth.
func TestBeliefIsTheIntegral(t *testing.T) {
	rng := rand.New(rand.NewPCG(5, 20))
	for _, n := range []int{2, 4, 12} {
		dots := someDots(rng, n)
		for i := range dots {
			dots[i].y -= 2 * dots[i].x
		}
		of := form{usual: usualScatter}
		b := newMoments(dots, of).belief(nobody)
		weight := func(tau float64) float64 {
			return math.Exp(likelihoodOf(dots, of, tau) - tau*tau/(2*usualScatter*usualScatter))
		}
		top := scatterGrid[len(scatterGrid)-1]
		whole := quad.Fixed(weight, 0, top, 2000, nil, 0)
		square := quad.Fixed(func(tau float64) float64 { return tau * tau * weight(tau) }, 0, top, 2000, nil, 0)
		assert.InEpsilon(t, square/whole, b.meanSquare(), 0.01, "n=%d", n)
	}
	// Without anything to see, the usual scatter.
	b := newMoments([]dot{{x: 0, y: 0, u: 1e-4}, {x: 1, y: 1, u: 1e-4}}, form{sloped: true, usual: usualScatter}).belief(nobody)
	assert.InEpsilon(t, usualScatter, math.Sqrt(b.meanSquare()), 0.01)
}

// The grid rises from 0.02 % to 35 % by steps of a third.
func TestScatterGrid(t *testing.T) {
	for k, tau := range scatterGrid {
		assert.InEpsilon(t, 0.0002*math.Pow(4.0/3, float64(k)), tau, 1e-14)
	}
	assert.InDelta(t, 0.35, scatterGrid[len(scatterGrid)-1], 0.01)
	assert.Equal(t, math.Log(4.0/3), lnScatterStep)
}

func TestBoundGivesItsChance(t *testing.T) {
	rng := rand.New(rand.NewPCG(6, 20))
	for range 200 {
		b := newMoments(someDots(rng, 5), form{usual: usualScatter}).belief(nobody)
		p, known := 0.5*math.Pow(10, -5*rng.Float64())*0.9, math.Pow(rng.Float64()*0.03, 2)
		x := b.bound(p, known, 1.2)
		chance, _ := b.beyond(x, known, 1.2)
		assert.InEpsilon(t, p, chance, 1e-5)
	}
}

func TestLawNeedsTwoDots(t *testing.T) {
	one := []dot{{u: 0.01}}
	_, ok := fitLaw(one, form{usual: usualScatter})
	assert.False(t, ok)
	_, ok = fitLaw([]dot{{u: 0.01, x: 2}, {u: 0.01, x: 2}, {u: 0.02, x: 2}}, form{sloped: true, usual: usualScatter})
	assert.False(t, ok, "one diameter has no slope")
}

func TestRobustLineIgnoresBadRows(t *testing.T) {
	rng := rand.New(rand.NewPCG(7, 20))
	dots := someDots(rng, 11)
	for _, i := range []int{1, 5, 8} {
		dots[i].y += 3
	}
	level, slope := robustLine(dots, true)
	assert.InDelta(t, 2, slope, 0.1)
	assert.InDelta(t, 1, level, 0.1)
	for i, kept := range trusted(dots, form{sloped: true, usual: usualScatter}, 0.001).in {
		assert.Equal(t, i != 1 && i != 5 && i != 8, kept, "dot %d", i)
	}
}

func TestWeightedMedian(t *testing.T) {
	assert.Equal(t, 2.0, weightedMedian([]float64{3, 1, 2}, []float64{1, 1, 1}))
	assert.Equal(t, 1.5, weightedMedian([]float64{2, 1}, []float64{1, 1}))
	assert.Equal(t, 9.0, weightedMedian([]float64{1, 2, 9}, []float64{1, 1, 5}))
	assert.Zero(t, weightedMedian(nil, nil))
}

// Generalised least squares by gonum: y'C^-1 y less what the best common value
// explains.
func TestDisagreementAgreesWithGonum(t *testing.T) {
	rng := rand.New(rand.NewPCG(8, 20))
	for range 30 {
		n := 2 + rng.IntN(5)
		values := make([]value, n)
		for i := range values {
			values[i] = value{w: 5 + rng.NormFloat64(), indep: 0.5 + rng.Float64(),
				common: parts{{Source: "a", U: rng.NormFloat64()}, {Source: "b", U: rng.NormFloat64()}}}
		}
		assert.InEpsilon(t, byMatrices(t, values), disagreement(values), 1e-8)
	}
	assert.Zero(t, disagreement([]value{{w: 1, indep: 1}}))
}

func byMatrices(t *testing.T, values []value) float64 {
	n := len(values)
	c, y, ones := mat.NewDense(n, n, nil), mat.NewVecDense(n, nil), mat.NewVecDense(n, nil)
	for i, a := range values {
		for j, b := range values {
			c.Set(i, j, a.common[0].U*b.common[0].U+a.common[1].U*b.common[1].U)
		}
		c.Set(i, i, c.At(i, i)+a.indep*a.indep)
		y.SetVec(i, a.w)
		ones.SetVec(i, 1)
	}
	var inverse mat.Dense
	require.NoError(t, inverse.Inverse(c))
	a, b := mat.Inner(y, &inverse, y), mat.Inner(ones, &inverse, y)
	return a - b*b/mat.Inner(ones, &inverse, ones)
}

// How far a dot stands off, against the whole covariance: the linear density by the
// line, and the variance of the difference from the dot's own error, the
// family's scatter and the line's, where a shared error moves dot and line
// together and counts only for what it moves them apart.
func TestAboutCountsEverythingOnce(t *testing.T) {
	rng := rand.New(rand.NewPCG(11, 20))
	dots := someDots(rng, 7)
	l, ok := fitLaw(dots[1:], form{sloped: true, usual: usualScatter})
	require.True(t, ok)
	d := dots[0]
	off, u := l.about(d)
	line := l.level + l.slope*(d.x-l.centre)
	assert.InDelta(t, math.Exp(d.y)/math.Exp(line)-1, off, 1e-12)

	// The line at d.x is a weighted sum of the other dots' y.
	own, shared := d.u*d.u+l.scatter*l.scatter, [2]float64{d.shared[0], d.shared[1]}
	for _, e := range dots[1:] {
		w := 1 / (e.u*e.u + l.scatter*l.scatter)
		share := w*l.vLevel + w*(e.x-l.centre)*l.vSlope*(d.x-l.centre)
		own += share * share * (e.u*e.u + l.scatter*l.scatter)
		shared[0] -= share * e.shared[0]
		shared[1] -= share * e.shared[1]
	}
	assert.InEpsilon(t, math.Sqrt(own+shared[0]*shared[0]+shared[1]*shared[1]), u, 1e-9)
}

// Nine dots whose median distance from their median is 2 %: a normal error's
// deviation is 1.4826 of it, half as much again is allowed for so few dots, and
// a dot may lie two such deviations off where p leaves 2.275 % above them.
func TestRobustStartsWithinItsLimit(t *testing.T) {
	const limit = 2 * 1.5 * 1.4826 * 0.02
	for _, c := range []struct {
		last float64
		near bool
	}{{0.999 * limit, true}, {1.001 * limit, false}, {-0.999 * limit, true}} {
		var dots []dot
		for _, y := range []float64{-0.04, -0.03, -0.02, -0.01, 0, 0.01, 0.02, 0.03, c.last} {
			dots = append(dots, dot{y: y, lean: 1})
		}
		if c.last < 0 {
			dots[0].y = 0.04 // so that as many lie on either side
		}
		near := robustStart(dots, false, 0.0227501)
		assert.Equal(t, c.near, near[8], "%v", c.last)
		assert.NotContains(t, near[:8], false)
	}
}
