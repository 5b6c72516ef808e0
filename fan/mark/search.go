package mark

import (
	"math"
	"slices"

	"scalepair/data/unit"
)

// mostSlips bounds the slips named on one line. With more than these the line
// is better measured again.
const mostSlips = 4

// falseAlarm is the chance, over all candidates of a whole board, that clean
// marking raises any alarm (judgement; shared out by Bonferroni's inequality).
// It is a fifth below the one board in twenty that Check promises, since the
// scatter is learnt from the same readings and sometimes comes out small.
const falseAlarm = 0.04

// likelyAs is the log likelihood ratio up to which two explanations count as
// alike: ln 20, for 20 to 1.
const likelyAs = math.Ln2 + math.Ln10

// millimetres is a length of the report, never -0.
func millimetres(mm float64) unit.Length { return unit.MM(mm + 0) }

// limitOf is what a candidate's ratio has to exceed among so many candidates of
// the board: the normal quantile for its share of the false alarms, widened to
// Student's for a scatter that is learnt from nu readings,
//
//	t = z (1 + (z^2 + 1)/(4 nu))
//
// Abramowitz and Stegun 26.7.5, first term (from memory).
func limitOf(candidates int, nu float64) float64 {
	z := math.Sqrt2 * math.Erfinv(1-falseAlarm/float64(candidates))
	return z * (1 + (z*z+1)/(4*nu))
}

// search looks for the slips of one line.
type search struct {
	evidence
	candidates []*candidate
	scales     []scale
	limit      float64
	named      []*candidate
}

func newSearch(e evidence) *search {
	return &search{evidence: e, candidates: e.candidates(), scales: e.scales()}
}

// fit takes slips out and finds the scatter that explains the rest: the greatest
// that is no less likely than the likeliest by a standard deviation (half a unit of
// log likelihood), since readings that agree by luck make too small a scatter
// likeliest.
func (s *search) fit(slips []*candidate) fit {
	fits, most := make([]fit, len(s.scales)), math.Inf(-1)
	for i, scale := range s.scales {
		fits[i] = scale.fit(s.errors(), slips)
		most = max(most, fits[i].logLik)
	}
	for i := len(fits) - 1; ; i-- {
		if fits[i].logLik >= most-0.5 {
			return fits[i]
		}
	}
}

// run names slips one after another until the likeliest is no longer clear of
// the scatter (generalised likelihood ratio), among so many candidates of the
// board, and gives what is left.
func (s *search) run(board int) fit {
	learnt := math.Inf(1)
	if len(s.scales) > 1 {
		learnt = float64(len(s.seen))
	}
	s.limit = limitOf(board, learnt)
	f := s.fit(nil)
	for len(s.named) < mostSlips {
		next := s.next(f)
		if next == nil {
			break
		}
		s.named = append(s.named, next)
		f = s.fit(s.named)
	}
	return f
}

// next gives the candidate with the greatest ratio beside the named ones; nil where
// it is not clear of its limit. The scatter is learnt with the likeliest one taken
// out too, for a slip makes the readings look scattered.
func (s *search) next(f fit) *candidate {
	best, _ := f.greatest(s.candidates)
	if best == nil {
		return nil
	}
	without := s.fit(append(slices.Clone(s.named), best))
	best, ratio := without.scale.fit(s.errors(), s.named).greatest(s.candidates)
	if ratio > s.limit {
		return best
	}
	return nil
}

// slips weighs every named slip anew beside all others.
func (s *search) slips(f fit) (out []Slip) {
	for k := range s.named {
		beside := f.scale.fit(s.errors(), slices.Delete(slices.Clone(s.named), k, k+1))
		if best, _ := beside.greatest(s.candidates); best != nil {
			s.named[k] = best
			out = append(out, beside.named(s.candidates, best))
		}
	}
	return out
}

// oneSided95 is the standard normal quantile of 95 %.
const oneSided95 = 1.6449

// shows gives, by fret, the least error of a mark that would have been named in
// 95 % of cases: (limit + 1.645) u. 0 where the readings do not touch the mark.
func (s *search) shows(f fit) []unit.Length {
	out := make([]unit.Length, len(s.plan.marks))
	clean := f.scale.fit(s.errors(), nil)
	for _, c := range s.candidates {
		if c.Kind == MarkOff {
			_, u, _ := clean.slip(c)
			out[c.Fret] = millimetres((s.limit + oneSided95) * u)
		}
	}
	return out
}
