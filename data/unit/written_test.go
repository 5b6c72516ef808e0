package unit_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

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

// A value that was worked out is no finer than it is known.
func TestWrittenTellsWorkedOutValues(t *testing.T) {
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

func TestWrittenRange(t *testing.T) {
	in, mm := unit.Form[unit.Length]("", "in"), unit.Form[unit.Length]("", "mm")
	assert.Equal(t, "7.874 in to 78.74 in", in.Range(0.2, 2))
	assert.Equal(t, "200 mm to 2000 mm", mm.Range(0.2, 2))
	assert.Equal(t, "0 in to 1.969 in", in.Range(0, 0.05))
	assert.Equal(t, "12 in", in.About(0.3, 2))
}

func TestWrittenOfWhatDoesNotRead(t *testing.T) {
	for _, s := range []string{"long", "5", "5 furlongs", "mm", "nan mm"} {
		assert.False(t, unit.Form[unit.Length](s, "").Known(), s)
	}
	assert.Equal(t, "in", unit.Form[unit.Length]("", "in").Unit)
	assert.False(t, unit.Written{}.Known())
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
