package gauges

import (
	"fmt"
	"math"
	"slices"
)

// Blind is what this stock could not have shown of one gauge.
type Blind struct {
	Gauge string
	Limit float64  // a slip below this fraction of the unit weight passes; 0: nothing judges this gauge
	Slips []string // slips of the usual sorts that would pass, in words
}

// Blind lists, gauge by gauge, the slips that would have gone unseen: those
// that move the unit weight by less than the gauge's limit. Gauges without a
// reading have none to slip and are left out.
func (s Stock) Blind() []Blind {
	var out []Blind
	for _, g := range s.Gauges {
		if g.Readings == 0 {
			continue
		}
		b := Blind{Gauge: g.Label}
		if g.Judged != nil {
			b.Limit = g.Judged.Limit
			b.Slips = s.unseen(g)
		}
		out = append(out, b)
	}
	return out
}

// unseen names the slips of a gauge's first reading that are too small for its
// limit. A gauge of several readings is moved by a slip in one of them by its
// share only. A digit misread counts in its last place, by one.
func (s Stock) unseen(g Gauge) []string {
	var out []string
	numbers := s.tools.numbers(g.Rows[0], g)
	for _, n := range numbers[:len(numbers)-1] {
		for _, sl := range n.slips() {
			if sl.rank == rankDigit {
				continue
			}
			out = g.addUnseen(out, n, sl)
		}
		if n.name != "pieces" && n.name != "pitch" {
			last := slip{rankDigit, n.x + math.Pow(10, -float64(n.decimals)), "last digit misread by one"}
			out = g.addUnseen(out, n, last)
		}
	}
	return out
}

func (g Gauge) addUnseen(out []string, n entered, sl slip) []string {
	moves := math.Abs(math.Pow(sl.value/n.x, n.power) - 1)
	if moves >= g.Judged.Limit*float64(g.Readings) {
		return out
	}
	text := fmt.Sprintf("%s %s for %s (%s %%)", n.name, n.show(n.x), n.show(sl.value), percent(moves))
	if slices.Contains(out, text) {
		return out
	}
	return append(out, text)
}
