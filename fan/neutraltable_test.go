package fan_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/require"

	"scalepair/data/testutil"
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
	least, leastSaddle, leastPlayed := unit.Angle(9), unit.Angle(9), unit.Angle(9)
	for _, r := range advice.Rows {
		spec.Neutral = r.Neutral
		l := mustLayout(t, spec)
		slant := func(n int) unit.Angle { return l.Frets[n].Line.Slant }
		require.Equal(t, [5]unit.Angle{l.Nut.Slant, slant(1), slant(12), slant(24), l.Saddle.Slant}, [5]unit.Angle{r.Nut, r.Fret1, r.Fret12, r.Last, r.Saddle})
		worst, sum := unit.Angle(0), 0.0
		for n := range l.Frets {
			worst = max(worst, slant(n), -slant(n))
			if n > 0 {
				sum += slant(n).Rad() * slant(n).Rad()
			}
		}
		require.Equal(t, worst, r.Worst)
		require.InDelta(t, math.Sqrt(sum/24), r.Played.Rad(), 1e-15)
		least, leastSaddle, leastPlayed = min(least, worst), min(leastSaddle, max(worst, l.Saddle.Slant, -l.Saddle.Slant)), min(leastPlayed, r.Played)
	}
	require.Equal(t, least, advice.Rows[advice.LeastWorst].Worst)
	require.Equal(t, leastSaddle, advice.Rows[advice.LeastWorstWithSaddle].WorstWithSaddle)
	require.Equal(t, leastPlayed, advice.Rows[advice.LeastPlayed].Played)
	testutil.CheckFinite(t, advice)

	spec.Bass = spec.Treble
	advice, err = fan.AdviseNeutral(spec, 1, fan.Playing{})
	require.NoError(t, err)
	require.True(t, advice.Parallel)
	for _, r := range advice.Rows {
		require.Zero(t, r.WorstWithSaddle)
	}
}

// Who plays the first frets, or likes a slant under the hand, wants the neutral
// fret elsewhere than who plays the high ones.
func TestAdviceFollowsThePlayer(t *testing.T) {
	at := func(p fan.Playing) float64 {
		advice, err := fan.AdviseNeutral(sixStrings(), 1, p)
		require.NoError(t, err)
		return advice.Rows[advice.LeastPlayed].Neutral.Fret
	}
	low := at(fan.Playing{FromFret: 1, ToFret: 5})
	require.InDelta(t, 3, low, 1)
	require.InDelta(t, 15, at(fan.Playing{FromFret: 12, ToFret: 19}), 1)
	leaning := at(fan.Playing{FromFret: 1, ToFret: 5, HandSlant: new(unit.Degrees(-6))})
	require.Greater(t, leaning, low, "bass ends nearer the head there: the neutral fret lies further up")
	raised := at(fan.Playing{FromFret: 1, ToFret: 5, NeckAngle: new(unit.Degrees(30))})
	require.Equal(t, leaning, raised, "a neck raised by 30 degrees asks for a fifth of it")
	require.False(t, math.Signbit(fan.Playing{NeckAngle: new(unit.Angle)}.Hand().Rad()))
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
	_, err := fan.AdviseNeutral(sixStrings(), 0, fan.Playing{FromFret: 9, ToFret: 5, HandSlant: new(unit.Angle(2))})
	for _, want := range []string{"step: ", "playing.to_fret: ", "hand: "} {
		require.ErrorContains(t, err, want)
	}
	_, err = fan.AdviseNeutral(sixStrings(), 1, fan.Playing{FromFret: 1, ToFret: 25})
	require.ErrorContains(t, err, "playing.to_fret: the played frets are not a range on the board")
}
