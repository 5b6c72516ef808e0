package unit_test

import (
	"math"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"scalepair/data/unit"
)

// edges are handwritten edges of the grammar.
var edges = []string{
	"648 mm", "25 1/2\"", "25-1/2 in", "¼ in", "-1e3 cm", "648,5 mm", "nan mm", "1e999 m", "1/0 in", "″", "0.43 g", "", "\xff", "0x1p-2 mm", "1_0 mm",
	"-1e-999 mm", "-0/1 in", "9e307 m", "999999999 999999998/3 in", "1e-320 m", "+.5 m", "0.6" + strings.Repeat("9", 400) + " mm",
}

// requirePlain fails on NaN, infinities and -0.
func requirePlain(t *testing.T, x float64) {
	require.False(t, math.IsNaN(x) || math.IsInf(x, 0), x)
	require.False(t, x == 0 && math.Signbit(x), "-0")
}

// An error means the zero value and a message; success means a finite number,
// never -0, that prints and reads back to itself. A heading's unit is taken by a
// bare number, and never changes what a text with a unit means. The written form
// prints to half of its last digit.
func FuzzParse(f *testing.F) {
	for _, s := range edges {
		f.Add(s, "")
		f.Add(s, "mm")
	}
	f.Fuzz(func(t *testing.T, s, headed string) {
		x, err := unit.ParseLength(s)
		under, headErr := unit.ParseLengthIn(s, headed)
		for l, err := range map[unit.Length]error{x: err, under: headErr} {
			if err != nil {
				assert.Zero(t, float64(l))
				assert.NotContains(t, err.Error(), "\n")
				continue
			}
			requirePlain(t, float64(l))
			again, err := unit.ParseLength(l.String())
			require.NoError(t, err)
			assert.Equal(t, l, again)
		}
		if err != nil {
			return
		}
		if headErr == nil {
			assert.Equal(t, x, under)
		}
		w := unit.Form[unit.Length](s, "")
		number := w.Value(float64(x))
		if math.Abs(number) > 1e8 { // more than a fraction is read with
			return
		}
		text := w.Text(float64(x), 0)
		back, err := unit.ParseLength(text)
		require.NoError(t, err, text)
		half := 0.5 * math.Pow10(-w.Decimals)
		if w.Over > 0 {
			half = 0.5 / float64(w.Over)
		}
		assert.InDelta(t, number, w.Value(float64(back)), half+1e-15*math.Abs(number)+1e-9*half, text)
		assert.Equal(t, text, w.Text(float64(back), 0), "printed again")
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
			back, err := unit.ParseForce(text + " " + u.Symbol())
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
// the roundings of a conversion and of a tie (0x1p-50).
func requireNear(t *testing.T, text string, want, got, half float64) {
	require.False(t, strings.HasPrefix(text, "-") && strings.Trim(text, "-0./ ") == "", text)
	require.InDelta(t, want, got, half*(1+1e-9)+13e-16*math.Abs(want), text)
}
