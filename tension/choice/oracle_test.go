package choice

import (
	"context"
	"math"
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"scalepair/data/unit"
	"scalepair/fan"
	"scalepair/tension"
)

// oracle works a set out by another route: straight from the definition of the
// feel error, with tension.Open and tension.BendString, and no sharing of
// anything between strings, tunings or gauges.
type oracle struct {
	p     *Plan
	frame fan.Frame
}

// stringError is e squared of gauge g as string i, and the mean deviation of its
// tension as a logarithm; false where it is not admissible.
func (o oracle) stringError(i, g int) (e2, off float64, ok bool) {
	req, lim := &o.p.req, &o.p.req.Limits
	w := WireOf(req.Stock[g])
	length := o.frame.Length(i)
	total := 0.0
	for _, c := range req.Cases {
		total += c.Weight
	}
	for _, c := range req.Cases {
		t := tension.Open(nil, w, length, c.Pitches[i])
		if lim.LeastTension > 0 && t < lim.LeastTension || lim.MostTension > 0 && t > lim.MostTension || lim.BreakingOpen > 0 && w.Breaking(t) > lim.BreakingOpen {
			return 0, 0, false
		}
		want := o.p.targets.tension[i]
		x := math.Log(t.N() / want)
		square := x * x
		if o.p.isBend[i] {
			bends, ok := o.bends(i, w, c)
			if !ok {
				return 0, 0, false
			}
			square += req.Feel.BendWeight * bends
		}
		off += c.Weight / total * x
		if req.By == Worst {
			e2 = max(e2, square)
		} else {
			e2 += c.Weight / total * square
		}
	}
	return e2, off, true
}

// bends is the mean over the frets of half the squares of force and distance.
func (o oracle) bends(i int, w tension.Wire, c Case) (float64, bool) {
	req := &o.p.req
	h := func(value, want float64) float64 {
		x := math.Log(value / want)
		if req.Feel.BendingForce.NoHarder {
			x = max(0, x)
		}
		return x * x
	}
	dir := 1.0
	if i >= (o.p.strings+1)/2 {
		dir = -1
	}
	sum := 0.0
	for k, fret := range req.Feel.BendFrets {
		b, err := tension.BendString(nil, w, tension.BendAt{
			Length: o.frame.Length(i), Pitch: c.Pitches[i], Fret: float64(fret), Rise: req.Feel.Bend, Tails: req.Tails[i],
			TanSlant: dir * o.frame.TanSlant(float64(fret)), Reach: o.frame.Reach(i, float64(fret), dir > 0),
		})
		if err != nil || req.Limits.BreakingBent > 0 && w.Breaking(b.Tension) > req.Limits.BreakingBent ||
			req.Limits.MostBendingForce > 0 && b.Force > req.Limits.MostBendingForce {
			return 0, false
		}
		if o.p.targets.force[i] == nil {
			continue
		}
		part := h(b.Force.N(), o.p.targets.force[i][k])
		if o.p.targets.dist[i] != nil {
			part = (part + h(b.Distance.M(), o.p.targets.dist[i][k])) / 2
		}
		sum += part
	}
	return sum / float64(len(req.Feel.BendFrets)), true
}

// best tries every set there is.
func (o oracle) best() (float64, bool) {
	n, stock := o.p.strings, o.p.req.Stock
	costs := make([][]float64, n)
	for i := range costs {
		keep := false
		likePlain := stock[o.p.req.Reference.Gauges[o.p.ref.like[i]]].Family == "plain"
		for g := range stock {
			e2, off, ok := o.stringError(i, g)
			if !ok {
				e2 = math.Inf(1)
			}
			keep = keep || ok && (stock[g].Family == "plain") == likePlain && math.Abs(off) <= math.Log(1.1)
			costs[i] = append(costs[i], e2)
		}
		for g := range stock {
			if keep && o.p.req.Feel.Construction == LikeReferenceConstruction && (stock[g].Family == "plain") != likePlain {
				costs[i][g] = math.Inf(1)
			}
		}
	}
	least, set := math.Inf(1), make([]int, n)
	var from func(i int, sum float64)
	from = func(i int, sum float64) {
		if i == n {
			least = min(least, sum)
			return
		}
		for g := range stock {
			if i > 0 && o.p.req.Ordering {
				a, b := stock[set[i-1]], stock[g]
				if b.LinearDensity < a.LinearDensity || b.Family == "plain" && a.Family != "plain" {
					continue
				}
			}
			set[i] = g
			if sum+costs[i][g] < least {
				from(i+1, sum+costs[i][g])
			}
		}
	}
	from(0, 0)
	return math.Sqrt(least / float64(n)), !math.IsInf(least, 1)
}

// anyRequest is a small choice with everything drawn.
func anyRequest(r *rand.Rand) Request {
	req := baritone()
	n := 3 + r.IntN(2)
	var stock = req.Stock[:0:0]
	for _, g := range req.Reference.Gauges {
		stock = append(stock, req.Stock[g])
	}
	for range 5 {
		g := plainGauge(9 + 12*r.Float64())
		if r.IntN(2) == 0 {
			g = woundGauge(20+40*r.Float64(), 12+4*r.Float64())
		}
		stock = append(stock, g)
	}
	req.Stock, req.Reference.Gauges = stock, []int{0, 1, 2, 3, 4, 5}
	req.Cases = nil
	for range 1 + r.IntN(2) {
		c := Case{Weight: 0.5 + r.Float64()}
		shift := unit.Frequency(math.Exp2(-float64(r.IntN(8)) / 12))
		for _, f := range standardE[:n] {
			c.Pitches = append(c.Pitches, f*shift)
		}
		req.Cases = append(req.Cases, c)
	}
	req.By, req.Ordering = Combining(r.IntN(2)), r.IntN(3) > 0
	req.Tails, req.Action = sameTails(n), heights(n)
	req.Bass, req.Treble = span(640, 690, 25), span(620, 660, 20)
	f := &req.Feel
	f.Construction = Construction(r.IntN(2))
	f.BendingForce.NoHarder = r.IntN(2) == 0
	if r.IntN(4) == 0 {
		f.BendingForce = Target{Kind: Stated, NoHarder: true, Forces: []unit.Force{12}}
	}
	f.BendWeight = r.Float64() * 2
	if r.IntN(2) == 0 {
		req.Limits.MostTension, req.Limits.LeastTension = unit.Force(60+60*r.Float64()), unit.Force(40*r.Float64())
	}
	if r.IntN(3) == 0 {
		req.Limits.MostBendingForce = unit.Force(6 + 20*r.Float64())
	}
	return req
}

// No set of the stock does better than the one that is found, on any pair.
func TestNoSetDoesBetter(t *testing.T) {
	r := rand.New(rand.NewPCG(15, 6))
	found, none, reordered := 0, 0, 0
	for range 150 {
		p := must(t, anyRequest(r))
		f, err := p.explore(context.Background())
		require.NoError(t, err)
		for at, v := range f.points {
			bass, treble := f.lengths(at)
			frame, reason := p.base.Frame(bass, treble)
			if v.Limit == ReverseFan || reason != fan.Fits {
				continue
			}
			want, ok := oracle{p, frame}.best()
			if !ok {
				none++
				assert.True(t, v.Limit >= WindingLength && v.Limit <= OrderingRule, "%v", v.Limit)
				continue
			}
			require.Equal(t, Kept, v.Limit)
			found++
			require.InDelta(t, want, math.Sqrt(v.e2), 1e-12)
			d := p.drawn(bass, treble, v.set)
			require.InDelta(t, want, float64(d.Error), 1e-12, "the detail has the same number")
			if p.req.Ordering {
				require.True(t, p.inOrder(d.Gauges))
				reordered++
			}
		}
	}
	assert.Greater(t, found, 300)
	assert.Greater(t, none, 5)
	assert.Greater(t, reordered, 200)
}
