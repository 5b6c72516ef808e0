package gauges

import (
	"fmt"
	"math"
	"slices"
)

// Blind is what this stock could not have shown of one gauge.
type Blind struct {
	Gauge string
	Limit float64  // a slip below this fraction of the linear density passes; 0: nothing judges this gauge
	Slips []string // slips of the usual sorts that would pass, in words
}

// Blind lists, gauge by gauge, the slips that would have gone unseen: those
// that move the linear density by less than the gauge's limit. Gauges without a
// reading have none to slip and are left out.
func (s Stock) Blind() []Blind {
	var out []Blind
	for _, g := range s.Gauges {
		if g.Readings == 0 {
			continue
		}
		b := Blind{Gauge: g.Label}
		if g.Judged != nil {
			b.Limit = float64(g.Judged.Limit())
			b.Slips = s.unseen(g)
		}
		out = append(out, b)
	}
	return out
}

// unseen names the slips of a gauge's first reading that are too small to show.
func (s Stock) unseen(g Gauge) []string {
	var out []string
	limit := s.shows(g)
	numbers := s.by.tools.numbers(g.Rows[0], g)
	for _, n := range numbers[:len(numbers)-1] {
		moves := func(value float64) float64 { return math.Abs(math.Pow(value/n.x, n.power) - 1) }
		passes := func(value float64) bool { return moves(value) < limit && percent(moves(value)) != "0" }
		for _, sl := range n.slips(passes) {
			if sl.rank == rankDigit {
				continue
			}
			text := fmt.Sprintf("%s %s for %s (%s %%)", n.name, n.given(), sl.text, percent(moves(sl.value)))
			if !slices.Contains(out, text) {
				out = append(out, text)
			}
		}
	}
	return out
}

// shows is the least slip in a gauge's first reading that would have shown: by
// moving the gauge off its fit or, where it has several readings, by standing
// off from the others. A slip in one of several moves the gauge by its share.
func (s Stock) shows(g Gauge) float64 {
	limit := float64(g.Judged.Limit()) * float64(g.Readings)
	if g.Readings > 1 {
		v := s.by.tools.value(&g.Rows[0], float64(g.EA), g.EI, 1)
		limit = min(limit, normalQuantile(s.each/2)*RootSum(v.indep/v.w, float64(g.Indep/g.LinearDensity)))
	}
	return limit
}
