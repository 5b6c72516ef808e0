package mark

import "math"

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

// likeliestAcross gives the likeliest slip between the lines, nil where none is
// clear of the scatter:
//
//	S = diag(u^2) + nuts^2 a a'
//
// u  of the readings; nuts  how far the two nut marks scatter against one
// another, as any marks do; a  what the nut offset does to the readings.
func likeliestAcross(ties []tie, nuts, limit float64) *Slip {
	scatter, off := newSquare(len(ties)), make([]float64, len(ties))
	for i, t := range ties {
		scatter.add(i, i, t.u*t.u)
		off[i] = t.off
	}
	candidates := candidatesAcross(ties)
	scatter.addOuter(candidates[0].effect, nuts*nuts)
	lower, ok := scatter.cholesky()
	if !ok {
		return nil // two readings that say the same to the last digit
	}
	best := 0
	for i := range candidates {
		candidates[i].size(lower, off)
		if candidates[i].ratio() > candidates[best].ratio()*(1+1e-6) {
			best = i
		}
	}
	ratio := candidates[best].ratio()
	if !(ratio > limit) {
		return nil
	}
	out := Slip{Finding: candidates[best].Finding, Ratio: ratio, Limit: limit}
	for i, c := range candidates {
		if r := c.ratio(); i != best && r > 0 && ratio*ratio-r*r <= 2*likelyAs {
			out.Others = append(out.Others, c.Finding)
		}
	}
	return &out
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

// sound leaves out the reading that a slip beyond doubt says is wrong. A wrong
// span needs nothing left out: it makes both diagonals longer alike, and the
// nut offset lives on their difference.
func sound(ties []tie, s Slip) []tie {
	var out []tie
	for _, t := range ties {
		if len(s.Others) > 0 || t.row != s.Row {
			out = append(out, t)
		}
	}
	return out
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
