package choice

import (
	"runtime"
	"sync"
	"sync/atomic"
)

// Result is the outcome of a search over a grid.
type Result struct {
	// Tried and Kept count pairs.
	Tried, Kept int
	// Best are the best pairs, distinct, best first.
	Best []Candidate
	// Front are the pairs that no other beats in tension misfit, bending force misfit
	// and difference at once, smallest difference first.
	Front []Candidate
	// Dropped counts the pairs that limits dropped, by reason.
	Dropped []Dropped
	// WorstTensionMisfit is the greatest tension misfit among the kept pairs.
	WorstTensionMisfit float64

	// Compared are Best and the next distinct pairs, as many as a confidence
	// compares.
	Compared []Candidate
}

// gathered is what one goroutine has found.
type gathered struct {
	kept    int
	worst   float64 // greatest tension square
	front   front
	ranking ranking
	dropped tally
}

// Watch follows a long search, and stops it. The zero value does neither.
type Watch struct {
	// Stop ends the work early when it is closed; the result is then void.
	Stop <-chan struct{}
	// Step is told how much of the work is done. It is called from several
	// goroutines at once.
	Step func(done, total int)
}

// stopped says whether the work is to end.
func (w Watch) stopped() bool {
	select {
	case <-w.Stop:
		return true
	default:
		return false
	}
}

func (w Watch) step(done, total int) {
	if w.Step != nil {
		w.Step(done, total)
	}
}

// Search tries every pair of the grid. The result does not depend on the
// number of processors.
func (p *Plan) Search() *Result { return p.SearchWatched(Watch{}) }

// SearchWatched is Search under watch.
func (p *Plan) SearchWatched(watch Watch) *Result {
	return p.result(p.gatherAll(max(p.req.Listed, mostCompared), watch))
}

// gatherAll tries every pair, row by row on all processors, and keeps enough
// of the ranking for so many distinct pairs.
func (p *Plan) gatherAll(distinct int, watch Watch) gathered {
	room := roomFor(distinct, p.req.ApartMM, p.req.BassMM, p.req.TrebleMM)
	workers := min(runtime.GOMAXPROCS(0), len(p.req.BassMM))
	found := make([]gathered, workers)
	var next, done atomic.Int64
	var wait sync.WaitGroup
	for n := range found {
		found[n].ranking.room, found[n].front = room, front{}
		wait.Go(func() {
			w := newSearcher(p)
			for {
				row := int(next.Add(1)) - 1
				if row >= len(p.req.BassMM) || watch.stopped() {
					return
				}
				for t := range p.req.TrebleMM {
					w.gather(row, t, &found[n])
				}
				watch.step(int(done.Add(1)), len(p.req.BassMM))
			}
		})
	}
	wait.Wait()
	return merged(found)
}

// gather tries one pair and keeps what counts.
func (w *searcher) gather(b, t int, g *gathered) {
	frame, total, miss := w.try(w.p.req.BassMM[b], w.p.req.TrebleMM[t])
	if miss.Reason != Kept {
		g.dropped.drop(miss)
		return
	}
	g.kept++
	g.worst = max(g.worst, total.tension)
	difference := abs(frame.Difference().MM())
	g.ranking.offer(ranked{total.score(w.p.req.Feel.Weights), difference, b, t})
	g.front.offer(point{total.tension, total.bendingForce, difference, b, t})
}

// merged puts together what the goroutines found.
func merged(found []gathered) gathered {
	all := found[0]
	for _, g := range found[1:] {
		all.kept += g.kept
		all.worst = max(all.worst, g.worst)
		all.dropped.merge(&g.dropped)
		for _, level := range g.front {
			for _, f := range level {
				all.front.offer(f)
			}
		}
		for _, r := range g.ranking.heap {
			all.ranking.offer(r)
		}
	}
	return all
}

// result works out the pairs worth listing.
func (p *Plan) result(all gathered) *Result {
	r := &Result{
		Tried: len(p.req.BassMM) * len(p.req.TrebleMM), Kept: all.kept,
		Dropped: all.dropped.list(),
	}
	var worst Candidate
	worst.setScore(squares{tension: all.worst}, p.req.Feel.Weights)
	r.WorstTensionMisfit = worst.TensionMisfit
	w := newSearcher(p)
	compared := max(p.req.Listed, mostCompared)
	for _, b := range distinct(all.ranking.sorted(), compared, p.req.ApartMM, p.req.BassMM, p.req.TrebleMM) {
		r.Compared = append(r.Compared, w.candidate(b.bass, b.treble))
	}
	r.Best = r.Compared[:min(p.req.Listed, len(r.Compared))]
	for _, f := range all.front.sorted() {
		r.Front = append(r.Front, w.candidate(f.bass, f.treble))
	}
	return r
}

// candidate works a kept pair out once more, in full.
func (w *searcher) candidate(b, t int) Candidate {
	frame, total, miss := w.try(w.p.req.BassMM[b], w.p.req.TrebleMM[t])
	if miss.Reason != Kept {
		panic("choice: a pair that was kept is dropped when it is worked out again")
	}
	c := geometryOf(&frame, w.p.req.Neck.Frets)
	c.BassMM, c.TrebleMM = w.p.req.BassMM[b], w.p.req.TrebleMM[t]
	c.Gauges = append([]int(nil), w.set...)
	c.setScore(total, w.p.req.Feel.Weights)
	return c
}
