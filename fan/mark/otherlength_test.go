package mark_test

import (
	"fmt"
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"scalepair/data/fault"
	"scalepair/data/unit"
	"scalepair/fan"
	"scalepair/fan/mark"
)

// Marks of a bass line of another length are one fault, which names that length.
func TestCheckNamesAnotherLength(t *testing.T) {
	for name, s := range map[string]shop{"fine": fineShop, "coarse": coarseShop, "hand": handShop} {
		judged := layout(t)
		spec := judged.Spec
		was := spec.Bass
		spec.Bass += 18 * unit.Millimetre
		other, err := fan.New(spec)
		require.NoError(t, err)
		rng := rand.New(rand.NewPCG(31, 32))
		var faults fault.List
		_, err = mark.Check(judged, s.measureAll(s.draw(other, rng), other, rng), s.options())
		require.ErrorAs(t, err, &faults, name)
		require.Len(t, faults, 1, name)
		var fits float64
		_, err = fmt.Sscanf(faults[0].What, "these marks fit a bass line of %f mm, and the layout has one of", &fits)
		require.NoError(t, err, faults[0].What)
		assert.InDelta(t, (was + 18*unit.Millimetre).MM(), fits, 0.3)
	}
}
