package fan_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"scalepair/data/unit"
	"scalepair/fan"
)

func mustLayout(t testing.TB, spec fan.Spec) *fan.Layout {
	t.Helper()
	l, err := fan.New(spec)
	require.NoError(t, err)
	return l
}

func TestNeutralLine(t *testing.T) {
	for name, neutral := range map[string]fan.Neutral{
		"nut": {}, "between two frets": {Fret: 7.5}, "a fret": {Fret: 12}, "last fret": {Fret: 24}, "bridge": {Bridge: true},
	} {
		t.Run(name, func(t *testing.T) {
			spec := sixStrings()
			spec.Neutral = neutral
			l := mustLayout(t, spec)
			n := l.Neutral
			require.Equal(t, n.Bass.X.MM(), n.Treble.X.MM(), "square to the centreline")
			share := 1 - math.Exp2(-neutral.Fret/12)
			if neutral.Bridge {
				share = 1
			}
			require.InDelta(t, 690*share, n.BassFromNut.MM(), close9)
			require.InDelta(t, 650*share, n.TrebleFromNut.MM(), close9)
			require.InDelta(t, n.BassFromNut.MM(), math.Hypot(n.Bass.X.MM()-l.Nut.Bass.X.MM(), n.Bass.Y.MM()-l.Nut.Bass.Y.MM()), close9)
			require.InDelta(t, n.TrebleFromNut.MM(), math.Hypot(n.Treble.X.MM()-l.Nut.Treble.X.MM(), n.Treble.Y.MM()-l.Nut.Treble.Y.MM()), close9)
			require.InDelta(t, n.TrebleBehind.MM(), n.Treble.X.MM()-l.Nut.Treble.X.MM(), close9)
			require.InDelta(t, l.NutOffset.MM(), n.BassBehind.MM()-n.TrebleBehind.MM(), close9)
			if !neutral.Bridge {
				require.Zero(t, l.Frame.TanSlant(neutral.Fret), "exactly square")
			}
		})
	}
}

// A fan opens both ways from its neutral fret: bass end nearer the head on the
// nut's side, nearer the bridge beyond.
func TestSlantSigns(t *testing.T) {
	l := mustLayout(t, sixStrings())
	assert.Negative(t, l.Nut.TanSlant)
	assert.Positive(t, l.Saddle.TanSlant)
	assert.Positive(t, l.NutOffset.MM())
	assert.Less(t, l.Nut.Bass.X.MM(), l.Nut.Treble.X.MM())
	assert.Greater(t, l.Saddle.Bass.X.MM(), l.Saddle.Treble.X.MM())
	slants := l.Slants()
	require.Len(t, slants, 4)
	for i, n := range []int{1, 3, 12, 24} {
		assert.Equal(t, fan.SlantAt{Fret: n, Slant: l.Frets[n].Line.Slant}, slants[i])
	}
	spec := sixStrings()
	spec.Frets, spec.Neutral = 3, fan.Neutral{}
	assert.Len(t, mustLayout(t, spec).Slants(), 2)
}

func TestEqualGapsAreEqual(t *testing.T) {
	gaps := func(s *fan.Spec) {
		s.NutSpacing, s.SaddleSpacing = fan.Spacing{Rule: fan.EqualGaps}, fan.Spacing{Rule: fan.EqualGaps}
	}
	overNecks(t, gaps, func(t *rapid.T, l *fan.Layout) {
		spec := l.Spec
		for _, positions := range [][]fan.Position{l.NutPositions, l.SaddlePositions} {
			first := math.NaN()
			for i, pos := range positions[:len(positions)-1] {
				gap := pos.SpacingSquare.MM() - (spec.Diameters[i]+spec.Diameters[i+1]).MM()/2
				if i == 0 {
					first = gap
				}
				require.InDelta(t, first, gap, close9)
				require.Positive(t, gap)
			}
		}
	})
}

// Equal gaps at both ends are not equal fractions: the tool must say so, and
// the cure must cure.
func TestUnequalFractionsCostCents(t *testing.T) {
	spec := sixStrings()
	spec.NutSpacing, spec.SaddleSpacing = fan.Spacing{Rule: fan.EqualGaps}, fan.Spacing{Rule: fan.EqualGaps}
	spec.Diameters = millimetres(0.28, 0.36, 0.46, 0.81, 1.12, 1.52)
	l := mustLayout(t, spec)
	worst, ok := l.WorstCents()
	require.True(t, ok)
	require.Equal(t, l.CentsErrors[0], worst)
	for i, e := range l.CentsErrors {
		require.Equal(t, e.Cents.Value(), l.Frets[e.Fret].CentsSharp[e.String-1].Value())
		require.LessOrEqual(t, math.Abs(e.Cents.Value()), math.Abs(worst.Cents.Value()), "the worst stands first")
		if i > 0 {
			require.GreaterOrEqual(t, math.Abs(l.CentsErrors[i-1].Cents.Value()), math.Abs(e.Cents.Value()))
		}
		require.NotContains(t, []int{1, 6}, e.String, "the outer strings are exact by construction")
	}
	spec.SaddleSpacing = fan.Spacing{Rule: fan.LikeNut}
	l = mustLayout(t, spec)
	require.Empty(t, l.CentsErrors)
	_, ok = l.WorstCents()
	require.False(t, ok)
}

// A case for paper and pencil: two outer strings of 600 and 500 mm on parallel
// lines 100 mm apart, a square nut, and a middle string moved to 0.6 at the
// saddle.
func TestCentsSignByHand(t *testing.T) {
	spec := fan.Spec{
		Bass: unit.MM(600), Treble: unit.MM(500), Strings: 3,
		Neck: fan.Neck{
			Frets: 12, NutSpread: unit.MM(100), SaddleSpread: unit.MM(100),
			SaddleSpacing: fan.Spacing{Rule: fan.Listed, Steps: millimetres(60, 40)},
		},
	}
	l := mustLayout(t, spec)
	// No taper. The middle string runs from (0, 0) to (560, 10); fret 12 from
	// (250, -50) to (300, 50) is x = 275 + y/2, met where 560 u = 275 + 5 u.
	u := 275.0 / 555
	require.InDelta(t, math.Hypot(560, 10), l.Strings[1].Length.MM(), close9)
	require.InDelta(t, 1200*math.Log2(0.5/(1-u)), l.Frets[12].CentsSharp[1].Value(), close9)
	require.Negative(t, l.Frets[12].CentsSharp[1], "u below one half leaves more than half to sound: flat")
	require.InDelta(t, math.Atan(0.5), l.Frets[12].Line.Slant.Rad(), 1e-12)
}

func TestSeatsAlongAndSquare(t *testing.T) {
	l := mustLayout(t, sixStrings())
	for name, line := range map[string]struct {
		positions []fan.Position
		across    fan.Across
	}{"nut": {l.NutPositions, l.Nut}, "saddle": {l.SaddlePositions, l.Saddle}} {
		t.Run(name, func(t *testing.T) {
			chord := math.Hypot(line.across.Bass.X.MM()-line.across.Treble.X.MM(), line.across.Bass.Y.MM()-line.across.Treble.Y.MM())
			sumAlong, sumSquare := 0.0, 0.0
			for i, pos := range line.positions {
				require.Equal(t, i+1, pos.String)
				require.GreaterOrEqual(t, pos.SpacingAlong.MM(), pos.SpacingSquare.MM(), "longer along the slant")
				sumAlong += pos.SpacingAlong.MM()
				sumSquare += pos.SpacingSquare.MM()
			}
			require.InDelta(t, chord, sumAlong, close9)
			require.InDelta(t, chord, line.positions[0].AlongFromBass.MM(), close9)
			require.InDelta(t, sumSquare, line.positions[0].SquareFromBass.MM(), close9)
			require.Zero(t, line.positions[5].AlongFromBass.MM())
		})
	}
	nut := l.NutPositions
	slot := l.Frets[0].Slot
	require.Equal(t, slot.Length.MM(), l.NutBlank.MM())
	for _, pos := range nut {
		require.InDelta(t, math.Hypot(slot.Bass.X.MM()-pos.At.X.MM(), slot.Bass.Y.MM()-pos.At.Y.MM()), pos.AlongFromEdge.MM(), close9)
		require.InDelta(t, 0, pos.FromNut.MM(), close9)
	}
	for i, pos := range l.SaddlePositions {
		require.InDelta(t, l.Strings[i].Length.MM(), pos.FromNut.MM(), close9)
	}
}

func TestFurtherLine(t *testing.T) {
	l := mustLayout(t, sixStrings())
	slant := 5 * math.Pi / 180
	placed, err := l.Place(fan.Line{Name: "pickup", BehindLastFret: unit.MM(30), Slant: unit.Angle(slant)})
	require.NoError(t, err)
	line := placed.Line
	require.InDelta(t, l.Frets[24].Line.Cross.MM()+30, line.Cross.MM(), close9)
	same, err := l.LineAt(line.Cross, unit.Angle(slant))
	require.NoError(t, err)
	require.Equal(t, line, same)
	require.InDelta(t, slant, line.Slant.Rad(), 1e-12)
	positions := l.StringsAt(line)
	require.InDelta(t, 0, math.Hypot(positions[5].At.X.MM()-line.Bass.X.MM(), positions[5].At.Y.MM()-line.Bass.Y.MM()), close9)
	require.InDelta(t, 0, math.Hypot(positions[0].At.X.MM()-line.Treble.X.MM(), positions[0].At.Y.MM()-line.Treble.Y.MM()), close9)
	for i, pos := range positions {
		require.InDelta(t, line.Cross.MM()+pos.At.Y.MM()*math.Tan(slant), pos.At.X.MM(), close9, "on the line")
		_, at := crossing(number(l.Strings[i].Nut), number(l.Strings[i].Saddle), number(line.Treble), number(line.Bass))
		require.InDelta(t, real(at), pos.At.X.MM(), close9)
	}
	for name, bad := range map[string]fan.Line{
		"no number": {BehindLastFret: unit.Length(math.NaN())}, "endless": {FromSaddle: unit.Length(math.Inf(1))},
		"too steep": {Slant: 1.2}, "behind the saddle": {FromSaddle: unit.MM(-1)}, "below the nut": {FromSaddle: unit.MM(4000)},
		"upside down": {Slant: math.Pi},
	} {
		_, err := l.Place(bad)
		require.Error(t, err, name)
		require.NotContains(t, err.Error(), "NaN", name)
		require.NotContains(t, err.Error(), "Inf", name)
	}
}

func millimetres(mm ...float64) []unit.Length {
	out := make([]unit.Length, len(mm))
	for i := range out {
		out[i] = unit.MM(mm[i])
	}
	return out
}
