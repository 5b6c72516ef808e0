package unit_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"scalepair/data/unit"
)

// What was written is told again in the same unit and as finely.
func TestWrittenTellsWhatWasGiven(t *testing.T) {
	for _, c := range []struct{ given, headed, want string }{
		{"22.7", "in", "22.7 in"},
		{"22.70", "in", "22.70 in"},
		{"23 1/16", "in", "23 1/16 in"},
		{`25 1/2"`, "", "25 1/2 in"},
		{"25½ in", "", "25 1/2 in"},
		{"10/16 in", "", "5/8 in"},
		{"1/3 in", "", "1/3 in"},
		{"586.5", "mm", "586.5 mm"},
		{"64.8 cm", "", "64.8 cm"},
		{"2.5e1 in", "", "25 in"},
		{"1e-3 m", "", "0.001 m"},
		{"0.0001 in", "", "0.0001 in"},
	} {
		t.Run(c.given, func(t *testing.T) {
			l, err := unit.ParseLengthIn(c.given, c.headed)
			require.NoError(t, err)
			assert.Equal(t, c.want, unit.Form[unit.Length](c.given, c.headed).Text(float64(l), 0))
		})
	}
	assert.Equal(t, "7 lb", unit.Form[unit.Mass]("7", "lb").Text(7*unit.Pound, 0))
	assert.Equal(t, "17 lbf", unit.Form[unit.Force]("17 lb", "").Text(17*unit.PoundForce, 0))
	assert.Equal(t, "0.4 g/m", unit.Form[unit.LinearDensity]("0.4 g/m", "").Text(0.4e-3, 0))
}

// A reckoned value is no finer than it is known.
func TestWrittenTellsReckonedValues(t *testing.T) {
	for _, c := range []struct {
		given, headed string
		x, step       float64 // in the unit
		want          string
	}{
		{"23 1/16", "in", 22.7, 1.0 / 32, "22 11/16 in"},
		{"23 1/16", "in", 22.7, 1.0 / 16, "22 11/16 in"},
		{"23 1/2", "in", 22.71, 0.03937, "22 23/32 in"},
		{"23 1/2", "in", 22.7, 0.0001, "22 45/64 in"},
		{"22.7", "in", 17.3137, 1.0 / 32, "17.31 in"},
		{"22.75", "in", 17.3137, 0.5, "17.31 in"},
		{"586", "mm", 439.75, 1, "440 mm"},
		{"586", "mm", 439.75, 0.5, "439.8 mm"},
		{"586", "mm", 439.75, 1e-9, "439.750000 mm"},
	} {
		t.Run(c.want, func(t *testing.T) {
			w := unit.Form[unit.Length](c.given, c.headed)
			assert.Equal(t, c.want, w.Text(w.SI(c.x), w.SI(c.step)))
		})
	}
}

// Printed bounds lie inside the true ones.
func TestWrittenRange(t *testing.T) {
	in, mm := unit.Form[unit.Length]("", "in"), unit.Form[unit.Length]("", "mm")
	assert.Equal(t, "7.9 in to 78 in", in.Range(0.2, 2))
	assert.Equal(t, "200 mm to 2000 mm", mm.Range(0.2, 2))
	assert.Equal(t, "0.002 in to 0.23 in", in.Range(0.05e-3, 6e-3))
	assert.Equal(t, "0.05 mm to 6 mm", mm.Range(0.05e-3, 6e-3))
	assert.Equal(t, "0 in to 1.9 in", in.Range(0, 0.05))
	assert.Equal(t, "0.23 lbf to 110 lbf", unit.Form[unit.Force]("", "lbf").Range(1, 500))
	rapid.Check(t, func(t *rapid.T) {
		low := rapid.Float64Range(1e-6, 1).Draw(t, "low")
		high := rapid.Float64Range(1, 100).Draw(t, "high")
		a, b, found := strings.Cut(in.Range(low, high), " to ")
		require.True(t, found)
		x, err := unit.ParseLength(a)
		require.NoError(t, err)
		y, err := unit.ParseLength(b)
		require.NoError(t, err)
		assert.GreaterOrEqual(t, float64(x), low*(1-1e-8))
		assert.LessOrEqual(t, float64(y), high*(1+1e-8))
		assert.LessOrEqual(t, len(a), len("0.000039 in"))
	})
}

func TestWrittenShort(t *testing.T) {
	in := unit.Form[unit.Length]("27.50", "in")
	assert.Equal(t, "27.5 in", in.Short(27.5*unit.Inch, 1e-5))
	assert.Equal(t, "30 in", in.Short(30*unit.Inch, 1e-5))
	assert.Equal(t, "27 1/4 in", unit.Form[unit.Length]("27 1/2", "in").Short(27.25*unit.Inch, unit.Inch/8))
	assert.Equal(t, "30 mm", unit.Form[unit.Length]("30", "mm").Short(0.03, 0))
}

func TestWrittenAbout(t *testing.T) {
	assert.Equal(t, "12 in", unit.Form[unit.Length]("", "in").About(0.3))
	assert.Equal(t, "300 mm", unit.Form[unit.Length]("7.123", "mm").About(0.3))
	assert.Equal(t, "14 lb", unit.Form[unit.Mass]("", "lb").About(6.5))
}

func TestWrittenOfWhatDoesNotRead(t *testing.T) {
	for _, s := range []string{"long", "5", "5 furlongs", "mm", "nan mm"} {
		assert.False(t, unit.Form[unit.Length](s, "").Known(), s)
	}
	assert.Equal(t, "in", unit.Form[unit.Length]("", "in").Unit)
	assert.False(t, unit.Written{}.Known())
}

// Whatever reads as a length is told so that it reads as the same length.
func TestWrittenReadsBack(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		var s string
		if rapid.Bool().Draw(t, "fraction") {
			over := rapid.SampledFrom([]int{2, 4, 8, 16, 32, 64, 10}).Draw(t, "over")
			s = unit.Fraction(float64(rapid.IntRange(1, 3000).Draw(t, "n"))/float64(over), over) + " in"
		} else {
			s = unit.Fixed(rapid.Float64Range(0.1, 3000).Draw(t, "x"), rapid.IntRange(0, 4).Draw(t, "decimals")) + " mm"
		}
		l, err := unit.ParseLength(s)
		require.NoError(t, err)
		back, err := unit.ParseLength(unit.Form[unit.Length](s, "").Text(float64(l), 0))
		require.NoError(t, err)
		assert.InDelta(t, float64(l), float64(back), 1e-12)
	})
}

func TestUnitsUnderTheirOtherNames(t *testing.T) {
	for s, want := range map[string]unit.LengthUnit{
		"inch": unit.DecimalInches, "Inches": unit.DecimalInches, `"`: unit.DecimalInches, " in ": unit.DecimalInches, "millimeters": unit.Millimetres,
		"IN64": unit.InchFractions, "in 64": unit.InchFractions,
	} {
		got, err := unit.ParseLengthUnit(s)
		require.NoError(t, err, s)
		assert.Equal(t, want, got, s)
	}
	for s, want := range map[string]unit.ForceUnit{"lb": unit.PoundsForce, "lbs": unit.PoundsForce, "pounds": unit.PoundsForce, "kg": unit.KilogramsForce, "newtons": unit.Newtons} {
		got, err := unit.ParseForceUnit(s)
		require.NoError(t, err, s)
		assert.Equal(t, want, got, s)
	}
	_, err := unit.ParseLengthUnit("cm")
	assert.EqualError(t, err, `no unit for printing a length ("cm"); use mm, in, in64`)
}

func TestFraction(t *testing.T) {
	assert.Equal(t, "1/2", unit.Fraction(0.5, 10))
	assert.Equal(t, "2/5", unit.Fraction(0.4, 10))
	assert.Equal(t, "3", unit.Fraction(2.6, 1))
	assert.Panics(t, func() { unit.Fraction(1, 0) })
}
