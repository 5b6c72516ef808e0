package build_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"scalepair/cmd/scalepair/build"
	"scalepair/tuning"
)

// A tuning that falls all the way was written high string first; one that
// merely turns round, or is meant to fall, is taken.
func TestTuningsHighStringFirst(t *testing.T) {
	for _, c := range []struct {
		notes string
		wrong bool
	}{
		{"E4 B3 G3 D3 A2 E2", true},
		{"E4 E4 B3 B3", true},
		{"B3 E2", true},
		{"E2 A2 D3 G3 B3 E4", false},
		{"G4 C4 E4 A4", false},
		{"A2 A2", false},
		{"E3 A3 D4 G3 B3 E4", false},
	} {
		notes, err := tuning.Parse(c.notes)
		require.NoError(t, err)
		err = build.HighFirst(notes, c.notes)
		assert.Equal(t, c.wrong, err != nil, c.notes)
	}
	for _, n := range tuning.Named() {
		assert.NoError(t, build.HighFirst(n, n.Name), n.Name)
	}
	fallen := strings.Replace(sound, `"B1 E2 A2 D3 F#3 B3"`, `"B3 F#3 D3 A2 E2 B1"`+"\nordering = false", 1)
	assert.Equal(t, "B1", read(t, fallen).Strings.Tuning.OfString(1).String())
}
