package unit_test

import (
	"os/exec"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"scalepair/data/testutil"
	"scalepair/data/unit"
)

// GNU units has its own definitions of every unit; they are the second opinion
// on each constant and on each spelling that the parsers take. Its figures go
// through a chain of products in doubles: 4 units of the last place are
// allowed.
func TestConversionsAgreeWithGNUUnits(t *testing.T) {
	program := testutil.NeedTool(t, "units")
	theirs := func(t *testing.T, from, to string) float64 {
		out, err := exec.Command(program, "-t", "-o", "%.17g", from, to).Output()
		require.NoError(t, err, "%s to %s: %s", from, to, out)
		x, err := strconv.ParseFloat(strings.TrimSpace(string(out)), 64)
		require.NoError(t, err)
		return x
	}
	angle := func(s string) (float64, error) { x, err := unit.ParseAngle(s); return float64(x), err }
	length := func(s string) (float64, error) { x, err := unit.ParseLength(s); return float64(x), err }
	mass := func(s string) (float64, error) { x, err := unit.ParseMass(s); return float64(x), err }
	force := func(s string) (float64, error) { x, err := unit.ParseForce(s); return float64(x), err }
	weight := func(s string) (float64, error) { x, err := unit.ParseLinearDensity(s); return float64(x), err }
	constant := func(x float64) func(string) (float64, error) {
		return func(string) (float64, error) { return x, nil }
	}
	for _, c := range []struct {
		text     string
		ours     func(string) (float64, error)
		from, to string
	}{
		{"1 mm", length, "1 mm", "m"},
		{"1 cm", length, "1 cm", "m"},
		{"1 m", length, "1 m", "m"},
		{"1 in", length, "1 in", "m"},
		{"25 1/2 in", length, "25.5 in", "m"},
		{"1 g", mass, "1 g", "kg"},
		{"1 mg", mass, "1 mg", "kg"},
		{"1 kg", mass, "1 kg", "kg"},
		{"1 lb", mass, "1 lb", "kg"},
		{"1 oz", mass, "1 oz", "kg"},
		{"1 gr", mass, "1 grain", "kg"},
		{"1 N", force, "1 N", "N"},
		{"1 lbf", force, "1 lbf", "N"},
		{"1 lb", force, "1 lb force", "N"},
		{"1 kgf", force, "1 kgf", "N"},
		{"1 kp", force, "1 kilopond", "N"},
		{"1 g/m", weight, "1 g/m", "kg/m"},
		{"1 mg/mm", weight, "1 mg/mm", "kg/m"},
		{"1 kg/m", weight, "1 kg/m", "kg/m"},
		{"1 lb/in", weight, "1 lb/in", "kg/m"},
		{"1 deg", angle, "1 degree", "radian"},
		{"Inch", constant(unit.Inch), "1 in", "m"},
		{"Millimetre", constant(unit.Millimetre), "1 mm", "m"},
		{"Pound", constant(unit.Pound), "1 lb", "kg"},
		{"Ounce", constant(unit.Ounce), "1 oz", "kg"},
		{"Grain", constant(unit.Grain), "1 grain", "kg"},
		{"StandardGravity", constant(unit.StandardGravity), "gravity", "m/s^2"},
		{"PoundForce", constant(unit.PoundForce), "1 lbf", "N"},
		{"KilogramForce", constant(unit.KilogramForce), "1 kgf", "N"},
		{"PoundPerInch", constant(unit.PoundPerInch), "1 lb/in", "kg/m"},
		{"KilopoundPerSquareInch", constant(unit.KilopoundPerSquareInch), "1 ksi", "Pa"},
	} {
		t.Run(c.text+" "+c.to, func(t *testing.T) {
			ours, err := c.ours(c.text)
			require.NoError(t, err)
			assert.InEpsilon(t, theirs(t, c.from, c.to), ours, 4*0x1p-52)
		})
	}
}
