package choice_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"scalepair/tension"
	"scalepair/tension/choice"
)

// The string that the work is shown for is the string of the detail.
func TestStringAtIsTheDetailsString(t *testing.T) {
	for _, capo := range []int{0, 3} {
		req, d := withCapo(t, capo, nil)
		p, err := choice.Prepare(req)
		require.NoError(t, err)
		for _, i := range []int{0, 1} {
			for k, fret := range req.Feel.BendFrets {
				w, at, err := p.StringAt(d, 0, i, fret)
				if fret-float64(capo) < 1 {
					assert.ErrorIs(t, err, choice.ErrBehindCapo)
					continue
				}
				require.NoError(t, err)
				bend, err := tension.BendingForce(w, at)
				require.NoError(t, err)
				assert.Equal(t, d.Strings[i].Cases[0].Bends[k].Bend, bend)
			}
			w, at, err := p.StringAt(d, 0, i, 0)
			require.NoError(t, err)
			assert.Zero(t, at.Fret)
			assert.InEpsilon(t, d.Strings[i].Cases[0].TensionN, tension.Open(w, at.LengthM, at.FreqHz), 1e-14)
			assert.Equal(t, d.Strings[i].Cases[0].SoundingHz, at.FreqHz)
		}
	}
	req, d := withCapo(t, 5, nil)
	p, err := choice.Prepare(req)
	require.NoError(t, err)
	_, _, err = p.StringAt(d, 0, 0, 5)
	assert.ErrorIs(t, err, choice.ErrBehindCapo)
}

// A square crown has no slant from either side: 0, never -0, whichever way the
// string is bent.
func TestASquareCrownHasNoSlant(t *testing.T) {
	req := baritone()
	req.Feel.BendStrings = []int{1, 6}
	p, err := choice.Prepare(req)
	require.NoError(t, err)
	d, err := p.Detail(690, 690, indexes(p.Stock(), "p13", "p17", "w26", "w36", "w46", "w62"))
	require.NoError(t, err)
	for _, i := range []int{0, 5} {
		_, at, err := p.StringAt(d, 0, i, 5)
		require.NoError(t, err)
		assert.Zero(t, at.TanSlant)
		assert.False(t, math.Signbit(at.TanSlant), "string %d", i+1)
	}
}
