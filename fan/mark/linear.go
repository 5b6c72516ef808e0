package mark

import "math"

// square is a square matrix held row by row.
type square struct {
	n int
	a []float64
}

func newSquare(n int) square { return square{n, make([]float64, n*n)} }

func (m square) row(i int) []float64 { return m.a[i*m.n : (i+1)*m.n] }

func (m square) add(i, j int, x float64) { m.a[i*m.n+j] += x }

// cholesky splits a symmetric positive definite m into L times its transpose
// and gives the lower triangle L; ok is false where m is not positive definite.
func (m square) cholesky() (lower square, ok bool) {
	lower = newSquare(m.n)
	for i := range m.n {
		li := lower.row(i)
		for j := range i + 1 {
			lj := lower.row(j)
			sum := m.a[i*m.n+j] - dot(li[:j], lj[:j])
			if i != j {
				li[j] = sum / lj[j]
				continue
			}
			if !(sum > 0) {
				return square{}, false
			}
			li[i] = math.Sqrt(sum)
		}
	}
	return lower, true
}

// halfSolve gives y with L y = b: b measured in units of its own scatter.
func (m square) halfSolve(b []float64) []float64 {
	y := make([]float64, m.n)
	for i := range m.n {
		li := m.row(i)
		y[i] = (b[i] - dot(li[:i], y[:i])) / li[i]
	}
	return y
}

// solve gives x with L L' x = b.
func (m square) solve(b []float64) []float64 {
	x := m.halfSolve(b)
	for i := m.n - 1; i >= 0; i-- {
		x[i] /= m.a[i*m.n+i]
		for j, l := range m.row(i)[:i] {
			x[j] -= l * x[i]
		}
	}
	return x
}

// inverse gives the inverse of L L'.
func (m square) inverse() square {
	// Rows of t are the columns of the inverse of L, so that every inner
	// product below runs along memory.
	t := newSquare(m.n)
	for j := range m.n {
		col := t.row(j)
		col[j] = 1 / m.a[j*m.n+j]
		for i := j + 1; i < m.n; i++ {
			li := m.row(i)
			col[i] = -dot(li[j:i], col[j:i]) / li[i]
		}
	}
	inv := newSquare(m.n)
	for i := range m.n {
		for j := range i + 1 {
			x := dot(t.row(i)[i:], t.row(j)[i:])
			inv.a[i*m.n+j], inv.a[j*m.n+i] = x, x
		}
	}
	return inv
}

// times gives m v for a symmetric m, passing over the zeros of v.
func (m square) times(v []float64) []float64 {
	out := make([]float64, m.n)
	for j, x := range v {
		if x == 0 {
			continue
		}
		for i, y := range m.row(j) {
			out[i] += x * y
		}
	}
	return out
}

// addOuter adds weight g g' to m, passing over the zeros of g.
func (m square) addOuter(g []float64, weight float64) {
	for i, x := range g {
		if x == 0 {
			continue
		}
		row := m.row(i)
		for j, y := range g {
			row[j] += weight * x * y
		}
	}
}

func dot(a, b []float64) float64 {
	sum := 0.0
	for i, x := range a {
		sum += x * b[i]
	}
	return sum
}
