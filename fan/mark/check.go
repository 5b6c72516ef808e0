package mark

import (
	"math"
	"slices"

	"scalepair/data/unit"
	"scalepair/fan"
)

// Check judges what was measured against the layout.
//
// The two passes of each line are put together by weighted least squares, slips
// are looked for by the generalised likelihood ratio, and the best positions
// are judged against the tolerance. Clean marking raises an alarm on at most
// one board in twenty.
//
// The error is a fault.List of everything that cannot be meant so: no such
// fret, the same twice, marks out of order, inches taken for millimetres, a
// decimal point lost, options that make no sense. The Report is then the zero
// value.
func Check(l *fan.Layout, readings []Reading, o Options) (Report, error) {
	p, o := planOf(l), o.WithDefaults()
	readings = settle(p, readings)
	if err := inspect(p, readings, o); err != nil {
		return Report{}, err
	}
	return check(p, readings, o), nil
}

// settle fills in what a reading may leave out.
func settle(p plan, readings []Reading) []Reading {
	out := slices.Clone(readings)
	for i, r := range out {
		if r.Fret == 0 && (r.Kind == FromBassNut || r.Kind == FromTrebleNut) {
			out[i].Fret = p.lines[Bass].last()
		}
		if r.Kind != Step {
			out[i].From = 0
		}
	}
	return out
}

func check(p plan, readings []Reading, o Options) Report {
	var searches [2]*search
	var evidences [2]evidence
	board := acrossCandidates
	for line := range evidences {
		evidences[line] = gather(p.lines[line], readings, o)
		board += len(evidences[line].candidates())
	}
	report := Report{Slips: []Slip{}}
	var known [2]knownLine
	for line, e := range evidences {
		searches[line] = e.search(board)
		result, slips, k := checkLine(e, searches[line], o, readings)
		report.Lines[line], known[line] = result, k
		report.Slips = append(report.Slips, slips...)
	}
	across, slips := checkAcross(p, known, readings, o, board)
	report.Across = across
	report.Slips = append(report.Slips, slips...)
	report.sum()
	return report
}

// knownLine is what the diagonals need of a line.
type knownLine struct {
	positions
	scatter float64 // mm
}

func checkLine(e evidence, s *search, o Options, readings []Reading) (LineResult, []Slip, knownLine) {
	out := LineResult{Line: e.plan.line, LeftOut: []string{}}
	k, shows := knownLine{scatter: scarceMM}, make([]unit.Length, len(e.plan.marks))
	var slips []Slip
	var wrong [][]float64
	if len(e.seen) > 0 {
		f := s.run()
		slips, shows, k.scatter = s.slips(f), s.shows(f, len(e.plan.marks)), f.scatter
		out.Scatter = millimetres(f.scatter)
		for i, slip := range slips {
			if slip.IsReading() && len(slip.Others) == 0 {
				wrong = append(wrong, s.candidates[s.named[i]].effect)
			}
			if slip.Row >= 0 && len(slip.Others) == 0 {
				out.LeftOut = append(out.LeftOut, readings[slip.Row].Name())
			}
		}
	}
	k.positions = e.positions(k.scatter, wrong)
	out.Marks = e.results(k.positions, o)
	for i := range out.Marks {
		out.Marks[i].Shows = shows[i+1]
	}
	for i := range slips {
		out.size(&slips[i])
		e.finish(&slips[i], o, readings)
		out.dispute(slips[i])
	}
	return out, slips, k
}

// results judges the marks from fret 1.
func (e evidence) results(p positions, o Options) []Result {
	var out []Result
	for n := 1; n < len(e.plan.marks); n++ {
		m := Result{Fret: n, Nominal: millimetres(e.plan.marks[n]), Readings: e.touching(n)}
		switch {
		case m.Readings == 0:
		case p.u[n] > lostMM:
			m.Verdict = Undecided
		default:
			m.Error, m.U = new(millimetres(p.error[n])), new(millimetres(p.u[n]))
			m.Measured = new(m.Nominal + *m.Error)
			m.ErrorCents = new(unit.Cents(plain(e.plan.cents(n, p.error[n]))))
			size, u, bound := math.Abs(p.error[n]), p.u[n], o.Tolerance.MM()
			if o.ToleranceCents > 0 {
				size, u, bound = math.Abs(m.ErrorCents.Value()), p.u[n]/e.plan.mmPerCent(n), o.ToleranceCents.Value()
			}
			m.Verdict, m.Sure = judge(size, u, bound)
		}
		out = append(out, m)
	}
	return out
}

// judge gives a verdict, and whether error and tolerance lie two standard
// uncertainties apart.
func judge(size, u, bound float64) (v Verdict, sure bool) {
	v = Within
	if size > bound {
		v = Outside
	}
	return v, math.Abs(size-bound) >= 2*u
}

// sum counts the verdicts.
func (r *Report) sum() {
	matters := slices.ContainsFunc(r.Slips, func(s Slip) bool { return s.Matters })
	for _, l := range r.Lines {
		for _, m := range l.Marks {
			switch m.Verdict {
			case NotMeasured:
				r.Unmeasured++
			case Outside:
				r.Outside++
			case Undecided:
				r.Undecided++
			}
			if m.Error != nil && !m.Sure && !m.Disputed {
				r.Unsure++
			}
		}
	}
	offsetOff := r.Across != nil && r.Across.Verdict == Outside
	r.Pass = !matters && !offsetOff && r.Outside == 0 && r.Undecided == 0
}

// concerns reports whether a finding, if true, moves the best place of mark n,
// or leaves it in doubt.
func (f Finding) concerns(n int) bool {
	switch f.Kind {
	case MarkOff, RulerSlip:
		return n == f.Fret
	case StepSlip:
		return n > min(f.From, f.Fret)
	case MarksOff, RulerMoved:
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

// size gives a mark that is off the size that its result has: there is one best
// position of a mark. The search's own size also weighs how far marks scatter,
// which serves to tell slips from scatter and says nothing of where this mark is.
func (l *LineResult) size(s *Slip) {
	for _, f := range s.findings() {
		if m := l.Marks[max(f.Fret, 1)-1]; f.Kind == MarkOff && m.Error != nil {
			f.Size, f.U = *m.Error, *m.U
		}
	}
}

// finish fills in what a slip on a line needs from outside the search: the
// places of readings and whether the slip matters.
func (e evidence) finish(s *Slip, o Options, readings []Reading) {
	for _, f := range s.findings() {
		if f.Row >= 0 {
			f.Place = readings[f.Row].Place
		}
		fret := e.farthest() // what shifts several marks is held to the last, the tightest
		if f.Kind == MarkOff || f.Kind == RulerSlip {
			fret = f.Fret
		}
		bound := o.Tolerance.MM()
		if o.ToleranceCents > 0 {
			bound = o.ToleranceCents.Value() * e.plan.mmPerCent(fret)
		}
		s.Matters = s.Matters || math.Abs(f.Size.MM()) > bound
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
