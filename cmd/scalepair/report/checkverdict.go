package report

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"scalepair/data/unit"
	"scalepair/fan/mark"
)

// verdict is the answer in a sentence or two.
func (r *Check) verdict() string {
	switch {
	case r.Pass:
		text := fmt.Sprintf("IN TOLERANCE: the %d marks that were measured stand within %s", r.Measured, r.tolerance())
		var but []string
		for _, s := range r.Slips {
			but = append(but, s.Words)
		}
		if but != nil {
			text += ", but " + listed(but)
		}
		return text + "."
	case r.onlyUnsure():
		return fmt.Sprintf("NOT SURE, MEASURE AGAIN: %s. Measure again, finely and both ways, before the saw touches wood; until then redraw nothing.", listed(r.reasons()))
	}
	return fmt.Sprintf("NOT IN TOLERANCE: %s. Before the saw touches wood put right what is sure to be off, and nothing else; then measure again.", listed(r.reasons()))
}

// sumUp counts the marks of a line that one more reading by the calipers, from a
// mark that is sure, would make sure: it is weighed with those there are,
// 1/u^2 = 1/u1^2 + 1/u2^2, and scatters as the hand does. And it sums up how small an
// error of one mark these readings would have shown.
func (r *Check) sumUp(l mark.LineResult) {
	own := math.Hypot(r.CaliperResolution.MM()/math.Sqrt(12), l.Scatter.MM())
	for _, m := range l.Marks {
		r.ShowsWorst = max(r.ShowsWorst, m.Shows)
		switch {
		case m.Shows > 0 && (r.ShowsBest == 0 || m.Shows < r.ShowsBest):
			r.ShowsBest = m.Shows
		case m.Shows == 0 && m.Readings > 0:
			r.Blind++
		}
		if m.Error == nil || m.Sure || m.Disputed {
			continue
		}
		bound := r.Tolerance.MM()
		if r.ToleranceCents > 0 {
			bound = math.Abs(r.ToleranceCents.Value() * m.Error.MM() / m.ErrorCents.Value())
		}
		if u := 1 / math.Hypot(1/m.U.MM(), 1/own); math.Abs(math.Abs(m.Error.MM())-bound) >= 2*u {
			r.Settled++
		}
	}
}

// settles says what would make the marks sure that are not.
func (r *Check) settles() string {
	text := fmt.Sprintf("One more reading by calipers that show %s, from the nut or a mark that is sure, would settle %d of them.",
		resolutionText(r.in.Units, r.CaliperResolution), r.Settled)
	if r.Settled < r.Unsure {
		text += " What is too near the tolerance to be settled, draw anew or leave."
	}
	return text
}

// onlyUnsure reports whether a board fails for nothing but what lies outside
// without being sure to.
func (r *Check) onlyUnsure() bool {
	sure := func(m mark.Result) bool { return m.Verdict == mark.Outside && (m.Sure || m.Disputed) }
	return r.Undecided == 0 && !slices.ContainsFunc(r.Slips, func(s Slip) bool { return s.Matters }) && len(r.which(sure)) == 0 &&
		(r.Outside > 0 && !r.offsetOutside() || r.offsetOutside() && !r.Across.Sure)
}

func (r *Check) offsetOutside() bool { return r.Across != nil && r.Across.Verdict == mark.Outside }

// sureOutside marks are to be drawn anew; those that are notSure are to be
// measured again first.
func sureOutside(m mark.Result) bool { return m.Verdict == mark.Outside && m.Sure }
func notSure(m mark.Result) bool     { return m.Verdict == mark.Outside && !m.Sure }

// reasons say why a board does not pass.
func (r *Check) reasons() []string {
	var out lines
	for _, kind := range []struct {
		which        func(mark.Result) bool
		one, several string
	}{{sureOutside, "is", "are"}, {notSure, "may be", "may be"}} {
		if list := r.which(kind.which); list != nil {
			is := kind.several
			if len(list) == 1 {
				is = kind.one
			}
			out.say("%s %s off by more than %s (%s)", plural(len(list), "mark"), is, r.tolerance(), few(list))
		}
	}
	out.sayIf(r.Undecided > 0, "no reading joins %s to the nut", plural(r.Undecided, "mark"))
	if r.offsetOutside() {
		out.sayIf(r.Across.Sure, "the treble nut is off its place beside the bass nut")
		out.sayIf(!r.Across.Sure, "the treble nut may be off its place beside the bass nut")
	}
	if slices.ContainsFunc(r.Slips, func(s Slip) bool { return s.Matters && s.IsReading() }) {
		out.say("a reading must be taken again")
	}
	out.sayIf(out == nil, "a slip must be cleared up")
	return out
}

// which names the marks that are so, with their errors.
func (r *Check) which(so func(mark.Result) bool) []string {
	var out []string
	for _, l := range r.Lines {
		for _, m := range l.Marks {
			if so(m) {
				out = append(out, fmt.Sprintf("%v %d by %s", l.Line, m.Fret, r.text(*m.Error)))
			}
		}
	}
	return out
}

// few cuts a list of marks that a sentence names; the tables name all.
func few(marks []string) string {
	const most = 6
	if len(marks) > most {
		return fmt.Sprintf("%s and %d more", strings.Join(marks[:most], ", "), len(marks)-most)
	}
	return listed(marks)
}

func (r *Check) tolerance() string {
	if r.ToleranceCents > 0 {
		return trim(r.ToleranceCents.Value()) + " cents"
	}
	return r.text(r.Tolerance)
}

// text prints a small length.
func (r *Check) text(l unit.Length) string { return r.in.Units.Decimal().LenText(l, markDecimals) }

// advice names the slips with what to do, or says that none stands out and how
// large one would have to be.
func (r *Check) advice() []string {
	var out lines
	for _, s := range r.Slips {
		out = append(out, r.slip(s))
	}
	if out != nil {
		return out
	}
	out.say("No reading and no mark stands out from the others.")
	out.sayIf(len(r.which(sureOutside)) > 0, "Draw anew from the nut the marks that are off.")
	out.sayIf(len(r.which(notSure)) > 0, "Measure again the marks that may be off, and draw anew from the nut only what is then off.")
	least := r.text(r.ShowsWorst)
	if best := r.text(r.ShowsBest); best != least {
		least += ", or where the readings are best by " + best + ","
	}
	out.sayIf(r.ShowsWorst > 0, "A single mark that is off by more than %s would have shown in 95 %% of cases.", least)
	out.sayIf(r.Blind > 0, "At %s an error could not have shown.", plural(r.Blind, "mark"))
	return out
}

// slip says of one slip what it is, how large, where entered, what to do, and what
// explains the readings as well.
func (r *Check) slip(s Slip) string {
	text := capital(r.sized(s.Finding)) + "."
	if !s.Matters {
		text += " It is within the tolerance and may stay, but is better mended."
	}
	if nominal := r.l.NutOffset; s.Kind == mark.OffsetSlip && nominal < 0 && size(s.Size+2*nominal) < r.NutOffsetTolerance {
		text += " Is its minus missing? It has one where the treble nut lies nearer the head than the bass nut, as here."
	}
	if len(s.Or) == 0 {
		return text + " Do: " + s.Do + "."
	}
	var or []string
	for _, f := range s.Or {
		or = append(or, r.sized(f))
	}
	text += fmt.Sprintf(" Or, which explains these readings as well: %s. Measure again before you redo anything.", strings.Join(or, "; or "))
	for _, f := range append([]Finding{s.Finding}, s.Or...) {
		if !f.IsReading() {
			return text + " If it stays so: " + f.Do + "."
		}
	}
	return text
}

// sized names a finding with its size, which way, and where it was entered.
func (r *Check) sized(f Finding) string {
	long, short := "too near the bridge", "too near the head"
	if f.IsReading() {
		long, short = "too long", "too short"
	}
	if f.Size < 0 {
		long = short
	}
	text := fmt.Sprintf("%s (%s ± %s %s", f.Words, r.in.Units.Decimal().Len(size(f.Size), markDecimals), r.text(max(f.U, leastU)), long)
	if f.Reading != nil {
		text += fmt.Sprintf(", line %d", f.Reading.Place.Line)
	}
	return text + ")"
}
