package choice

import (
	"context"
	"math"
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"scalepair/data/unit"
)

func TestWhatStopsThePicks(t *testing.T) {
	plain := func() Request {
		req := baritone()
		req.Bass, req.Treble = span(640, 720, 10), span(620, 660, 10)
		return req
	}
	t.Run("straight", func(t *testing.T) {
		_, r := search(t, plain())
		require.Zero(t, r.Pick(SmallestFan).Difference)
		assert.Equal(t, StopStraight, r.StopsSmallestFan.Kind)
	})
	t.Run("the range", func(t *testing.T) {
		_, r := search(t, plain())
		s := r.StopsLongestBass
		require.Equal(t, StopExcluded, s.Kind)
		require.Len(t, s.Misses, 1)
		assert.Equal(t, Range, s.Misses[0].Limit)
		assert.InDelta(t, 730, s.Pair.Bass.MM(), 1e-9)
		assert.InDelta(t, 0.72, s.Misses[0].Bound, 1e-12)
	})
	t.Run("one limit", func(t *testing.T) {
		req := plain()
		req.Limits.NutToFret1 = unit.MM(39.5)
		_, r := search(t, req)
		s := r.StopsLongestBass
		require.Equal(t, StopExcluded, s.Kind)
		assert.Equal(t, NutToFret1, s.Misses[0].Limit)
		assert.Greater(t, s.Misses[0].Value, 0.0395)
		assert.Equal(t, r.Pick(LongestBass).Bass+unit.MM(10), s.Pair.Bass)
	})
	t.Run("several limits", func(t *testing.T) {
		req := plain()
		req.Limits.NutToFret1, req.Limits.Difference = unit.MM(39.5), unit.MM(45)
		_, r := search(t, req)
		require.NotEmpty(t, r.Picks)
		if s := r.StopsLongestBass; assert.Equal(t, StopSeveral, s.Kind) {
			assert.Greater(t, len(s.Misses), 1)
		}
	})
	t.Run("feel", func(t *testing.T) {
		req := plain()
		req.Given = indexesOf(req.Stock, "p13", "p17", "p22", "w32", "w46", "w56")
		_, r := search(t, req)
		s := r.StopsLongestBass
		require.Equal(t, StopFeel, s.Kind)
		assert.Greater(t, s.Pair.Error, s.Allowed)
		assert.Equal(t, r.Allowed, s.Allowed)
	})
	t.Run("no neck can be drawn further on", func(t *testing.T) {
		req := plain()
		req.Bass, req.Treble = span(700, 700, 1), span(650, 650, 1)
		_, r := search(t, req)
		assert.Equal(t, StopFeelAndMore, r.StopsLongestBass.Kind, "one length alone has no step")
	})
}

// What is said of a neighbour is true: it is excluded by just those limits, and
// is as good without them.
func TestNeighboursAreWhatIsSaid(t *testing.T) {
	r := rand.New(rand.NewPCG(2, 14))
	kinds := map[StopKind]int{}
	for range 60 {
		req := anyBuild(r)
		if r.IntN(2) == 0 {
			req.Limits.NutToFret1 = unit.MM(36.5 + 4*r.Float64())
		}
		p, res := search(t, req)
		for _, s := range []*Stop{res.StopsSmallestFan, res.StopsLongestBass} {
			if s == nil {
				continue
			}
			kinds[s.Kind]++
			switch s.Kind {
			case StopExcluded, StopSeveral:
				require.Equal(t, s.Kind == StopExcluded, len(s.Misses) == 1)
				require.LessOrEqual(t, felt(float64(s.Pair.Error)*float64(s.Pair.Error), p.removed), res.field.allowed)
				d := p.drawn(s.Pair.Bass, s.Pair.Treble, s.Pair.Gauges)
				require.InDelta(t, float64(d.Error), float64(s.Pair.Error), 1e-12)
				outside := 0
				for _, m := range s.Misses {
					if m.Limit == Range {
						outside = 1
					}
				}
				require.Len(t, d.Broken, len(s.Misses)-outside)
			case StopFeel:
				require.Greater(t, s.Pair.Error, s.Allowed)
			}
		}
	}
	assert.Greater(t, kinds[StopExcluded], 10)
	assert.Greater(t, kinds[StopFeel], 3)
}

// Only limits that raise the least error by more than is noticeable are named.
func TestLimitCosts(t *testing.T) {
	req := baritone()
	req.Limits.MostTension = 65
	req.Limits.SaddleSlant = unit.Degrees(30)
	p, r := search(t, req)
	costs, err := p.LimitCosts(context.Background(), r)
	require.NoError(t, err)
	require.Len(t, costs, 1)
	assert.Equal(t, MostTension, costs[0].Limit)
	assert.InDelta(t, float64(r.Best-costs[0].Best), float64(costs[0].Raises), 1e-12)
	assert.Greater(t, costs[0].Raises, req.Feel.Noticeable)
	req.Limits.MostTension = 0
	_, free := search(t, req)
	assert.Equal(t, free.Best, costs[0].Best)

	p, r = search(t, workload(20))
	costs, err = p.LimitCosts(context.Background(), r)
	require.NoError(t, err)
	assert.Empty(t, costs)
}

// A bend that cannot be made is never counted as nothing.
func TestABendThatCannotBeMade(t *testing.T) {
	req := baritone()
	req.Given = indexesOf(req.Stock, "p13", "p17", "p22", "w32", "w46", "w56")
	req.Neck.EdgeMargin = 0
	req.Feel.Towards = []Direction{TowardsTreble, Middle, Middle, Middle, Middle, Middle}
	p, r := search(t, req)
	assert.Zero(t, r.Kept)
	assert.Empty(t, r.Picks)
	assert.Equal(t, BendUnreachable, r.Dropped[len(r.Dropped)-1].Limit)
	d := p.drawn(unit.MM(690), unit.MM(650), req.Given)
	assert.True(t, d.ErrorUnknown)
	assert.Zero(t, d.Error)
	assert.Error(t, d.Strings[0].Tunings[0].Bends[0].Err)
	require.NotEmpty(t, d.Broken)
	assert.Equal(t, 1, d.Broken[0].String)
}

// Dropped pairs are counted under the first limit, with the one that missed by
// least.
func TestDropped(t *testing.T) {
	req := baritone()
	req.Limits.Difference = unit.MM(45)
	req.Bass = span(640, 720, 10)
	p, r := search(t, req)
	total, byLimit := r.Kept, map[Limit]Dropped{}
	for _, d := range r.Dropped {
		total += d.Pairs
		byLimit[d.Limit] = d
	}
	assert.Equal(t, r.Tried, total)
	assert.Equal(t, 3, byLimit[ReverseFan].Pairs)
	near := byLimit[DifferenceLimit].Nearest
	assert.InDelta(t, 0.050, near.Value, 1e-9)
	assert.InDelta(t, 0.045, near.Bound, 1e-12)
	assert.InDelta(t, 5.0/45, near.Excess(), 1e-6)

	// Every limit on a set alone, at its very value and just beyond.
	d := p.drawn(unit.MM(690), unit.MM(660), indexesOf(req.Stock, "p13", "p17", "p22", "w32", "w46", "w56"))
	require.Empty(t, d.Broken)
	strongest, rear := unit.Ratio(0), unit.Length(0)
	most, least, bending := unit.Force(0), unit.Force(math.Inf(1)), unit.Force(0)
	for _, s := range d.Strings {
		c := s.Tunings[0]
		rear = max(rear, s.Compensation.Hi)
		strongest, most, least = max(strongest, c.Breaking), max(most, c.Tension.Value), min(least, c.Tension.Value)
		for _, b := range c.Bends {
			bending = max(bending, b.Bend.Force)
		}
	}
	for _, c := range []struct {
		limit Limit
		set   func(l *Limits, beyond float64)
	}{
		{DifferenceLimit, func(l *Limits, x float64) { l.Difference = d.Difference * unit.Length(1-x) }},
		{SaddleSlant, func(l *Limits, x float64) { l.SaddleSlant = d.SaddleSlant * unit.Angle(1-x) }},
		{NutToFret1, func(l *Limits, x float64) { l.NutToFret1 = d.NutToFret1 * unit.Length(1-x) }},
		{SaddleTravel, func(l *Limits, x float64) { l.SaddleTravel = (rear + unit.MM(2)) * unit.Length(1-x) }}, // 1 mm spare at either end
		{InharmonicityLimit, func(l *Limits, x float64) { l.Inharmonicity = d.Inharmonicity * unit.Cents(1-x) }},
		{BreakingOpen, func(l *Limits, x float64) { l.BreakingOpen = strongest * unit.Ratio(1-x) }},
		{MostTension, func(l *Limits, x float64) { l.MostTension = most * unit.Force(1-x) }},
		{LeastTension, func(l *Limits, x float64) { l.LeastTension = least * unit.Force(1+x) }},
		{MostBendingForce, func(l *Limits, x float64) { l.MostBendingForce = bending * unit.Force(1-x) }},
	} {
		for _, beyond := range []float64{0, 1e-6} {
			req := baritone()
			req.Limits = Limits{}
			c.set(&req.Limits, beyond)
			other, err := must(t, req).Detail(d.Bass, d.Treble, d.Gauges)
			require.NoError(t, err)
			if beyond == 0 {
				assert.Empty(t, other.Broken, c.limit)
				continue
			}
			require.Len(t, other.Broken, 1, c.limit)
			assert.Equal(t, c.limit, other.Broken[0].Limit)
			without, set := req.Limits.without(c.limit)
			assert.True(t, set)
			assert.Equal(t, Limits{}, without)
		}
	}
}
