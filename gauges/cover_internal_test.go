package gauges

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"gonum.org/v1/gonum/stat/distuv"
	"pgregory.net/rapid"
	"scalepair/data/testutil"
)

var _ = testutil.Seed("1")

// chanceWithin is the chance that a sum of errors anywhere within their bounds
// (standard uncertainties us) and a normal one (un) lies within +-reach.
//
//	P = reach/L + sum over n of 2/(pi n) phi(pi n/L) sin(n pi reach/L)
//
// phi: the product of the parts' characteristic functions; L: half a period,
// beyond which nothing lies. Fourier series of the density.
func chanceWithin(us []float64, un, reach float64) float64 {
	half := 8 * RootSum(append([]float64{un}, us...)...)
	chance := reach / half
	for n := 1; n <= 2000; n++ {
		t := math.Pi * float64(n) / half
		phi := math.Exp(-un * un * t * t / 2)
		for _, u := range us {
			if x := math.Sqrt(3) * u * t; x > 0 {
				phi *= math.Sin(x) / x
			}
		}
		chance += 2 / (math.Pi * float64(n)) * phi * math.Sin(t*reach)
	}
	return chance
}

// ofParts is a value whose error is a sum of such errors, one of them shared.
func ofParts(us []float64, un float64) Value {
	v := Value{W: 1, Indep: un}
	for i, u := range us {
		if i == 0 {
			v.Common = Parts{{"balance", u, true}}
			continue
		}
		v.Indep, v.Bounded = RootSum(v.Indep, u), fourthSum(v.Bounded, u)
	}
	return v
}

// The oracle agrees with what stands in closed form: a normal error, one and
// two errors within bounds, and one of those with a normal one.
func TestChanceWithinHasItsClosedForms(t *testing.T) {
	unit := distuv.UnitNormal
	assert.InDelta(t, 1-2*unit.CDF(-1.3), chanceWithin(nil, 1, 1.3), 1e-9)
	assert.InDelta(t, 0.95, chanceWithin([]float64{BoundU(1.0)}, 0, 0.95), 1e-5)
	trapezoid := func(a, b, reach float64) float64 { return 1 - math.Pow(a+b-reach, 2)/(4*a*b) } // on its slopes
	for _, b := range []float64{0.2, 0.504, 1} {
		assert.InDelta(t, trapezoid(1, b, 0.9*(1+b)), chanceWithin([]float64{BoundU(1.0), BoundU(b)}, 0, 0.9*(1+b)), 1e-5)
	}
	blurred := func(s, reach float64) float64 { // bounds of +-1 and a normal error of s
		g := func(z float64) float64 { return z*unit.CDF(z) + unit.Prob(z) }
		return s*(g((reach+1)/s)-g((reach-1)/s)) - 1
	}
	for _, s := range []float64{0.1, 0.4, 2} {
		assert.InDelta(t, blurred(s, 0.8), chanceWithin([]float64{BoundU(1.0)}, s, 0.8), 1e-6)
	}
}

// The stated interval holds 94.5 to 95.8 % of every sum of errors with bounds
// and normal ones.
func TestAStatedIntervalHolds95Percent(t *testing.T) {
	holds := func(us []float64, un float64) float64 { return chanceWithin(us, un, ofParts(us, un).Within95()) }
	for _, c := range []struct {
		us []float64
		un float64
	}{
		{[]float64{1}, 0}, {[]float64{1, 1}, 0}, {[]float64{1, 0.5}, 0}, {[]float64{1, 1, 1}, 0}, {nil, 1}, {[]float64{1}, 0.3}, {[]float64{1}, 1}, {[]float64{1, 1}, 0.5},
	} {
		assert.InDelta(t, 0.9515, holds(c.us, c.un), 0.0065, "%v", c)
	}
	rapid.Check(t, func(t *rapid.T) {
		part := rapid.Float64Range(0.001, 1)
		us, un := rapid.SliceOfN(part, 1, 6).Draw(t, "bounded"), rapid.SampledFrom([]float64{0, 1}).Draw(t, "with")*part.Draw(t, "normal")
		assert.InDelta(t, 0.9515, holds(us, un), 0.0065)
	})
}

// A trapezoid of edge parameter 0.33 takes 1.83 standard uncertainties for 95 %.
// Source: EA-4/02 M:2022, example S10, from memory. The rule sees no more of a
// shape than its kurtosis, and so comes within a hundredth.
func TestTrapezoidOfTheLiterature(t *testing.T) {
	const beta = 0.33
	v := ofParts([]float64{BoundU(1.0), BoundU((1 - beta) / (1 + beta))}, 0)
	assert.InEpsilon(t, 1.83, v.Coverage95(), 0.01)
}

// Adding parts with bounds one by one is adding them at once, and a part that is
// scaled scales.
func TestFourthSum(t *testing.T) {
	assert.InEpsilon(t, math.Pow(1+16+81, 0.25), fourthSum(fourthSum(1, 2), -3), 1e-12)
	assert.Equal(t, 2.5, fourthSum(2.5))
	assert.Zero(t, fourthSum())
	assert.Zero(t, Value{W: 1}.excess())
	assert.False(t, math.Signbit(Value{W: 1, Indep: 1}.excess()))
}

// What two values share does not tell them apart, and a shared error has bounds
// only where it has them in both.
func TestDifferenceOfTwoValues(t *testing.T) {
	a := Value{W: 3, Indep: 0.3, Bounded: 0.3, Common: Parts{{"balance", 1, true}}}
	b := Value{W: 2, Indep: 0.4, Common: Parts{{"balance", 1, true}}}
	d := a.Plus(-1, b)
	assert.Equal(t, 1.0, d.W)
	assert.InDelta(t, 0.5, d.U(), 1e-12)
	assert.InEpsilon(t, -1.2*math.Pow(0.3/0.5, 4), d.excess(), 1e-12)
	assert.Equal(t, Parts{{"clamps", 3, false}}, Parts{{"clamps", 1, true}}.Plus(1, Part{"clamps", 2, false}))
	assert.Equal(t, Parts{{"balance", 3, true}}, a.Common.Plus(2, b.Common...))
}
