package gauges

import "math"

// disagreement is the sum of squares by which values of one quantity differ,
// each measured in its uncertainty, shared errors taken as shared.
//
//	chi2 = w' C^-1 w - (1' C^-1 w)^2/(1' C^-1 1),   C_ij = u_i^2 (i = j) + sum_k c_ik c_jk
//
// w: the values; u_i: independent parts, above 0; c_ik: what shared error k
// does to value i. Two values that a shared error moves alike show nothing of
// it. It is the least sum of squares over the common value and every shared
// error. Source: generalised least squares (A. C. Aitken, Proceedings of the
// Royal Society of Edinburgh 55 (1935) 42).
func disagreement(values []value) float64 {
	n := len(values)
	if n < 2 {
		return 0
	}
	// Differences from the first value, so that no digits are lost to the level.
	w, ones := make([]float64, n), make([]float64, n)
	for i, v := range values {
		w[i], ones[i] = v.w-values[0].w, 1
	}
	solve := newSolver(values)
	byW, byOne := solve(w), solve(ones)
	return max(0, dotProduct(w, byW)-math.Pow(dotProduct(ones, byW), 2)/dotProduct(ones, byOne))
}

// newSolver gives the function x -> C^-1 x, by the square root of C (Cholesky).
// C is positive definite since every independent part is above 0.
func newSolver(values []value) func([]float64) []float64 {
	n := len(values)
	root := make([][]float64, n)
	for i := range root {
		root[i] = make([]float64, i+1)
		for j := range i + 1 {
			sum := values[i].common.dot(values[j].common)
			if i == j {
				sum += values[i].indep * values[i].indep
			}
			for k := range j {
				sum -= root[i][k] * root[j][k]
			}
			if i == j {
				root[i][i] = math.Sqrt(sum)
			} else {
				root[i][j] = sum / root[j][j]
			}
		}
	}
	return func(x []float64) []float64 { return backward(root, forward(root, x)) }
}

func forward(root [][]float64, x []float64) []float64 {
	out := make([]float64, len(x))
	for i := range x {
		sum := x[i]
		for k := range i {
			sum -= root[i][k] * out[k]
		}
		out[i] = sum / root[i][i]
	}
	return out
}

func backward(root [][]float64, x []float64) []float64 {
	out := make([]float64, len(x))
	for i := len(x) - 1; i >= 0; i-- {
		sum := x[i]
		for k := i + 1; k < len(x); k++ {
			sum -= root[k][i] * out[k]
		}
		out[i] = sum / root[i][i]
	}
	return out
}

func dotProduct(a, b []float64) float64 {
	sum := 0.0
	for i := range a {
		sum += a[i] * b[i]
	}
	return sum
}
