package tuning_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"pgregory.net/rapid"

	"scalepair/data/testutil"
	"scalepair/data/unit"
	"scalepair/tuning"
)

var _ = testutil.Seed("1")

// Twelve semitones double the frequency, cents add up to semitones, and the
// pitch standard scales every note alike.
func TestScalingOfPitch(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		n := tuning.Note{Semitone: rapid.IntRange(0, 110).Draw(t, "semitone"), Cents: rapid.Float64Range(-100, 100).Draw(t, "cents")}
		a4 := unit.Frequency(rapid.Float64Range(380, 500).Draw(t, "a4"))
		f := n.Pitch(a4).Hz()
		assert.InEpsilon(t, 2*f, n.Up(12).Pitch(a4).Hz(), 1e-14)
		assert.InEpsilon(t, f, n.Up(5).Up(-5).Pitch(a4).Hz(), 1e-14)
		higher := n
		higher.Cents += 100
		assert.InEpsilon(t, n.Up(1).Pitch(a4).Hz(), higher.Pitch(a4).Hz(), 1e-14)
		assert.InEpsilon(t, f/a4.Hz(), n.Pitch(440).Hz()/440, 1e-15)
	})
}
