package gauges

import (
	"math"
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"gonum.org/v1/gonum/mat"
	"gonum.org/v1/gonum/stat/distuv"

	"scalepair/data/unit"
	"scalepair/gauges/reading"
)

// The chance of a sum of squares is gonum's.
func TestChanceBeyondIsGonums(t *testing.T) {
	for k := 1; k <= 9; k++ {
		for _, x := range []float64{0, 0.3, 2, 7.5, 20, 60} {
			assert.InDelta(t, distuv.ChiSquared{K: float64(k)}.Survival(x), ChanceBeyond(x, k), 1e-12, "%v, %d", x, k)
		}
	}
}

// leastSquares is the sum of squares left by generalised least squares over the
// common value and every shared error: (w - m)' C^-1 (w - m), C with the shared
// errors in it.
func leastSquares(values []Value) float64 {
	n := len(values)
	c, w, ones := mat.NewDense(n, n, nil), mat.NewVecDense(n, nil), mat.NewVecDense(n, nil)
	for i, a := range values {
		for j, b := range values {
			sum := 0.0
			for _, p := range a.Common {
				sum += p.U * b.Common.Of(p.Source)
			}
			if i == j {
				sum += a.Indep * a.Indep
			}
			c.Set(i, j, sum)
		}
		w.SetVec(i, a.W)
		ones.SetVec(i, 1)
	}
	var byW, byOne mat.VecDense
	_ = byW.SolveVec(c, w)
	_ = byOne.SolveVec(c, ones)
	return mat.Dot(w, &byW) - math.Pow(mat.Dot(ones, &byW), 2)/mat.Dot(ones, &byOne)
}

// Disagreement is generalised least squares for two values, and for any number
// without shared errors; else near it.
func TestDisagreementIsNearLeastSquares(t *testing.T) {
	rng := rand.New(rand.NewPCG(6, 20))
	for round := range 200 {
		n := 2 + round%5
		share := float64(round%3) / 2
		values := make([]Value, n)
		for i := range values {
			values[i] = Value{W: 1 + 0.02*rng.NormFloat64(), Indep: 0.005 + 0.02*rng.Float64(),
				Common: Parts{{"a", share * 0.02 * (1 + rng.Float64()), true}, {"b", -share * 0.01 * rng.Float64(), true}}}
		}
		want, got := leastSquares(values), disagreement(values, func(v Value) float64 { return v.Indep })
		switch {
		case n == 2 || share == 0:
			require.InEpsilon(t, want, got, 1e-9)
		default:
			require.InEpsilon(t, want, got, 0.35)
		}
	}
}

func weighing(grams ...float64) []reading.Reading {
	var out []reading.Reading
	for _, g := range grams {
		out = append(out, reading.Reading{Mass: unit.Grams(g), Length: unit.MM(300)})
	}
	return out
}

// Five weighings of one piece, four of 0.12 g and one of 0.13 g: one mean of
// 0.122 g, and no disagreement. However many there are within one step, they
// never widen the answer.
func TestRepeatedWeighings(t *testing.T) {
	tools := DefaultInstruments()
	weigh := func(grams ...float64) Average {
		p := pieces(weighing(grams...))
		require.Len(t, p, 1)
		a, _ := tools.weigh(p[0], work{})
		return a
	}
	one := weigh(0.12)
	five := weigh(0.12, 0.12, 0.12, 0.12, 0.13)
	assert.InEpsilon(t, 0.122e-3/0.3, five.W, 1e-12)
	assert.Zero(t, five.DoF)
	assert.Less(t, five.U(), one.U())
	// The scatter of 0.00447 g over the root of 5 is more than 0.01 g/sqrt(60).
	assert.InEpsilon(t, math.Hypot(0.00447214/math.Sqrt(5)/0.122, 1/math.Sqrt(12)/300), five.U()/five.W, 1e-6)
	assert.Equal(t, one.U(), weigh(0.12, 0.12, 0.12).U(), "the same rounding, not another")
	for _, two := range [][]float64{{0.12, 0.13}, {0.13, 0.12, 0.12}, {0.12, 0.13, 0.12, 0.13, 0.13, 0.12}} {
		assert.LessOrEqual(t, weigh(two...).U()/weigh(two...).W, one.U()/one.W, "%v", two)
	}
	far := weigh(0.12, 0.12, 0.32)
	assert.Equal(t, 2, far.DoF)
	assert.Less(t, ChanceBeyond(far.Chi2, far.DoF), 1e-6)
	assert.Len(t, pieces(append(weighing(0.12), reading.Reading{Mass: unit.Grams(0.12), Length: unit.MM(301)})), 2)
}
