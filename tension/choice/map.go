package choice

import "scalepair/data/unit"

// Map gives every pair that was kept, for a picture: its lengths, error and
// inharmonicity, without geometry. A grid of more pairs than most is thinned
// evenly: every second, third and so on length of either side, counted from the
// shortest; thinned says so. It panics on most below 1.
func (r *Result) Map(most int) (pairs []Pair, thinned bool) {
	if most < 1 {
		panic("choice: a map of no pairs")
	}
	f, stride := r.field, 1
	every := func(n int) int { return (n + stride - 1) / stride }
	for every(len(f.bass))*every(len(f.treble)) > most {
		stride++
	}
	for at, v := range f.points {
		if v.limit != Kept || at/len(f.treble)%stride != 0 || at%len(f.treble)%stride != 0 {
			continue
		}
		pair := Pair{Gauges: v.set, Error: unit.Ratio(sqrt(v.e2)), Inharmonicity: unit.Cents(v.cents)}
		pair.Bass, pair.Treble = f.lengths(at)
		pair.Difference = pair.Bass - pair.Treble
		pairs = append(pairs, pair)
	}
	return pairs, stride > 1
}
