package mark

import "math"

// square is a square matrix held row by row.
type square struct {
	n int
	a []float64
}

func newSquare(n int) square { return square{n, make([]float64, n*n)} }

func (m square) row(i int) []float64 { return m.a[i*m.n : (i+1)*m.n] }

// addOuter adds weight g g' to m, passing over the zeros of g.
func (m square) addOuter(g []float64, weight float64) {
	for i, x := range g {
		if x == 0 {
			continue
		}
		for j, y := range g {
			m.a[i*m.n+j] += weight * x * y
		}
	}
}

// cholesky splits a symmetric positive definite m into L times its transpose
// and gives the lower triangle L. It panics where m is not positive definite.
func (m square) cholesky() square {
	lower := newSquare(m.n)
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
				panic("mark: a scatter that is not positive definite")
			}
			li[i] = math.Sqrt(sum)
		}
	}
	return lower
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

func dot(a, b []float64) float64 {
	sum := 0.0
	for i, x := range a {
		sum += x * b[i]
	}
	return sum
}
