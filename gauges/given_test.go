package gauges_test

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"scalepair/data/unit"
	"scalepair/gauges"
)

// inchFile is a plain family of nine, lengths in inches, with one more row. The
// true weight of a 0.013 in wire is 0.01707 g/in.
func inchFile(row string) string {
	text := "gauge,construction,outer_in,diameters,kind,pieces,length_in,mass_g,hung_mass_lb,speaking_length_in,pitch\n"
	for _, d := range []float64{0.010, 0.011, 0.012, 0.014, 0.015, 0.016, 0.017, 0.018, 0.020} {
		w := 7850 * math.Pi / 4 * math.Pow(d*0.0254, 2)
		text += fmt.Sprintf("%03.0f,plain,%g,measured,,,31 1/2,%s,,,\n", d*1000, d, fixed(w*31.5*25.4, 2))
	}
	return text + row
}

func inchTools() gauges.Instruments {
	t := gauges.DefaultInstruments()
	t.RulerResolution = unit.Inch / 16
	return t
}

// A builder who reads inches is told of slips in inches, as he wrote them, and
// asked after the lines of an inch ruler.
func TestSlipsOfInches(t *testing.T) {
	for _, c := range []struct{ name, row, fits, slip string }{
		{"digits swapped", "013,plain,0.013,measured,,,25 3/16,0.34,,,", "0.43 g (not 0.34 g) or 19 15/16 in (not 25 3/16 in) would fit", "0.43 g would fit; 0.34 g was entered: digits swapped?"},
		{"whole inches swapped", "013,plain,0.013,measured,,,21 1/2,0.21,,,", "", "12 1/2 in would fit; 21 1/2 in was entered: digits swapped?"},
		{"ruler by 10 in", "013,plain,0.013,measured,,,13 1/8,0.39,,,", "0.22 g (not 0.39 g) or 22 13/16 in (not 13 1/8 in) would fit", "23 1/8 in would fit; 13 1/8 in was entered: ruler misread by 10 in?"},
		{"ruler by an inch", "013,plain,0.013,measured,,10,8 1/2,1.28,,,", "", "7 1/2 in would fit; 8 1/2 in was entered: ruler misread by 1 in?"},
		{"ruler by a half", "013,plain,0.013,measured,,10,8,1.28,,,", "", "7 1/2 in would fit; 8 in was entered: ruler misread by 1/2 in?"},
		{"ruler by a quarter", "013,plain,0.013,measured,,50,2.25,1.71,,,", "", "2.00 in would fit; 2.25 in was entered: ruler misread by 1/4 in?"},
		{"ruler by an eighth", "013,plain,0.013,measured,,50,1 1/8,0.85,,,", "", "1 in would fit; 1 1/8 in was entered: ruler misread by 1/8 in?"},
		{"centimetres", "013,plain,0.013,measured,,,64,0.43,,,", "", "25 3/16 in would fit; 64 in was entered: read in centimetres?"},
		{"kilograms", "013,plain,0.013,measured,hung,,,,7.5,23 5/8,276.8", "16.54 lb (not 7.5 lb)", "16.53 lb would fit; 7.5 lb was entered: read in kilograms?"},
	} {
		t.Run(c.name, func(t *testing.T) {
			s, err := gauges.Combine(read(t, inchFile(c.row)), nil, inchTools(), gauges.Options{})
			require.NoError(t, err)
			require.Len(t, s.Suspects(), 1)
			x := s.Suspects()[0]
			assert.Contains(t, x.Fits, c.fits)
			assert.Contains(t, x.Slips, c.slip)
			assert.NotContains(t, x.String(), " mm")
		})
	}
}

// Nothing that a stock in inches says of slips is in millimetres, or longer
// than a builder writes.
func TestBlindSpeaksInches(t *testing.T) {
	s, err := gauges.Combine(read(t, inchFile("")), nil, inchTools(), gauges.Options{})
	require.NoError(t, err)
	for _, b := range s.Blind() {
		text := strings.Join(b.Slips, "\n")
		assert.NotContains(t, text, " mm")
		assert.NotContains(t, text, "(0 %)")
		assert.NotRegexp(t, `\d\.\d{4}`, text)
	}
	assert.Contains(t, strings.Join(s.Blind()[0].Slips, "\n"), "length 31 1/2 in for 31 3/4 in (0.8 %)")
}

// Faults quote what was written, in its own unit, and suggest in that unit.
func TestFaultsSpeakTheBuildersUnit(t *testing.T) {
	const head = "gauge,construction,outer_in,core_in,length_in,mass_g,kind,hung_mass_lb,speaking_length_in,pitch\n"
	for _, c := range []struct{ name, row, want string }{
		{"no length", "a,plain,0.010,,,0.2,,,,", "a weighing without length; give the length of the piece, as 12 in"},
		{"no size", "a,plain,46,,12,0.2,,,,", `outer is no size of a string's ("46 in"); did you mean 0.046 in? 0.002 in to 0.23 in is possible`},
		{"fraction", "a,plain,0.010,,500 1/2,0.2,,,,", `length is no size of a string's ("500 1/2 in"); 0.079 in to 190 in is possible`},
		{"hung", "a,plain,0.010,,,,hung,,,110", "a hung test without hung mass; weigh all that hangs, lower clamp and hook included, as 14 lb"},
		{"speaking", "a,plain,0.010,,,,hung,7,,110", "a hung test without speaking length; measure from clamp to clamp, as 24 in"},
		{"core", "a,wound,0.020,0.022,12,1,,,,", `the core is as thick as the whole string ("0.022 in"); it must be less than the outer diameter of 0.020 in with room`},
	} {
		t.Run(c.name, func(t *testing.T) {
			_, err := gauges.ReadReadings(strings.NewReader(head+c.row), "r.csv", nil)
			require.ErrorContains(t, err, c.want)
			assert.NotContains(t, err.Error(), " mm")
		})
	}
	for _, c := range []struct{ name, rows, want string }{
		{"too heavy", "a,plain,0.010,,12 1/2,24,,,,", `("a, 0.010 in, 24 g in `},
		{"what was read", "a,plain,0.010,,12 1/2,24,,,,", `24 g in 12 1/2 in: `},
		{"below a step", "a,plain,0.010,,0.1,0.2,,,,", `length is less than one step of the ruler, 0.12 in ("0.1 in")`},
	} {
		t.Run(c.name, func(t *testing.T) {
			tools := inchTools()
			tools.RulerResolution = unit.Inch / 8
			_, err := gauges.Combine(read(t, head+c.rows), nil, tools, gauges.Options{})
			require.ErrorContains(t, err, c.want)
			assert.NotContains(t, err.Error(), " mm")
		})
	}
}

// Where a heading names no unit and its cells name none, the heading is the
// fault, once.
func TestHeadingWithoutAUnitIsOneFault(t *testing.T) {
	_, err := gauges.ReadReadings(strings.NewReader("gauge,construction,outer,length_in,mass_g\na,plain,0.010,12,0.2\nb,plain,0.011,12,0.2\nc,plain,0.012,,0.2\n"), "r.csv", nil)
	assert.EqualError(t, err, `r.csv:2:9: outer has no unit, in its heading or in its cells, here and in 2 more rows ("0.010"); name the column outer_mm or outer_in, or write a unit in every cell`)
	_, err = gauges.ReadReadings(strings.NewReader("gauge,construction,outer,length_in,mass\na,plain,0.010 in,12,0.2\nb,plain,0.011,12,0.2\n"), "r.csv", nil)
	require.ErrorContains(t, err, `r.csv:3:9: outer: a length needs a unit ("0.011")`)
	assert.ErrorContains(t, err, "r.csv:2:21: mass has no unit, in its heading or in its cells, here and in 1 more row (")
	assert.Len(t, strings.Split(err.Error(), "\n"), 2)
}

// A misspelt heading is one fault, whatever stands below it.
func TestMisspeltHeadingIsOneFault(t *testing.T) {
	for _, c := range []struct{ head, want string }{
		{"guage,construction,outer_in,length_in,mass_g", `r.csv:1:1: no column of this table ("guage"); did you mean "gauge"?`},
		{"gauge,construction,outer_in,lenght_in,mass_g", `r.csv:1:29: no column of this table ("lenght_in"); did you mean "length_in"?`},
	} {
		_, err := gauges.ReadReadings(strings.NewReader(c.head+"\na,plain,0.010,12,0.2\nb,plain,0.011,12,0.2\n"), "r.csv", nil)
		assert.EqualError(t, err, c.want)
	}
	_, err := gauges.ReadReadings(strings.NewReader("construction,outer_in\nplain,0.010\nplain,0.011\n"), "r.csv", nil)
	require.ErrorContains(t, err, `r.csv:1: the column "gauge" is missing`)
	assert.Len(t, strings.Split(err.Error(), "\n"), 1, err.Error())
}
