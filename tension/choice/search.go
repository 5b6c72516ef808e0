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
	Miss          // of the limit that dropped it, or Kept
	e2    float64 // E squared
	cents float64 // inharmonicity of the string of lowest pitch
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
}

// pairOf works one pair out.
func (c *chooser) pairOf(base *fan.Base, bass, treble unit.Length) point {
	p := c.p
	frame, miss := p.frameOf(base, bass, treble)
	v := point{Miss: miss, fixed: !p.gaps || p.req.Given != nil}
	if v.Limit != Kept {
		return v
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
		v.e2, v.cents, v.set = mean(c.e2), p.inharmonicity(c.set, c.places).Value(), slices.Clone(c.set)
		broken = p.setLimits(c.set, c.places, unit.Cents(v.cents))
	}
	if broken != nil {
		v.Miss = broken[0]
		v.Bass, v.Treble = bass, treble
	}
	return v
}

// explore works out every pair of the grid. The result does not depend on the
// number of processors.
func (p *Plan) explore(ctx context.Context) (*field, error) {
	f := &field{p: p, bass: p.req.Bass, treble: p.req.Treble, removed: p.removed}
	f.points = make([]point, len(f.bass)*len(f.treble))
	return f, onAll(ctx, len(f.points), func() func(at int) {
		c := newChooser(p)
		return func(at int) {
			bass, treble := f.lengths(at)
			f.points[at] = c.pairOf(p.base, bass, treble)
		}
	})
}

// onAll does n pieces of work on all processors, each with a worker of its own. The
// error is that of ctx.
func onAll(ctx context.Context, n int, worker func() func(i int)) error {
	var next atomic.Int64
	var wait sync.WaitGroup
	for range min(runtime.GOMAXPROCS(0), n) {
		wait.Go(func() {
			work := worker()
			for i := int(next.Add(1)) - 1; i < n && ctx.Err() == nil; i = int(next.Add(1)) - 1 {
				work(i)
			}
		})
	}
	wait.Wait()
	return ctx.Err()
}

// dropped lists the limits that dropped pairs.
func (f *field) dropped() []Dropped {
	var t tally
	for _, v := range f.points {
		if v.Limit != Kept {
			t.drop(v.Miss)
		}
	}
	return t.list()
}

// lengths gives the pair at a place of the grid.
func (f *field) lengths(at int) (bass, treble unit.Length) {
	return f.bass[at/len(f.treble)], f.treble[at%len(f.treble)]
}

// felt is what of an error sets can remove: sqrt(E^2 - U^2).
func felt(e2, removed float64) float64 { return rounded(math.Sqrt(max(0, e2-removed))) }

// rounded keeps values from counting as different by their rounding.
func rounded(x float64) float64 { return math.Round(x*1e9) / 1e9 }
