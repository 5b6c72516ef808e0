package report

import (
	"fmt"
	"math"

	"scalepair/cmd/scalepair/table"
	"scalepair/data/unit"
	"scalepair/tension/choice"
)

// worstWords name the string of greatest error with its tension, and the bend
// that is farthest from the wanted.
func (s *Strung) worstWords() string {
	number := s.Pair.WorstString
	if number == 0 || s.Pair.Error == 0 {
		return ""
	}
	var words []string
	if one := s.d.Strings[number-1]; one.Target > 0 {
		for c, t := range s.Tunings {
			text := table.SignedPercentText(unit.Ratio(one.Tunings[c].Tension.Value/one.Target-1), 1)
			if len(s.Tunings) > 1 {
				text += " in " + t.Name
			}
			words = append(words, text)
		}
		words = []string{"its tension off by " + listed(words)}
	}
	if far, _, bend := s.farthestBend(number); far > 0 {
		words = append(words, "its bend at "+bend)
	}
	return fmt.Sprintf("string %d, %s", number, listed(words))
}

// farthestBend is the bend that is farthest from what is wanted, of one string or
// of all for 0: how far, as a logarithm, on which string, and in words. Where no
// bend is wanted it is the one of the greatest force; far is then 0.
func (s *Strung) farthestBend(number int) (far float64, of int, words string) {
	most := -1.0
	for c := range s.Tunings {
		for _, r := range s.in.stringRows(s.d, c) {
			for _, b := range r.tuned().Bends {
				if b.Err != nil || number > 0 && r.string().Number != number {
					continue
				}
				off, text := s.bendOff(b)
				rank := off
				if b.WantedForce == 0 {
					rank = b.Bend.Force.N()
				}
				if rank > most {
					most, far, of, words = rank, off, r.string().Number, text
				}
			}
		}
	}
	return far, of, words
}

// bendOff says how far a bend is from the wanted one, as a logarithm, and what it
// asks of the finger: its force, or its distance where that is farther from the
// wanted. Where no harder bend is wanted an easier one is welcome.
func (s *Strung) bendOff(b choice.BendDetail) (far float64, words string) {
	noHarder := s.in.Plan.Request().Feel.BendingForce.NoHarder
	off := func(is, wanted float64) float64 {
		switch x := math.Log(is / wanted); {
		case wanted == 0:
			return 0
		case noHarder:
			return max(0, x)
		default:
			return math.Abs(x)
		}
	}
	u := s.in.Units
	force, distance := off(b.Bend.Force.N(), b.WantedForce.N()), off(b.Bend.Distance.M(), b.WantedDistance.M())
	is, wanted := u.ForceText(b.Bend.Force), u.ForceText(b.WantedForce)
	if distance > force {
		is, wanted = s.in.length(b.Bend.Distance), s.in.length(b.WantedDistance)
	}
	words = fmt.Sprintf("fret %s takes %s", trim(b.Fret), is)
	switch {
	case b.WantedForce == 0 || is == wanted:
		return 0, words
	case noHarder:
		return max(force, distance), words + " of at most " + wanted
	}
	return max(force, distance), words + ", wanted " + wanted
}

// bendLine names the bend that is farthest from the wanted, or where none is wanted
// the hardest; "" where the difference is not noticeable, or the worst string has it.
func (s *Strung) bendLine() string {
	far, of, words := s.farthestBend(0)
	feel := s.in.Plan.Request().Feel
	if words == "" || far > 0 && of == s.Pair.WorstString || feel.BendingForce.Kind != choice.NoTarget && far < float64(feel.Noticeable) {
		return ""
	}
	return fmt.Sprintf("string %d at %s", of, words)
}
