package build

import (
	"fmt"
	"math"
	"slices"

	"scalepair/data/unit"
)

// Scales is the search over scale pairs.
type Scales struct {
	// Bass and Treble are the lengths to try, rising and unlike; both empty
	// when the file has no [scales]. Pairs whose bass is shorter than their
	// treble are for the chooser to leave out unless ReverseFan.
	Bass, Treble []unit.Length
	ReverseFan   bool
	// Apart is the least difference in bass, treble or difference between two
	// listed pairs: 0 to 200 mm, 5 mm unless given.
	Apart unit.Length
}

// mostPoints bounds one range, mostPairs the pairs of both (judgement: a
// finer grid than a builder can saw, and still done in seconds).
const (
	mostPoints = 100_000
	mostPairs  = 5_000_000
)

func readScales(s *section) Scales {
	v := Scales{Apart: unit.MM(5)}
	v.Bass = s.grid("bass")
	v.Treble = s.grid("treble")
	s.truth("reverse_fan", &v.ReverseFan)
	s.length("apart", &v.Apart, 0, unit.MM(200))
	if s.table == nil {
		return v
	}
	if s.first("bass", "treble") != nil {
		s.require("bass", "give both, each as a range, a list or one length")
		s.require("treble", "give both, each as a range, a list or one length")
	}
	if pairs := len(v.Bass) * len(v.Treble); pairs > mostPairs {
		s.faults.Add(s.place(s.find("treble").at), fmt.Sprintf("%d bass and %d treble lengths make %d pairs", len(v.Bass), len(v.Treble), pairs),
			"", fmt.Sprintf("take larger steps; up to %d pairs are searched", mostPairs))
	}
	if len(v.Bass) > 0 && len(v.Treble) > 0 {
		s.notReversed(v.Bass[len(v.Bass)-1], v.Treble[0], v.ReverseFan)
	}
	return v
}

// grid reads the lengths to try: a range, a list, or one length.
func (s *section) grid(key string) []unit.Length {
	n := s.find(key)
	switch {
	case n == nil:
		return nil
	case n.kind == kindTable:
		return s.open("the range of "+key, s.place(n.at), n.table).steps()
	}
	var out []unit.Length
	items := s.entries(key)
	for _, item := range items {
		if l, ok := quantityOf(s, item, key+" scale", shortestScale, longestScale, unit.ParseLength); ok {
			out = append(out, l)
		}
	}
	if len(out) < len(items) {
		return nil
	}
	slices.Sort(out)
	return slices.Compact(out)
}

// steps reads a range { from, to, step }, both ends included where the step
// meets them.
func (s *section) steps() []unit.Length {
	var from, to unit.Length
	step := unit.MM(5)
	ok := s.scale("from", &from)
	ok = s.scale("to", &to) && ok
	ok = s.length("step", &step, unit.MM(0.001), unit.MM(1000)) && ok
	for _, key := range []string{"from", "to", "step"} {
		ok = s.require(key, `a range is { from = "660 mm", to = "720 mm", step = "5 mm" }`) && ok
	}
	if !ok {
		return nil
	}
	if from > to {
		s.wrong(s.find("from"), "the range is empty: it begins above its end, "+s.asWritten("to"), "exchange from and to")
		return nil
	}
	count := math.Floor(float64((to-from)/step)+1e-6) + 1
	if count > mostPoints {
		s.wrong(s.find("step"), fmt.Sprintf("this step makes %.0f lengths", count),
			fmt.Sprintf("take a larger one; up to %d are tried", mostPoints))
		return nil
	}
	return points(from, step, int(count))
}

// points gives from, from + step and so on, each the float nearest to its
// exact value: a length in millimetres, thousandths of an inch or 1/64 in is
// a whole number of picometres, and so is any sum of such lengths.
func points(from, step unit.Length, count int) []unit.Length {
	out := make([]unit.Length, count)
	for i := range out {
		out[i] = toPicometre(toPicometre(from) + unit.Length(i)*toPicometre(step))
	}
	return out
}

// toPicometre rounds to the picometre, far below what a builder can see.
func toPicometre(l unit.Length) unit.Length {
	const perMetre = 1e12
	return unit.Length(math.Round(float64(l)*perMetre) / perMetre)
}
