package tuning_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"scalepair/tuning"
)

// An error means the zero note; success means a note with a finite frequency
// that prints and reads back to itself.
func FuzzParseNote(f *testing.F) {
	for _, s := range []string{"F#3", "gb-1", "f♯3", "A2-14c", "A2 +0.5 cents", "Cb-1", "B##3", "H2", "E", "", "\xff2", "A2-1e5c", "A4-0c"} {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, s string) {
		n, err := tuning.ParseNote(s)
		if err != nil {
			assert.Zero(t, n)
			assert.NotEmpty(t, err.Error())
			return
		}
		hz := n.FreqHz(tuning.ConcertA)
		require.False(t, math.IsNaN(hz) || hz < 7 || hz > 14000, hz)
		again, err := tuning.ParseNote(n.String())
		require.NoError(t, err)
		assert.Equal(t, n, again)
	})
}

func FuzzParse(f *testing.F) {
	for _, s := range []string{"B1 E2 A2 D3 F#3 B3", "baritone B", "8-string F sharp", "E A D G", "B1,E2;X3", "", "drop", "b flat", "E2-14c"} {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, s string) {
		got, err := tuning.Parse(s)
		if err != nil {
			assert.Zero(t, got)
			assert.NotEmpty(t, err.Error())
			return
		}
		require.NotEmpty(t, got.Notes)
		again, err := tuning.Parse(got.String())
		require.NoError(t, err)
		assert.Equal(t, got.Notes, again.Notes)
	})
}
