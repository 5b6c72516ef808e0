package job_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"scalepair/cmd/scalepair/build"
	"scalepair/cmd/scalepair/job"
)

// What the file leaves open follows from a flag as it follows from the file's
// own key; what it states stays.
func TestDefaultsFollowTheFlags(t *testing.T) {
	const reference = "[reference]\n"
	over := job.Overrides{Pitch: "432", Neutral: "9"}
	j, err := job.Load(demoWith(t, reference, reference), over)
	require.NoError(t, err)
	assert.Equal(t, 432.0, j.Build.Reference.PitchStandardHz)
	assert.Equal(t, build.Neutral{Fret: 9}, j.Build.Reference.Neutral)

	j, err = job.Load(demoWith(t, reference, reference+"pitch_standard_hz = 441\nneutral_fret = 5\n"), over)
	require.NoError(t, err)
	assert.Equal(t, 441.0, j.Build.Reference.PitchStandardHz)
	assert.Equal(t, build.Neutral{Fret: 5}, j.Build.Reference.Neutral)

	// The demo's reference has 22 frets, its neck 24.
	j, err = job.Load(demo, job.Overrides{Neutral: "24"})
	require.NoError(t, err)
	assert.Equal(t, build.Neutral{Fret: 22}, j.Build.Reference.Neutral)
	_, err = j.Plan()
	assert.NoError(t, err)

	j, err = job.Load(demoWith(t, "[limits]", "[[compare]]\nname = \"a\"\n[[compare]]\nname = \"b\"\npitch_standard_hz = 441\n[limits]"), over)
	require.NoError(t, err)
	assert.Equal(t, []float64{432, 441}, []float64{j.Build.Columns[0].PitchStandardHz, j.Build.Columns[1].PitchStandardHz})
}

// Without a reference, gauges given are wanted even, and free ones are not.
func TestWantedTensionFollowsTheFlags(t *testing.T) {
	j := load(t, "")
	assert.Equal(t, build.Even, j.Build.Feel.Tension.Source)
	free, err := job.Load(j.Path, job.Overrides{FreeGauges: true})
	require.NoError(t, err)
	assert.Equal(t, build.NoTarget, free.Build.Feel.Tension.Source)
	_, err = free.Plan()
	assert.NoError(t, err)

	j = load(t, "[feel]\ntension = \"70 N\"")
	free, err = job.Load(j.Path, job.Overrides{FreeGauges: true})
	require.NoError(t, err)
	assert.Equal(t, build.Stated, free.Build.Feel.Tension.Source)
}

// A pair that is named takes the place of the chosen one's lengths, and of
// nothing else of it.
func TestANamedPairKeepsTheChosenNeutral(t *testing.T) {
	path := demoWith(t, "[limits]", "[chosen]\nbass = \"700 mm\"\ntreble = \"660 mm\"\nneutral_fret = 3\n[limits]")
	j, err := job.Load(path, job.Overrides{Bass: "690 mm", Treble: "650 mm"})
	require.NoError(t, err)
	assert.Equal(t, build.Neutral{Fret: 3}, j.Build.Chosen.Neutral)
	assert.Equal(t, 690.0, j.Build.Chosen.Bass.MM())
	j, err = job.Load(path, job.Overrides{Bass: "690 mm", Treble: "650 mm", Neutral: "8"})
	require.NoError(t, err)
	assert.Equal(t, build.Neutral{Fret: 8}, j.Build.Chosen.Neutral)
}
