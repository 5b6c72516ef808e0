package mark_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"scalepair/data/unit"
	"scalepair/fan/mark"
)

func resolution(t testing.TB, given string) mark.Resolution {
	t.Helper()
	r, err := mark.ParseResolution(given)
	require.NoError(t, err, given)
	return r
}

// A resolution prints as people write it, and is what that says; 123.456 mm prints
// in its parts.
func TestParseResolution(t *testing.T) {
	for given, want := range map[string][2]string{
		"0.01 mm": {"0.01 mm", "123.46"}, "0.02 mm": {"0.02 mm", "123.46"}, "0.05 mm": {"0.05 mm", "123.45"}, "0.1mm": {"0.1 mm", "123.5"},
		"1/2 mm": {"0.5 mm", "123.5"}, "1 mm": {"1 mm", "123"}, "0.05 cm": {"0.5 mm", "123.5"}, "0.001 in": {"0.001 in", "4.860"},
		`0.0005"`: {"0.0005 in", "4.8605"}, "1/64 in": {"1/64 in", "4 55/64"}, `1/32"`: {"1/32 in", "4 7/8"},
	} {
		r := resolution(t, given)
		assert.Equal(t, want, [2]string{r.String(), r.Format(r.Round(unit.MM(123.456)).Parts)})
		said, err := unit.ParseLength(want[0])
		require.NoError(t, err)
		assert.InDelta(t, said.MM(), r.Length().MM(), 1e-12)
	}
	assert.Equal(t, [2]string{"-0.05", "0.00"}, [2]string{resolution(t, "0.05 mm").Format(-1), resolution(t, "0.05 mm").Format(0)})
	for given, want := range map[string]string{
		"0.03 mm": `not an even part of 1 mm ("0.03 mm"); give a part such as "0.05 mm", "0.001 in" or "1/64 in"`,
		"1/70 in": "not an even part of 1 in",
		"5 mm":    `no resolution of a workshop tool ("5 mm"); give 0.0005 mm to 1 mm, such as "0.05 mm" or "1/64 in"`,
		"-0.1 mm": "no resolution of a workshop tool", "0 mm": "no resolution of a workshop tool", "1/3 mm": "not an even part of 1 mm",
		"": "a length is missing", "0.05": "needs a unit", "nan mm": "", "0,05 mm": "", "fine": "",
	} {
		_, err := mark.ParseResolution(given)
		assert.ErrorContains(t, err, want, given)
	}
}

// Whatever the tool: a rounded position is within half a part, and the rounded
// steps sum to it exactly, in parts and so in print.
func TestRoundedStepsSumToRoundedPositions(t *testing.T) {
	given := []string{"0.01 mm", "0.05 mm", "0.1 mm", "0.5 mm", "0.001 in", "1/64 in"}
	rapid.Check(t, func(rt *rapid.T) {
		r := resolution(t, rapid.SampledFrom(given).Draw(rt, "resolution"))
		before, at, sum := r.Round(0), unit.Length(0), int64(0)
		for range 20 {
			at += unit.MM(rapid.Float64Range(0, 60).Draw(rt, "step"))
			now := r.Round(at)
			step := r.Between(before, now)
			sum += step.Parts
			assert.Equal(rt, now.Parts, sum)
			assert.InDelta(rt, now.Exact.MM(), now.Set.MM(), r.Length().MM()/2*(1+1e-6))
			assert.InDelta(rt, step.Exact.MM(), step.Set.MM(), r.Length().MM()*(1+1e-6))
			before = now
		}
	})
}
