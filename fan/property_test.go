package fan_test

import (
	"math"
	"reflect"
	"slices"
	"testing"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"scalepair/data/unit"
	"scalepair/fan"
)

// numbersIn walks a value and calls see for every float64 in it, unexported
// fields left out.
func numbersIn(v reflect.Value, see func(float64)) {
	switch v.Kind() {
	case reflect.Float64:
		see(v.Float())
	case reflect.Pointer:
		if !v.IsNil() {
			numbersIn(v.Elem(), see)
		}
	case reflect.Slice, reflect.Array:
		for i := range v.Len() {
			numbersIn(v.Index(i), see)
		}
	case reflect.Struct:
		for i := range v.NumField() {
			if v.Type().Field(i).IsExported() {
				numbersIn(v.Field(i), see)
			}
		}
	}
}

// requireSound fails on a NaN, an infinity or a -0 anywhere in the values.
func requireSound(t require.TestingT, values ...any) {
	for _, value := range values {
		numbersIn(reflect.ValueOf(value), func(x float64) {
			require.False(t, math.IsNaN(x) || math.IsInf(x, 0), "%T holds %v", value, x)
			require.False(t, x == 0 && math.Signbit(x), "%T holds -0", value)
		})
	}
}

func everything(t require.TestingT, l *fan.Layout) []any {
	wire, err := l.Wire(fan.DefaultFretWire())
	require.NoError(t, err)
	fences, err := l.Fences(unit.MM(0.6))
	require.NoError(t, err)
	depths, err := sawn{Sawing: fan.Sawing{FretWire: fan.FretWire{TangDepth: unit.MM(1.6)}}, RadiusNut: unit.MM(400), RadiusLast: unit.MM(500)}.depths(l)
	require.NoError(t, err)
	saddles, err := l.Saddles(make([]fan.Compensation, len(l.Strings)))
	require.NoError(t, err)
	return []any{l, l.Board(), l.LeastBlank(), l.Slants(), l.FaceDots(fan.CommonDots(l.Spec.Frets)), l.SideDots(fan.CommonDots(l.Spec.Frets)), wire, fences, depths, saddles,
		l.StringsAt(l.Board().NutEnd), l.StringsAt(l.Board().BodyEnd)}
}

func TestNoNumberIsNaNOrMinusZero(t *testing.T) {
	overNecks(t, nil, func(t *rapid.T, l *fan.Layout) {
		requireSound(t, everything(t, l)...)
	})
}

// The cheap route, the checked route and the layout give the same bits.
func TestFrameAndLayoutAgreeToTheBit(t *testing.T) {
	overNecks(t, nil, func(t *rapid.T, l *fan.Layout) {
		spec := l.Spec
		base, err := fan.NewBase(spec)
		require.NoError(t, err)
		f, reason := base.Frame(spec.Bass, spec.Treble)
		require.Equal(t, fan.Fits, reason)
		require.Equal(t, spec.Strings, f.Strings())
		require.Equal(t, spec.Bass.MM(), f.Length(spec.Strings-1).MM())
		require.Equal(t, spec.Treble.MM(), f.Length(0).MM())
		require.InDelta(t, (spec.Bass - spec.Treble).MM(), f.Difference().MM(), 1e-9)
		for i, s := range l.Strings {
			require.Equal(t, s.Length.MM(), f.Length(i).MM())
		}
		for n, fret := range l.Frets {
			require.Equal(t, fret.Line.TanSlant, f.TanSlant(float64(n)))
		}
		require.Equal(t, l.Nut.TanSlant, f.NutTan())
		require.Equal(t, l.Saddle.TanSlant, f.SaddleTan())
		require.Equal(t, l.Frets[1].Bass.FromNut.MM(), f.NutToFret1().MM())
		require.Equal(t, l.LeastBlank(), f.LeastBlank())
	})
}

// mirrored exchanges bass and treble.
func mirrored(s fan.Spec) fan.Spec {
	s.Bass, s.Treble = s.Treble, s.Bass
	s.BassMargin, s.TrebleMargin = s.TrebleMargin, s.BassMargin
	s.Diameters = slices.Clone(s.Diameters)
	slices.Reverse(s.Diameters)
	turn := func(sp fan.Spacing) fan.Spacing {
		sp.Steps = slices.Clone(sp.Steps)
		slices.Reverse(sp.Steps)
		return sp
	}
	s.NutSpacing, s.SaddleSpacing = turn(s.NutSpacing), turn(s.SaddleSpacing)
	return s
}

func TestMirrorSymmetry(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		spec := randomNeck(t)
		a, errA := fan.New(spec)
		b, errB := fan.New(mirrored(spec))
		require.Equal(t, errA == nil, errB == nil)
		if errA != nil {
			t.Skip(errA)
		}
		flipped := func(want, got fan.Point) {
			require.InDelta(t, want.X.MM(), got.X.MM(), close9)
			require.InDelta(t, want.Y.MM(), -got.Y.MM(), close9)
		}
		last := spec.Strings - 1
		for i, s := range a.Strings {
			other := b.Strings[last-i]
			require.InDelta(t, s.Length.MM(), other.Length.MM(), close9)
			flipped(s.Nut, other.Nut)
			flipped(s.Saddle, other.Saddle)
		}
		for n, fret := range a.Frets {
			other := b.Frets[n]
			require.InDelta(t, fret.Line.Slant.Rad(), -other.Line.Slant.Rad(), close9)
			flipped(fret.Slot.Bass, other.Slot.Treble)
			for i, cents := range fret.CentsSharp {
				require.InDelta(t, cents.Value(), other.CentsSharp[last-i].Value(), close9)
			}
		}
		require.InDelta(t, a.LeastBlank().Width.MM(), b.LeastBlank().Width.MM(), close9)
		require.InDelta(t, a.DiagonalBassNut.MM(), b.DiagonalTrebleNut.MM(), close9)
	})
}

func TestEqualLengthsGiveParallelFrets(t *testing.T) {
	straight := func(s *fan.Spec) { s.Bass = s.Treble }
	overNecks(t, straight, func(t *rapid.T, l *fan.Layout) {
		spec := l.Spec
		require.True(t, l.Parallel)
		require.Zero(t, l.NutOffset.MM())
		require.Zero(t, l.Saddle.TanSlant)
		for _, fret := range l.Frets {
			require.Zero(t, fret.Line.TanSlant)
			require.Zero(t, fret.Line.Slant.Rad())
			require.Equal(t, fret.Slot.Bass.X.MM(), fret.Slot.Treble.X.MM())
		}
		spec.Neutral = fan.Neutral{Bridge: !spec.Neutral.Bridge}
		other, err := fan.New(spec)
		require.NoError(t, err)
		require.Equal(t, l.Frets, other.Frets, "the neutral fret has no effect")
	})
}

func TestStepsSumToPositions(t *testing.T) {
	overNecks(t, nil, func(t *rapid.T, l *fan.Layout) {
		bass, treble := 0.0, 0.0
		for _, fret := range l.Frets {
			bass += fret.Bass.Step.MM()
			treble += fret.Treble.Step.MM()
			require.InDelta(t, fret.Bass.FromNut.MM(), bass, close9)
			require.InDelta(t, fret.Treble.FromNut.MM(), treble, close9)
			// One cent's worth of shift changes the pitch by one cent, nearly.
			rest := l.Spec.Bass.MM() - fret.Bass.FromNut.MM()
			require.InDelta(t, 1, 1200*math.Log2(rest/(rest-fret.Bass.OneCent.MM())), 0.001)
		}
	})
}

// With the same fractions at nut and saddle every fret divides every string
// alike: fret 12 halves them all.
func TestFret12HalvesEveryString(t *testing.T) {
	octave := func(s *fan.Spec) {
		s.Frets, s.SaddleSpacing = max(s.Frets, 12), fan.Spacing{Rule: fan.LikeNut}
	}
	overNecks(t, octave, func(t *rapid.T, l *fan.Layout) {
		require.Empty(t, l.CentsErrors)
		for i, pos := range l.StringsAt(l.Frets[12].Line) {
			require.InDelta(t, l.Strings[i].Length.MM()/2, pos.FromNut.MM(), close9, "string %d", i+1)
			require.InDelta(t, l.Strings[i].At(0.5).X.MM(), pos.At.X.MM(), close9)
			require.InDelta(t, l.Strings[i].At(0.5).Y.MM(), pos.At.Y.MM(), close9)
		}
	})
}

// Twice every length gives twice every number.
func TestEverythingScales(t *testing.T) {
	spec := sixStrings()
	spec.NutShelf = unit.MM(4)
	small, err := fan.New(spec)
	require.NoError(t, err)
	for _, mm := range []*unit.Length{&spec.Bass, &spec.Treble, &spec.NutSpread, &spec.SaddleSpread, &spec.EdgeMargin,
		&spec.NutShelf, &spec.BodyEndOverhang, &spec.SawAllowance} {
		*mm *= 2
	}
	big, err := fan.New(spec)
	require.NoError(t, err)
	for i, s := range small.Strings {
		require.InDelta(t, 2*s.Length.MM(), big.Strings[i].Length.MM(), close9)
	}
	require.InDelta(t, small.Saddle.TanSlant, big.Saddle.TanSlant, 1e-12)
	require.InDelta(t, 2*small.LeastBlank().Length.MM(), big.LeastBlank().Length.MM(), close9)
	require.InDelta(t, 2*small.NutBlank.MM(), big.NutBlank.MM(), close9)
}

// Widths read off a layout with spreads lead back to it.
func TestBoardWidthsInsteadOfSpreads(t *testing.T) {
	overNecks(t, nil, func(t *rapid.T, want *fan.Layout) {
		spec := want.Spec
		at := rapid.IntRange(1, spec.Frets).Draw(t, "other width at fret")
		here, err := want.LineAt(want.Frets[at].Line.Cross, 0)
		require.NoError(t, err)
		bass, treble := spec.Margins()
		spec.NutWidth, spec.OtherWidth = spec.NutSpread+bass+treble, here.Bass.Y-here.Treble.Y+bass+treble
		spec.WidthAtFret = float64(at)
		spec.NutSpread, spec.SaddleSpread = 0, 0
		got, err := fan.New(spec)
		require.NoError(t, err)
		for i := range want.Strings {
			// The width at fret 1 is some twenty times less telling than at the bridge.
			require.InDelta(t, want.Strings[i].Saddle.Y.MM(), got.Strings[i].Saddle.Y.MM(), 1e-8)
			require.InDelta(t, want.Strings[i].Length.MM(), got.Strings[i].Length.MM(), 1e-8)
		}
	})
}

// The spreads hold where the nut line and the saddle line cross the centreline.
func TestSpansHoldOnTheCentreline(t *testing.T) {
	overNecks(t, nil, func(t *rapid.T, l *fan.Layout) {
		spec := l.Spec
		for cross, spread := range map[float64]float64{0: spec.NutSpread.MM(), l.Saddle.Cross.MM(): spec.SaddleSpread.MM()} {
			square, err := l.LineAt(unit.MM(cross), 0)
			require.NoError(t, err)
			require.InDelta(t, spread, square.Bass.Y.MM()-square.Treble.Y.MM(), close9)
			require.InDelta(t, square.Bass.Y.MM(), -square.Treble.Y.MM(), close9)
		}
		require.Zero(t, l.Nut.Cross.MM())
		require.InDelta(t, 0, l.Nut.Bass.X.MM()-l.Nut.Bass.Y.MM()*l.Nut.TanSlant, close9)
	})
}
