package choice

import (
	"cmp"
	"math"
	"slices"
)

func sqrt(x float64) float64 { return math.Sqrt(max(0, x)) }

// rate finds the least error of the pairs kept and what is as good: at most
// max(E_best, n) + n, each with U taken off.
func (f *field) rate() {
	f.best = math.Inf(1)
	for _, v := range f.points {
		if v.Limit == Kept {
			f.best = min(f.best, felt(v.e2, f.removed))
		}
	}
	n := float64(f.p.req.Feel.Noticeable)
	f.allowed = max(f.best, n) + n
}

// good lists the places of the pairs that are as good as the best.
func (f *field) good() []int {
	var out []int
	for at, v := range f.points {
		if v.Limit == Kept && felt(v.e2, f.removed) <= f.allowed {
			out = append(out, at)
		}
	}
	return out
}

// What picks compare, each rounded so that equal values are equal.
func (f *field) difference(at int) float64 {
	bass, treble := f.lengths(at)
	return rounded(math.Abs((bass - treble).M()))
}
func (f *field) bassOf(at int) float64  { b, _ := f.lengths(at); return rounded(b.M()) }
func (f *field) errorOf(at int) float64 { return rounded(math.Sqrt(f.points[at].e2)) }

// first gives the place that is first by some keys, each the smaller the better,
// then by its place in the grid; -1 of none.
func (f *field) first(places []int, keys ...func(at int) float64) int {
	best := -1
	for _, at := range places {
		if best < 0 {
			best = at
			continue
		}
		for _, key := range keys {
			if c := cmp.Compare(key(at), key(best)); c != 0 {
				if c < 0 {
					best = at
				}
				break
			}
		}
	}
	return best
}

// picked is a pick by its place in the grid.
type picked struct {
	kind PickKind
	at   int
}

// picks takes the picks among the pairs as good as the best; none where no pair
// was kept. lacks is what clear enough misses by, in cents.
func (f *field) picks() (out []picked, lacks float64) {
	good := f.good()
	if len(good) == 0 {
		return nil, 0
	}
	longer := func(at int) float64 { return -f.bassOf(at) }
	smallest, longest := f.first(good, f.difference, f.errorOf), f.first(good, longer, f.difference, f.errorOf)
	half := (f.bassOf(smallest) + f.bassOf(longest)) / 2
	upper := slices.DeleteFunc(slices.Clone(good), func(at int) bool { return f.bassOf(at) < half-1e-9 })
	out = []picked{{SmallestFan, smallest}, {MiddlePick, f.first(upper, f.difference, f.errorOf)}, {LongestBass, longest}}
	if wanted := f.p.req.Feel.Inharmonicity.Value(); wanted > 0 {
		known := slices.DeleteFunc(slices.Clone(good), func(at int) bool { return f.points[at].cents == 0 })
		enough := slices.DeleteFunc(slices.Clone(known), func(at int) bool { return rounded(f.points[at].cents) > rounded(wanted) })
		at := f.first(enough, f.difference, f.errorOf)
		if at < 0 {
			if at = f.first(known, func(at int) float64 { return rounded(f.points[at].cents) }); at >= 0 {
				lacks = f.points[at].cents - wanted
			}
		}
		if at >= 0 {
			out = append(out, picked{ClearEnough, at})
		}
	}
	if f.p.req.Given != nil {
		out = append(out, picked{BestFeel, f.first(good, f.errorOf, f.difference)})
	}
	return out, lacks
}

// mostSteps is how many rows the trade-off has at most (judgement: beyond, a
// list helps nobody to decide).
const mostSteps = 12

// tradeOff lists the rows from the smallest fan to the longest bass. Between,
// for each difference larger than the row before's and smaller than the last's:
// of the pairs whose bass is longer than the row before's and shorter than the
// last's, the one of least error; where there is none, no row.
func (f *field) tradeOff(good []int) []int {
	if len(good) == 0 {
		return nil
	}
	longer := func(at int) float64 { return -f.bassOf(at) }
	first, last := f.first(good, f.difference, f.errorOf), f.first(good, longer, f.difference, f.errorOf)
	rows := []int{first}
	if first == last {
		return rows
	}
	by := map[float64][]int{}
	var differences []float64
	for _, at := range good {
		d := f.difference(at)
		if by[d] == nil {
			differences = append(differences, d)
		}
		by[d] = append(by[d], at)
	}
	slices.Sort(differences)
	for _, d := range differences {
		before := rows[len(rows)-1]
		if d <= f.difference(before) || d >= f.difference(last) {
			continue
		}
		between := slices.DeleteFunc(slices.Clone(by[d]), func(at int) bool {
			return f.bassOf(at) <= f.bassOf(before) || f.bassOf(at) >= f.bassOf(last)
		})
		if at := f.first(between, f.errorOf); at >= 0 {
			rows = append(rows, at)
		}
	}
	return thinned(append(rows, last), mostSteps)
}

// thinned leaves most of a list, evenly, and keeps its ends.
func thinned(list []int, most int) []int {
	if len(list) <= most {
		return list
	}
	out := make([]int, most)
	for k := range out {
		out[k] = list[(2*k*(len(list)-1)+most-1)/(2*(most-1))]
	}
	return out
}

// printed lists the places of all pairs that are printed.
func (f *field) printed() []int {
	picks, _ := f.picks()
	out := f.tradeOff(f.good())
	for _, k := range picks {
		out = append(out, k.at)
	}
	return out
}

// spanned gives a pair the bass lengths that are as good at its difference.
func (f *field) spanned(pair Pair, at int, good []int) Pair {
	d := f.difference(at)
	for _, other := range good {
		if f.difference(other) != d {
			continue
		}
		b, _ := f.lengths(other)
		if pair.BassFrom == 0 || b < pair.BassFrom {
			pair.BassFrom = b
		}
		pair.BassTo = max(pair.BassTo, b)
	}
	return pair
}
