package gauges

import (
	"math"
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/assert"
)

// flatDots are dots of a family without a slope; some are slips, some very
// unsure.
func flatDots(rng *rand.Rand, n int) []dot {
	dots := someDots(rng, n)
	for i := range dots {
		d := &dots[i]
		d.y, d.lean = 9+0.01*rng.NormFloat64(), 0.5+rng.Float64()/2
		d.u = math.Exp(-9 + 6*rng.Float64())
		if rng.IntN(8) == 0 {
			d.y += 0.1 * rng.NormFloat64()
		}
	}
	return dots
}

// The range about a dot's law holds for every scatter within the grid, by laws
// solved one by one.
func TestAroundHoldsForEveryScatter(t *testing.T) {
	rng := rand.New(rand.NewPCG(12, 20))
	for range 200 {
		dots := flatDots(rng, 3+rng.IntN(12))
		o := trusted(dots, form{usual: usualScatter}, 0.001)
		for i, d := range dots {
			if !o.judges(i) {
				continue
			}
			least, most := o.around(i)
			for f := 0.0; f <= 26; f += 0.125 {
				l := law{form: o.kept.form}
				l.solve(o.laws[i].from.dots, o.laws[i].but, 0.0002*math.Pow(scatterStep, f))
				assert.LessOrEqual(t, least, d.y-l.level)
				assert.GreaterOrEqual(t, most, d.y-l.level)
			}
			assert.Less(t, most-least, 0.2, "a range that says something")
		}
	}
}

// A dot that is cleared without its law would not be suspect by it, however
// much chance is let in; dots near each other are all cleared.
func TestClearedDotsAreNotSuspect(t *testing.T) {
	rng := rand.New(rand.NewPCG(13, 20))
	cleared, kept := 0, 0
	for range 300 {
		dots := flatDots(rng, 3+rng.IntN(12))
		o := trusted(dots, form{usual: usualScatter}, 0.001)
		for i, d := range dots {
			if o.judges(i) && o.clears(i) {
				cleared++
				assert.False(t, o.law(i).suspects(d, 0.49))
			} else {
				kept++
			}
		}
		for i := range dots {
			dots[i].y = 9 + 0.004*rng.Float64()
		}
		o = trusted(dots, form{usual: usualScatter}, 0.001)
		for i := range dots {
			assert.True(t, o.clears(i))
		}
	}
	assert.Greater(t, cleared, kept)
}
