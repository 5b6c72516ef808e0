package report

import (
	"fmt"
	"slices"
	"strconv"
	"strings"

	"scalepair/cmd/scalepair/show"
	"scalepair/tension/choice"
)

// columnsBroken lists the limits that each column breaks.
func (in *Input) columnsBroken(r *show.Report, cmp *Comparison, names []string) {
	var items []string
	for i, one := range cmp.Compared {
		if one.Detail != nil {
			for _, line := range in.inColumn(cmp, i).broken(one.Detail.Broken) {
				items = append(items, names[i]+": "+line)
			}
		}
	}
	if items != nil {
		r.Heading("Limits broken")
		r.Bullets(items...)
	}
}

// changes says which strings of each column to swap, fewest first, until the
// set comes within the wanted misfit.
func (in *Input) changes(r *show.Report, cmp *Comparison, names []string) {
	r.Heading("What would have to change")
	within := show.Fixed(cmp.Within, 1) + " %"
	bendingForce := len(in.termsOf(cmp)) > 0 && in.hasTermIn(cmp, choice.BendingForceTerm)
	columns := []show.Column{show.Words("column"), show.Figures("swaps"), show.Words("string: gauges to swap, and its tension then"),
		show.Figures("tension misfit then %")}
	if bendingForce {
		columns = append(columns, show.Figures("bending force misfit then %"))
	}
	t := r.Table("changes", "To come within a tension misfit of "+within, append(columns, show.Words("within"))...)
	var notes []string
	for i, one := range cmp.Compared {
		if one.Detail == nil {
			continue
		}
		own := in.inColumn(cmp, i)
		for _, w := range one.Ways {
			row := []string{names[i], strconv.Itoa(len(w.Swaps)), own.swapWords(w), show.Fixed(w.Detail.TensionMisfit, 2)}
			if bendingForce {
				row = append(row, own.pushThen(w.Detail))
			}
			t.Row(append(row, yesNo(w.Within))...)
		}
		notes = append(notes, own.shortfall(names[i], within, one)...)
	}
	for _, n := range notes {
		t.Note("%s", n)
	}
	t.Note("Each line is the best set with so many swaps; lines that bring nothing are left out. Swapped strings take gauges of the stock that keep the limits on strings.")
	if bendingForce {
		t.Note("Only tension counts in these swaps; the bending force misfit shows what else they do.")
	}
}

func (in *Input) pushThen(d *choice.Detail) string {
	if !in.Plan.HasTerm(choice.BendingForceTerm) {
		return none
	}
	return show.Fixed(d.BendingForceMisfit, 2)
}

func (in *Input) hasTermIn(cmp *Comparison, term choice.Term) bool {
	for _, t := range in.termsOf(cmp) {
		if t == term {
			return true
		}
	}
	return false
}

func yesNo(b bool) string {
	if b {
		return "yes"
	}
	return "no"
}

// shortfall says why a column's last way does not come within, or why it has
// none.
func (in *Input) shortfall(name, within string, one choice.Compared) (out []string) {
	switch n := len(one.Ways); {
	case n == 0:
		return []string{name + ": no tension is wanted, so there is nothing to come near to."}
	case one.Ways[n-1].Within:
	case in.Plan.Request().Feel.Tension.Source == choice.OwnMean:
		out = append(out, name+": no three swaps make it even within "+within+".")
	default:
		out = append(out, name+": no set of the stock comes within "+within+".")
	}
	var stuck []int
	for _, m := range one.Ways[len(one.Ways)-1].Detail.Broken {
		if m.String > 0 && !slices.Contains(stuck, m.String) {
			stuck = append(stuck, m.String)
		}
	}
	if stuck != nil {
		out = append(out, name+": no gauge of the stock keeps the limits on string "+numbers(stuck)+", so it stays.")
	}
	return out
}

// swapWords names the swaps of a way: "2: p17 to p16, 67.1 N".
func (in *Input) swapWords(w choice.Way) string {
	if len(w.Swaps) == 0 {
		return "as it is"
	}
	words := make([]string, len(w.Swaps))
	for i, s := range w.Swaps {
		words[i] = fmt.Sprintf("%d: %s to %s, %s", s.String, in.gauge(s.From), in.gauge(s.To), in.tensionsThen(w.Detail, s.String))
	}
	return strings.Join(words, "; ")
}

// tensionsThen gives a string's tension, tuning by tuning.
func (in *Input) tensionsThen(d *choice.Detail, number int) string {
	var out []string
	for _, cd := range d.Strings[number-1].Cases {
		out = append(out, in.Units.ForceN(cd.TensionN))
	}
	return strings.Join(out, " / ") + " " + in.Units.Force.Symbol()
}

// columnCautions are the cautions of the columns' own numbers, each with the
// names of the columns that it holds for.
func (in *Input) columnCautions(cmp *Comparison, names []string) []string {
	var order []string
	holds := map[string][]string{}
	for i, one := range cmp.Compared {
		if one.Detail == nil {
			continue
		}
		for _, text := range in.inColumn(cmp, i).detailCautions(one.Detail) {
			if holds[text] == nil {
				order = append(order, text)
			}
			holds[text] = append(holds[text], names[i])
		}
	}
	var out []string
	for _, text := range order {
		out = append(out, text+" (Holds for "+listed(holds[text])+".)")
	}
	return out
}
