package mark

import (
	"math"
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"gonum.org/v1/gonum/mat"
	"gonum.org/v1/gonum/optimize"
	"gonum.org/v1/gonum/stat/distmv"
	"gonum.org/v1/gonum/stat/distuv"

	"scalepair/fan"
)

// oraclePlan is a line of plain positions; the marks' places do not matter.
func oraclePlan(frets int) linePlan {
	p := linePlan{line: Treble, lengthMM: 650}
	for n := range frets + 1 {
		p.marks = append(p.marks, p.lengthMM*fan.K(float64(n)))
	}
	return p
}

// oracleEvidence is a line with gaps, a long step, and two tools whose zero
// and scale are off as a whole.
func oracleEvidence(rng *rand.Rand) evidence {
	e := evidence{plan: oraclePlan(14)}
	see := func(k Kind, from, to int, step float64, t Tool) {
		e.seen = append(e.seen, sighting{row: len(e.seen), kind: k, from: from, to: to, step: step, tool: t,
			plan: e.plan.marks[to] - e.plan.marks[from], off: 0.2 * rng.NormFloat64()})
	}
	for n := 1; n <= 14; n++ {
		if n%4 != 0 {
			see(FromNut, 0, n, 0.5, Tool{ZeroMM: 0.3, ScalePart: 0.0005})
		}
		if n != 6 {
			see(Step, n-1, n, 0.05, Tool{ZeroMM: 0.02})
		}
	}
	see(Step, 3, 9, 0.1, Tool{ZeroMM: 0.02})
	return e
}

// The marks' places against the least squares of a general library, which
// gets the whole of the correlated scatter as one matrix instead of as
// unknowns: x = (A' V^-1 A)^-1 A' V^-1 y.
func TestReconcileAgainstGeneralLeastSquares(t *testing.T) {
	rng := rand.New(rand.NewPCG(11, 12))
	const hand = 0.03
	for range 5 {
		e := oracleEvidence(rng)
		got := e.reconcile(hand)
		n, marks := len(e.seen), e.plan.last()
		a, v, y := mat.NewDense(n, marks, nil), mat.NewSymDense(n, nil), mat.NewVecDense(n, nil)
		for i, s := range e.seen {
			a.Set(i, s.to-1, 1)
			if s.from > 0 {
				a.Set(i, s.from-1, -1)
			}
			y.SetVec(i, s.off)
			for j, r := range e.seen {
				v.SetSym(i, j, oracleCov(s, r, i == j, hand))
			}
		}
		var chol mat.Cholesky
		require.True(t, chol.Factorize(v))
		// Whitened: U'^-1 A x = U'^-1 y, solved by QR.
		var lower mat.TriDense
		chol.LTo(&lower)
		var wa, wy mat.Dense
		require.NoError(t, wa.Solve(&lower, a))
		require.NoError(t, wy.Solve(&lower, y))
		var qr mat.QR
		qr.Factorize(&wa)
		var x mat.Dense
		require.NoError(t, qr.SolveTo(&x, false, &wy))
		var ata, cov mat.Dense
		ata.Mul(wa.T(), &wa)
		require.NoError(t, cov.Inverse(&ata))
		for m := 1; m <= marks; m++ {
			// Both are well conditioned (about 1e6): ten digits are left.
			assert.InDelta(t, x.At(m-1, 0), got.off[m], 1e-9, "mark %d", m)
			assert.InDelta(t, math.Sqrt(cov.At(m-1, m-1)), got.u[m], 1e-9, "mark %d", m)
			assert.Equal(t, 0, got.datum[m])
		}
	}
}

func oracleCov(s, r sighting, same bool, hand float64) float64 {
	c := 0.0
	if s.kind == r.kind {
		c += s.tool.ZeroMM * s.tool.ZeroMM / 3
		c += s.tool.ScalePart * s.plan * s.tool.ScalePart * r.plan / 3
	}
	if same {
		c += s.step*s.step/12 + hand*hand
	}
	return c
}

// A missing step with no ruler reading beyond it splits the chain: the marks
// beyond are reckoned from the first of their own.
func TestMissingStepSplitsTheChain(t *testing.T) {
	e := evidence{plan: oraclePlan(8)}
	for n := 1; n <= 8; n++ {
		if n != 5 {
			e.seen = append(e.seen, sighting{kind: Step, from: n - 1, to: n, step: 0.05, off: 0.1})
		}
	}
	r := e.reconcile(0)
	assert.Equal(t, []int{0, 0, 0, 0, 0, 5, 5, 5, 5}, r.datum)
	assert.InDelta(t, 0.4, r.off[4], 1e-12)
	assert.Zero(t, r.off[5])
	assert.InDelta(t, 0.3, r.off[8], 1e-12)
	assert.InDelta(t, math.Sqrt(3)*0.05/math.Sqrt(12), r.u[8], 1e-12)

	e.seen = append(e.seen, sighting{kind: FromNut, to: 7, step: 0.5, off: 0.2})
	r = e.reconcile(0)
	assert.Equal(t, make([]int, 9), r.datum)
	assert.InDelta(t, 0.2, r.off[7], 1e-12)
	assert.InDelta(t, 0.5/math.Sqrt(12), r.u[7], 1e-12)
}

// The scatter against a general optimiser over the likelihood of a general
// normal distribution, without slips, where restricted and plain likelihood
// are one.
func TestScatterAgainstGeneralOptimiser(t *testing.T) {
	rng := rand.New(rand.NewPCG(13, 14))
	for range 6 {
		e := oracleEvidence(rng)
		m := newScatterModel(e)
		got := m.fit(nil)
		minus := func(x []float64) float64 { return -oracleLogLik(t, e, x[0]*x[0], x[1]*x[1]) }
		best, err := optimize.Minimize(optimize.Problem{Func: minus}, []float64{0.15, 0.05}, nil, &optimize.NelderMead{})
		require.NoError(t, err)
		ours := oracleLogLik(t, e, got.hand2, got.scatter2)
		// The search ends when a round moves the variances by a hundredth,
		// which costs the likelihood less than a thousandth.
		assert.InDelta(t, -best.F, ours, 1e-3)
		assert.InDelta(t, best.X[0]*best.X[0], got.hand2, 0.05*(got.hand2+got.scatter2))
		assert.InDelta(t, best.X[1]*best.X[1], got.scatter2, 0.05*(got.hand2+got.scatter2))
	}
}

func oracleLogLik(t *testing.T, e evidence, hand2, scatter2 float64) float64 {
	n := len(e.seen)
	v, y := mat.NewSymDense(n, nil), make([]float64, n)
	for i, s := range e.seen {
		y[i] = s.off
		for j, r := range e.seen {
			shared := 0.0
			for _, a := range [][2]int{{s.to, r.to}, {s.from, r.from}} {
				if a[0] == a[1] {
					shared++
				}
			}
			for _, a := range [][2]int{{s.to, r.from}, {s.from, r.to}} {
				if a[0] == a[1] {
					shared--
				}
			}
			v.SetSym(i, j, oracleCov(s, r, i == j, math.Sqrt(hand2))+scatter2*shared)
		}
	}
	d, ok := distmv.NewNormal(make([]float64, n), v, nil)
	require.True(t, ok)
	return d.LogProb(y)
}

// A slip's size and uncertainty against general least squares with the slip as
// one more unknown.
func TestSlipSizeAgainstGeneralLeastSquares(t *testing.T) {
	e := oracleEvidence(rand.New(rand.NewPCG(15, 16)))
	s := newSearch(e, 100)
	n, ok := s.model.at(0.02, 0.01)
	require.True(t, ok)
	sigma := mat.NewDense(len(e.seen), len(e.seen), nil)
	require.NoError(t, sigma.Inverse(mat.NewDense(len(e.seen), len(e.seen), n.inverse.a)))
	named, tested := 3, len(s.candidates)-1
	a := mat.NewDense(len(e.seen), 2, nil)
	a.SetCol(0, s.candidates[named].effect)
	a.SetCol(1, s.candidates[tested].effect)
	var va, normal, cov, right, x mat.Dense
	require.NoError(t, va.Solve(sigma, a))
	normal.Mul(a.T(), &va)
	require.NoError(t, cov.Inverse(&normal))
	right.Mul(va.T(), mat.NewVecDense(len(e.seen), s.model.off))
	x.Mul(&cov, &right)
	d, u, ratio := s.size(s.model.project(n, s.directions([]int{named})), n, tested)
	assert.InEpsilon(t, x.At(1, 0), d, 1e-9)
	assert.InEpsilon(t, math.Sqrt(cov.At(1, 1)), u, 1e-9)
	assert.InEpsilon(t, math.Abs(d)/u, ratio, 1e-12)
}

func TestQuantilesAgainstGeneralDistributions(t *testing.T) {
	for _, p := range []float64{0.05, 1e-3, 1e-4} {
		assert.InEpsilon(t, distuv.UnitNormal.Quantile(1-p/2), normalQuantile(p), 1e-9)
		for _, nu := range []float64{1, 2, 3, 4, 7, 22, 41, 399} {
			want := distuv.StudentsT{Mu: 0, Sigma: 1, Nu: nu}.Quantile(1 - p/2)
			assert.InEpsilon(t, want, studentQuantile(p, nu), 1e-6, "p %v nu %v", p, nu)
		}
		large := distuv.StudentsT{Mu: 0, Sigma: 1, Nu: manyFreedoms}.Quantile(1 - p/2)
		assert.InEpsilon(t, large, studentQuantile(p, manyFreedoms), 0.011, "p %v", p)
	}
	assert.Equal(t, studentQuantile(1e-3, 9), studentQuantile(1e-3, 9.9))
}
