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
// clear of the scatter.
func likeliestAcross(ties []tie, limit float64) *Slip {
	candidates := candidatesAcross(ties)
	best := 0
	for i := range candidates {
		if candidates[i].weigh(ties) > candidates[best].weigh(ties)*(1+1e-6) {
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

// weigh fills in the size that suits the ties best, d = sum a y/u^2 over
// sum a^2/u^2, and gives its ratio to its uncertainty.
func (c *candidate) weigh(ties []tie) float64 {
	weight, sum := 0.0, 0.0
	for i, t := range ties {
		weight += c.effect[i] * c.effect[i] / (t.u * t.u)
		sum += c.effect[i] * t.off / (t.u * t.u)
	}
	if weight == 0 {
		return 0
	}
	c.MM, c.U = sum/weight, 1/math.Sqrt(weight)
	return c.ratio()
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
