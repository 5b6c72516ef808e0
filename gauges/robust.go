package gauges

import (
	"cmp"
	"math"
	"slices"
)

// robustLine is a line that bad rows cannot move: the weighted median of the
// levels or, for a sloped law, the median of the slopes between all pairs and
// then of the levels. level is y at x = 0.
//
// Source: P. K. Sen, Journal of the American Statistical Association 63 (1968)
// 1379, after Theil.
func robustLine(dots []dot, sloped bool) (level, slope float64) {
	if sloped {
		slope = medianSlope(dots)
	}
	off, weight := make([]float64, len(dots)), make([]float64, len(dots))
	for i, d := range dots {
		off[i], weight[i] = d.y-slope*d.x, d.weight()
	}
	return weightedMedian(off, weight), slope
}

// weight is what a dot counts in a median; usualScatter keeps one dot from
// outweighing all others.
func (d dot) weight() float64 { return 1 / (d.u*d.u + usualScatter*usualScatter) }

// medianLoss makes up for how poorly a median of few distances shows a scatter.
// Judgement.
const medianLoss = 1.5

// robustStart marks the dots that lie near the robust line: within leastSlip, or
// within the quantile of p for the dot's own uncertainty together with the
// family's scatter, as far as the median distance shows one beyond the dots'
// uncertainties. Where fewer than half lie near, all are marked.
//
// 1.4826 makes the median distance of a normal distribution its standard
// deviation. Source: F. R. Hampel, Journal of the American Statistical
// Association 69 (1974) 383.
func robustStart(dots []dot, sloped bool, p float64) []bool {
	level, slope := robustLine(dots, sloped)
	n := len(dots)
	far, weight, v := make([]float64, n), make([]float64, n), make([]float64, n)
	for i, d := range dots {
		far[i], weight[i], v[i] = math.Abs(d.y-level-slope*d.x), d.weight(), d.u*d.u
	}
	spread := 1.4826 * weightedMedian(far, weight)
	excess := math.Sqrt(max(0, spread*spread-weightedMedian(v, weight)))
	known := normalQuantile(p)
	near := make([]bool, n)
	count := 0
	for i, d := range dots {
		near[i] = far[i] <= known*math.Hypot(d.u, medianLoss*excess) || d.lean*far[i] <= leastSlip
		if near[i] {
			count++
		}
	}
	if 2*count < n {
		return slices.Repeat([]bool{true}, n)
	}
	return near
}

// medianSlope is the median slope between all pairs of dots, a pair weighing as
// much as it stands apart.
func medianSlope(dots []dot) float64 {
	var slopes, weights []float64
	for i, a := range dots {
		for _, b := range dots[:i] {
			if dx := a.x - b.x; math.Abs(dx) > 1e-9 {
				slopes = append(slopes, (a.y-b.y)/dx)
				weights = append(weights, math.Abs(dx))
			}
		}
	}
	return weightedMedian(slopes, weights)
}

// weightedMedian is the value with half of the weight on either side; halfway
// between two values where the weight parts exactly there. Empty gives 0.
func weightedMedian(values, weights []float64) float64 {
	order := make([]int, len(values))
	total := 0.0
	for i := range order {
		order[i] = i
		total += weights[i]
	}
	slices.SortStableFunc(order, func(a, b int) int { return cmp.Compare(values[a], values[b]) })
	below := 0.0
	for n, i := range order {
		below += weights[i]
		switch {
		case 2*below > total:
			return values[i]
		case 2*below == total && n+1 < len(order):
			return (values[i] + values[order[n+1]]) / 2
		}
	}
	return 0
}
