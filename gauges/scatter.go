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

// scatterStep is from one scatter of the grid to the next.
const scatterStep = 4.0 / 3

// scatterGrid holds the scatters that are weighed against each other: 0.02 % to
// 35 %, each a third more than the one before. Finer grids change no figure
// that is printed.
var scatterGrid = func() [27]float64 {
	var grid [27]float64
	for k := range grid {
		grid[k] = 0.0002 * math.Pow(scatterStep, float64(k))
	}
	return grid
}()

// scatterLn is the ln of each scatter of the grid.
var scatterLn = func() [len(scatterGrid)]float64 {
	var ln [len(scatterGrid)]float64
	for k, tau := range scatterGrid {
		ln[k] = math.Log(tau)
	}
	return ln
}()

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
