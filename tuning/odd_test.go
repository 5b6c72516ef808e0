package tuning_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"scalepair/tuning"
)

// Tunings that players have a name for are usual, and an octave's slip on any
// string of them is not.
func TestNamedTuningsAreUsual(t *testing.T) {
	for _, n := range tuning.Named() {
		assert.Empty(t, n.Odd(true), n.Name)
		for i := range n.Notes {
			for _, slip := range []int{-12, 12} {
				off := tuning.Tuning{Notes: append([]tuning.Note{}, n.Notes...)}
				off.Notes[i] = off.Notes[i].Up(slip)
				assert.NotEmpty(t, off.Odd(true), "%s, string %d", n.Name, len(n.Notes)-i)
			}
		}
	}
}

// Where strings need not rise from one to the next only their pitch is watched.
func TestOddWithoutOrder(t *testing.T) {
	reentrant, err := tuning.Parse("G4 C4 E4 A4")
	require.NoError(t, err)
	assert.Empty(t, reentrant.Odd(false))
	odd := reentrant.Odd(true)
	require.Len(t, odd, 1)
	assert.Equal(t, "from string 4, G4, to string 3, C4", odd[0].About)
	assert.InDelta(t, -7, odd[0].X, 1e-12)
	low, err := tuning.Parse("E0 A4")
	require.NoError(t, err)
	require.Len(t, low.Odd(false), 1)
}

// The ends of what is usual are usual.
func TestOddStandardAndCapo(t *testing.T) {
	for hz, usual := range map[float64]bool{414.9: false, 415: true, 440: true, 446: true, 446.1: false} {
		assert.Equal(t, usual, len(tuning.OddStandard(hz)) == 0, hz)
	}
	assert.Empty(t, tuning.OddCapo(0))
	assert.Empty(t, tuning.OddCapo(9))
	assert.Len(t, tuning.OddCapo(10), 1)
}
