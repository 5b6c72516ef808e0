package unit_test

import (
	"fmt"
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"scalepair/data/unit"
)

// An error means the zero value and a message; success means a finite number
// that prints and reads back to itself.
func checkParse[T interface {
	~float64
	fmt.Stringer
}](t *testing.T, parse func(string) (T, error), s string) {
	x, err := parse(s)
	if err != nil {
		assert.Zero(t, float64(x))
		assert.NotEmpty(t, err.Error())
		return
	}
	require.False(t, math.IsNaN(float64(x)) || math.IsInf(float64(x), 0))
	again, err := parse(x.String())
	require.NoError(t, err)
	assert.Equal(t, x, again)
}

var seeds = []string{
	"648 mm", "25 1/2\"", "25-1/2 in", "¼ in", "-1e3 cm", "648,5 mm", "nan mm", "1e999 m", "1/0 in", "″", "0.43 g", "16 oz",
	"7000 gr", "72 N", "16.3 lbf", "7.3 kgf", "0.4 g/m", "1e-5 lb/in", "12°", "12 deg", "", "\xff", "0x1p-2 mm", "1_0 mm",
}

func FuzzParseLength(f *testing.F) {
	for _, s := range seeds {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, s string) { checkParse(t, unit.ParseLength, s) })
}

func FuzzParseMass(f *testing.F) {
	for _, s := range seeds {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, s string) { checkParse(t, unit.ParseMass, s) })
}

func FuzzParseForce(f *testing.F) {
	for _, s := range seeds {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, s string) { checkParse(t, unit.ParseForce, s) })
}

func FuzzParseUnitWeight(f *testing.F) {
	for _, s := range seeds {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, s string) { checkParse(t, unit.ParseUnitWeight, s) })
}

func FuzzParseAngle(f *testing.F) {
	for _, s := range seeds {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, s string) {
		x, err := unit.ParseAngle(s)
		require.False(t, math.IsNaN(x) || math.IsInf(x, 0))
		if err != nil {
			assert.Zero(t, x)
		}
	})
}
