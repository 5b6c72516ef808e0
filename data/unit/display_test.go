package unit_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"scalepair/data/unit"
)

func TestFormatLength(t *testing.T) {
	for _, c := range []struct {
		name     string
		u        unit.LengthUnit
		l        unit.Length
		decimals int
		want     string
	}{
		{"mm", unit.Millimetres, 0.6477, 1, "647.7"},
		{"mm rounded", unit.Millimetres, 0.64774, 1, "647.7"},
		{"inches get two more decimals", unit.DecimalInches, 0.6477, 1, "25.500"},
		{"no -0", unit.Millimetres, -0.00001, 1, "0.0"},
		{"half", unit.InchFractions, unit.Inches(25.5), 1, "25 1/2"},
		{"64ths", unit.InchFractions, unit.Inches(25 + 33.0/64), 1, "25 33/64"},
		{"reduced", unit.InchFractions, unit.Inches(3 + 24.0/64), 1, "3 3/8"},
		{"below an inch", unit.InchFractions, unit.Inches(1.0 / 64), 1, "1/64"},
		{"whole", unit.InchFractions, unit.Inches(26), 1, "26"},
		{"up to the next whole", unit.InchFractions, unit.Inches(25.999), 1, "26"},
		{"negative", unit.InchFractions, unit.Inches(-1.5), 1, "-1 1/2"},
		{"nothing", unit.InchFractions, unit.Inches(-0.001), 1, "0"},
		{"zero", unit.InchFractions, 0, 1, "0"},
	} {
		t.Run(c.name, func(t *testing.T) { assert.Equal(t, c.want, c.u.Format(c.l, c.decimals)) })
	}
}

func TestFormatForce(t *testing.T) {
	f := unit.Force(72.592)
	assert.Equal(t, "72.6", unit.Newtons.Format(f, 1))
	assert.Equal(t, "16.32", unit.PoundsForce.Format(f, 1)) // REFERENCES: 16.319 lbf
	assert.Equal(t, "7.40", unit.KilogramsForce.Format(f, 1))
}

func TestUnitWords(t *testing.T) {
	for _, u := range []unit.LengthUnit{unit.Millimetres, unit.DecimalInches, unit.InchFractions} {
		got, err := unit.ParseLengthUnit(u.String())
		require.NoError(t, err)
		assert.Equal(t, u, got)
	}
	for _, u := range []unit.ForceUnit{unit.Newtons, unit.PoundsForce, unit.KilogramsForce} {
		got, err := unit.ParseForceUnit(u.String())
		require.NoError(t, err)
		assert.Equal(t, u, got)
		assert.Equal(t, u.String(), u.Symbol())
	}
	assert.Equal(t, "mm", unit.Millimetres.Symbol())
	assert.Equal(t, "in", unit.InchFractions.Symbol())
	_, err := unit.ParseLengthUnit("ft")
	assert.EqualError(t, err, `no unit for printing a length ("ft"); use mm, in, in64`)
	_, err = unit.ParseForceUnit("dyn")
	assert.EqualError(t, err, `no unit for printing a force ("dyn"); use N, lbf, kgf`)
}

func TestFixed(t *testing.T) {
	assert.Equal(t, "0", unit.Fixed(math.Copysign(0, -1), 0))
	assert.Equal(t, "0.00", unit.Fixed(-0.004, 2))
	assert.Equal(t, "-0.01", unit.Fixed(-0.006, 2))
	assert.Equal(t, "-10", unit.Fixed(-10, 0))
	assert.Equal(t, "12.813", unit.Fixed(12.8125, 3), "a tie goes away from zero")
	assert.Equal(t, "-12.813", unit.Fixed(-12.8125, 3))
	assert.Equal(t, "12.813", unit.Fixed(12.812499999999998, 3), "and is one where arithmetic left it a little short")
	assert.Equal(t, "25.63", unit.Fixed(25.625, 2))
	assert.Equal(t, "12.812", unit.Fixed(12.81249999, 3))
	assert.Equal(t, "0", unit.Fixed(0, 0))
	for _, x := range []float64{math.NaN(), math.Inf(1), math.Inf(-1)} {
		assert.Panics(t, func() { unit.Fixed(x, 1) })
		assert.Panics(t, func() { unit.InchFractions.Format(unit.Length(x), 1) })
		assert.Panics(t, func() { _ = unit.Length(x).String() })
	}
	assert.Panics(t, func() { unit.Fixed(1, -1) })
}

func TestStringIsExact(t *testing.T) {
	for _, c := range []struct{ given, want string }{
		{"648 mm", "648 mm"}, {"25.5 in", "647.7 mm"}, {"64.85 cm", "648.5 mm"}, {"-1/64 in", "-0.396875 mm"},
	} {
		l, err := unit.ParseLength(c.given)
		require.NoError(t, err)
		assert.Equal(t, c.want, l.String())
	}
	assert.Equal(t, "0 mm", unit.Length(math.Copysign(0, -1)).String())
	assert.Equal(t, "0.43 g", unit.Grams(0.43).String())
	assert.Equal(t, "72.5 N", unit.Force(72.5).String())
	assert.Equal(t, "0.401 g/m", unit.LinearDensity(0.000401).String())
}
