package choice

import (
	"context"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"scalepair/gauges"
)

// A hole in the stock is named with the linear density that is wanted, and with
// a gauge of it in stock no string is far off any more.
func TestLacks(t *testing.T) {
	req := baritone()
	req.Usable = indexesOf(req.Stock, "p13", "p17", "p22", "w32", "w36", "w56")
	p, r := search(t, req)
	lacks := p.Lacks(r, r.Preferred())
	require.Len(t, lacks, 1)
	l := lacks[0]
	assert.Equal(t, 5, l.String)
	wanted := req.Stock[l.Gauge]
	wanted.Label, wanted.LinearDensity = "", l.Wanted
	taken, with, err := p.With(context.Background(), lacks, []gauges.Gauge{wanted})
	require.NoError(t, err)
	assert.Equal(t, []int{0}, taken)
	assert.Less(t, with.Best, r.Best)
	d := with.plan.drawn(l.Pair.Bass, l.Pair.Treble, with.Preferred().Gauges)
	assert.InDelta(t, 0, float64(d.Strings[4].Deviation), 0.005, "but for stretch")

	// A gauge that a limit keeps from its string is not what is missing.
	req.Limits.MostTension = d.Strings[4].Tunings[0].Tension.Value * 0.97
	p, r = search(t, req)
	taken, with, err = p.With(context.Background(), lacks, []gauges.Gauge{wanted})
	require.NoError(t, err)
	assert.Empty(t, taken)
	assert.Nil(t, with)
	assert.Positive(t, r.Kept)
}
