package choice_test

import (
	"cmp"
	"math"
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"scalepair/tension/choice"
)

// Strings that no target speaks of may have any gauge: of equals the lightest
// is taken, and with the ordering rule the lightest that keeps it.
func TestOfEqualGaugesTheLightestIsTaken(t *testing.T) {
	for _, ordered := range []bool{false, true} {
		req := baritone()
		req.Limits, req.Ordering = choice.Limits{}, ordered
		req.BassMM, req.TrebleMM = []float64{700}, []float64{650}
		req.Feel.Tension, req.Feel.Overtone = choice.Target{}, choice.Target{}
		req.Feel.BendStrings = []int{1, 6}
		_, r := search(t, req)
		require.Len(t, r.Best, 1)
		got := labels(req.Stock, r.Best[0].Gauges)
		require.NotEqual(t, "p8", got[0], "string 1 must not have the lightest gauge of all anyway")
		require.NotEqual(t, got[0], got[5])
		lightest := "p8"
		if ordered {
			lightest = got[0]
		}
		assert.Equal(t, []string{got[0], lightest, lightest, lightest, lightest, got[5]}, got, "ordered: %v", ordered)
	}
}

// The listed pairs by the definition: all kept pairs, best first, each that
// differs from every one taken by 9 mm in bass, in treble, or in difference.
func TestListedPairsAreDistinctByDefinition(t *testing.T) {
	req := baritone()
	req.Given = indexes(req.Stock, "p13", "p17", "w26", "w36", "w46", "w62")
	req.BassMM, req.TrebleMM = span(680, 712, 2), span(640, 660, 2)
	req.Listed, req.ApartMM = 30, 9
	// Wanted is what the set does in the middle of the grid, so that pairs on
	// all sides of it come next.
	middle, err := choice.Prepare(req)
	require.NoError(t, err)
	d, err := middle.Detail(696, 650, req.Given)
	require.NoError(t, err)
	req.Feel.Tension = choice.Target{Source: choice.Stated}
	for _, s := range d.Strings {
		req.Feel.Tension.Values = append(req.Feel.Tension.Values, s.Cases[0].TensionN)
	}
	req.Feel.BendingForce, req.Feel.Overtone = choice.Target{}, choice.Target{}
	p, r := search(t, req)
	points, thinned := p.Points(1e6)
	require.False(t, thinned)
	slices.SortStableFunc(points, func(a, b choice.Point) int {
		return cmp.Or(cmp.Compare(a.Score, b.Score), cmp.Compare(math.Abs(a.DifferenceMM()), math.Abs(b.DifferenceMM())))
	})
	var want [][2]float64
	onlyByDifference := 0
	for _, c := range points {
		near, byDifference := false, false
		for _, w := range want {
			bass, treble := math.Abs(c.BassMM-w[0]), math.Abs(c.TrebleMM-w[1])
			difference := math.Abs(c.BassMM - c.TrebleMM - (w[0] - w[1]))
			near = near || bass < 9 && treble < 9 && difference < 9
			byDifference = byDifference || bass < 9 && treble < 9 && difference >= 9
		}
		if near || len(want) == 30 {
			continue
		}
		want = append(want, [2]float64{c.BassMM, c.TrebleMM})
		if byDifference {
			onlyByDifference++
		}
	}
	var got [][2]float64
	for _, c := range r.Best {
		got = append(got, [2]float64{c.BassMM, c.TrebleMM})
	}
	assert.Equal(t, want, got)
	assert.Positive(t, onlyByDifference, "no listed pair differs from another by the difference alone")
}
