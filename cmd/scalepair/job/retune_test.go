package job_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"scalepair/cmd/scalepair/job"
	"scalepair/data/fault"
	"scalepair/tuning"
)

func TestRetuned(t *testing.T) {
	from, err := tuning.Parse("E2 A2 D3 G3 B3 E4")
	require.NoError(t, err)
	to, err := job.Retuned(from, []string{"6=D2", " 1 = D4 "}, fault.Place{})
	require.NoError(t, err)
	assert.Equal(t, "D2 A2 D3 G3 B3 D4", to.String())
	assert.Equal(t, "E2 A2 D3 G3 B3 E4", from.String(), "the tuning it began with stays")
	for text, says := range map[string]string{
		"6": "not a string and its note", "x=A1": "not a string", "7=A1": "no such string", "0=A1": "no such string", "6=": "a note is missing",
	} {
		_, err := job.Retuned(from, []string{text}, fault.Place{Input: "--retune"})
		assert.ErrorContains(t, err, says, text)
		assert.ErrorContains(t, err, "--retune: ", text)
	}
	_, err = job.Retuned(from, []string{"6=D2", "6=C2"}, fault.Place{})
	assert.ErrorContains(t, err, "two notes")
}

func TestTheCapoGoesOntoEveryTuning(t *testing.T) {
	j, err := job.Load("../../../testdata/builds/seven/build.toml", job.Overrides{Capo: "3"})
	require.NoError(t, err)
	cases := j.Cases()
	require.Len(t, cases, 2)
	for _, c := range cases {
		assert.Equal(t, 3, c.CapoFret)
	}
	j, err = job.Load("../../../testdata/builds/seven/build.toml", job.Overrides{Retune: []string{"7=G1"}})
	require.NoError(t, err)
	require.Len(t, j.Cases(), 1, "a retuned string takes the place of several tunings")
	assert.Equal(t, "G1 E2 A2 D3 G3 B3 E4", j.Tunings()[0].String())
}
