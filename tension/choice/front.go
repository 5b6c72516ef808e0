package choice

import (
	"cmp"
	"maps"
	"math"
	"slices"
	"sort"
)

// point is a pair as the trade-off front sees it: three numbers, each better
// when smaller, and the place of the pair in the grid.
type point struct {
	tension, bendingForce, difference float64
	bass, treble                      int
}

// beats says whether a is at least as good as b in all three and better in
// one.
func (a point) beats(b point) bool {
	return a.tension <= b.tension && a.bendingForce <= b.bendingForce && a.difference <= b.difference &&
		(a.tension < b.tension || a.bendingForce < b.bendingForce || a.difference < b.difference)
}

// front keeps the pairs that no other beats, however many are offered. Pairs
// of one difference only compete in two numbers, so each difference has a
// stair of its own, where a place is found by halving; what pairs of smaller
// difference beat is left to sorted. Its outcome does not depend on the order
// in which pairs come.
type front map[float64]stair

// stair holds points of one difference that do not beat each other: rising
// tension and falling bending force, but for equal points, which stand together.
type stair []point

// offer adds a point unless one of its own difference beats it, and takes out
// those it beats.
func (f front) offer(p point) {
	s := f[p.difference]
	// The last point at or before p by tension has the least bending force of those.
	i := sort.Search(len(s), func(i int) bool { return s[i].tension > p.tension })
	if i > 0 && s[i-1].beats(p) {
		return
	}
	from := i
	for from > 0 && p.beats(s[from-1]) {
		from--
	}
	to := i
	for to < len(s) && p.beats(s[to]) {
		to++
	}
	f[p.difference] = slices.Replace(s, from, to, p)
}

// sorted gives the pairs that no other beats, by difference, then by place in
// the grid.
func (f front) sorted() []point {
	var out []point
	var best stair // of all smaller differences
	for _, d := range slices.Sorted(maps.Keys(f)) {
		var kept stair
		for _, p := range f[d] {
			i := sort.Search(len(best), func(i int) bool { return best[i].tension > p.tension })
			if i == 0 || best[i-1].bendingForce > p.bendingForce {
				kept = append(kept, p)
			}
		}
		out = append(out, kept...)
		best = best.with(kept)
	}
	slices.SortFunc(out, func(a, b point) int {
		return cmp.Or(cmp.Compare(a.difference, b.difference),
			cmp.Compare(a.bass, b.bass), cmp.Compare(a.treble, b.treble))
	})
	return out
}

// with merges another stair and keeps, of the whole, rising tension and
// falling bending force.
func (s stair) with(o stair) stair {
	all := append(slices.Clone(s), o...)
	slices.SortFunc(all, func(a, b point) int {
		return cmp.Or(cmp.Compare(a.tension, b.tension), cmp.Compare(a.bendingForce, b.bendingForce))
	})
	out := all[:0]
	for _, p := range all {
		if len(out) == 0 || p.bendingForce < out[len(out)-1].bendingForce {
			out = append(out, p)
		}
	}
	return out
}

// ranked is a pair's place in the ranking.
type ranked struct {
	score        float64
	difference   float64 // |bass - treble|, mm
	bass, treble int     // places in the grid
}

// compare orders by score, then by smaller difference, then by place.
func (a ranked) compare(b ranked) int {
	return cmp.Or(cmp.Compare(a.score, b.score), cmp.Compare(a.difference, b.difference),
		cmp.Compare(a.bass, b.bass), cmp.Compare(a.treble, b.treble))
}

// ranking keeps the first room pairs of a ranking, as a heap with the last of
// them on top.
type ranking struct {
	room int
	heap []ranked
}

// offer adds a pair if it belongs among the first.
func (r *ranking) offer(p ranked) {
	if len(r.heap) < r.room {
		r.heap = append(r.heap, p)
		for i := len(r.heap) - 1; i > 0; {
			up := (i - 1) / 2
			if r.heap[i].compare(r.heap[up]) <= 0 {
				break
			}
			r.heap[i], r.heap[up] = r.heap[up], r.heap[i]
			i = up
		}
		return
	}
	if p.compare(r.heap[0]) >= 0 {
		return
	}
	r.heap[0] = p
	for i := 0; ; {
		big := i
		for c := 2*i + 1; c <= 2*i+2 && c < len(r.heap); c++ {
			if r.heap[c].compare(r.heap[big]) > 0 {
				big = c
			}
		}
		if big == i {
			return
		}
		r.heap[i], r.heap[big] = r.heap[big], r.heap[i]
		i = big
	}
}

// sorted gives the pairs, best first.
func (r *ranking) sorted() []ranked {
	out := slices.Clone(r.heap)
	slices.SortFunc(out, ranked.compare)
	return out
}

// roomFor is how many of the best pairs must be kept so that listed distinct
// ones are surely among them: each listed pair keeps out at most the pairs
// nearer than apart in bass and in treble, so the last listed one stands no
// later than listed times that number. It depends on how fine the grid is,
// not on how wide.
func roomFor(listed int, apart float64, bass, treble []float64) int {
	near := mostWithin(bass, apart) * mostWithin(treble, apart)
	return min(listed*near, len(bass)*len(treble))
}

// mostWithin is the greatest number of values that lie nearer than apart to
// one of them, itself included.
func mostWithin(values []float64, apart float64) int {
	most := 1
	for _, v := range values {
		count := 0
		for _, u := range values {
			if math.Abs(u-v) < apart {
				count++
			}
		}
		most = max(most, count)
	}
	return most
}

// distinct takes pairs from a ranking, best first, leaving out each that lies
// nearer than apart, in bass and treble and difference, to one already taken.
func distinct(rank []ranked, listed int, apart float64, bass, treble []float64) []ranked {
	var out []ranked
	for _, r := range rank {
		if len(out) == listed {
			break
		}
		b, t := bass[r.bass], treble[r.treble]
		if !slices.ContainsFunc(out, func(o ranked) bool {
			db, dt := b-bass[o.bass], t-treble[o.treble]
			near := apart * (1 - limitSlack)
			return math.Abs(db) < near && math.Abs(dt) < near && math.Abs(db-dt) < near
		}) {
			out = append(out, r)
		}
	}
	return out
}
