package report

import (
	"fmt"
	"math"

	"scalepair/cmd/scalepair/table"
	"scalepair/data/unit"
	"scalepair/tension/choice"
)

// worstWords name the string of greatest error and what makes it so, its tension
// or a bend: the one that has the larger part in its error.
func (s *Strung) worstWords() string {
	if s.Pair.WorstString == 0 || s.Pair.Error == 0 {
		return ""
	}
	one := s.d.Strings[s.Pair.WorstString-1]
	text := fmt.Sprintf("string %d", one.Number)
	if most, ok := s.worstBend(); ok {
		return text + ", its bend at " + s.bendWords(most)
	}
	if one.Target == 0 {
		return text
	}
	words := make([]string, len(s.Tunings))
	for c, t := range s.Tunings {
		if words[c] = table.SignedPercentText(deviation(one, c), 1); len(words) > 1 {
			words[c] += " in " + t.Name
		}
	}
	return text + ", its tension off by " + listed(words)
}

// worstBend is the bend that makes the worst string the worst, where one does.
func (s *Strung) worstBend() (bendRow, bool) {
	if s.Pair.WorstString == 0 {
		return bendRow{}, false
	}
	one := s.d.Strings[s.Pair.WorstString-1]
	most, far := s.farthestBend(one.Number)
	return most, far > 0 && float64(one.Error*one.Error) > 2*s.tensionPart(one)
}

// deviation is how far a string's tension in one tuning is from the wanted.
func deviation(s choice.StringDetail, c int) unit.Ratio {
	return unit.Ratio(s.Tunings[c].Tension.Value/s.Target - 1)
}

// tensionPart is what tension adds to the square of a string's error.
func (s *Strung) tensionPart(one choice.StringDetail) float64 {
	if one.Target == 0 {
		return 0
	}
	req := s.in.Plan.Request()
	sum, weights, most := 0.0, 0.0, 0.0
	for c := range s.Tunings {
		square := math.Pow(math.Log(1+float64(deviation(one, c))), 2)
		sum, weights, most = sum+req.Cases[c].Weight*square, weights+req.Cases[c].Weight, max(most, square)
	}
	if req.By == choice.Worst {
		return most
	}
	return sum / weights
}

// farthestBend is the bend that is farthest from what is wanted, of one string or
// of all for 0, and how far as a logarithm: 0 where none is, or where an easier
// one is welcome.
func (s *Strung) farthestBend(number int) (most bendRow, far float64) {
	easier := s.in.Plan.Request().Feel.BendingForce.NoHarder
	for c := range s.Tunings {
		for _, r := range s.in.stringRows(s.d, c) {
			for _, b := range r.tuned().Bends {
				if b.Err != nil || number > 0 && r.string().Number != number {
					continue
				}
				for _, ratio := range []float64{forceRatio(b), distanceRatio(b)} {
					x := math.Log(ratio)
					if !easier {
						x = math.Abs(x)
					}
					if x > far {
						far, most = x, bendRow{r, b}
					}
				}
			}
		}
	}
	return most, far
}

// forceRatio and distanceRatio set a bend beside the wanted one; 1 where none is
// wanted.
func forceRatio(b choice.BendDetail) float64 {
	if b.WantedForce == 0 {
		return 1
	}
	return float64(b.Bend.Force / b.WantedForce)
}

func distanceRatio(b choice.BendDetail) float64 {
	if b.WantedDistance == 0 {
		return 1
	}
	return float64(b.Bend.Distance / b.WantedDistance)
}

// bendWords say what a bend asks of the finger beside what is wanted: its force,
// or its distance where that is further from the wanted.
func (s *Strung) bendWords(r bendRow) string {
	bound, force, distance := ", wanted", math.Log(forceRatio(r.BendDetail)), math.Log(distanceRatio(r.BendDetail))
	if s.in.Plan.Request().Feel.BendingForce.NoHarder {
		bound = " of at most"
	} else {
		force, distance = math.Abs(force), math.Abs(distance)
	}
	does, wanted := s.in.Units.ForceText(r.Bend.Force), s.in.Units.ForceText(r.WantedForce)
	if distance > force {
		does, wanted = s.in.length(r.Bend.Distance), s.in.length(r.WantedDistance)
	}
	if r.WantedForce == 0 {
		return fmt.Sprintf("fret %s takes %s", trim(r.Fret), does)
	}
	return fmt.Sprintf("fret %s takes %s%s %s", trim(r.Fret), does, bound, wanted)
}

// hardestBend names the bend that is farthest from what is wanted, where one is,
// and where no bend is wanted the one of the greatest force.
func (s *Strung) hardestBend() (what, text string) {
	if s.Pair.Error > 0 && s.in.Plan.Request().Feel.BendingForce.Kind != choice.NoTarget {
		most, far := s.farthestBend(0)
		if far == 0 {
			return "", ""
		}
		what = "Bend farthest from the wanted"
		if s.in.Plan.Request().Feel.BendingForce.NoHarder {
			what = "Bend harder than wanted"
		}
		return what, fmt.Sprintf("string %d at %s", most.string().Number, s.bendWords(most))
	}
	var most bendRow
	for c := range s.Tunings {
		for _, r := range s.in.stringRows(s.d, c) {
			for _, b := range r.tuned().Bends {
				if b.Err == nil && (most.d == nil || b.Bend.Force > most.Bend.Force) {
					most = bendRow{r, b}
				}
			}
		}
	}
	if most.d == nil {
		return "", ""
	}
	return "Hardest bend", fmt.Sprintf("string %d at %s", most.string().Number, s.bendWords(most))
}
