package unit_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"scalepair/data/testutil"
	"scalepair/data/unit"
)

var _ = testutil.Seed("1")

// Printing and reading are exact inverses over every finite value.
func TestStringReadsBackExactly(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		x := rapid.Float64().Draw(t, "x")
		l, err := unit.ParseLength(unit.Length(x).String())
		require.NoError(t, err)
		assert.Equal(t, x, float64(l))
		f, err := unit.ParseForce(unit.Force(x).String())
		require.NoError(t, err)
		assert.Equal(t, x, float64(f))
	})
}

// A factor of conversion and its inverse lose at most the two roundings.
func TestViewsInvertTheirConstructors(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		x := rapid.Float64Range(1e-6, 1e6).Draw(t, "x")
		assert.InEpsilon(t, x, unit.MM(x).MM(), 4e-16)
		assert.InEpsilon(t, x, unit.Inches(x).Inches(), 4e-16)
		assert.InEpsilon(t, x, unit.Grams(x).G(), 4e-16)
		assert.InEpsilon(t, x*25.4, unit.Inches(x).MM(), 1e-15)
		assert.InEpsilon(t, x, unit.Force(x).Lbf()*4.4482216152605, 1e-15)
		assert.InEpsilon(t, x, unit.Force(x).Kgf()*9.80665, 1e-15)
		assert.InEpsilon(t, x, unit.LinearDensity(x).PoundsPerInch()*0.45359237/0.0254, 1e-15)
		assert.InEpsilon(t, x, unit.LinearDensity(x).GramsPerMetre()/1000, 4e-16)
		assert.Equal(t, x, unit.Mass(x).Kg())
		assert.Equal(t, x, unit.Force(x).N())
	})
}
