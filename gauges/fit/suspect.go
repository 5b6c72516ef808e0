package fit

import (
	"cmp"
	"fmt"
	"math"
	"slices"

	"scalepair/data/fault"
	"scalepair/data/unit"
	"scalepair/gauges"
	"scalepair/gauges/reading"
)

// Suspect is one reading to look at again.
type Suspect struct {
	Gauge     string      `json:"gauge"`
	Place     fault.Place `json:"place"`
	Why       string      `json:"why"`               // what gave it away, with figures
	WouldFit  string      `json:"would_fit"`         // what mass or length would agree
	Slips     []string    `json:"likely_slips"`      // what may have happened, likeliest first; may be empty
	Meant     []Meant     `json:"likely_values"`     // what each of them would have been, in the same order
	Deviation unit.Ratio  `json:"deviation_percent"` // as gauges.Judgement, of this reading alone
}

// Meant is what may have been meant where a slip is likely, as it would be written.
type Meant struct {
	Of   string `json:"of"` // "mass", "length", "outer diameter"
	Text string `json:"value"`
}

// Suspects lists the readings to look at for slips, largest deviation first.
func (s Stock) Suspects() []Suspect {
	var out []Suspect
	for _, g := range s.Gauges {
		switch {
		case g.Disagrees:
			out = append(out, s.disagreeing(g))
		case g.Suspect:
			for _, r := range g.Rows { // every one of them, since they agree with each other
				out = append(out, s.suspect(g, r, deviation{float64(g.Judged.Deviation), float64(g.Judged.U)}, describe(g.Judged)))
			}
		}
	}
	slices.SortStableFunc(out, func(a, b Suspect) int {
		return cmp.Compare(math.Abs(float64(b.Deviation)), math.Abs(float64(a.Deviation)))
	})
	return out
}

func describe(j *gauges.Judgement) string {
	side := "above"
	if j.Deviation < 0 {
		side = "below"
	}
	return fmt.Sprintf("is %s %% %s the fit made without it; up to %s %% would pass", percent(float64(j.Deviation)), side, percent(float64(j.Limit)))
}

// deviation is how far a reading is from what it should be, as a fraction, with
// the standard uncertainty of that.
type deviation struct{ x, u float64 }

// disagreeing names the reading of a gauge that lies farthest from the rest.
func (s Stock) disagreeing(g gauges.Gauge) Suspect {
	worst, most := 0, -1.0
	var found deviation
	for i, r := range g.Rows {
		d := s.alone(g, i, r)
		if far := math.Abs(d.x) / d.u; far > most {
			worst, most, found = i, far, d
		}
	}
	why := fmt.Sprintf("has readings further apart than chance allows, and this one deviates most, %s %%", percent(found.x))
	if len(g.Rows) == 1 {
		why = "has a reading and a construction further apart than chance allows"
	}
	return s.suspect(g, g.Rows[worst], found, why)
}

// alone compares one row with the fit, or with the mean of the other rows where
// nothing is fitted; the only row with what all is known of the gauge.
func (s Stock) alone(g gauges.Gauge, i int, r reading.Reading) deviation {
	v, _ := s.tools.Value(r, g.EA, g.EI)
	against, u := g.LinearDensity.KgPerM(), float64(g.RelU())
	if g.Judged != nil {
		against, u = g.Judged.Fit.KgPerM(), float64(g.Judged.U)
	} else if len(g.Rows) > 1 {
		var rest []gauges.Value
		for k, other := range g.Rows {
			if k != i {
				v, _ := s.tools.Value(other, g.EA, g.EI)
				rest = append(rest, v)
			}
		}
		m := gauges.Mean(rest)
		against, u = m.W, m.U()/m.W
	}
	return deviation{v.W/against - 1, math.Hypot(v.U()/v.W, u)}
}

// suspect says of one reading what would fit and which slips would explain it.
func (s Stock) suspect(g gauges.Gauge, r reading.Reading, d deviation, why string) Suspect {
	out := Suspect{Place: r.Place, Gauge: g.Label, Why: why, Deviation: unit.Ratio(d.x)}
	numbers := entered(s.tools, r, g)
	a, b := numbers[0], numbers[1]
	out.WouldFit = fmt.Sprintf("%s (not %s) or %s (not %s) would fit", a.fitting(d.x), a.text(a.x), b.fitting(d.x), b.text(b.x))
	switch last := len(numbers) - 1; {
	case len(g.Rows) > 1 && g.Disagrees:
		numbers = numbers[:last] // readings of one string have one diameter
	case len(g.Rows) > 1:
		outer := numbers[last]
		out.WouldFit = fmt.Sprintf("its readings agree; an outer diameter of %s (not %s) would fit them", outer.fitting(d.x), outer.text(outer.x))
		numbers = numbers[last:]
	}
	out.Slips, out.Meant = likely(numbers, d)
	return out
}

// Blind is what this stock could not have shown of one gauge.
type Blind struct {
	Gauge string
	Limit unit.Ratio // a slip below this part of the linear density passes; 0: nothing judges this gauge
	Slips []string   // slips of the sorts that builders make that would pass, in words
}

// Blind lists, gauge by gauge, the slips that would have gone unseen: those in
// its first reading that move the linear density by less than the gauge's limit.
// Gauges without a reading have none to slip and are left out.
func (s Stock) Blind() []Blind {
	var out []Blind
	for _, g := range s.Gauges {
		if g.Readings == 0 {
			continue
		}
		b := Blind{Gauge: g.Label}
		if g.Judged != nil {
			b.Limit = g.Judged.Limit
			b.Slips = unseen(entered(s.tools, g.Rows[0], g), float64(b.Limit)*float64(g.Readings))
		}
		out = append(out, b)
	}
	return out
}
