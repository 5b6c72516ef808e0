package choice

import (
	"context"
	"math"
	"runtime"
	"slices"
	"sync"
	"sync/atomic"

	"scalepair/data/unit"
	"scalepair/fan"
)

// point is one pair of the grid, worked out.
type point struct {
	e2    float64 // E squared
	cents float64 // inharmonicity of the string of lowest pitch
	limit Limit   // that dropped it, or Kept
	fixed bool    // worked out with the spacing of its own set
	set   []int   // of a pair that no limit on gauges dropped
}

// field is the grid of pairs, worked out.
type field struct {
	p             *Plan
	bass, treble  []unit.Length
	points        []point // by bass, then treble
	removed       float64 // U squared
	allowed, best float64 // E with U taken off: the greatest that is as good as the best, and the least
	dropped       tally
}

// pairOf works one pair out; the miss is of the limit that drops it.
func (c *chooser) pairOf(base *fan.Base, bass, treble unit.Length) (v point, miss Miss) {
	p := c.p
	frame, miss := p.frameOf(base, bass, treble)
	if v.limit = miss.Limit; v.limit != Kept {
		return v, miss
	}
	broken := p.PairLimits(&frame)
	if broken == nil {
		p.putAll(&frame, c.places)
		if p.req.Given != nil {
			broken, _ = c.take(p.req.Given)
		} else {
			broken = c.choose()
		}
	}
	if broken == nil {
		v = point{e2: mean(c.e2), cents: p.inharmonicity(c.set, c.places).Value(), set: slices.Clone(c.set)}
		broken = p.setLimits(c.set, c.places, unit.Cents(v.cents))
	}
	if broken != nil {
		miss = broken[0]
		miss.Bass, miss.Treble = bass, treble
	}
	v.limit, v.fixed = miss.Limit, !p.gaps || p.req.Given != nil
	return v, miss
}

// explore works out every pair of the grid, row by row on all processors. The
// result does not depend on their number.
func (p *Plan) explore(ctx context.Context) (*field, error) {
	f := &field{p: p, bass: p.req.Bass, treble: p.req.Treble, removed: p.removed}
	f.points = make([]point, len(f.bass)*len(f.treble))
	var next atomic.Int64
	var wait sync.WaitGroup
	tallies := make([]tally, min(runtime.GOMAXPROCS(0), len(f.bass)))
	for n := range tallies {
		wait.Go(func() {
			c := newChooser(p)
			for {
				row := int(next.Add(1)) - 1
				if row >= len(f.bass) || ctx.Err() != nil {
					return
				}
				for t := range f.treble {
					v, miss := c.pairOf(p.base, f.bass[row], f.treble[t])
					if miss.Limit != Kept {
						tallies[n].drop(miss, 1)
					}
					f.points[row*len(f.treble)+t] = v
				}
			}
		})
	}
	wait.Wait()
	for n := range tallies {
		f.dropped.merge(&tallies[n])
	}
	return f, ctx.Err()
}

// lengths gives the pair at a place of the grid.
func (f *field) lengths(at int) (bass, treble unit.Length) {
	return f.bass[at/len(f.treble)], f.treble[at%len(f.treble)]
}

// felt is what of an error sets can remove: sqrt(E^2 - U^2).
func felt(e2, removed float64) float64 { return rounded(math.Sqrt(max(0, e2-removed))) }

// rounded keeps values from counting as different by their rounding.
func rounded(x float64) float64 { return math.Round(x*1e9) / 1e9 }
