package mark_test

import (
	"math"
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

func TestParseResolution(t *testing.T) {
	for _, c := range []struct {
		given  string
		stepMM float64
		prints string
		ofMM   float64 // 123.456 mm in parts of it, as printed
		shown  string
	}{
		{"0.01 mm", 0.01, "0.01 mm", 123.456, "123.46"},
		{"0.02 mm", 0.02, "0.02 mm", 123.456, "123.46"},
		{"0.05 mm", 0.05, "0.05 mm", 123.456, "123.45"},
		{"0.1mm", 0.1, "0.1 mm", 123.456, "123.5"},
		{"1/2 mm", 0.5, "0.5 mm", 123.456, "123.5"},
		{"1 mm", 1, "1 mm", 123.456, "123"},
		{"0.05 cm", 0.5, "0.5 mm", 123.456, "123.5"},
		{"0.001 in", 0.0254, "0.001 in", 123.456, "4.860"},
		{`0.0005"`, 0.0127, "0.0005 in", 123.456, "4.8605"},
		{"1/64 in", 25.4 / 64, "1/64 in", 123.456, "4 55/64"},
		{`1/32"`, 25.4 / 32, "1/32 in", 123.456, "4 7/8"},
	} {
		t.Run(c.given, func(t *testing.T) {
			r := resolution(t, c.given)
			assert.InDelta(t, c.stepMM, r.Length().MM(), 1e-12)
			assert.Equal(t, c.prints, r.String())
			assert.Equal(t, c.shown, r.Format(r.Round(unit.MM(c.ofMM)).Parts))
		})
	}
	assert.Equal(t, "-0.05", resolution(t, "0.05 mm").Format(-1))
	assert.Equal(t, "0.00", resolution(t, "0.05 mm").Format(0))
}

func TestParseResolutionFaults(t *testing.T) {
	for _, c := range []struct{ given, want string }{
		{"", `a length is missing; write "1 mm" or "1 in"`},
		{"0.03 mm", `does not divide a millimetre evenly ("0.03 mm"); give a part such as "0.05 mm", "0.001 in" or "1/64 in"`},
		{"1/3 mm", `does not divide a millimetre evenly ("1/3 mm"); give a part such as "0.05 mm", "0.001 in" or "1/64 in"`},
		{"5 mm", `no resolution of a workshop tool ("5 mm"); give 0.0005 mm to 1 mm, such as "0.05 mm" or "1/64 in"`},
		{"-0.1 mm", `no resolution of a workshop tool ("-0.1 mm"); give 0.0005 mm to 1 mm, such as "0.05 mm" or "1/64 in"`},
		{"0 mm", `no resolution of a workshop tool ("0 mm"); give 0.0005 mm to 1 mm, such as "0.05 mm" or "1/64 in"`},
	} {
		t.Run(c.given, func(t *testing.T) {
			_, err := mark.ParseResolution(c.given)
			assert.EqualError(t, err, c.want)
		})
	}
	for _, given := range []string{"0.05", "nan mm", "0,05 mm", "fine"} {
		_, err := mark.ParseResolution(given)
		assert.Error(t, err, given)
	}
	assert.Panics(t, func() { resolution(t, "0.1 mm").Round(unit.Length(math.NaN())) })
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
