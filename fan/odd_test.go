package fan_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"scalepair/data/odd"
	"scalepair/fan"
)

// parallel is a neck of parallel string lines 52 mm wide, on which the slant of
// the line at k is atan(difference (k - k(N))/52).
func parallel(difference float64, neutral fan.Neutral) fan.Spec {
	s := fan.DefaultSpec()
	s.BassMM, s.TrebleMM, s.Neutral = 640+difference, 640, neutral
	s.AllowReverse = true
	s.NutSpreadMM, s.SaddleSpreadMM = 52, 52
	return s
}

func oddOf(t *testing.T, s fan.Spec) map[string]float64 {
	t.Helper()
	frame, err := fan.NewFrame(s)
	require.NoError(t, err)
	out := map[string]float64{}
	for _, v := range append(s.Odd(), frame.Odd()...) {
		out[v.Quantity+" "+v.About] = v.X
	}
	return out
}

func TestOddSlants(t *testing.T) {
	degrees := math.Pi / 180
	assert.Empty(t, oddOf(t, parallel(40, fan.Neutral{Fret: 7})))
	assert.Empty(t, oddOf(t, parallel(0, fan.Neutral{})))
	// 38 degrees at the bridge are 52 tan(38) = 40.63 mm with the nut square.
	assert.Empty(t, oddOf(t, parallel(40.6, fan.Neutral{})))
	found := oddOf(t, parallel(40.7, fan.Neutral{}))
	require.Len(t, found, 1)
	assert.InDelta(t, math.Atan(40.7/52), found["slant of the saddle line "], 1e-12)
	// 36 degrees at the nut are 37.78 mm with the bridge square; a reverse fan slants the other way.
	assert.Empty(t, oddOf(t, parallel(-37.7, fan.Neutral{Bridge: true})))
	found = oddOf(t, parallel(-38, fan.Neutral{Bridge: true}))
	require.Len(t, found, 1)
	assert.InDelta(t, math.Atan(38.0/52), found["slant of the nut"], 1e-12)
	assert.Greater(t, found["slant of the nut"], 36*degrees)
}

// Two board widths stand for the spans: 51 mm less both margins over five gaps.
func TestOddWidths(t *testing.T) {
	s := parallel(20, fan.Neutral{Fret: 7})
	s.NutSpreadMM, s.SaddleSpreadMM, s.Board = 0, 0, &fan.BoardWidths{NutMM: 43, WidthMM: 57, AtFret: 24}
	assert.Empty(t, oddOf(t, s))
	s.Board.NutMM = 31
	assert.Equal(t, map[string]float64{"string spacing at the nut ": 4.8}, oddOf(t, s))
	s.Board.NutMM, s.Board.WidthMM = 57, 43
	found := oddOf(t, s)
	assert.InDelta(t, 43.0/57, found["widening from the nut "], 1e-12)
}

// Courses lie closer than strings ever do, and are listed.
func TestOddCourses(t *testing.T) {
	s := parallel(0, fan.Neutral{})
	s.Strings = 12
	_, equal := oddOf(t, s)["string spacing at the nut "]
	assert.True(t, equal)
	s.NutSpacing = fan.Spacing{Rule: fan.Listed, Fractions: fan.FractionsOfSteps([]float64{2, 7, 2, 7, 2, 7, 2, 7, 2, 7, 2})}
	s.SaddleSpacing.Rule = fan.LikeNut
	assert.Empty(t, oddOf(t, s))
}

// What was not given is not odd.
func TestOddOfNothing(t *testing.T) {
	assert.Empty(t, fan.Sawing{}.Odd())
	assert.Empty(t, fan.OddDepths(nil))
	assert.Empty(t, fan.Offer{Name: "oak", LengthMM: 600, WidthMM: 80}.Odd())
}

// A table of ranges is whole: every row has its words, and a range.
func TestWatchedIsWhole(t *testing.T) {
	seen := map[string]bool{}
	for _, u := range fan.Watched() {
		assert.NotEmpty(t, u.Quantity)
		assert.NotEmpty(t, u.Check, u.Quantity)
		assert.NotEmpty(t, u.Source, u.Quantity)
		assert.Less(t, u.Low, u.High, u.Quantity)
		assert.False(t, seen[u.Quantity], "%s stands once", u.Quantity)
		seen[u.Quantity] = true
	}
	own := fan.Watched()
	own[0] = odd.Usual{}
	assert.NotEmpty(t, fan.Watched()[0].Quantity, "whoever asks gets a copy")
}
