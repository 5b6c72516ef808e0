package fan_test

import (
	"math"
	"slices"
	"testing"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"scalepair/data/testutil"
	"scalepair/data/unit"
	"scalepair/fan"
)

// No number of a layout, or of what is made from it, is NaN, infinite or -0.
func TestEveryLayoutIsSound(t *testing.T) {
	overNecks(t, nil, func(t *rapid.T, l *fan.Layout) {
		l.Spec.RadiusNut, l.Spec.RadiusLast = unit.MM(400), unit.MM(500)
		wire, err := l.Wire(fan.DefaultFretWire())
		require.NoError(t, err)
		depths, err := l.Depths(fan.Sawing{FretWire: fan.FretWire{TangDepth: unit.MM(1.6)}})
		require.NoError(t, err)
		dots := fan.CommonDots(l.Spec.Frets)
		for _, made := range []any{l, l.Board(), l.LeastBlank(), l.FaceDots(dots), l.SideDots(dots), wire, depths, l.Fences(unit.MM(0.6)),
			l.Saddles(make([]fan.Compensation, len(l.Strings))), l.StringsAt(l.Board().BodyEnd)} {
			testutil.CheckFinite(t, made)
		}
	})
}

// Of wild necks many make no instrument; where one does, every fret lies behind the
// one before it, all along its slot, and no strings cross.
func TestWildNecksKeepTheirOrder(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		spec := randomNeck(t)
		spec.Bass = spec.Treble + unit.MM(rapid.Float64Range(-300, 300).Draw(t, "difference"))
		spec.NutSpread = unit.MM(rapid.Float64Range(5, 300).Draw(t, "string spread at the nut"))
		spec.SaddleSpread = unit.MM(rapid.Float64Range(5, 300).Draw(t, "string spread at the saddle"))
		spec.BassMargin = new(unit.MM(rapid.Float64Range(0, 50).Draw(t, "margin")))
		l, err := fan.New(spec)
		if err != nil {
			return
		}
		testutil.CheckFinite(t, l)
		for n, fret := range l.Frets[1:] {
			require.Greater(t, fret.Slot.Bass.X, l.Frets[n].Slot.Bass.X)
			require.Greater(t, fret.Slot.Treble.X, l.Frets[n].Slot.Treble.X)
			require.Greater(t, fret.Slot.Bass.Y, fret.Slot.Treble.Y)
		}
		for i := range l.Strings[1:] {
			require.Greater(t, l.Strings[i+1].Nut.Y, l.Strings[i].Nut.Y)
			require.Greater(t, l.Strings[i+1].Saddle.Y, l.Strings[i].Saddle.Y)
		}
	})
}

// The cheap route and the layout give the same bits.
func TestFrameAndLayoutAgreeToTheBit(t *testing.T) {
	overNecks(t, nil, func(t *rapid.T, l *fan.Layout) {
		spec := l.Spec
		base, err := fan.NewBase(spec)
		require.NoError(t, err)
		f, reason := base.Frame(spec.Bass, spec.Treble)
		require.Equal(t, fan.Fits, reason)
		require.Equal(t, [2]unit.Length{spec.Treble, spec.Bass}, [2]unit.Length{f.Length(0), f.Length(spec.Strings - 1)})
		near(t, spec.Bass-spec.Treble, f.Difference())
		for i, s := range l.Strings {
			require.Equal(t, s.Length, f.Length(i))
		}
		for n, fret := range l.Frets {
			require.Equal(t, fret.Line.TanSlant, f.TanSlant(float64(n)))
		}
		require.Equal(t, l.Saddle.TanSlant, f.SaddleTan())
		require.Equal(t, l.Frets[1].Bass.FromNut, f.NutToFret1())
	})
}

// mirrored exchanges bass and treble.
func mirrored(s fan.Spec) fan.Spec {
	turn := func(list []unit.Length) []unit.Length {
		list = slices.Clone(list)
		slices.Reverse(list)
		return list
	}
	s.Bass, s.Treble = s.Treble, s.Bass
	s.BassMargin, s.TrebleMargin = s.TrebleMargin, s.BassMargin
	s.Diameters, s.NutSpacing.Steps, s.SaddleSpacing.Steps = turn(s.Diameters), turn(s.NutSpacing.Steps), turn(s.SaddleSpacing.Steps)
	return s
}

func TestMirrorSymmetry(t *testing.T) {
	overNecks(t, nil, func(t *rapid.T, a *fan.Layout) {
		b, err := fan.New(mirrored(a.Spec))
		require.NoError(t, err)
		flipped := func(want, got fan.Point) {
			near(t, want.X, got.X)
			near(t, want.Y, -got.Y)
		}
		last := a.Spec.Strings - 1
		for i, s := range a.Strings {
			other := b.Strings[last-i]
			near(t, s.Length, other.Length)
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
		near(t, a.LeastBlank().Width, b.LeastBlank().Width)
		near(t, a.DiagonalBassNut, b.DiagonalTrebleNut)
	})
}

func TestEqualLengthsGiveParallelFrets(t *testing.T) {
	straight := func(s *fan.Spec) { s.Bass = s.Treble }
	overNecks(t, straight, func(t *rapid.T, l *fan.Layout) {
		require.True(t, l.Parallel)
		for _, fret := range l.Frets {
			require.Equal(t, fret.Slot.Bass.X, fret.Slot.Treble.X)
		}
		spec := l.Spec
		spec.Neutral = fan.Neutral{Bridge: !spec.Neutral.Bridge}
		other, err := fan.New(spec)
		require.NoError(t, err)
		require.Equal(t, l.Frets, other.Frets, "the neutral fret has no effect")
	})
}

func TestStepsSumToPositions(t *testing.T) {
	overNecks(t, nil, func(t *rapid.T, l *fan.Layout) {
		var bass, treble unit.Length
		for _, fret := range l.Frets {
			bass, treble = bass+fret.Bass.Step, treble+fret.Treble.Step
			near(t, fret.Bass.FromNut, bass)
			near(t, fret.Treble.FromNut, treble)
			// One cent's worth of shift changes the pitch by one cent, nearly.
			rest := l.Spec.Bass - fret.Bass.FromNut
			require.InDelta(t, 1, 1200*math.Log2(float64(rest/(rest-fret.Bass.OneCent))), 0.001)
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
		_, ok := l.WorstCents()
		require.False(t, ok)
		for i, pos := range l.StringsAt(l.Frets[12].Line) {
			near(t, l.Strings[i].Length/2, l.Strings[i].Nut.Distance(pos.At), "string %d", i+1)
			near(t, 0, l.Strings[i].At(0.5).Distance(pos.At))
		}
	})
}

// Twice every length gives twice every number.
func TestEverythingScales(t *testing.T) {
	spec := sixStrings()
	spec.NutShelf = unit.MM(4)
	small := mustLayout(t, spec)
	for _, l := range []*unit.Length{&spec.Bass, &spec.Treble, &spec.NutSpread, &spec.SaddleSpread, &spec.EdgeMargin,
		&spec.NutShelf, &spec.BodyEndOverhang, &spec.SawAllowance} {
		*l *= 2
	}
	big := mustLayout(t, spec)
	for i, s := range small.Strings {
		near(t, 2*s.Length, big.Strings[i].Length)
	}
	require.InDelta(t, small.Saddle.TanSlant, big.Saddle.TanSlant, 1e-12)
	near(t, 2*small.LeastBlank().Length, big.LeastBlank().Length)
	near(t, 2*small.Frets[0].Slot.Length, big.Frets[0].Slot.Length)
}

// width is the distance of the outer strings square across at a place on the
// centreline.
func width(t require.TestingT, l *fan.Layout, cross unit.Length) unit.Length {
	square, err := l.Place(fan.Line{FromSaddle: l.Saddle.Cross - cross})
	require.NoError(t, err)
	near(t, square.Line.Bass.Y, -square.Line.Treble.Y)
	return square.Line.Bass.Y - square.Line.Treble.Y
}

// The spreads hold where the nut line and the saddle line cross the centreline,
// and board widths read off a layout lead back to it.
func TestSpreadsAndWidths(t *testing.T) {
	overNecks(t, nil, func(t *rapid.T, want *fan.Layout) {
		spec := want.Spec
		require.Zero(t, want.Nut.Cross)
		near(t, want.Nut.Bass.X, want.Nut.Bass.Y*unit.Length(want.Nut.TanSlant))
		near(t, spec.NutSpread, width(t, want, 0))
		near(t, spec.SaddleSpread, width(t, want, want.Saddle.Cross))
		at := rapid.IntRange(1, spec.Frets).Draw(t, "other width at fret")
		bass, treble := spec.Margins()
		spec.NutWidth, spec.OtherWidth = spec.NutSpread+bass+treble, width(t, want, want.Frets[at].Line.Cross)+bass+treble
		spec.WidthAtFret, spec.NutSpread, spec.SaddleSpread = float64(at), 0, 0
		got, err := fan.New(spec)
		require.NoError(t, err)
		for i := range want.Strings {
			// The width at fret 1 is some twenty times less telling than at the bridge.
			require.InDelta(t, want.Strings[i].Saddle.Y.MM(), got.Strings[i].Saddle.Y.MM(), 1e-8)
			require.InDelta(t, want.Strings[i].Length.MM(), got.Strings[i].Length.MM(), 1e-8)
		}
	})
}
