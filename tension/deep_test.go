package tension_test

import (
	"math"
	"math/big"
	"testing"

	"github.com/stretchr/testify/assert"
)

// deepBits is the precision of the slow evaluation, 120 decimal digits: the
// twenty beyond a hundred are for what differences of lengths use up.
const deepBits = 400

// deep is a number of 120 digits that is never changed.
type deep struct{ f *big.Float }

func blank() *big.Float { return new(big.Float).SetPrec(deepBits) }

// exact takes a float64 as the number it stands for, without rounding.
func exact(x float64) deep { return deep{blank().SetFloat64(x)} }

func (a deep) plus(b deep) deep      { return deep{blank().Add(a.f, b.f)} }
func (a deep) minus(b deep) deep     { return deep{blank().Sub(a.f, b.f)} }
func (a deep) times(b deep) deep     { return deep{blank().Mul(a.f, b.f)} }
func (a deep) over(b deep) deep      { return deep{blank().Quo(a.f, b.f)} }
func (a deep) root() deep            { return deep{blank().Sqrt(a.f)} }
func (a deep) abs() deep             { return deep{blank().Abs(a.f)} }
func (a deep) squared() deep         { return a.times(a) }
func (a deep) scaled(x float64) deep { return a.times(exact(x)) }
func (a deep) raised(x float64) deep { return a.plus(exact(x)) }
func (a deep) below(b deep) bool     { return a.f.Cmp(b.f) < 0 }
func (a deep) float() float64        { x, _ := a.f.Float64(); return x }
func (a deep) shifted(twos int) deep { return deep{blank().SetMantExp(a.f, twos)} }
func (a deep) negligible(to deep) bool {
	return a.f.Sign() == 0 || a.f.MantExp(nil) < to.f.MantExp(nil)-deepBits
}

func hypotenuse(a, b deep) deep { return a.squared().plus(b.squared()).root() }

// artanh is x + x^3/3 + x^5/5 + ..., for x well inside 1.
func artanh(x deep) deep { return oddSeries(x, x.squared()) }

// oddSeries sums x (1 + r/3 + r^2/5 + ...).
func oddSeries(x, ratio deep) deep {
	sum, power := x, x
	for odd := 3.0; ; odd += 2 {
		power = power.times(ratio)
		term := power.over(exact(odd))
		if term.negligible(sum) {
			return sum
		}
		sum = sum.plus(term)
	}
}

// arctanInverse is arctan(1/n).
func arctanInverse(n float64) deep {
	x := exact(1).over(exact(n))
	return oddSeries(x, x.squared().scaled(-1))
}

// deepPi is by Machin: pi/4 = 4 arctan(1/5) - arctan(1/239).
var deepPi = arctanInverse(5).scaled(16).minus(arctanInverse(239).scaled(4))

// deepLn2 is 2 artanh(1/3).
var deepLn2 = artanh(exact(1).over(exact(3))).scaled(2)

// exp2 is 2^x by the series of e^z, z = x ln 2/2^16, squared 16 times.
func exp2(x deep) deep {
	const halvings = 16
	z := x.times(deepLn2).shifted(-halvings)
	sum, term := exact(1), exact(1)
	for n := 1.0; ; n++ {
		term = term.times(z).over(exact(n))
		if term.negligible(sum) {
			break
		}
		sum = sum.plus(term)
	}
	for range halvings {
		sum = sum.squared()
	}
	return sum
}

// log2 is 2 artanh((r - 1)/(r + 1)) 2^16/ln 2 with r the 2^16-th root of x.
func log2(x deep) deep {
	const roots = 16
	for range roots {
		x = x.root()
	}
	return artanh(x.raised(-1).over(x.raised(1))).shifted(1 + roots).over(deepLn2)
}

// bisect halves for the place from which f is true, false at lo and true at
// hi, to 1e-40.
func bisect(lo, hi deep, f func(deep) bool) deep {
	for close := exact(1e-40); close.below(hi.minus(lo)); {
		mid := lo.plus(hi).shifted(-1)
		if f(mid) {
			hi = mid
		} else {
			lo = mid
		}
	}
	return lo.plus(hi).shifted(-1)
}

// TestDeep checks the yardstick: against float64, and against itself to 110
// digits, where a wrong series would not close.
func TestDeep(t *testing.T) {
	assert.Equal(t, math.Pi, deepPi.float())
	assert.Equal(t, math.Ln2, deepLn2.float())
	for _, x := range []float64{-7.25, -0.5, 1e-9, 0.1, 3} {
		assert.InEpsilon(t, math.Exp2(x), exp2(exact(x)).float(), 1e-15)
		assert.Less(t, log2(exp2(exact(x))).over(exact(x)).raised(-1).abs().float(), 1e-100, "%v", x)
	}
	third := exp2(exact(1).over(exact(3)))
	assert.Less(t, third.squared().times(third).raised(-2).abs().float(), 1e-110)
}
