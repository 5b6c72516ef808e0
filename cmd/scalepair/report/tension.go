package report

import (
	"scalepair/cmd/scalepair/show"
	"scalepair/tension/choice"
)

// Tension prints one pair with one set, string by string.
func Tension(in *Input, d *choice.Detail) *show.Report {
	r := &show.Report{Title: in.title("Tensions for")}
	r.Para("Pair %s, gauges %s (low string first), A4 = %s Hz.", in.Pair(d.BassMM, d.TrebleMM), in.Set(d.Gauges),
		trim(in.Job.Build.Strings.PitchStandard.Hz()))
	for i, c := range in.Plan.Request().Cases {
		r.Para("Tuning: %s.", in.caseWords(i, c))
	}
	in.stringTables(r, d)
	in.misfits(r, d)
	in.limitsBroken(r, d.Broken)
	r.Heading("Cautions")
	r.Cautions(append(in.detailCautions(d), shortCautions...)...)
	return r
}

// caseWords names one tuning by its own name, where it has one, and its notes.
func (in *Input) caseWords(i int, c choice.Case) string {
	t := in.Tunings()[i]
	words := tuningWords(t, c.CapoFret)
	if c.Name != t.String() {
		return c.Name + ", " + words
	}
	return words
}

// misfits says in one line how near the set is to the targets.
func (in *Input) misfits(r *show.Report, d *choice.Detail) {
	var words []string
	for _, m := range []struct {
		term   choice.Term
		misfit float64
	}{{choice.TensionTerm, d.TensionMisfit}, {choice.BendingForceTerm, d.BendingForceMisfit}, {choice.OvertoneTerm, d.OvertoneMisfit}} {
		if in.Plan.HasTerm(m.term) {
			words = append(words, string(m.term)+" "+show.Fixed(m.misfit, 2)+" %")
		}
	}
	if n := failedBends(d); n > 0 {
		words = append(words, "not counting "+plural(n, "bend")+" that cannot be made")
	}
	if words != nil {
		r.Para("Misfit (100 x root mean square of ln(value/target)): %s.", listed(words))
	}
}

// failedBends counts the bends of a detail that cannot be made or computed.
func failedBends(d *choice.Detail) int {
	n := 0
	for _, s := range d.Strings {
		for _, c := range s.Cases {
			for _, b := range c.Bends {
				if b.Err != nil {
					n++
				}
			}
		}
	}
	return n
}
