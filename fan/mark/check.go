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
// fret, the same twice, inches taken for millimetres, a decimal point lost. The
// Report is then the zero value.
func Check(l *fan.Layout, readings []Reading, o Options) (Report, error) {
	p, o := planOf(l), o.WithDefaults()
	readings = slices.Clone(readings)
	for i, r := range readings {
		if r.Fret == 0 && !r.along() && r.Kind != NutOffset {
			readings[i].Fret = l.Spec.Frets
		}
	}
	if err := inspect(p, readings); err != nil {
		return Report{}, err
	}
	report, board := Report{Slips: []Slip{}}, acrossCandidates
	var searches [2]*search
	for i, line := range p.lines {
		searches[i] = newSearch(gather(line, readings, o))
		board += len(searches[i].candidates)
	}
	var known [2]positions
	for i, s := range searches {
		var slips []Slip
		report.Lines[i], slips, known[i] = s.judge(o, board)
		report.Slips = append(report.Slips, slips...)
	}
	across, slips := checkAcross(p, known, readings, o, board)
	report.Across, report.Slips = across, append(report.Slips, slips...)
	report.sum()
	return report, nil
}

// judge finds the slips of a line, then the best places without the readings that
// are wrong beyond doubt, then what they and the slips come to.
func (s *search) judge(o Options, board int) (LineResult, []Slip, positions) {
	f, out := s.run(board), LineResult{Line: s.plan.line, LeftOut: []string{}}
	if len(s.seen) > 0 {
		out.Scatter = millimetres(f.scatter)
	}
	slips := s.slips(f)
	var wrong []*candidate
	for i, slip := range slips {
		if len(slip.Others) > 0 {
			continue
		}
		if slip.IsReading() {
			wrong = append(wrong, s.named[i])
		}
		if slip.Reading != nil {
			out.LeftOut = append(out.LeftOut, slip.Reading.Name())
		}
	}
	p := s.positions(f.scatter, wrong)
	out.Marks = s.results(p, s.shows(f), o)
	for i := range slips {
		out.weigh(&slips[i], func(f *Finding) float64 { return s.bound(f, o) })
	}
	return out, slips, p
}

// results judges the marks from fret 1.
func (e evidence) results(p positions, shows []unit.Length, o Options) (out []Result) {
	for n := 1; n < len(e.plan.marks); n++ {
		m := Result{Fret: n, Nominal: millimetres(e.plan.marks[n]), Verdict: NotMeasured, Readings: e.touching(n), Shows: shows[n]}
		switch {
		case m.Readings == 0:
		case p.u[n] == 0:
			m.Verdict = Undecided
		default:
			m.Error, m.U = new(millimetres(p.error[n])), new(millimetres(p.u[n]))
			m.Measured = new(m.Nominal + *m.Error)
			m.ErrorCents = new(unit.Cents(e.plan.cents(n, p.error[n]) + 0))
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

// bound is the tolerance where a finding stands, mm: what shifts several marks is
// held to the last that was read, the tightest.
func (e evidence) bound(f *Finding, o Options) float64 {
	if o.ToleranceCents == 0 {
		return o.Tolerance.MM()
	}
	fret := f.Fret
	if f.Kind != MarkOff && f.Kind != RulerSlip {
		for _, s := range e.seen {
			fret = max(fret, s.Fret)
		}
	}
	return o.ToleranceCents.Value() * e.plan.mmPerCent(fret)
}

// weigh says whether a slip matters, and which marks it leaves in doubt: all that
// one of several explanations concerns. A mark that is off gets the size that its
// result has: there is one best position of a mark. The search's own size also
// weighs how far marks scatter, which serves to tell slips from scatter and says
// nothing of where this mark is.
func (l *LineResult) weigh(s *Slip, bound func(*Finding) float64) {
	for _, f := range s.findings() {
		if m := l.Marks[max(f.Fret, 1)-1]; f.Kind == MarkOff && m.Error != nil {
			f.Size, f.U = *m.Error, *m.U
		}
		s.Matters = s.Matters || math.Abs(f.Size.MM()) > bound(f)
		for i := range l.Marks {
			if m := &l.Marks[i]; len(s.Others) > 0 && m.Verdict != NotMeasured && f.concerns(m.Fret) {
				m.Disputed, m.Sure = true, false
			}
		}
	}
}

// sum counts the verdicts.
func (r *Report) sum() {
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
	matters := slices.ContainsFunc(r.Slips, func(s Slip) bool { return s.Matters })
	offsetOff := r.Across != nil && r.Across.Verdict == Outside
	r.Pass = !matters && !offsetOff && r.Outside == 0 && r.Undecided == 0
}
