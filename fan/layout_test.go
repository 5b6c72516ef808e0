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

func TestNeutralLine(t *testing.T) {
	for name, neutral := range map[string]fan.Neutral{
		"nut": {}, "between two frets": {Fret: 7.5}, "a fret": {Fret: 12}, "last fret": {Fret: 24}, "bridge": {Bridge: true},
	} {
		t.Run(name, func(t *testing.T) {
			spec := sixStrings()
			spec.Neutral = neutral
			l := mustLayout(t, spec)
			share := 1 - math.Exp2(-neutral.Fret/12)
			if neutral.Bridge {
				share = 1
			}
			// The line is square: both marks have the same x.
			for _, s := range []struct{ along, length unit.Length }{{l.Neutral.BassFromNut, spec.Bass}, {l.Neutral.TrebleFromNut, spec.Treble}} {
				near(t, s.length*unit.Length(share), s.along)
			}
			bass, treble := l.Strings[5], l.Strings[0]
			near(t, l.Neutral.X, bass.At(share).X)
			near(t, l.Neutral.X, treble.At(share).X)
			if !neutral.Bridge {
				require.Zero(t, l.TanSlant(neutral.Fret), "exactly square")
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
	assert.Positive(t, l.NutOffset)
	assert.Less(t, l.Nut.Bass.X, l.Nut.Treble.X)
	assert.Greater(t, l.Saddle.Bass.X, l.Saddle.Treble.X)
}

func TestEqualGapsAreEqual(t *testing.T) {
	gaps := func(s *fan.Spec) {
		s.NutSpacing, s.SaddleSpacing = fan.Spacing{Rule: fan.EqualGaps}, fan.Spacing{Rule: fan.EqualGaps}
	}
	overNecks(t, gaps, func(t *rapid.T, l *fan.Layout) {
		d := l.Spec.Diameters
		for _, positions := range [][]fan.Position{l.NutPositions, l.SaddlePositions} {
			first := positions[0].SpacingSquare - (d[0]+d[1])/2
			require.Positive(t, first)
			for i, pos := range positions[:len(positions)-1] {
				near(t, first, pos.SpacingSquare-(d[i]+d[i+1])/2)
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
	require.Equal(t, worst.Cents, l.Frets[worst.Fret].CentsSharp[worst.String-1])
	for _, fret := range l.Frets {
		require.Equal(t, [2]unit.Cents{}, [2]unit.Cents{fret.CentsSharp[0], fret.CentsSharp[5]}, "the outer strings are exact by construction")
		for _, cents := range fret.CentsSharp {
			require.LessOrEqual(t, math.Abs(cents.Value()), math.Abs(worst.Cents.Value()))
		}
	}
	spec.SaddleSpacing = fan.Spacing{Rule: fan.LikeNut}
	_, ok = mustLayout(t, spec).WorstCents()
	require.False(t, ok)
}

// A case for paper and pencil: two outer strings of 600 and 500 mm on parallel
// lines 100 mm apart, a square nut, and a middle string moved to 0.6 at the
// saddle.
func TestCentsSignByHand(t *testing.T) {
	l := mustLayout(t, fan.Spec{
		Bass: unit.MM(600), Treble: unit.MM(500), Strings: 3,
		Neck: fan.Neck{
			Frets: 12, NutSpread: unit.MM(100), SaddleSpread: unit.MM(100),
			SaddleSpacing: fan.Spacing{Rule: fan.Listed, Steps: millimetres(60, 40)},
		},
	})
	// No taper. The middle string runs from (0, 0) to (560, 10); fret 12 from
	// (250, -50) to (300, 50) is x = 275 + y/2, met where 560 u = 275 + 5 u.
	u := 275.0 / 555
	require.InDelta(t, math.Hypot(560, 10), l.Strings[1].Length.MM(), close9)
	require.InDelta(t, 1200*math.Log2(0.5/(1-u)), l.Frets[12].CentsSharp[1].Value(), close9)
	require.Negative(t, l.Frets[12].CentsSharp[1], "u below one half leaves more than half to sound: flat")
	require.InDelta(t, math.Atan(0.5), l.Frets[12].Line.Slant.Rad(), 1e-12)
}

func TestPositionsAlongAndSquare(t *testing.T) {
	l := mustLayout(t, sixStrings())
	for name, line := range map[string]struct {
		positions []fan.Position
		across    fan.Across
	}{"nut": {l.NutPositions, l.Nut}, "saddle": {l.SaddlePositions, l.Saddle}} {
		t.Run(name, func(t *testing.T) {
			chord := line.across.Bass.Distance(line.across.Treble)
			var along, square unit.Length
			for i, pos := range line.positions {
				require.Equal(t, i+1, pos.String)
				require.GreaterOrEqual(t, pos.SpacingAlong, pos.SpacingSquare, "longer along the slant")
				along, square = along+pos.SpacingAlong, square+pos.SpacingSquare
			}
			near(t, chord, along)
			near(t, chord, line.positions[0].AlongFromBass)
			near(t, square, line.positions[0].SquareFromBass)
			require.Zero(t, line.positions[5].AlongFromBass)
		})
	}
	for i, pos := range l.NutPositions {
		near(t, l.Frets[0].Slot.Bass.Distance(pos.At), pos.AlongFromEdge)
		near(t, 0, l.Strings[i].Nut.Distance(pos.At))
		near(t, 0, l.Strings[i].Saddle.Distance(l.SaddlePositions[i].At))
	}
}

func TestFurtherLine(t *testing.T) {
	l := mustLayout(t, sixStrings())
	slant := 5 * math.Pi / 180
	placed, err := l.Place(fan.Line{Name: "pickup", BehindLastFret: unit.MM(30), Slant: unit.Angle(slant)})
	require.NoError(t, err)
	line := placed.Line
	near(t, l.Frets[24].Line.Cross+unit.MM(30), line.Cross)
	near(t, l.Saddle.Cross, line.Cross+placed.FromSaddle)
	near(t, unit.MM(30), placed.BehindLastFret)
	near(t, 0, line.Bass.Distance(placed.Positions[5].At))
	near(t, 0, line.Treble.Distance(placed.Positions[0].At))
	for i, pos := range placed.Positions {
		require.InDelta(t, line.Cross.MM()+pos.At.Y.MM()*math.Tan(slant), pos.At.X.MM(), close9, "on the line")
		_, at := crossing(number(l.Strings[i].Nut), number(l.Strings[i].Saddle), number(line.Treble), number(line.Bass))
		require.InDelta(t, real(at), pos.At.X.MM(), close9)
	}
	for along, want := range map[fan.LineSlant]unit.Angle{fan.SlantSquare: 0, fan.SlantSaddle: l.Saddle.Slant, fan.SlantLastFret: l.Frets[24].Line.Slant} {
		placed, err := l.Place(fan.Line{FromSaddle: unit.MM(40), Along: along})
		require.NoError(t, err)
		require.InDelta(t, want.Rad(), placed.Line.Slant.Rad(), 1e-15)
	}
	_, err = l.Place(fan.Line{Name: "neck", FromSaddle: unit.MM(900)})
	require.ErrorContains(t, err, "from_saddle: neck does not lie between nut and saddle line")
	_, err = l.Place(fan.Line{Name: "bridge", BehindLastFret: unit.MM(400)})
	require.ErrorContains(t, err, "behind_last_fret: bridge does not lie")
}
