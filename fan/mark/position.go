package mark

import "math"

// Where the readings alone are to say where something lies, its spread is wide
// against any slip; a mark that is known no better than lostMM hangs on nothing.
const (
	freeMM = 200.0
	lostMM = 20.0
)

// positions are the best places of one line's marks, from mark 0 on, less the
// nominal ones, with their standard uncertainties, and the scatter of the hand, mm.
type positions struct {
	error, u []float64
	scatter  float64
}

// positions puts the passes together. Unknown are the marks' places, each tool's
// zero, and the size of every slip of reading that is beyond doubt:
//
//	reading i = x(to) - x(from) + zero(tool) + slips + e(i)
//	minimise  sum e(i)^2/u(i)^2 + sum (unknown/spread)^2,  u(i)^2 = variance + s^2
//
// s  scatter of the hand. The spread of a place is so wide that its nominal pulls
// nothing. Weighted least squares with correlated errors carried as unknowns of
// known spread (GUM H.2 and H.3 treat the like; clause numbers from memory).
func (e evidence) positions(scatter float64, slips []*candidate) positions {
	var unknowns [][]float64
	var spread []float64
	add := func(effect []float64, s float64) {
		unknowns, spread = append(unknowns, effect), append(spread, s)
	}
	last := e.plan.last()
	for n := 1; n <= last; n++ {
		add(e.moved(n, n), freeMM)
	}
	for kind, zero := range e.zero {
		if zero > 0 {
			add(e.pass(Kind(kind), 0), zero)
		}
	}
	for _, c := range slips {
		add(c.effect, freeMM)
	}
	normal, right := newSquare(len(unknowns)), make([]float64, len(unknowns))
	for i, a := range unknowns {
		normal.row(i)[i] += 1 / (spread[i] * spread[i])
		for r, s := range e.seen {
			weight := a[r] / (s.variance + scatter*scatter)
			right[i] += weight * s.error
			for j, b := range unknowns {
				normal.row(i)[j] += weight * b[r]
			}
		}
	}
	// With L L' the normal matrix, x = (L^-1)' L^-1 right: mark by mark a product of
	// a column of L^-1, whose size is the mark's uncertainty.
	lower := normal.cholesky()
	half := lower.halfSolve(right)
	out := positions{make([]float64, last+1), make([]float64, last+1), scatter}
	for n := 1; n <= last; n++ {
		one := make([]float64, len(right))
		one[n-1] = 1
		column := lower.halfSolve(one)
		out.error[n], out.u[n] = dot(column, half), math.Sqrt(dot(column, column))
	}
	return out
}
