package mark

import (
	"math"
	"slices"
)

// mostSlips bounds the slips named on one line. With more than these the line
// is better measured again than reckoned on.
const mostSlips = 4

// falseAlarm is the chance, over all candidates of a whole board, that clean
// marking raises any alarm (judgement; shared out by Bonferroni's inequality).
// It is a fifth below the one board in twenty that Check promises, since the
// scatter is learnt from the same readings and sometimes comes out small.
const falseAlarm = 0.04

// likelyAs is the log likelihood ratio up to which two explanations count as
// not told apart: ln 20, for 20 to 1.
const likelyAs = math.Ln2 + math.Ln10

// search is the state of looking for slips on one line.
type search struct {
	e          evidence
	model      scatterModel
	candidates []candidate
	board      int   // candidates of the whole board, over which the chance of a false alarm is shared
	named      []int // indices of candidates
}

func newSearch(e evidence, board int) *search {
	return &search{e: e, model: newScatterModel(e), candidates: e.candidates(), board: board}
}

// limit is what a candidate's ratio has to exceed: Student's quantile for its
// share of the false alarms. The scatter is learnt from the same readings, so
// the variance v = 1/(a' P a) of the slip's size is itself uncertain; the
// degrees of freedom that say by how much are
//
//	nu = 2 v^2/(g' C g),  g(k) = v^2 a' P V(k) P a
//
// C  inverse of scatterModel.curve; V(k) as there. Many where the
// tools' steps explain the scatter, few where the hand does and the readings
// are few. Satterthwaite 1946 for variance components (from memory).
func (s *search) limit(c curve, pr projection, i int) float64 {
	p := falseAlarm / float64(s.board)
	if s.model.assumed {
		return normalQuantile(p)
	}
	pa := pr.p.times(s.candidates[i].effect)
	v := 1 / dot(s.candidates[i].effect, pa)
	onMarks := s.model.onMarks(pa)
	spread := c.spread(v*v*dot(pa, pa), v*v*dot(onMarks, onMarks))
	return studentQuantile(p, 2*v*v/spread)
}

// run names slips one after another until the likeliest is no longer clear of
// the scatter. Each is tested by the generalised likelihood ratio: the size d
// that suits the readings best, over its uncertainty,
//
//	d = a' P y/(a' P a),  u(d) = 1/sqrt(a' P a)
//
// a  effect of the slip; y  readings less plan; P  inverse of their scatter
// with the slips already named taken out, the scatter learnt anew with this
// slip taken out too. Follows from normal scatter.
func (s *search) run() noise {
	n := s.model.fit(nil)
	for len(s.named) < mostSlips {
		c, next, clear := s.likeliest(n)
		if !clear {
			break
		}
		s.named, n = append(s.named, c), next
	}
	return n
}

// likeliest gives the candidate with the greatest ratio beside the named ones,
// whose noise is n, the noise with this candidate taken out too, and whether
// the ratio exceeds its limit.
func (s *search) likeliest(n noise) (best int, next noise, clear bool) {
	best, _ = s.greatest(n, s.named)
	for range 3 {
		if best < 0 {
			return -1, n, false
		}
		next = s.model.fit(s.directions(append(slices.Clone(s.named), best)))
		again, ratio := s.greatest(next, s.named)
		if again == best {
			pr := s.model.project(next, s.directions(s.named))
			return best, next, ratio > s.limit(s.model.curve(pr), pr, best)
		}
		best = again
	}
	return -1, n, false // two candidates take turns: neither is clear
}

// greatest gives the candidate with the greatest ratio under a given noise;
// the first listed where several are alike.
func (s *search) greatest(n noise, named []int) (best int, ratio float64) {
	best = -1
	pr := s.model.project(n, s.directions(named))
	for i := range s.candidates {
		// A part in 1e6 keeps arithmetic noise from ordering equal effects.
		if _, _, r := s.size(pr, n, i); r > ratio*(1+1e-6) {
			best, ratio = i, r
		}
	}
	return best, ratio
}

// size gives a candidate's size, its uncertainty and their ratio; all 0 where
// the named slips explain the candidate already.
func (s *search) size(pr projection, n noise, i int) (d, u, ratio float64) {
	a := s.candidates[i].effect
	weight := dot(a, pr.p.times(a))
	if weight <= 1e-6*dot(a, n.inverse.times(a)) {
		return 0, 0, 0
	}
	d, u = dot(a, pr.py)/weight, 1/math.Sqrt(weight)
	return d, u, math.Abs(d) / u
}

func (s *search) directions(named []int) [][]float64 {
	out := make([][]float64, len(named))
	for k, i := range named {
		out[k] = s.candidates[i].effect
	}
	return out
}

// slips weighs every named slip anew beside all others and lists what cannot
// be told from it.
func (s *search) slips(n noise) []Slip {
	var out []Slip
	for k := range s.named {
		others := slices.Delete(slices.Clone(s.named), k, k+1)
		pr := s.model.project(n, s.directions(others))
		best, _ := s.greatest(n, others)
		if best < 0 {
			continue
		}
		s.named[k] = best
		out = append(out, s.slip(pr, n, best, others))
	}
	return out
}

func (s *search) slip(pr projection, n noise, best int, others []int) Slip {
	d, u, ratio := s.size(pr, n, best)
	out := Slip{Finding: s.candidates[best].Finding, Ratio: ratio, Limit: s.limit(s.model.curve(pr), pr, best)}
	out.MM, out.U = d, u
	for i, c := range s.candidates {
		if i == best {
			continue
		}
		if d, u, r := s.size(pr, n, i); ratio*ratio-r*r <= 2*likelyAs {
			c.MM, c.U = d, u
			out.Others = append(out.Others, c.Finding)
		}
	}
	return out
}

// shows gives, by fret, the least slip of a mark that would have been named in
// 95 % of cases: (limit + 1.645) u. 0 where the readings do not touch the mark.
func (s *search) shows(n noise) []float64 {
	out := make([]float64, s.model.marks)
	pr := s.model.project(n, nil)
	c := s.model.curve(pr)
	for i, k := range s.candidates {
		if k.Kind == MarkOff {
			out[k.Fret] = (s.limit(c, pr, i) + oneSided95) / math.Sqrt(dot(k.effect, pr.p.times(k.effect)))
		}
	}
	return out
}

// oneSided95 is the standard normal quantile of 95 %.
const oneSided95 = 1.6449

// surely is the hand's scatter that the marks' uncertainties are reckoned with: the
// likeliest, widened by one standard deviation of its square. Readings that agree by
// luck make it likeliest that a hand scatters by nothing, and say so loosely.
func (s *search) surely(n noise) float64 {
	if s.model.assumed {
		return math.Sqrt(n.hand2)
	}
	c := s.model.curve(s.model.project(n, s.directions(s.named)))
	return math.Sqrt(n.hand2 + math.Sqrt(c.spread(1, 0)))
}
