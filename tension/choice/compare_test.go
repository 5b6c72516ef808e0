package choice

import (
	"context"
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"scalepair/data/unit"
)

// column is one tuning on one pair, of a guitar-like build with a stock of a few
// gauges.
func column(bass, treble float64, tuning []unit.Frequency, set ...string) Column {
	req := guitarLike(span(bass, bass, 1), span(treble, treble, 1), 36, 52, tuning)
	req.Limits.SaddleSlant = 0
	req.Usable = indexesOf(req.Stock, "p10", "p11", "p13", "p16", "p17", "p20", "w24", "w28", "w32", "w36", "w42", "w46", "w52", "w60")
	c := Column{Name: "column", Request: req}
	if set != nil {
		c.Set = indexesOf(req.Stock, set...)
	}
	return c
}

// A baritone in B and in A with one set: near 13 17 24 36 46 60, and no string
// 25 % off in either tuning unless the stock forces it.
func TestOneSetForTwoTunings(t *testing.T) {
	columns := []Column{column(675, 648, baritoneB), column(675, 648, baritoA)}
	set, none, err := OneSet(columns)
	require.NoError(t, err)
	require.Equal(t, Kept, none.Limit)
	stock := columns[0].Request.Stock
	wanted := indexesOf(stock, "p13", "p17", "w24", "w36", "w46", "w60")
	far := 0
	for i, g := range set {
		ratio := float64(stock[g].LinearDensity / stock[wanted[i]].LinearDensity)
		assert.InDelta(t, 1, ratio, 0.30, "string %d: %v", i+1, labels(stock, set))
		if g != wanted[i] {
			far++
		}
	}
	assert.LessOrEqual(t, far, 1, "%v", labels(stock, set))
	for k := range columns {
		columns[k].Set = set
	}
	compared, err := Compare(columns)
	require.NoError(t, err)
	for _, c := range compared {
		for i, s := range c.Detail.Strings {
			if math.Abs(float64(s.Deviation)) >= 0.25 {
				assert.NotEmpty(t, c.Plan.missing(c.Detail), "string %d stands %v off", i+1, s.Deviation)
			}
		}
	}
}

func TestCompare(t *testing.T) {
	columns := []Column{column(680, 648, baritoneB, "p13", "p17", "w24", "w36", "w46", "w60"), column(680, 648, baritoneB), column(648, 648, standardE, "p10", "p13", "p17", "w24", "w36", "w46")}
	out, err := Compare(columns)
	require.NoError(t, err)
	require.Len(t, out, 3)
	assert.False(t, out[0].Suggested)
	assert.True(t, out[1].Suggested)
	assert.LessOrEqual(t, out[1].Detail.Error, out[0].Detail.Error)
	assert.Empty(t, out[1].Swaps, "the best set has no single swap that helps")
	assert.True(t, Alike(out[0].Detail, out[0].Detail))
	assert.False(t, Alike(out[0].Detail, out[2].Detail))

}

func TestAlike(t *testing.T) {
	c := column(680, 648, baritoneB, "p13", "p17", "w24", "w36", "w46", "w60")
	p, err := Prepare(c.Request)
	require.NoError(t, err)
	at := func(mm float64) *Detail {
		d := p.drawn(unit.MM(mm), unit.MM(mm), c.Set)
		return d
	}
	assert.True(t, Alike(at(650), at(656)), "1.9 %")
	assert.False(t, Alike(at(650), at(657)), "2.2 %")
}

// A swap lowers the error, keeps the order, and says what it changes.
func TestSwaps(t *testing.T) {
	c := column(680, 648, baritoneB, "p10", "p17", "w24", "w36", "w52", "w52")
	out, err := Compare([]Column{c})
	require.NoError(t, err)
	d, swaps := out[0].Detail, out[0].Swaps
	require.NotEmpty(t, swaps)
	seen := map[int]bool{}
	for k, s := range swaps {
		assert.False(t, seen[s.String], "each string once")
		seen[s.String] = true
		assert.Equal(t, d.Gauges[s.String-1], s.From)
		assert.Equal(t, s.Detail.Gauges[s.String-1], s.To)
		assert.Less(t, s.Detail.Error, d.Error-0.001)
		assert.True(t, out[0].Plan.inOrder(s.Detail.Gauges))
		if k > 0 {
			assert.LessOrEqual(t, swaps[k-1].Detail.Error, s.Detail.Error)
		}
	}
	assert.True(t, seen[1], "p10 is far too light")

	// A string that breaks a limit is mended, whatever that does to the error.
	c.Request.Limits.MostTension = d.Strings[4].Tunings[0].Tension.Value - 1e-6
	out, err = Compare([]Column{c})
	require.NoError(t, err)
	require.NotEmpty(t, out[0].Swaps)
	assert.True(t, out[0].Swaps[0].Mends)
}

// With the candidate's own mean as the target a swap is judged by the whole set.
func TestSwapsTowardsAnEvenSet(t *testing.T) {
	c := column(680, 648, baritoneB, "p10", "p17", "w24", "w36", "w46", "w60")
	c.Request.Reference, c.Request.Feel = nil, DefaultFeel(false, true)
	c.Request.Feel.BendStrings = []int{}
	out, err := Compare([]Column{c})
	require.NoError(t, err)
	require.NotEmpty(t, out[0].Swaps)
	logs, sum := []float64{}, 0.0
	for _, s := range out[0].Detail.Strings {
		logs = append(logs, math.Log(s.Tunings[0].Tension.Value.N()))
		sum += logs[len(logs)-1] / 6
	}
	square := 0.0
	for _, x := range logs {
		square += (x - sum) * (x - sum) / 6
	}
	assert.InDelta(t, math.Sqrt(square), float64(out[0].Detail.Error), 1e-12)
	assert.Equal(t, 1, out[0].Swaps[0].String)
	assert.Less(t, out[0].Swaps[0].Detail.Error, out[0].Detail.Error)
}

// A set that is the only one possible is taken, even where nothing is wanted.
func TestTheOnlySet(t *testing.T) {
	c := column(680, 648, baritoneB)
	c.Request.Reference, c.Request.Feel = nil, DefaultFeel(false, false)
	c.Request.Feel.BendStrings = []int{}
	_, err := Compare([]Column{c})
	assert.ErrorContains(t, err, "no set can be suggested")
	plan, err := Prepare(c.Request)
	require.NoError(t, err)
	_, err = plan.Search(context.Background())
	assert.ErrorContains(t, err, "no set can be suggested")
	c.Request.Usable = indexesOf(c.Request.Stock, "p13", "p17", "w24", "w36", "w46", "w60")
	c.Request.Limits = Limits{}
	out, err := Compare([]Column{c})
	require.NoError(t, err)
	assert.Equal(t, c.Request.Usable, out[0].Detail.Gauges)
	_, r := search(t, c.Request)
	assert.Equal(t, c.Request.Usable, r.Preferred().Gauges)
}
