package fan_test

import (
	"math"
	"math/cmplx"
	"testing"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"scalepair/data/testutil"
	"scalepair/data/unit"
	"scalepair/fan"
)

var _ = testutil.Seed("3141592653")

const close9 = 1e-9 // mm, and for angles' tangents and cents

// near asks for two lengths that are equal but for rounding.
func near(t require.TestingT, want, got unit.Length, about ...any) {
	require.InDelta(t, want.MM(), got.MM(), close9, about...)
}

func sixStrings() fan.Spec {
	s := fan.Spec{Strings: 6, Neck: fan.DefaultNeck()}
	s.Bass, s.Treble = unit.MM(690), unit.MM(650)
	s.NutSpread, s.SaddleSpread = unit.MM(38), unit.MM(54)
	return s
}

func mustLayout(t testing.TB, spec fan.Spec) *fan.Layout {
	t.Helper()
	l, err := fan.New(spec)
	require.NoError(t, err)
	return l
}

// randomNeck draws a neck that can be built, with unlike spreads.
func randomNeck(t *rapid.T) fan.Spec {
	s := fan.Spec{AllowReverse: true}
	s.Strings = rapid.IntRange(2, 10).Draw(t, "strings")
	s.Frets = rapid.IntRange(1, 30).Draw(t, "frets")
	s.NutSpread = unit.MM(rapid.Float64Range(25, 90).Draw(t, "string spread at the nut"))
	spread := rapid.Float64Range(1.1, 1.8).Draw(t, "spread")
	if rapid.IntRange(0, 9).Draw(t, "draws together") == 0 {
		spread = 1 / spread
	}
	s.SaddleSpread = unit.MM(s.NutSpread.MM() * spread)
	s.Treble = unit.MM(rapid.Float64Range(400, 1000).Draw(t, "treble"))
	widest := math.Min(s.NutSpread.MM(), s.SaddleSpread.MM())
	s.Bass = unit.MM(s.Treble.MM() + rapid.Float64Range(-0.5*widest, 1.2*widest).Draw(t, "difference"))
	s.Neutral.Fret = rapid.Float64Range(0, float64(s.Frets)).Draw(t, "neutral")
	if rapid.IntRange(0, 9).Draw(t, "bridge") == 0 {
		s.Neutral = fan.Neutral{Bridge: true}
	}
	s.BassMargin = new(unit.MM(rapid.Float64Range(0, 6).Draw(t, "bass margin")))
	s.TrebleMargin = new(unit.MM(rapid.Float64Range(0, 6).Draw(t, "treble margin")))
	s.NutSpacing, s.SaddleSpacing = randomSpacing(t, s.Strings, s.NutSpread), randomSpacing(t, s.Strings, s.SaddleSpread)
	s.Diameters = make([]unit.Length, s.Strings)
	for i := range s.Diameters {
		s.Diameters[i] = unit.MM(rapid.Float64Range(0.2, 2).Draw(t, "diameter"))
	}
	s.NutShelf = unit.MM(rapid.Float64Range(0, 6).Draw(t, "pos"))
	s.BodyEndOverhang = unit.MM(rapid.Float64Range(0, 10).Draw(t, "body_end"))
	s.BodyEnd = rapid.SampledFrom([]fan.BodyEnd{fan.AlongLastFret, fan.SquareEnd}).Draw(t, "body end")
	s.SawAllowance = unit.MM(rapid.Float64Range(0, 3).Draw(t, "saw"))
	return s
}

// overNecks runs a check over random necks; change, when not nil, is made to
// each before it is built.
func overNecks(t *testing.T, change func(*fan.Spec), check func(t *rapid.T, l *fan.Layout)) {
	rapid.Check(t, func(t *rapid.T) {
		spec := randomNeck(t)
		if change != nil {
			change(&spec)
		}
		l, err := fan.New(spec)
		if err != nil {
			t.Skip(err)
		}
		check(t, l)
	})
}

func randomSpacing(t *rapid.T, strings int, spread unit.Length) fan.Spacing {
	rule := rapid.SampledFrom([]fan.SpacingRule{fan.EqualCentres, fan.EqualGaps, fan.Listed}).Draw(t, "rule")
	if rule != fan.Listed {
		return fan.Spacing{Rule: rule}
	}
	steps, sum := make([]unit.Length, strings-1), unit.Length(0)
	for i := range steps {
		steps[i] = unit.MM(rapid.Float64Range(0.8, 1.3).Draw(t, "step"))
		sum += steps[i]
	}
	for i := range steps {
		steps[i] *= spread / sum
	}
	return fan.Spacing{Rule: rule, Steps: steps}
}

// number is a point as a complex number.
func number(p fan.Point) complex128 { return complex(p.X.MM(), p.Y.MM()) }

// crossing is where the line through a and b meets the line through c and d:
// with cross(u, v) = Im(conj(u) v), the share of the way from a to b is
// cross(c - a, d - c)/cross(b - a, d - c).
func crossing(a, b, c, d complex128) (share float64, at complex128) {
	cross := func(u, v complex128) float64 { return imag(cmplx.Conj(u) * v) }
	share = cross(c-a, d-c) / cross(b-a, d-c)
	return share, a + complex(share, 0)*(b-a)
}

func millimetres(mm ...float64) []unit.Length {
	out := make([]unit.Length, len(mm))
	for i := range out {
		out[i] = unit.MM(mm[i])
	}
	return out
}
