package choice_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"scalepair/tension/choice"
)

// Points are the kept pairs of the search: as many, and every pair that the
// search lists stands among them with the same misfits.
func TestPointsAreTheKeptPairs(t *testing.T) {
	req := baritone()
	req.Limits.DifferenceMM = 90
	p, r := search(t, req)
	require.NotEmpty(t, r.Dropped)
	points, thinned := p.Points(1000)
	assert.False(t, thinned)
	assert.Len(t, points, r.Kept)
	at := map[[2]float64]choice.Point{}
	for _, q := range points {
		at[[2]float64{q.BassMM, q.TrebleMM}] = q
		assert.Equal(t, q.BassMM-q.TrebleMM, q.DifferenceMM())
		assert.GreaterOrEqual(t, q.Score, r.Best[0].Score)
	}
	assert.Len(t, at, r.Kept, "no pair comes twice")
	for _, c := range append(append([]choice.Candidate{}, r.Best...), r.Front...) {
		q := at[[2]float64{c.BassMM, c.TrebleMM}]
		assert.Equal(t, [3]float64{c.Score, c.TensionMisfit, c.BendingForceMisfit}, [3]float64{q.Score, q.TensionMisfit, q.BendingForceMisfit})
	}
}

// A large grid is thinned evenly on both sides, from the shortest lengths on.
func TestPointsOfALargeGridAreThinned(t *testing.T) {
	req := baritone() // 7 x 6 pairs
	p, err := choice.Prepare(req)
	require.NoError(t, err)
	all, _ := p.Points(42)
	few, thinned := p.Points(41)
	assert.True(t, thinned)
	var want []choice.Point
	for _, q := range all {
		if b, t := int(q.BassMM-660), int(q.TrebleMM-610); b%20 == 0 && t%20 == 0 {
			want = append(want, q)
		}
	}
	assert.Equal(t, want, few)
	one, _ := p.Points(1)
	assert.LessOrEqual(t, len(one), 1)
	assert.Panics(t, func() { p.Points(0) })
}
