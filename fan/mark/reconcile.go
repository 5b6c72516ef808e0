package mark

import "math"

// reckoning is the weighted least-squares answer for one line. All slices run
// over the marks from 0 to the last.
type reckoning struct {
	off   []float64 // best position less plan, mm
	u     []float64 // its standard uncertainty
	datum []int     // the mark it is measured from: 0, or the first of a chain that does not reach the nut; -1 for a mark nobody touched
	cov   square    // covariance of the free marks, by free
	free  []int     // index of a mark among the unknowns, -1 for a datum or an untouched mark
}

// reconcile puts the passes together. Unknown are the marks' places and, where
// the tools' bounds are given, each tool's zero and scale:
//
//	reading i = x(to) - x(from) + zero(tool) + scale(tool) plan(i) + e(i)
//	minimise  sum e(i)^2/u(i)^2 + sum (zero/u(zero))^2 + sum (scale/u(scale))^2
//	u(i)^2 = step^2/12 + hand^2
//
// hand is the scatter of setting a tool on a mark. The plan serves only as the
// point the unknowns are counted from; it pulls nothing. Marks that no chain of
// readings joins to the nut are reckoned from the first of their own chain.
// Weighted least squares with correlated errors carried as unknowns of known
// spread (GUM H.2 and H.3 treat the like; clause numbers from memory).
func (e evidence) reconcile(hand float64) reckoning {
	r := e.chains()
	marks := 0
	for n, d := range r.datum {
		r.free[n] = -1
		if d >= 0 && d != n {
			r.free[n] = marks
			marks++
		}
	}
	common := e.common()
	normal, right := newSquare(marks+len(common)), make([]float64, marks+len(common))
	for i, s := range e.seen {
		e.enter(normal, right, r.free, s, common, i, 1/(s.roundingVar()+hand*hand))
	}
	for k := range common {
		normal.add(marks+k, marks+k, 1)
	}
	r.fill(normal, right)
	return r
}

// enter adds one reading's equation to the normal equations.
func (e evidence) enter(normal square, right []float64, free []int, s sighting, common [][]float64, i int, weight float64) {
	marks := normal.n - len(common)
	columns, values := []int{}, []float64{}
	for _, end := range []struct {
		mark int
		sign float64
	}{{s.to, 1}, {s.from, -1}} {
		if free[end.mark] >= 0 {
			columns, values = append(columns, free[end.mark]), append(values, end.sign)
		}
	}
	for k, direction := range common {
		if direction[i] != 0 {
			columns, values = append(columns, marks+k), append(values, direction[i])
		}
	}
	for a, ca := range columns {
		right[ca] += weight * values[a] * s.off
		for b, cb := range columns {
			normal.add(ca, cb, weight*values[a]*values[b])
		}
	}
}

// fill solves the normal equations. They are positive definite by
// construction: every unknown mark hangs on a chain to its datum, every tool's
// term on its own spread.
func (r *reckoning) fill(normal square, right []float64) {
	lower, ok := normal.cholesky()
	if !ok {
		panic("mark: normal equations without a solution")
	}
	x := lower.solve(right)
	r.cov = lower.inverse()
	for n, k := range r.free {
		if k >= 0 {
			r.off[n] = x[k]
			r.u[n] = math.Sqrt(r.cov.row(k)[k])
		}
	}
}

// chains finds which marks hang together. A chain's datum is its first mark.
func (e evidence) chains() reckoning {
	n := len(e.plan.marks)
	r := reckoning{off: make([]float64, n), u: make([]float64, n), datum: make([]int, n), free: make([]int, n)}
	for i := range r.datum {
		r.datum[i] = -1
	}
	r.datum[0] = 0
	for _, s := range e.seen {
		for _, m := range []int{s.from, s.to} {
			if r.datum[m] < 0 {
				r.datum[m] = m
			}
		}
		low, high := min(r.datum[s.from], r.datum[s.to]), max(r.datum[s.from], r.datum[s.to])
		for i, d := range r.datum {
			if d == high {
				r.datum[i] = low
			}
		}
	}
	return r
}
