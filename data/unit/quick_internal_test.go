package unit

import (
	"strconv"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

// The quick way gives the very float that exact arithmetic gives.
func TestQuickIsExact(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		k := rapid.SampledFrom([]kind{lengths, masses, forces, linearDensities}).Draw(t, "kind")
		u := rapid.SampledFrom(k.units).Draw(t, "unit")
		x := rapid.OneOf(rapid.Float64Range(-1e6, 1e6), rapid.Float64()).Draw(t, "x")
		decimal := strconv.FormatFloat(x, 'f', rapid.SampledFrom([]int{-1, 0, 2, 7}).Draw(t, "decimals"), 64)
		for _, headed := range []string{"", u.names[0]} {
			quick, ok := k.quick(decimal+" "+u.names[0], headed)
			require.Equal(t, u.power != "", ok)
			full, err := k.parse(decimal+"e0 "+u.names[0], headed)
			if ok {
				require.NoError(t, err)
				assert.Equal(t, full, quick)
			}
		}
	})
}

func TestQuickLeavesTheRestToTheGrammar(t *testing.T) {
	for _, s := range []string{"", "mm", "1 1/2 mm", "1.2.3 mm", "1-2 mm", "648,5 mm", "1e3 mm", "½ mm", "25.5 in", "648", "1 MM"} {
		_, ok := lengths.quick(s, "")
		assert.False(t, ok, s)
	}
	_, ok := lengths.quick("64.8 cm", "mm")
	assert.False(t, ok, "a unit beside another one in the heading")
}

// Every size says the same as fraction and as exponent.
func TestSizesAgreeWithTheirExponents(t *testing.T) {
	for _, k := range []kind{lengths, masses, forces, linearDensities, degrees, number} {
		for _, u := range k.units {
			if u.power == "" {
				continue
			}
			x, err := strconv.ParseFloat("1"+u.power, 64)
			require.NoError(t, err)
			assert.Equal(t, float64(u.num)/float64(u.den), x, u.names[0])
		}
	}
}

// The quick form of a text is that of the full grammar.
func TestQuickFormAgrees(t *testing.T) {
	for _, s := range []string{"22.7 in", "22.70", "586", "0.5 mm", "5.", ".5 in", "5 in.", "12 inches", "1..2 mm", "25 1/2 in", "1e3 mm", "-3 mm", "", "mm", "5 furlongs"} {
		quick, ok := lengths.quickForm(s, "in")
		if !ok {
			continue
		}
		assert.Equal(t, Form[Length]("+"+s, "in"), quick, s) // a sign is left to the full grammar
	}
}
