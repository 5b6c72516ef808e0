package mark

import "math"

// concerns says whether a finding, if true, moves the best place of mark n, or
// leaves it in doubt.
func (f Finding) concerns(n int) bool {
	switch f.Kind {
	case MarkOff, RulerSlip:
		return n == f.Fret
	case StepSlip:
		return n > min(f.From, f.Fret)
	case Shifted, RulerMoved:
		return n >= f.Fret
	}
	return true
}

// dispute marks what a slip leaves in doubt: everything that one of several
// explanations concerns.
func (l *LineResult) dispute(s Slip) {
	if len(s.Others) == 0 {
		return
	}
	for i := range l.Marks {
		m := &l.Marks[i]
		for _, f := range append([]Finding{s.Finding}, s.Others...) {
			m.Disputed = m.Disputed || m.Verdict != NotMeasured && f.concerns(m.Fret)
		}
		m.Sure = m.Sure && !m.Disputed
	}
}

// size gives a mark that stands off the size that its result has: there is one
// best position of a mark. The search's own size also weighs how far marks
// scatter about the plan, which serves to tell slips from scatter and says
// nothing of where this mark is.
func (l *LineResult) size(s *Slip) {
	for _, f := range s.findings() {
		if f.Kind != MarkOff {
			continue
		}
		if m := l.Marks[f.Fret-1]; m.Verdict == Within || m.Verdict == Outside {
			f.MM, f.U = m.ErrorMM, m.U
		}
	}
}

// finish fills in what a slip on a line needs from outside the search: the
// places of readings and whether the slip matters.
func (e evidence) finish(s *Slip, t Tolerance, readings []Reading) {
	for _, f := range s.findings() {
		if f.Row >= 0 {
			f.Place = readings[f.Row].Place
		}
		size := math.Abs(f.MM)
		if f.Kind == CaliperZeroOff { // it adds up step by step
			size *= float64(e.plan.last())
		}
		fret := f.Fret
		if f.Kind == Shifted || f.Kind == RulerMoved || f.Kind == StepSlip { // it shifts all marks after it, and the last is the tightest
			fret = 0
		}
		s.Matters = s.Matters || size > e.bound(fret, t)
	}
}

// findings gives the slip's own finding and the others, to be changed.
func (s *Slip) findings() []*Finding {
	out := []*Finding{&s.Finding}
	for i := range s.Others {
		out = append(out, &s.Others[i])
	}
	return out
}

// bound is the tolerance at a mark in mm. For the nut it is that of the last
// mark measured, the tightest.
func (e evidence) bound(fret int, t Tolerance) float64 {
	if t.Cents == 0 {
		return t.MM
	}
	if fret == 0 {
		fret = e.farthest()
	}
	return t.Cents * e.plan.mmPerCent(fret)
}
