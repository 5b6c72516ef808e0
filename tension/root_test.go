package tension

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
)

func TestRisingRoot(t *testing.T) {
	parabola := func(y float64) (float64, float64) { return y*y - 2, 2 * y }
	dip := func(y float64) (float64, float64) { return y*y - y - 2, 2*y - 1 } // root 2, falls to 1/2
	cubic := func(y float64) (float64, float64) { return y*y*y - 8, 3 * y * y }
	cliff := func(y float64) (float64, float64) { // a steep fall, then a rise through 2
		if y < 1 {
			return -1, -1e9
		}
		return y - 2, 1
	}
	creep := func(y float64) (float64, float64) { return math.Atan(100 * (y - 2)), 100 / (1 + 1e4*(y-2)*(y-2)) }
	for _, c := range []struct {
		name      string
		f         func(float64) (float64, float64)
		hi, start float64
		root      float64
		found     bool
	}{
		{"from below", parabola, 10, 0.1, 1.4142135623730951, true},
		{"from above", parabola, 10, 10, 1.4142135623730951, true},
		{"from the end", parabola, 1.5, 1.5, 1.4142135623730951, true},
		{"at the end", dip, 2, 1.9, 2, true},
		{"from the fall", dip, 100, 0.3, 2, true},
		{"from a flat place", cubic, 50, 0, 2, true},
		{"after a steep fall", cliff, 10, 0.5, 2, true},
		{"steps that overshoot", creep, 10, 0.5, 2, true},
		{"beyond the end", parabola, 1.4, 0.7, 0, false},
		{"the end lies in the fall", dip, 0.4, 0.1, 0, false},
		{"no way at all", parabola, 0, 0, 0, false},
	} {
		t.Run(c.name, func(t *testing.T) {
			root, ok := risingRoot(c.f, 0, c.hi, c.start)
			assert.Equal(t, c.found, ok)
			assert.InDelta(t, c.root, root, 1e-12*c.root)
		})
	}
}
