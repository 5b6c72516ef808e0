package choice

import "scalepair/data/unit"

// Grid is every pair that was tried, for a picture.
type Grid struct {
	Bass, Treble []unit.Length
	Pairs        [][]GridPair // by bass, then treble
	Thinned      bool         // pairs were left out
}

// GridPair is one of them: its lengths, error and inharmonicity, without geometry;
// of one that was dropped only the lengths.
type GridPair struct {
	Pair
	Limit  Limit // that dropped it, or Kept
	AsGood bool  // as the best
}

// Grid gives the pairs that were tried. A grid of more than most is thinned evenly:
// every second, third and so on length of either side, counted from the shortest. It
// panics on most below 1.
func (r *Result) Grid(most int) Grid {
	if most < 1 {
		panic("choice: a map of no pairs")
	}
	f, stride := r.field, 1
	every := func(n int) int { return (n + stride - 1) / stride }
	for every(len(f.bass))*every(len(f.treble)) > most {
		stride++
	}
	g := Grid{Thinned: stride > 1}
	for t := 0; t < len(f.treble); t += stride {
		g.Treble = append(g.Treble, f.treble[t])
	}
	for b := 0; b < len(f.bass); b += stride {
		g.Bass = append(g.Bass, f.bass[b])
		row := make([]GridPair, 0, len(g.Treble))
		for t := 0; t < len(f.treble); t += stride {
			row = append(row, r.gridPair(b*len(f.treble)+t))
		}
		g.Pairs = append(g.Pairs, row)
	}
	return g
}

func (r *Result) gridPair(at int) GridPair {
	f := r.field
	v := f.points[at]
	pair := GridPair{Limit: v.Limit}
	pair.Bass, pair.Treble = f.lengths(at)
	pair.Difference = pair.Bass - pair.Treble
	if v.Limit == Kept {
		pair.Gauges, pair.Error, pair.Inharmonicity = v.set, unit.Ratio(sqrt(v.e2)), unit.Cents(v.cents)
		pair.AsGood = !r.NoneNear && felt(v.e2, f.removed) <= f.allowed
	}
	return pair
}

// Map gives the pairs of the grid that were kept.
func (r *Result) Map(most int) (pairs []Pair, thinned bool) {
	g := r.Grid(most)
	for _, row := range g.Pairs {
		for _, p := range row {
			if p.Limit == Kept {
				pairs = append(pairs, p.Pair)
			}
		}
	}
	return pairs, g.Thinned
}
