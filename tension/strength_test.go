package tension_test

import (
	"encoding/csv"
	"math"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"scalepair/data"
	"scalepair/data/unit"
)

// a228 is the embedded table as read here: diameters in inches, minima in ksi.
func a228(t *testing.T) (inches, ksi []float64) {
	in := csv.NewReader(strings.NewReader(string(data.WireStrength())))
	in.Comment = '#'
	records, err := in.ReadAll()
	require.NoError(t, err)
	require.Equal(t, []string{"diameter_in", "min_ksi"}, records[0][:2])
	for _, record := range records[1:] {
		d, err := strconv.ParseFloat(record[0], 64)
		require.NoError(t, err)
		s, err := strconv.ParseFloat(record[1], 64)
		require.NoError(t, err)
		inches, ksi = append(inches, d), append(ksi, s)
	}
	return inches, ksi
}

func TestMinStrengthAtTheRows(t *testing.T) {
	inches, ksi := a228(t)
	require.Len(t, inches, 20)
	for i, d := range inches {
		pa, outside := minStrength(d * 25.4e-3)
		assert.False(t, outside, "%v in", d)
		assert.InEpsilon(t, ksi[i]*6.894757e6, pa, 1e-6)
		if i > 0 {
			assert.Greater(t, d, inches[i-1], "rising in diameter")
			assert.Less(t, ksi[i], ksi[i-1], "thinner wire is stronger")
			mid, _ := minStrength((d + inches[i-1]) / 2 * 0.0254)
			assert.InEpsilon(t, (ksi[i]+ksi[i-1])/2*6.894757e6, mid, 1e-6, "half way")
		}
	}
}

// Breaking loads at the minima: arithmetic of S pi d^2/4, printed to 0.1 N.
func TestBreakingLoads(t *testing.T) {
	for _, c := range []struct{ inches, load float64 }{
		{0.004, 24.5}, {0.008, 89.2}, {0.010, 135.2}, {0.013, 220.2}, {0.018, 403.0}, {0.026, 795.9}, {0.030, 1037.6},
	} {
		d := c.inches * 0.0254
		pa, _ := minStrength(d)
		w := steel(d)
		assert.InDelta(t, 1, breaking(c.load, w.CoreArea, pa), 0.05/c.load+1e-6, "%v in", c.inches)
	}
}

// Shigley's fit S = 201 kpsi in^m/d^0.145 stands within 2.5 % of the table,
// above it everywhere.
func TestMinStrengthAgainstTheFit(t *testing.T) {
	inches, _ := a228(t)
	for _, d := range inches {
		pa, _ := minStrength(d * unit.Inch)
		off := strengthFit(201, 0.145, d)*unit.KilopoundPerSquareInch/pa - 1
		assert.Greater(t, off, 0.0, "%v in", d)
		assert.Less(t, off, 0.025, "%v in", d)
	}
}

func TestMinStrengthOutsideTheTable(t *testing.T) {
	first, _ := minStrength(0.004 * unit.Inch)
	for _, c := range []struct {
		name    string
		dia     float64
		ksi     float64
		outside bool
	}{
		{"thinner than the first row", 0.05e-3, 439, true},
		{"a rounding below the first row", 0.1016e-3 - 1e-12, 439, false},
		{"a rounding past the last row", 0.762e-3 + 1e-12, 330, false},
		{"thicker by 0.002 in", 0.032 * unit.Inch, 327, true},
		{"nothing left", 7e-3, 0, true},
		{"no diameter", 0, 0, true},
		{"below 0", -1e-3, 0, true},
		{"not a number", math.NaN(), 0, true},
		{"endless", math.Inf(1), 0, true},
	} {
		t.Run(c.name, func(t *testing.T) {
			pa, outside := minStrength(c.dia)
			assert.Equal(t, c.outside, outside)
			assert.InDelta(t, c.ksi*first/439, pa, 1e-6*first)
		})
	}
}

func TestBreakingShareNotKnown(t *testing.T) {
	assert.Zero(t, breaking(70, 0, 2.6e9))
	assert.Zero(t, breaking(70, 5e-8, 0))
	assert.InEpsilon(t, 0.5, breaking(65, 5e-8, 2.6e9), 1e-12)
}
