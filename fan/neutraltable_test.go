package fan_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/require"

	"scalepair/data/unit"
	"scalepair/fan"
)

func TestAdviseNeutral(t *testing.T) {
	spec := sixStrings()
	advice, err := fan.AdviseNeutral(spec, 0.5, fan.Playing{})
	require.NoError(t, err)
	require.Len(t, advice.Rows, 50, "0 to 24 by halves, and the bridge")
	require.True(t, advice.Rows[49].Neutral.Bridge)
	require.False(t, advice.Parallel)
	least, leastSaddle, leastPlayed := math.Inf(1), math.Inf(1), math.Inf(1)
	for _, r := range advice.Rows {
		spec.Neutral = r.Neutral
		l := mustLayout(t, spec)
		slant := func(n int) float64 { return l.Frets[n].Line.Slant.Rad() }
		require.Equal(t, [5]float64{l.Nut.Slant.Rad(), slant(1), slant(12), slant(24), l.Saddle.Slant.Rad()},
			[5]float64{r.Nut.Rad(), r.Fret1.Rad(), r.Fret12.Rad(), r.Last.Rad(), r.Saddle.Rad()})
		worst, sum := 0.0, 0.0
		for n := range l.Frets {
			worst = math.Max(worst, math.Abs(slant(n)))
			if n > 0 {
				sum += slant(n) * slant(n)
			}
		}
		require.InDelta(t, worst, r.Worst.Rad(), 1e-15)
		require.InDelta(t, math.Sqrt(sum/24), r.Played.Rad(), 1e-15)
		least = math.Min(least, worst)
		leastSaddle = math.Min(leastSaddle, math.Max(worst, math.Abs(l.Saddle.Slant.Rad())))
		leastPlayed = math.Min(leastPlayed, r.Played.Rad())
	}
	require.InDelta(t, least, advice.Rows[advice.LeastWorst].Worst.Rad(), 1e-15)
	require.InDelta(t, leastSaddle, advice.Rows[advice.LeastWorstWithSaddle].WorstWithSaddle.Rad(), 1e-15)
	require.InDelta(t, leastPlayed, advice.Rows[advice.LeastPlayed].Played.Rad(), 1e-15)
	requireSound(t, advice)
}

// Who plays the first frets, or likes a slant under the hand, wants the neutral
// fret elsewhere than who plays the high ones.
func TestAdviceFollowsThePlayer(t *testing.T) {
	spec := sixStrings()
	at := func(p fan.Playing) float64 {
		advice, err := fan.AdviseNeutral(spec, 1, p)
		require.NoError(t, err)
		return advice.Rows[advice.LeastPlayed].Neutral.Fret
	}
	low := at(fan.Playing{FromFret: 1, ToFret: 5})
	high := at(fan.Playing{FromFret: 12, ToFret: 19})
	require.InDelta(t, 3, low, 1)
	require.InDelta(t, 15, high, 1)
	leaning := at(fan.Playing{FromFret: 1, ToFret: 5, HandSlant: new(unit.Degrees(-6))})
	require.Greater(t, leaning, low, "bass ends nearer the head there: the neutral fret lies further up")
}

func TestHandOnARaisedNeck(t *testing.T) {
	hand := func(neck unit.Angle) unit.Angle { return fan.Playing{NeckAngle: &neck}.Hand() }
	require.Negative(t, hand(0.5).Rad(), "a raised neck: bass ends nearer the head")
	require.Equal(t, hand(0.5), -hand(-0.5))
	require.False(t, math.Signbit(hand(0).Rad()))
}

func TestAdviceOfAStraightInstrument(t *testing.T) {
	spec := sixStrings()
	spec.Bass, spec.Treble = unit.MM(648), unit.MM(648)
	advice, err := fan.AdviseNeutral(spec, 1, fan.Playing{})
	require.NoError(t, err)
	require.True(t, advice.Parallel)
	for _, r := range advice.Rows {
		require.Zero(t, r.WorstWithSaddle.Rad())
	}
}

// A neutral fret that makes no instrument has no row; when none makes one, the
// reason is given.
func TestAdviceLeavesOutWhatCannotBeBuilt(t *testing.T) {
	spec := sixStrings()
	spec.Bass, spec.Treble = unit.MM(740), unit.MM(630)
	advice, err := fan.AdviseNeutral(spec, 1, fan.Playing{})
	require.NoError(t, err)
	require.Less(t, len(advice.Rows), 26)
	require.NotEmpty(t, advice.Rows)
	spec.Bass = unit.MM(1000)
	_, err = fan.AdviseNeutral(spec, 1, fan.Playing{})
	require.ErrorContains(t, err, "slants more than 60 degrees")
}

func TestAdviceRefused(t *testing.T) {
	spec := sixStrings()
	spec.NutSpread, spec.Bass = 0, unit.MM(25)
	_, err := fan.AdviseNeutral(spec, 0, fan.Playing{FromFret: 9, ToFret: 5, HandSlant: new(unit.Angle(2))})
	for _, want := range []string{"step: ", "playing.to_fret: ", "hand: ", "neck.string_spread_at_nut: ", "scales.bass: "} {
		require.ErrorContains(t, err, want)
	}
	for name, p := range map[string]fan.Playing{
		"off the board": {FromFret: 1, ToFret: 25}, "negative": {FromFret: -1, ToFret: 3}, "no number": {HandSlant: new(unit.Angle(math.NaN()))},
	} {
		_, err := fan.AdviseNeutral(sixStrings(), 1, p)
		require.Error(t, err, name)
	}
}
