package gauges

import "math"

// What gauges of one kind are taken to scatter by about their law before any
// of them is seen, as a fraction: usualScatter for wound strings; plainScatter
// for plain wire, whose diameter is reckoned by itself, so that only the
// material is left to vary. Judgement.
const (
	usualScatter = 0.02
	plainScatter = 0.005
)

// scatterGrid holds the scatters that are weighed against each other: 0.02 % to
// 35 %, each a third more than the one before. Finer grids change no figure
// that is printed.
var scatterGrid = [27]float64{
	s0, s0 * scatterStep, s0 * scatterStep * scatterStep,
	s3, s3 * scatterStep, s3 * scatterStep * scatterStep,
	s6, s6 * scatterStep, s6 * scatterStep * scatterStep,
	s9, s9 * scatterStep, s9 * scatterStep * scatterStep,
	s12, s12 * scatterStep, s12 * scatterStep * scatterStep,
	s15, s15 * scatterStep, s15 * scatterStep * scatterStep,
	s18, s18 * scatterStep, s18 * scatterStep * scatterStep,
	s21, s21 * scatterStep, s21 * scatterStep * scatterStep,
	s24, s24 * scatterStep, s24 * scatterStep * scatterStep,
}

// scatterStep is from one scatter of the grid to the next, and lnScatterStep its
// ln.
const (
	scatterStep   = 4.0 / 3
	lnScatterStep = 0.287682072451780927439219005993827
)

const (
	threeSteps = scatterStep * scatterStep * scatterStep

	s0, s3, s6    = 0.0002, s0 * threeSteps, s3 * threeSteps
	s9, s12, s15  = s6 * threeSteps, s9 * threeSteps, s12 * threeSteps
	s18, s21, s24 = s15 * threeSteps, s18 * threeSteps, s21 * threeSteps
)

// belief is how likely each scatter of the grid is; the shares add up to 1.
type belief [len(scatterGrid)]float64

// meanSquare is the mean of tau^2.
func (b *belief) meanSquare() float64 {
	sum := 0.0
	for k, tau := range scatterGrid {
		sum += b[k] * tau * tau
	}
	return sum
}

// negligible is a share that cannot matter: the least chance asked for is about
// 0.05 over a hundred judgements.
const negligible = 1e-9

// beyond is the chance that a normal error, of variance known + rise tau^2 with
// tau drawn from the belief, exceeds x.
func (b *belief) beyond(x, known, rise float64) (chance, density float64) {
	for k, tau := range scatterGrid {
		if b[k] < negligible {
			continue
		}
		s := math.Sqrt(known + rise*tau*tau)
		z := x / s
		chance += b[k] * math.Erfc(z/math.Sqrt2) / 2
		density += b[k] * math.Exp(-z*z/2) / (s * math.Sqrt(2*math.Pi))
	}
	return chance, density
}

// bound is the x that beyond gives the chance p, 0 < p < 1/2: Newton's method
// on the ln of the chance, kept between bounds that close in.
func (b *belief) bound(p, known, rise float64) float64 {
	widest := scatterGrid[len(scatterGrid)-1]
	low, high := 0.0, normalQuantile(p)*math.Sqrt(known+rise*widest*widest)
	x := normalQuantile(p) * math.Sqrt(known+rise*b.meanSquare())
	for range 100 {
		chance, density := b.beyond(x, known, rise)
		if chance > p {
			low = x
		} else {
			high = x
		}
		next := x + math.Log(chance/p)*chance/density
		if !(next > low && next < high) {
			next = (low + high) / 2
		}
		if math.Abs(next-x) < 1e-7*x {
			break
		}
		x = next
	}
	return x
}
