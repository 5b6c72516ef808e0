package unit_test

import (
	"fmt"
	"math"
	"os"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"scalepair/data/unit"
)

// oddities are handwritten edges of the grammar.
var oddities = []string{
	"648 mm", "25 1/2\"", "25-1/2 in", "¼ in", "-1e3 cm", "648,5 mm", "nan mm", "1e999 m", "1/0 in", "″", "0.43 g", "16 oz",
	"7000 gr", "72 N", "16.3 lbf", "7.3 kgf", "0.4 g/m", "1e-5 lb/in", "12°", "12 deg", "", "\xff", "0x1p-2 mm", "1_0 mm",
	"-1e-999 mm", "-0 N", "-0/1 in", "9e307 m", "999999999 999999998/3 in", "3 lb", "1e-320 g", "+.5 kg/m",
	"0.6" + strings.Repeat("9", 400), "0.6" + strings.Repeat("9", 400) + " mm",
}

// cell matches what stands between quotation marks or commas of a real file.
var cell = regexp.MustCompile(`"[^"\n]*"|'[^'\n]*'|[^",'\n]+`)

// addReal adds the oddities and every quantity, with and without a heading, that
// stands in the demo and the test builds.
func addReal(f *testing.F) {
	known := map[string]bool{}
	add := func(s string) {
		if !known[s] {
			known[s] = true
			f.Add(s, "")
			f.Add(s, "mm")
		}
	}
	for _, s := range oddities {
		add(s)
	}
	for _, file := range []string{
		"../demo/build.toml", "../demo/readings.csv", "../../testdata/builds/seven/build.toml",
		"../../testdata/builds/eight_inch/build.toml", "../../testdata/builds/bass_five/build.toml",
		"../../testdata/builds/demo_marks.csv",
	} {
		src, err := os.ReadFile(file)
		require.NoError(f, err)
		for _, s := range cell.FindAllString(string(src), -1) {
			if s = strings.Trim(s, `"'`); strings.ContainsAny(s, "0123456789") && len(s) < 16 {
				add(s)
			}
		}
	}
}

// checkParse: an error means the zero value and a message; success means a
// finite number, never -0, that prints and reads back to itself. A heading's
// unit is taken by a bare number, and never changes what a text with a unit
// means. The written form prints to half of its last digit.
func checkParse[T interface {
	unit.Quantity
	fmt.Stringer
}](t *testing.T, parse func(s, headed string) (T, error), s, headed string) {
	under, headErr := parse(s, headed)
	x, err := parse(s, "")
	for _, r := range []struct {
		x   T
		err error
	}{{under, headErr}, {x, err}} {
		if r.err != nil {
			assert.Zero(t, float64(r.x))
			assert.NotEmpty(t, r.err.Error())
			assert.NotContains(t, r.err.Error(), "\n")
			continue
		}
		requirePlain(t, float64(r.x))
		again, err := parse(r.x.String(), "")
		require.NoError(t, err)
		assert.Equal(t, r.x, again)
	}
	if err != nil {
		return
	}
	if headErr == nil {
		assert.Equal(t, x, under)
	}
	requireWrittenReadsBack(t, parse, x, unit.Form[T](s, ""))
}

// requirePlain fails on NaN, infinities and -0.
func requirePlain(t *testing.T, x float64) {
	require.False(t, math.IsNaN(x) || math.IsInf(x, 0), x)
	require.False(t, x == 0 && math.Signbit(x), "-0")
}

// requireWrittenReadsBack prints x as it was written. Whole numbers beside a
// fraction are read to nine digits, so larger ones are left alone.
func requireWrittenReadsBack[T interface {
	unit.Quantity
	fmt.Stringer
}](t *testing.T, parse func(s, headed string) (T, error), x T, w unit.Written) {
	require.True(t, w.Known())
	number := w.Value(float64(x))
	if math.Abs(number) > 1e8 {
		return
	}
	text := w.Text(float64(x), 0)
	back, err := parse(text, "")
	require.NoError(t, err, text)
	half := 0.5 * math.Pow10(-w.Decimals)
	if w.Over > 0 {
		half = 0.5 / float64(w.Over)
	}
	assert.InDelta(t, number, w.Value(float64(back)), half+1e-15*math.Abs(number)+1e-9*half, text)
	assert.Equal(t, text, w.Text(float64(back), 0), "printed again")
}

func FuzzParseLength(f *testing.F) {
	addReal(f)
	f.Fuzz(func(t *testing.T, s, headed string) { checkParse(t, unit.ParseLengthIn, s, headed) })
}

func FuzzParseMass(f *testing.F) {
	addReal(f)
	f.Fuzz(func(t *testing.T, s, headed string) { checkParse(t, unit.ParseMassIn, s, headed) })
}

func FuzzParseForce(f *testing.F) {
	addReal(f)
	f.Fuzz(func(t *testing.T, s, headed string) { checkParse(t, unit.ParseForceIn, s, headed) })
}

func FuzzParseLinearDensity(f *testing.F) {
	addReal(f)
	f.Fuzz(func(t *testing.T, s, headed string) { checkParse(t, unit.ParseLinearDensityIn, s, headed) })
}

// Numbers and angles have no printer of their own; the shortest decimal stands
// in for it.
func FuzzParseNumber(f *testing.F) {
	addReal(f)
	f.Fuzz(func(t *testing.T, s, _ string) {
		x, err := unit.ParseNumber(s)
		if err != nil {
			assert.Zero(t, x)
			assert.NotEmpty(t, err.Error())
			return
		}
		requirePlain(t, x)
		assert.True(t, unit.Bare(s))
		again, err := unit.ParseNumber(strconv.FormatFloat(x, 'g', -1, 64))
		require.NoError(t, err)
		assert.Equal(t, x, again)
	})
}

func FuzzParseAngle(f *testing.F) {
	addReal(f)
	f.Fuzz(func(t *testing.T, s, _ string) {
		angle, err := unit.ParseAngle(s)
		x := angle.Rad()
		if err != nil {
			assert.Zero(t, x)
			assert.NotEmpty(t, err.Error())
			return
		}
		requirePlain(t, x)
		again, err := unit.ParseAngle(strconv.FormatFloat(x*(180/math.Pi), 'g', -1, 64) + " deg")
		if math.Abs(x) < 1e300 && math.Abs(x) > 1e-300 || x == 0 {
			require.NoError(t, err)
			assert.InDelta(t, x, float64(again), 1e-15*math.Abs(x)) // four roundings
		}
	})
}

// Whatever finite number is printed, in any unit and to any figures, reads back
// to half of the last one printed, and prints the same again; zero has no sign.
func FuzzPrint(f *testing.F) {
	for _, x := range []float64{0.648, 0.6477, 1.5 / 64 * unit.Inch, -1e-9, 0, 44.482216152605, 7.3 * 9.80665, 1e4, -0.0254 / 128, 0.99999} {
		f.Add(x, 1)
		f.Add(x, 3)
	}
	f.Fuzz(func(t *testing.T, x float64, decimals int) {
		decimals = (decimals%7 + 7) % 7
		if math.IsNaN(x) || math.Abs(x) > 1e5 { // a hundred kilometres, ten tonnes
			return
		}
		for _, u := range []unit.LengthUnit{unit.Millimetres, unit.DecimalInches, unit.InchFractions} {
			text := u.Format(unit.Length(x), decimals)
			back, err := unit.ParseLengthIn(text, u.Symbol())
			require.NoError(t, err, text)
			half := 0.5 * math.Pow10(-decimals)
			switch u {
			case unit.DecimalInches:
				half /= 100
			case unit.InchFractions:
				half = 0.5 / 64
			}
			requireNear(t, text, u.Value(unit.Length(x)), u.Value(back), half)
			assert.Equal(t, text, u.Format(back, decimals))
		}
		for _, u := range []unit.ForceUnit{unit.Newtons, unit.PoundsForce, unit.KilogramsForce} {
			text := u.Format(unit.Force(x), decimals)
			back, err := unit.ParseForceIn(text, u.Symbol())
			require.NoError(t, err, text)
			half := 0.5 * math.Pow10(-decimals)
			if u != unit.Newtons {
				half /= 10
			}
			requireNear(t, text, u.Value(unit.Force(x)), u.Value(back), half)
			assert.Equal(t, text, u.Format(back, decimals))
		}
	})
}

// requireNear holds what was read back to half of the last printed digit and
// the roundings of a conversion.
func requireNear(t *testing.T, text string, want, got, half float64) {
	require.False(t, strings.HasPrefix(text, "-") && strings.Trim(text, "-0./ ") == "", text)
	require.InDelta(t, want, got, half*(1+1e-9)+4e-16*math.Abs(want), text)
}
