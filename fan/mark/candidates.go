package mark

// candidate is one thing that may have slipped, with what 1 mm of it does to
// every reading of the line.
type candidate struct {
	Finding
	effect []float64
}

// candidates lists every single slip of a line. Where two have the same effect
// (a step that ends the only chain, a mark read once) the one listed first is
// named and the other stands beside it.
func (e evidence) candidates() []candidate {
	effects := e.effects()
	var out []candidate
	add := func(kind SlipKind, fret int, effect []float64) {
		if dot(effect, effect) > 0 {
			out = append(out, candidate{Finding{Kind: kind, Line: e.plan.line, Fret: fret, Row: -1}, effect})
		}
	}
	for n := 1; n < len(effects); n++ {
		add(MarkOff, n, effects[n])
	}
	out = append(out, e.singles()...)
	for n := 2; n < e.plan.last(); n++ {
		if dot(effects[n], effects[n]) > 0 {
			add(Shifted, n, e.tail(effects, n))
		}
	}
	add(NutMarkOff, 0, effects[0])
	add(RulerZeroOff, 0, e.whole(FromNut))
	for n := 2; n <= e.plan.last(); n++ {
		add(RulerMoved, n, e.movedFrom(n))
	}
	add(CaliperZeroOff, 0, e.whole(Step))
	add(Stretched, e.farthest(), e.stretch())
	add(RulerScaleOff, e.farthest(), e.scaled())
	return out
}

// singles gives one candidate a reading.
func (e evidence) singles() []candidate {
	var out []candidate
	for i, s := range e.seen {
		kind := RulerSlip
		if s.kind == Step {
			kind = StepSlip
		}
		effect := make([]float64, len(e.seen))
		effect[i] = 1
		out = append(out, candidate{Finding{Kind: kind, Line: e.plan.line, Fret: s.to, From: s.from, Row: s.row}, effect})
	}
	return out
}

// tail is the effect of moving mark n and all after it together.
func (e evidence) tail(effects [][]float64, n int) []float64 {
	out := make([]float64, len(e.seen))
	for _, g := range effects[n:] {
		for i, x := range g {
			out[i] += x
		}
	}
	return out
}

// whole is the effect of a pass whose every reading is 1 mm too long; none for
// a pass of one reading, which is that reading's own slip.
func (e evidence) whole(k Kind) []float64 {
	out := make([]float64, len(e.seen))
	if e.count(k) < 2 {
		return out
	}
	for i, s := range e.seen {
		if s.kind == k {
			out[i] = 1
		}
	}
	return out
}

// scaled is the effect of a ruler that is too short, so that it reads too long by
// 1 mm at the last mark measured; none for a pass of less than three readings.
func (e evidence) scaled() []float64 {
	out := make([]float64, len(e.seen))
	if e.count(FromNut) < 3 {
		return out
	}
	for i, s := range e.seen {
		if s.kind == FromNut {
			out[i] = s.plan / e.plan.marks[e.farthest()]
		}
	}
	return out
}

// movedFrom is the effect of a ruler that moved 1 mm towards the nut before mark n
// was read; none where less than two readings lie on either side of that, or none
// is of mark n.
func (e evidence) movedFrom(n int) []float64 {
	out, before, after, first := make([]float64, len(e.seen)), 0, 0, false
	for i, s := range e.seen {
		switch {
		case s.kind != FromNut:
		case s.to < n:
			before++
		default:
			out[i], first = 1, first || s.to == n
			after++
		}
	}
	if before < 2 || after < 2 || !first {
		clear(out)
	}
	return out
}

// stretch is the effect of a line set out too long, by 1 mm at the last mark
// measured.
func (e evidence) stretch() []float64 {
	out := make([]float64, len(e.seen))
	for i, s := range e.seen {
		out[i] = s.plan / e.plan.marks[e.farthest()]
	}
	return out
}
