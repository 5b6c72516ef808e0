package choice

import (
	"math"
	"runtime"
	"slices"
	"sync"
	"sync/atomic"
)

// SearchBest tries every pair of the grid as Search does, and gives only the
// first of its Best; or none, and what was dropped.
//
// One best pair is sooner found than all that Search lists: a pair is given up
// as soon as some of its strings cost more than the best pair so far does with
// all. So the strings that mostly cost more come first: the lowest, which alone
// has the inharmonicity, and those with a bend. And the pairs of a coarse mesh
// come first, so that a good one is known early.
func (p *Plan) SearchBest() (best Candidate, dropped []Dropped, ok bool) {
	return p.bestBy(min(runtime.GOMAXPROCS(0), 1+len(p.req.BassMM)*len(p.req.TrebleMM)/pairsApiece))
}

// pairsApiece is how many pairs are worth a goroutine of their own: waking a
// processor takes as long as some hundred pairs.
const pairsApiece = 1000

// bestBy is SearchBest by so many goroutines. The outcome does not depend on
// their number.
func (p *Plan) bestBy(goroutines int) (best Candidate, dropped []Dropped, ok bool) {
	most, found, made := newCeiling(), make([]ranking, goroutines), newSearcher(p)
	var wait sync.WaitGroup
	for n := range found[1:] {
		wait.Go(func() { newSearcher(p).bestOf(n+1, len(found), most, &found[n+1]) })
	}
	made.bestOf(0, len(found), most, &found[0])
	wait.Wait()
	all := found[0]
	for _, f := range found[1:] {
		for _, r := range f.heap {
			all.offer(r)
		}
	}
	if len(all.heap) == 0 {
		none := p.gatherAll(1, Watch{})
		return Candidate{}, none.dropped.list(), false
	}
	made.most = math.Inf(1)
	return made.candidate(all.heap[0].bass, all.heap[0].treble), nil, true
}

// bestOf tries every stride-th pair of the grid from the one at first on, and
// offers those that cost no more than most.
func (w *searcher) bestOf(first, stride int, most *ceiling, r *ranking) {
	p := w.p
	w.order, r.room = p.dearFirst(), 1
	count := 0
	inward(len(p.req.BassMM), len(p.req.TrebleMM), func(b, t int) {
		if count++; (count-1)%stride != first || p.tooDifferent(p.req.BassMM[b], p.req.TrebleMM[t]) {
			return
		}
		w.most = most.value() * (1 + slackOfSum)
		frame, total, miss := w.try(p.req.BassMM[b], p.req.TrebleMM[t])
		if miss.Reason != Kept {
			return
		}
		score := total.score(p.req.Feel.Weights)
		r.offer(ranked{score, abs(frame.Difference().MM()), b, t})
		most.lower(score)
	})
}

// ceiling is the least score so far, shared by several goroutines. Scores are
// 0 or more, so they compare as their bits do.
type ceiling struct{ bits atomic.Uint64 }

func newCeiling() *ceiling {
	c := new(ceiling)
	c.bits.Store(math.Float64bits(math.Inf(1)))
	return c
}

func (c *ceiling) value() float64 { return math.Float64frombits(c.bits.Load()) }

func (c *ceiling) lower(to float64) {
	for now := c.bits.Load(); math.Float64bits(to) < now; now = c.bits.Load() {
		if c.bits.CompareAndSwap(now, math.Float64bits(to)) {
			return
		}
	}
}

// dearFirst lists the strings: the lowest, those with a bend, the others from
// the lowest up.
func (p *Plan) dearFirst() []int {
	lowest := p.strings - 1
	out := make([]int, 0, p.strings)
	if !p.isBend[lowest] {
		out = append(out, lowest)
	}
	out = append(out, p.bend...)
	for i, bent := range slices.Backward(p.isBend[:lowest]) {
		if !bent {
			out = append(out, i)
		}
	}
	return out
}

// inward visits every place of a grid of rows and columns once: those of a
// coarse mesh first, then those of a mesh twice as fine, and so on.
func inward(rows, columns int, visit func(row, column int)) {
	stride := 1
	for 2*stride < max(rows, columns) {
		stride *= 2
	}
	for coarsest := true; stride > 0; stride, coarsest = stride/2, false {
		for r := 0; r < rows; r += stride {
			for c := 0; c < columns; c += stride {
				if coarsest || r%(2*stride) != 0 || c%(2*stride) != 0 {
					visit(r, c)
				}
			}
		}
	}
}
