package choice

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"scalepair/gauges"
	"scalepair/tension"
)

// Half of the strings count to the bass half, string n with them; a middle one
// counts to both.
func TestHalfShare(t *testing.T) {
	for n := 2; n <= 9; n++ {
		sum := 0.0
		for i := range n {
			sum += halfShare(i, n)
		}
		assert.Equal(t, float64(n)/2, sum, "%d strings", n)
		assert.Zero(t, halfShare(0, n))
		assert.Equal(t, 1.0, halfShare(n-1, n))
	}
}

// A core twice as thick has four times the section, and sixteen times the
// stiffness against bending.
func TestRedrawnCore(t *testing.T) {
	w := redrawn(tension.Wire{LinearDensity: 1, CoreDia: 2, CoreArea: 3, EA: 5, EI: 7}, gauges.Drawn{LinearDensity: 11, Core: 4})
	assert.Equal(t, tension.Wire{LinearDensity: 11, CoreDia: 4, CoreArea: 12, EA: 20, EI: 112}, w)
}
