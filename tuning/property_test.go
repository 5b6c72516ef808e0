package tuning_test

import (
	"flag"
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"pgregory.net/rapid"

	"scalepair/data/unit"
	"scalepair/tuning"
)

// The properties are drawn from one seed, so that every run sees the same.
func init() {
	if err := flag.Set("rapid.seed", "1"); err != nil {
		panic(err)
	}
}

var standards = rapid.Float64Range(tuning.LowestStandardHz, tuning.HighestStandardHz)

func note(t *rapid.T, label string) tuning.Note {
	n := tuning.Nearest(440*unit.Frequency(math.Exp2(rapid.Float64Range(-69, 58).Draw(t, label)/12)), 440)
	return n
}

// Nearest is the inverse of FreqHz, under any pitch standard.
func TestNearestInvertsFreqHz(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		a4, freq := standards.Draw(t, "a4"), rapid.Float64Range(8, 12000).Draw(t, "freq")
		n := tuning.Nearest(unit.Frequency(freq), unit.Frequency(a4))
		assert.InEpsilon(t, freq, n.FreqHz(a4), 1e-13)
		assert.LessOrEqual(t, math.Abs(n.Cents), 50.0)
	})
}

// Twelve semitones double the frequency, cents add up to semitones, and the
// pitch standard scales every note alike.
func TestScalingOfPitch(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		n, a4 := note(t, "note"), standards.Draw(t, "a4")
		f := n.FreqHz(a4)
		assert.InEpsilon(t, 2*f, n.Up(12).FreqHz(a4), 1e-14)
		assert.InEpsilon(t, f, n.Up(5).Up(-5).FreqHz(a4), 1e-14)
		higher := n
		higher.Cents += 100
		assert.InEpsilon(t, n.Up(1).FreqHz(a4), higher.FreqHz(a4), 1e-14)
		assert.InEpsilon(t, f/a4, n.FreqHz(440)/440, 1e-15)
	})
}
