package fan_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/require"

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
		slant := func(n int) float64 { return l.Frets[n].Line.SlantRad }
		require.Equal(t, [5]float64{l.Nut.SlantRad, slant(1), slant(12), slant(24), l.Saddle.SlantRad},
			[5]float64{r.NutRad, r.FirstRad, r.TwelfthRad, r.LastRad, r.SaddleRad})
		worst, sum := 0.0, 0.0
		for n := range l.Frets {
			worst = math.Max(worst, math.Abs(slant(n)))
			if n > 0 {
				sum += slant(n) * slant(n)
			}
		}
		require.InDelta(t, worst, r.WorstRad, 1e-15)
		require.InDelta(t, math.Sqrt(sum/24), r.PlayedRad, 1e-15)
		least = math.Min(least, worst)
		leastSaddle = math.Min(leastSaddle, math.Max(worst, math.Abs(l.Saddle.SlantRad)))
		leastPlayed = math.Min(leastPlayed, r.PlayedRad)
	}
	require.InDelta(t, least, advice.Rows[advice.LeastWorst].WorstRad, 1e-15)
	require.InDelta(t, leastSaddle, advice.Rows[advice.LeastWorstWithSaddle].WorstWithSaddleRad, 1e-15)
	require.InDelta(t, leastPlayed, advice.Rows[advice.LeastPlayed].PlayedRad, 1e-15)
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
	leaning := at(fan.Playing{FromFret: 1, ToFret: 5, HoldRad: -6 * math.Pi / 180})
	require.Greater(t, leaning, low, "bass ends nearer the head there: the neutral fret lies further up")
}

func TestHoldOfNeckAngle(t *testing.T) {
	require.Negative(t, fan.HoldOfNeckAngle(0.5), "a raised neck: bass ends nearer the head")
	require.Equal(t, fan.HoldOfNeckAngle(0.5), -fan.HoldOfNeckAngle(-0.5))
	level := fan.HoldOfNeckAngle(0)
	require.False(t, math.Signbit(level))
}

func TestAdviceOfAStraightInstrument(t *testing.T) {
	spec := sixStrings()
	spec.BassMM, spec.TrebleMM = 648, 648
	advice, err := fan.AdviseNeutral(spec, 1, fan.Playing{})
	require.NoError(t, err)
	require.True(t, advice.Parallel)
	for _, r := range advice.Rows {
		require.Zero(t, r.WorstWithSaddleRad)
	}
}

// A neutral fret that makes no instrument has no row; when none makes one, the
// reason is told.
func TestAdviceLeavesOutWhatCannotBeBuilt(t *testing.T) {
	spec := sixStrings()
	spec.BassMM, spec.TrebleMM = 740, 630
	advice, err := fan.AdviseNeutral(spec, 1, fan.Playing{})
	require.NoError(t, err)
	require.Less(t, len(advice.Rows), 26)
	require.NotEmpty(t, advice.Rows)
	spec.BassMM = 1000
	_, err = fan.AdviseNeutral(spec, 1, fan.Playing{})
	require.ErrorContains(t, err, "slants more than 60 degrees")
}

func TestAdviceRefused(t *testing.T) {
	spec := sixStrings()
	spec.NutSpreadMM, spec.BassMM = 0, 25
	_, err := fan.AdviseNeutral(spec, 0, fan.Playing{FromFret: 9, ToFret: 5, HoldRad: 2})
	for _, want := range []string{"step: ", "played: ", "hold: ", "neck.string_spread_at_nut: ", "scales.bass: "} {
		require.ErrorContains(t, err, want)
	}
	for name, p := range map[string]fan.Playing{
		"off the board": {FromFret: 1, ToFret: 25}, "negative": {FromFret: -1, ToFret: 3}, "no number": {HoldRad: math.NaN()},
	} {
		_, err := fan.AdviseNeutral(sixStrings(), 1, p)
		require.Error(t, err, name)
	}
}
