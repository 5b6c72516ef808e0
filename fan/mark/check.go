package mark

import (
	"math"
	"slices"

	"scalepair/fan"
)

// Check judges what was measured against the layout.
//
// The two passes of each line are reconciled by weighted least squares, slips
// are looked for by the generalised likelihood ratio, and the best positions
// are judged against the tolerance. Clean marking raises an alarm on at most
// one board in twenty.
//
// The error is a fault.List of everything that cannot be meant so: no such
// fret, the same twice, marks out of order, inches taken for millimetres,
// options that make no sense. The Report is then the zero value.
func Check(l *fan.Layout, readings []Reading, o Options) (Report, error) {
	p := planOf(l)
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
	var evidences [2]evidence
	board := acrossCandidates
	for line := range evidences {
		evidences[line] = gather(p.lines[line], readings, o)
		board += len(evidences[line].candidates())
	}
	var report Report
	var known [2]knownLine
	for line, e := range evidences {
		result, slips, k := checkLine(e, board, o, readings)
		report.Lines[line], known[line] = result, k
		report.Slips = append(report.Slips, slips...)
	}
	across, slips := checkAcross(p, known, readings, o, board)
	report.Across = across
	report.Slips = append(report.Slips, slips...)
	report.sum()
	return report
}

// knownLine is what the diagonals need of a line: the marks' best places and
// uncertainties, and the scatter of hand and marks.
type knownLine struct {
	reckoning
	hand, scatter float64
}

func checkLine(e evidence, board int, o Options, readings []Reading) (LineResult, []Slip, knownLine) {
	out := LineResult{Line: e.plan.line, LengthMM: e.plan.lengthMM}
	k := knownLine{hand: scarceMM, scatter: scarceMM}
	if len(e.seen) == 0 {
		k.reckoning = e.chains()
		out.Marks = e.results(k.reckoning, o.Tolerance)
		return out, nil, k
	}
	s := newSearch(e, board)
	n := s.run()
	slips := s.slips(n)
	k.hand, k.scatter = math.Sqrt(n.hand2), math.Sqrt(n.scatter2)
	clean := e.set(slips)
	for _, sight := range e.seen {
		if !slices.Contains(clean.rows(), sight.row) {
			out.LeftOut = append(out.LeftOut, sight.row)
		}
	}
	k.reckoning = clean.reconcile(s.surely(n))
	out.HandMM, out.ScatterMM = k.hand, k.scatter
	out.Marks = clean.results(k.reckoning, o.Tolerance)
	for i, shows := range s.shows(n)[1:] {
		out.Marks[i].ShowsMM = shows
	}
	for i := range slips {
		out.size(&slips[i])
		e.finish(&slips[i], o.Tolerance, readings)
		out.dispute(slips[i])
	}
	return out, slips, k
}

// set gives the evidence with every slip of a reading that is beyond doubt put
// right: a single reading is left out, a pass that is off as a whole is freed
// to shift.
func (e evidence) set(slips []Slip) evidence {
	out := e
	for _, s := range slips {
		if len(s.Others) > 0 {
			continue
		}
		switch s.Kind {
		case RulerSlip, StepSlip:
			out = out.without(s.Row)
		case RulerZeroOff:
			out = out.freed(FromNut)
		case RulerScaleOff:
			out = out.freedScale()
		case RulerMoved:
			out = out.freedFrom(s.Fret)
		case CaliperZeroOff:
			out = out.freed(Step)
		}
	}
	return out
}

// results judges the marks from fret 1.
func (e evidence) results(r reckoning, t Tolerance) []MarkResult {
	var out []MarkResult
	for n := 1; n < len(e.plan.marks); n++ {
		m := MarkResult{Fret: n, PlanMM: e.plan.marks[n], Readings: e.touching(n)}
		if d := r.datum[n]; d >= 0 {
			m.DatumFret = d
			m.ErrorMM, m.U = plain(r.off[n]), r.u[n]
			m.MM = e.plan.marks[n] - e.plan.marks[d] + m.ErrorMM
			m.ErrorCents, m.UCents = plain(e.plan.cents(n, m.ErrorMM)), m.U/e.plan.mmPerCent(n)
			m.judge(t)
		}
		out = append(out, m)
	}
	return out
}

// judge gives the verdict. A tolerance in cents is held against ErrorCents.
func (m *MarkResult) judge(t Tolerance) {
	size, u, bound := math.Abs(m.ErrorMM), m.U, t.MM
	if t.Cents > 0 {
		size, u, bound = math.Abs(m.ErrorCents), m.UCents, t.Cents
	}
	m.Sure = math.Abs(size-bound) >= 2*u
	switch {
	case m.DatumFret != 0:
		m.Verdict, m.Sure = Undecided, false
	case size <= bound:
		m.Verdict = Within
	default:
		m.Verdict = Outside
	}
}

// sum counts the verdicts.
func (r *Report) sum() {
	matters := false
	for _, s := range r.Slips {
		matters = matters || s.Matters
	}
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
		}
	}
	offsetOff := r.Across != nil && r.Across.Verdict == Outside
	r.Pass = !matters && !offsetOff && r.Outside == 0 && r.Undecided == 0
}
