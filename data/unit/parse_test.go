package unit_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"scalepair/data/unit"
)

func TestParseLength(t *testing.T) {
	for _, c := range []struct {
		given string
		want  float64 // metres
	}{
		{"648 mm", 0.648},
		{"648mm", 0.648},
		{" 648  MM ", 0.648},
		{"64.8 cm", 0.648},
		{"0.648 m", 0.648},
		{"0.648 metres", 0.648},
		{"25.5 in", 0.6477},
		{"25.5 inches", 0.6477},
		{"25.5 in.", 0.6477},
		{`25.5"`, 0.6477},
		{"25.5″", 0.6477},
		{"25.5”", 0.6477},
		{"25.5''", 0.6477},
		{`25 1/2"`, 0.6477},
		{"25-1/2 in", 0.6477},
		{"25 - 1/2 in", 0.6477},
		{"25½ in", 0.6477},
		{"25 ½″", 0.6477},
		{"25\u00a01⁄2\u00a0in", 0.6477},
		{"¼ in", 0.00635},
		{"25¾ in", 0.65405},
		{"1/64 in", 0.0254 / 64},
		{"-3 mm", -0.003},
		{"\u22123 mm", -0.003},
		{"-1 1/2 in", -0.0381},
		{"+3 mm", 0.003},
		{".5 mm", 0.0005},
		{"5. mm", 0.005},
		{"1e-3 m", 0.001},
		{"-0 mm", 0},
	} {
		t.Run(c.given, func(t *testing.T) {
			got, err := unit.ParseLength(c.given)
			require.NoError(t, err)
			assert.Equal(t, c.want, float64(got))
			assert.False(t, math.Signbit(float64(got)) && got == 0, "-0")
		})
	}
}

func TestParseOtherQuantities(t *testing.T) {
	mass := func(s string) (float64, error) { x, err := unit.ParseMass(s); return float64(x), err }
	angle := func(s string) (float64, error) { x, err := unit.ParseAngle(s); return float64(x), err }
	force := func(s string) (float64, error) { x, err := unit.ParseForce(s); return float64(x), err }
	weight := func(s string) (float64, error) { x, err := unit.ParseLinearDensity(s); return float64(x), err }
	for _, c := range []struct {
		given string
		parse func(string) (float64, error)
		want  float64
	}{
		{"0.43 g", mass, 0.00043},
		{"430 mg", mass, 0.00043},
		{"7 kg", mass, 7},
		{"1 lb", mass, 0.45359237},
		{"16 oz", mass, 0.45359237},
		{"7000 gr", mass, 0.45359237},
		{"72 N", force, 72},
		{"72 n", force, 72},
		{"1 lbf", force, 4.4482216152605},
		{"1 lb", force, 4.4482216152605},
		{"1 kgf", force, 9.80665},
		{"1 kg", force, 9.80665},
		{"0.401 g/m", weight, 0.000401},
		{"0.401 mg/mm", weight, 0.000401},
		{"0.401 g / m", weight, 0.000401},
		{"1 kg/m", weight, 1},
		{"0.00002 lb/in", weight, 0.00002 * 0.45359237 / 0.0254},
		{"180 deg", angle, math.Pi},
		{"-90°", angle, -math.Pi / 2},
	} {
		t.Run(c.given, func(t *testing.T) {
			got, err := c.parse(c.given)
			require.NoError(t, err)
			assert.InEpsilon(t, c.want, got, 4e-16)
		})
	}
}

func TestParseUnderAHeading(t *testing.T) {
	for _, c := range []struct {
		given, heading, fault string
		want                  float64
	}{
		{"648", "mm", "", 0.648},
		{"648 mm", "mm", "", 0.648},
		{"25 1/2", "in", "", 0.6477},
		{`25.5"`, "in", "", 0.6477},
		{"25.5 in", "mm", `the unit is not the heading's, which is mm ("25.5 in"); change one of them`, 0},
		{"0,279", "mm", `a comma is not read as a decimal point ("0,279"); write "0.279"`, 0},
		{"648", "", `a length needs a unit ("648"); write "648 mm" or "648 in"`, 0},
	} {
		t.Run(c.given+" under "+c.heading, func(t *testing.T) {
			got, err := unit.ParseLengthIn(c.given, c.heading)
			assert.Equal(t, c.want, float64(got))
			checkFault(t, c.fault, err)
		})
	}
}

func TestParseRefuses(t *testing.T) {
	for _, c := range []struct {
		given, want string
	}{
		{"", `a length is missing; write "1 mm" or "1 in"`},
		{"  ", `a length is missing; write "1 mm" or "1 in"`},
		{"648", `a length needs a unit ("648"); write "648 mm" or "648 in"`},
		{"25 1/2", `a length needs a unit ("25 1/2"); write "25 1/2 mm" or "25 1/2 in"`},
		{"648,5 mm", `a comma is not read as a decimal point ("648,5 mm"); write "648.5 mm"`},
		{",5 mm", `a comma is not read as a decimal point (",5 mm"); write ".5 mm"`},
		{"648 mn", `"mn" is no unit of length ("648 mn"); did you mean "mm"? use mm, in, cm, m`},
		{"648 g", `"g" is no unit of length ("648 g"); use mm, in, cm, m`},
		{"5 mm 3", `"mm 3" is no unit of length ("5 mm 3"); use mm, in, cm, m`},
		{"1,234.5 mm", `commas are not read in a number ("1,234.5 mm"); write it with a decimal point and nothing between thousands`},
		{"nan mm", `not read as a length ("nan mm"); write "1 mm" or "1 in"`},
		{"-Inf mm", `not read as a length ("-Inf mm"); write "1 mm" or "1 in"`},
		{"1e400 mm", `a length is too large for any number here ("1e400 mm"); check the exponent`},
		{"1e999999999 mm", `"999999 mm" is no unit of length ("1e999999999 mm"); use mm, in, cm, m`},
		{"1/0 in", `the fraction is above 1, or over 0 ("1/0 in"); write whole inches before it: "1 1/64 in"`},
		{"65/64 in", `the fraction is above 1, or over 0 ("65/64 in"); write whole inches before it: "1 1/64 in"`},
		{"0x10 mm", `"x10 mm" is no unit of length ("0x10 mm"); use mm, in, cm, m`},
		{"1_000 mm", `"_000 mm" is no unit of length ("1_000 mm"); use mm, in, cm, m`},
		{"mm", `not read as a length ("mm"); write "1 mm" or "1 in"`},
		{"long", `not read as a length ("long"); write "1 mm" or "1 in"`},
	} {
		t.Run(c.given, func(t *testing.T) {
			got, err := unit.ParseLength(c.given)
			assert.Zero(t, got)
			checkFault(t, c.want, err)
		})
	}
}

func TestParseRefusesWithTheQuantitysOwnWords(t *testing.T) {
	_, err := unit.ParseMass("0.43")
	assert.EqualError(t, err, `a mass needs a unit ("0.43"); write "0.43 g" or "0.43 oz"`)
	_, err = unit.ParseForce("16.3")
	assert.EqualError(t, err, `a force needs a unit ("16.3"); write "16.3 N" or "16.3 lbf"`)
	_, err = unit.ParseLinearDensity("0.4")
	assert.EqualError(t, err, `a linear density needs a unit ("0.4"); write "0.4 g/m" or "0.4 lb/in"`)
	_, err = unit.ParseAngle("12")
	assert.EqualError(t, err, `an angle needs a unit ("12"); write "12 deg"`)
	_, err = unit.ParseAngle("12 dog")
	assert.EqualError(t, err, `"dog" is no unit of angle ("12 dog"); did you mean "deg"? use deg`)
}

func TestParseNumber(t *testing.T) {
	for _, c := range []struct {
		given, fault string
		want         float64
	}{
		{"7.5", "", 7.5},
		{" -1e-3 ", "", -0.001},
		{"-0", "", 0},
		{"", "a number is missing; write a number in digits, such as 7.5", 0},
		{"7,5", `a comma is not read as a decimal point ("7,5"); write "7.5"`, 0},
		{"1/2", "", 0.5},
		{"nan", `not read as a number ("nan"); write a number in digits, such as 7.5`, 0},
		{"7 mm", `not read as a number ("7 mm"); write a number in digits, such as 7.5`, 0},
		{"six", `not read as a number ("six"); write a number in digits, such as 7.5`, 0},
	} {
		t.Run(c.given, func(t *testing.T) {
			got, err := unit.ParseNumber(c.given)
			assert.Equal(t, c.want, got)
			assert.False(t, math.Signbit(got) && got == 0, "-0")
			checkFault(t, c.fault, err)
		})
	}
}

func checkFault(t *testing.T, want string, err error) {
	t.Helper()
	if want == "" {
		require.NoError(t, err)
		return
	}
	require.EqualError(t, err, want)
}
