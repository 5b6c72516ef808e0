package mark

import (
	"math"
	"slices"
)

// across candidates work like those of a line, with a scatter that is known.

func candidatesAcross(ties []tie) []candidate {
	pick := func(kind SlipKind, effect func(tie) float64) candidate {
		c := candidate{Finding: Finding{Kind: kind, Line: Treble, Row: -1}}
		for _, t := range ties {
			c.effect = append(c.effect, effect(t))
		}
		return c
	}
	out := []candidate{pick(OffsetOff, func(t tie) float64 { return t.offset })}
	for i, t := range ties {
		c := candidate{Finding{Kind: OffsetSlip, Line: Treble, Fret: t.fret, Row: t.row}, make([]float64, len(ties))}
		if t.kind != NutOffset {
			c.Kind = DiagonalSlip
		}
		if t.kind == FromTrebleNut {
			c.Line = Bass
		}
		c.effect[i] = 1
		out = append(out, c)
	}
	return append(out, pick(SpanOff, func(t tie) float64 { return t.span }))
}

// acrossSlips names what slipped between the lines, and gives the readings that
// are left to rely on: the likeliest slip, nothing where it is not clear of the
// scatter, or two slips where those leave clearly less unexplained and no other
// two come near.
//
//	S = diag(u^2) + nuts^2 a a'
//
// u  of the readings; nuts  how far the two nut marks scatter against one
// another, as any marks do; a  what the nut offset does to the readings.
func acrossSlips(ties []tie, nuts, limit float64) (slips []Slip, use []tie) {
	scatter, off := newSquare(len(ties)), make([]float64, len(ties))
	for i, t := range ties {
		scatter.add(i, i, t.u*t.u)
		off[i] = t.off
	}
	candidates := candidatesAcross(ties)
	scatter.addOuter(candidates[0].effect, nuts*nuts)
	lower, ok := scatter.cholesky()
	if !ok {
		return nil, ties // two readings that say the same to the last digit
	}
	for i := range candidates {
		candidates[i].size(lower, off)
	}
	one, found := likeliestOne(candidates, limit)
	if !found {
		return nil, ties
	}
	slips = likeliestTwo(candidates, lower, off, one.Ratio, limit)
	if slips == nil {
		slips = []Slip{one}
	}
	return slips, sound(ties, slips)
}

// likeliestOne gives the likeliest slip, and the others that cannot be told from
// it; false where none is clear of the scatter.
func likeliestOne(candidates []candidate, limit float64) (Slip, bool) {
	best := 0
	for i := range candidates {
		if candidates[i].ratio() > candidates[best].ratio()*(1+1e-6) {
			best = i
		}
	}
	ratio := candidates[best].ratio()
	if !(ratio > limit) {
		return Slip{}, false
	}
	out := Slip{Finding: candidates[best].Finding, Ratio: ratio, Limit: limit}
	for i, c := range candidates {
		if r := c.ratio(); i != best && r > 0 && ratio*ratio-r*r <= 2*likelyAs {
			out.Others = append(out.Others, c.Finding)
		}
	}
	return out, true
}

// likeliestTwo gives the two slips that together leave least unexplained, with
// the sizes that suit the readings best; nil where they explain no more than one
// slip of that ratio by the limit, or where another two cannot be told from them.
// Two need three readings.
//
//	gain = y' Q y,  Q the projection on both effects, all in units of the scatter
func likeliestTwo(candidates []candidate, lower square, off []float64, one, limit float64) []Slip {
	if len(off) < 3 {
		return nil
	}
	y, best, next := lower.halfSolve(off), 0.0, 0.0
	var out []Slip
	for i := range candidates {
		for j := range i {
			a, b := lower.halfSolve(candidates[j].effect), lower.halfSolve(candidates[i].effect)
			aa, ab, bb := dot(a, a), dot(a, b), dot(b, b)
			det := aa*bb - ab*ab
			if !(det > 1e-9*aa*bb) {
				continue // the two do the same
			}
			ya, yb := dot(a, y), dot(b, y)
			first, second := (bb*ya-ab*yb)/det, (aa*yb-ab*ya)/det
			gain := first*ya + second*yb
			if gain <= best {
				next = max(next, gain)
				continue
			}
			best, next = gain, best
			out = []Slip{candidates[j].slip(first, math.Sqrt(bb/det), limit), candidates[i].slip(second, math.Sqrt(aa/det), limit)}
		}
	}
	if best-one*one <= limit*limit || best-next <= 2*likelyAs {
		return nil
	}
	return out
}

// slip is a candidate with its size.
func (c candidate) slip(mm, u, limit float64) Slip {
	f := c.Finding
	f.MM, f.U = mm, u
	return Slip{Finding: f, Ratio: math.Abs(mm) / u, Limit: limit}
}

// size fills in the size that suits the readings best and its uncertainty.
func (c *candidate) size(lower square, off []float64) {
	a, y := lower.halfSolve(c.effect), lower.halfSolve(off)
	if weight := dot(a, a); weight > 0 {
		c.MM, c.U = dot(a, y)/weight, 1/math.Sqrt(weight)
	}
}

func (c *candidate) ratio() float64 {
	if c.U == 0 {
		return 0
	}
	return math.Abs(c.MM) / c.U
}

// sound leaves out the readings that slips beyond doubt say are wrong. A wrong
// span needs nothing left out: it makes both diagonals longer alike, and the
// nut offset lives on their difference.
func sound(ties []tie, slips []Slip) []tie {
	wrong := func(t tie) bool {
		return slices.ContainsFunc(slips, func(s Slip) bool { return len(s.Others) == 0 && t.row == s.Row })
	}
	return slices.DeleteFunc(slices.Clone(ties), wrong)
}

// finishAcross adds the places of readings, and whether the slip matters:
// where it, or one that cannot be told from it, is beyond the tolerance of the
// nut offset.
func (s *Slip) finishAcross(readings []Reading, o Options) {
	for _, f := range s.findings() {
		if f.Row >= 0 {
			f.Place = readings[f.Row].Place
		}
		s.Matters = s.Matters || math.Abs(f.MM) > o.offsetBound()
	}
}
