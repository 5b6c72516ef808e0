package mark

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
)

// The restricted likelihood is the likelihood of what no slip can move (Patterson and
// Thompson 1971, from memory): of two readings of variances 4 and 9 that one slip moves
// alike, that of their difference, which is normal with variance 13.
func TestRestrictedLikelihoodIsThatOfTheContrasts(t *testing.T) {
	for _, difference := range []float64{0, 2, 5} {
		for _, slip := range []float64{-3, 0, 40} {
			s := newScale(0, square{2, []float64{4, 0, 0, 9}})
			f := s.fit([]float64{1 + slip, 1 + slip + difference}, []*candidate{{effect: []float64{1, 1}}})
			assert.InDelta(t, -(math.Log(13)+difference*difference/13)/2, f.logLik, 1e-9, "difference %g, slip %g", difference, slip)
		}
	}
}
