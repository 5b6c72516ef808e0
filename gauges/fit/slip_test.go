package fit_test

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"scalepair/gauges/fit"
)

// family is a plain family of nine, weighed well, with one more row.
func withSlip(row string) string {
	text := "gauge,construction,outer_in,diameters,kind,pieces,length_mm,mass_g,hung_mass_kg,speaking_length_mm,pitch\n"
	for _, d := range []float64{0.010, 0.011, 0.012, 0.014, 0.015, 0.016, 0.017, 0.018, 0.020} {
		w := 7850 * math.Pi / 4 * math.Pow(d*0.0254, 2)
		text += fmt.Sprintf("%03.0f,plain,%g,measured,,,800,%s,,,\n", d*1000, d, fixed(w*0.8*1e3, 2))
	}
	return text + row
}

// The true weight of a 0.013 in wire is 0.672 g/m.
func TestSlipsAreWorded(t *testing.T) {
	for _, c := range []struct{ name, row, fits, slip string }{
		{"digits swapped", "013,plain,0.013,measured,,,640,0.34,,,", "0.43 g (not 0.34 g) or 506 mm (not 640 mm) would fit", "0.43 g would fit; 0.34 g was entered: digits swapped?"},
		{"pieces", "013,plain,0.013,measured,,2,500,1.01,,,", "", "3 would fit; 2 was entered: pieces miscounted?"},
		{"octave", "013,plain,0.013,measured,hung,,,,7.5,600,551.6", "", "275.8 Hz would fit; 551.6 Hz was entered: an octave too high?"},
	} {
		t.Run(c.name, func(t *testing.T) {
			s := combine(t, withSlip(c.row))
			require.Len(t, s.Suspects(), 1)
			x := s.Suspects()[0]
			assert.Equal(t, "013", x.Gauge)
			assert.Contains(t, x.WouldFit, c.fits)
			assert.Contains(t, x.Slips, c.slip)
			assert.Equal(t, c.slip, x.Slips[0], "likeliest first")
			require.Len(t, x.Meant, len(x.Slips))
			assert.True(t, strings.HasPrefix(c.slip, x.Meant[0].Text+" would fit"))
			assert.True(t, gauge(t, s, "013").Suspect)
			assert.Equal(t, gauge(t, s, "013").Outer, gauge(t, s, "013").Core, "a slip does not thin the wire")
			assert.Equal(t, 11, x.Place.Line)
			assert.Contains(t, s.Fits[0].LeftOut, "013")
		})
	}
}

// Where a gauge's readings agree, its diameter is to blame.
func TestAgreeingReadingsBlameTheDiameter(t *testing.T) {
	s := combine(t, withSlip("013,plain,0.031,measured,,,600,0.40,,,\n013,,,,,,800,0.54,,,\n"))
	require.Len(t, s.Suspects(), 2)
	assert.Contains(t, s.Suspects()[0].WouldFit, "its readings agree; an outer diameter of 0.013 in (not 0.031 in) would fit them")
	assert.Equal(t, []string{"0.013 in would fit; 0.031 in was entered: digits swapped?"}, s.Suspects()[0].Slips)
	assert.Equal(t, []fit.Meant{{Of: "outer diameter", Text: "0.013 in"}}, s.Suspects()[0].Meant)
}

// Where they do not agree it is not, since one string has one diameter: a wire of 0.0143 in,
// 14 % heavier than this one, would explain the second reading alone.
func TestDisagreeingReadingsDoNotBlameTheDiameter(t *testing.T) {
	s := combine(t, withSlip("0134,plain,0.0134,measured,,,1280,0.91,,,\n0134,,,,,,1280,1.04,,,\n"))
	require.Len(t, s.Suspects(), 1)
	assert.Equal(t, 12, s.Suspects()[0].Place.Line)
	assert.Empty(t, s.Suspects()[0].Slips)
}

// What Blind says holds: a listed slip raises no alarm, one beyond the limit
// does.
func TestBlindComesTrue(t *testing.T) {
	clean := withSlip("")
	limit := gaugeLimit(t, clean, "017")
	slip := func(factor float64) int {
		w := 7850 * math.Pi / 4 * math.Pow(0.017*0.0254, 2) * 0.8 * 1e3
		s := combine(t, strings.Replace(clean, "800,"+fixed(w, 2), "800,"+fixed(w*factor, 2), 1))
		return len(s.Suspects())
	}
	assert.Zero(t, slip(1+0.7*limit))
	assert.Equal(t, 1, slip(1+1.3*limit))
}

func gaugeLimit(t *testing.T, text, label string) float64 {
	for _, b := range combine(t, text).Blind() {
		if b.Gauge == label {
			return float64(b.Limit)
		}
	}
	t.Fatal("no gauge " + label)
	return 0
}
