package report

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"scalepair/cmd/scalepair/table"
	"scalepair/data/unit"
	"scalepair/fan/mark"
)

// verdict is the answer in one sentence or two.
func (r *Check) verdict() string {
	switch {
	case r.Pass:
		return fmt.Sprintf("IN TOLERANCE: the %d marks that were measured stand within %s.", r.Measured, r.tolerance())
	case r.onlyUnsure():
		return fmt.Sprintf("NOT SURE, MEASURE AGAIN: %s. Measure again, finely and both ways, before the saw touches wood; until then redraw nothing.", listed(r.reasons()))
	}
	then := "Put this right before the saw touches wood, and measure again."
	switch {
	case r.count(notSure) == 0:
	case r.count(sureOutside) == 0:
		then = "Measure again before anything is drawn anew."
	default:
		then = "Put right before the saw touches wood what is sure to be off, and nothing else; measure the others again."
	}
	return fmt.Sprintf("NOT IN TOLERANCE: %s. %s", listed(r.reasons()), then)
}

// settled counts the marks that are not sure and would be so by one more reading
// by the calipers, from a mark that is sure: it is weighed with those there are,
// 1/u^2 = 1/u1^2 + 1/u2^2, and scatters as the hand does.
func (r *Check) settled() (n int) {
	for _, l := range r.Lines {
		own := math.Hypot(r.CaliperResolution.MM()/math.Sqrt(12), l.Scatter.MM())
		for _, m := range l.Marks {
			if m.Error == nil || m.Sure || m.Disputed {
				continue
			}
			bound := r.Tolerance.MM()
			if r.ToleranceCents > 0 {
				bound = math.Abs(r.ToleranceCents.Value() * m.Error.MM() / m.ErrorCents.Value())
			}
			if u := 1 / math.Hypot(1/m.U.MM(), 1/own); math.Abs(math.Abs(m.Error.MM())-bound) >= 2*u {
				n++
			}
		}
	}
	return n
}

// settles says what makes the marks that are not sure so.
func (r *Check) settles() string {
	tool := "calipers that show " + resolutionText(r.in.Units, r.CaliperResolution)
	if r.Settled == 0 {
		return fmt.Sprintf("A reading by %s would settle none of them, so near the tolerance do they stand: draw them anew, or let them be.", tool)
	}
	text := fmt.Sprintf("If they stand where they were found, one more reading by %s, from the nut or a mark that is sure, settles %d of them", tool, r.Settled)
	if r.Settled == r.Unsure {
		return text + "."
	}
	return text + "; the others stand too near the tolerance: draw them anew, or let them be."
}

// onlyUnsure reports whether a board fails for nothing but what lies outside
// without being sure to.
func (r *Check) onlyUnsure() bool {
	if r.Undecided > 0 || slices.ContainsFunc(r.Slips, func(s Slip) bool { return s.Matters }) || r.offsetOutside() && r.Across.Sure {
		return false
	}
	for _, l := range r.Lines {
		if slices.ContainsFunc(l.Marks, func(m mark.Result) bool { return m.Verdict == mark.Outside && (m.Sure || m.Disputed) }) {
			return false
		}
	}
	return r.Outside > 0 || r.offsetOutside()
}

func (r *Check) offsetOutside() bool { return r.Across != nil && r.Across.Verdict == mark.Outside }

// reasons say why a board does not pass.
func (r *Check) reasons() []string {
	var out []string
	if n := r.count(sureOutside); n > 0 {
		are := "are"
		if n == 1 {
			are = "is"
		}
		out = append(out, fmt.Sprintf("%s %s off by more than %s (%s)", plural(n, "mark"), are, r.tolerance(), r.outside(sureOutside, false)))
	}
	if n := r.count(notSure); n > 0 {
		out = append(out, fmt.Sprintf("%s may be off by more than %s (%s)", plural(n, "mark"), r.tolerance(), r.outside(notSure, false)))
	}
	if r.Undecided > 0 {
		out = append(out, "no reading joins "+plural(r.Undecided, "mark")+" to the nut")
	}
	if r.offsetOutside() {
		is := "may be"
		if r.Across.Sure {
			is = "is"
		}
		out = append(out, "the treble nut "+is+" off its place beside the bass nut")
	}
	if i := slices.IndexFunc(r.Slips, func(s Slip) bool { return s.Matters && (s.IsReading() || len(out) == 0) }); i >= 0 {
		words := "a slip must be cleared up"
		if r.Slips[i].IsReading() {
			words = "a reading must be taken again"
		}
		out = append(out, words)
	}
	return out
}

// mostNamed bounds the marks named in one sentence; the tables name all.
const mostNamed = 6

// sureOutside marks are to be drawn anew; those that are notSure are to be
// measured again first.
func sureOutside(m mark.Result) bool { return m.Verdict == mark.Outside && m.Sure }
func notSure(m mark.Result) bool     { return m.Verdict == mark.Outside && !m.Sure }

// count gives the marks that are so.
func (r *Check) count(so func(mark.Result) bool) (n int) {
	for _, l := range r.Lines {
		for _, m := range l.Marks {
			if so(m) {
				n++
			}
		}
	}
	return n
}

// outside names the marks that are so, with their errors where they are wanted.
func (r *Check) outside(so func(mark.Result) bool, sizes bool) string {
	var words []string
	for _, l := range r.Lines {
		for _, m := range l.Marks {
			if !so(m) {
				continue
			}
			word := fmt.Sprintf("%v %d", l.Line, m.Fret)
			if sizes {
				word += " by " + r.text(*m.Error)
			}
			words = append(words, word)
		}
	}
	if more := len(words) - mostNamed; more > 0 {
		return strings.Join(words[:mostNamed], ", ") + fmt.Sprintf(" and %d more", more)
	}
	return listed(words)
}

func (r *Check) tolerance() string {
	if r.ToleranceCents > 0 {
		return trim(r.ToleranceCents.Value()) + " cents"
	}
	return r.text(r.Tolerance)
}

// text prints a small length; one that rounds to nothing as the least that is
// printed.
func (r *Check) text(l unit.Length) string {
	return r.in.fineUnits().LenText(l, markDecimals)
}

// fineUnits print small differences in decimals, to 0.01 mm or 0.0001 in.
func (in *Input) fineUnits() table.Units { return in.fine().Units }

// advice names the slips with what to do, or says that none stands out.
func (r *Check) advice() []string {
	if len(r.Slips) == 0 {
		out := []string{"No reading and no mark stands out from the others." + r.shows()}
		if r.Outside > 0 {
			if names := r.outside(sureOutside, true); names != "" {
				out = append(out, fmt.Sprintf("Draw anew from the nut, these are off: %s.", names))
			}
			if names := r.outside(notSure, true); names != "" {
				out = append(out, fmt.Sprintf("Measure again, these may be off: %s. Draw anew from the nut only what is then off.", names))
			}
		}
		return out
	}
	var out []string
	for _, s := range r.Slips {
		out = append(out, r.slip(s))
	}
	return out
}

// slip says of one slip what it is, how large, where entered, what to do, and what
// explains the readings as well.
func (r *Check) slip(s Slip) string {
	text := fmt.Sprintf("%s (%s).", capital(s.Words), r.sizeWords(s.Finding))
	if !s.Matters {
		return text + " This is smaller than the tolerance, and may stay."
	}
	if nominal := r.l.NutOffset; s.Kind == mark.OffsetSlip && nominal < 0 && size(s.Size+2*nominal) < r.NutOffsetTolerance {
		text += " Is its minus missing? It has one where the treble nut lies nearer the head than the bass nut, as here."
	}
	if len(s.Or) == 0 {
		return text + " Do: " + s.Do + "."
	}
	var or []string
	remedy := ""
	for _, f := range append([]Finding{s.Finding}, s.Or...) {
		if !f.IsReading() && remedy == "" {
			remedy = " If it stays so: " + f.Do + "."
		}
	}
	for _, f := range s.Or {
		or = append(or, fmt.Sprintf("%s (%s)", f.Words, r.sizeWords(f)))
	}
	return fmt.Sprintf("%s Or, which explains these readings as well: %s. Measure again before you redo anything.%s", text, strings.Join(or, "; or "), remedy)
}

// sizeWords say how large a slip is, which way, and where it was entered.
func (r *Check) sizeWords(f Finding) string {
	ways := [2]string{"too near the bridge", "too near the head"}
	if f.IsReading() {
		ways = [2]string{"too long", "too short"}
	}
	way := ways[0]
	if f.Size < 0 {
		way = ways[1]
	}
	text := fmt.Sprintf("%s ± %s %s", r.in.fineUnits().Len(size(f.Size), markDecimals), r.text(max(f.U, 0.01*unit.Millimetre)), way)
	if f.Finding.Place.Line > 0 {
		text += fmt.Sprintf(", line %d", f.Finding.Place.Line)
	}
	return text
}

// shown sums up how small an error of one mark these readings would have shown.
func (r *Check) shown() {
	for _, l := range r.Lines {
		for _, m := range l.Marks {
			switch {
			case m.Shows > 0 && (r.ShowsBest == 0 || m.Shows < r.ShowsBest):
				r.ShowsBest = m.Shows
			case m.Shows == 0 && m.Readings > 0:
				r.Blind++
			}
			r.ShowsWorst = max(r.ShowsWorst, m.Shows)
		}
	}
}

// shows says it.
func (r *Check) shows() string {
	text := ""
	if r.ShowsWorst > 0 {
		text = fmt.Sprintf(" A single mark that is off by more than %s would have shown in 95 %% of cases", r.text(r.ShowsWorst))
		if best := r.text(r.ShowsBest); best != r.text(r.ShowsWorst) {
			text += fmt.Sprintf(", %s where the readings are best", best)
		}
		text += "."
	}
	if r.Blind > 0 {
		text += fmt.Sprintf(" At %s an error could not have shown.", plural(r.Blind, "mark"))
	}
	return text
}
