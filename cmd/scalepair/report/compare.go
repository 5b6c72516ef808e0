package report

import (
	"errors"
	"strconv"
	"strings"

	"scalepair/cmd/scalepair/job"
	"scalepair/cmd/scalepair/show"
	"scalepair/tension/choice"
)

// Comparison is what compare found: columns as asked for and as worked out,
// one for one.
type Comparison struct {
	Asked    []job.Column
	Compared []choice.Compared
	Within   float64 // wanted tension misfit, %
}

// view is one tuning of one column, the unit that tables set side by side.
type view struct {
	name string
	c    int    // case
	in   *Input // with the column's own plan and tunings
	d    *choice.Detail
}

// Compare prints the columns of a comparison side by side.
func Compare(in *Input, cmp *Comparison) *show.Report {
	r := &show.Report{Title: in.title("Comparison for")}
	names := in.columnNames(cmp.Asked)
	views := in.views(cmp, names)
	in.columnTable(r, cmp, names)
	in.noSets(r, cmp, names)
	if len(views) > 0 {
		r.Heading("As a whole")
		in.wholes(r, cmp, names)
		r.Heading("String by string")
		in.sideBySide(r, views)
		in.viewStrings(r, views)
		in.viewBends(r, views)
		in.columnsBroken(r, cmp, names)
		in.changes(r, cmp, names)
	}
	r.Heading("Cautions")
	r.Cautions(append(in.columnCautions(cmp, names), shortCautions...)...)
	return r
}

// inColumn is the input with a column's own plan and tunings.
func (in *Input) inColumn(cmp *Comparison, i int) *Input {
	own := *in
	own.Plan, own.tunings = cmp.Compared[i].Plan, cmp.Asked[i].Tunings
	return &own
}

// views lists the tunings of the columns that have a set.
func (in *Input) views(cmp *Comparison, names []string) []view {
	var out []view
	for i, one := range cmp.Compared {
		if one.Detail == nil {
			continue
		}
		cases := cmp.Asked[i].Cases
		for c := range cases {
			name := names[i]
			if len(cases) > 1 {
				name += ", " + cases[c].Name
			}
			out = append(out, view{name: name, c: c, in: in.inColumn(cmp, i), d: one.Detail})
		}
	}
	return out
}

// columnTable says what each column is.
func (in *Input) columnTable(r *show.Report, cmp *Comparison, names []string) {
	r.Heading("Columns")
	t := r.Table("columns", "", show.Words("column"), show.Words("tuning, low string first"),
		show.Words(in.Units.HeadLen("pair, bass / treble")), show.Words("gauges, low string first"))
	for i, c := range cmp.Asked {
		var tunings []string
		for k, one := range c.Cases {
			words := tuningWords(c.Tunings[k], one.CapoFret)
			if len(c.Cases) > 1 {
				words = one.Name + ": " + words
			}
			tunings = append(tunings, words)
		}
		set := none
		if d := cmp.Compared[i].Detail; d != nil {
			set = in.Set(d.Gauges)
		}
		if cmp.Compared[i].Suggested && cmp.Compared[i].Detail != nil {
			set += " (suggested)"
		}
		t.Row(names[i], strings.Join(tunings, "; "), in.scale(c.BassMM)+" / "+in.scale(c.TrebleMM), set)
	}
	if len(names) == 1 {
		t.Note("One column alone: --tuning, --retune, --capo, --pair and --gauges put others beside it.")
	}
	for _, one := range cmp.Compared {
		if one.Suggested && one.Detail != nil {
			t.Note("Suggested: the set of the stock that comes nearest to the wanted feel and keeps the limits on strings.")
			break
		}
	}
}

// noSets says why a column has no set.
func (in *Input) noSets(r *show.Report, cmp *Comparison, names []string) {
	for i, one := range cmp.Compared {
		if one.Detail == nil {
			text := reasonWords[one.None.Reason]
			if what := in.miss(one.None); what != "" {
				text += ", nearest " + what
			}
			r.Para("%s: the stock has no set that keeps the limits on strings: %s.", names[i], text)
		}
	}
}

// wholes sets totals, misfits and the number of broken limits side by side.
func (in *Input) wholes(r *show.Report, cmp *Comparison, names []string) {
	terms := in.termsOf(cmp)
	reference := in.Job.Build.Reference != nil
	columns := []show.Column{show.Words("column"), show.Figures(in.Units.HeadForce("all strings together"))}
	if reference {
		columns = append(columns, show.Figures("change from the reference %"))
	}
	columns = append(columns, show.Figures("change from the first column %"))
	for i, term := range terms {
		columns = append(columns, show.Figures(string(term)+" misfit %").Later(i))
	}
	t := r.Table("wholes", "", append(columns, show.Figures("limits broken"))...)
	first := 0.0
	for _, v := range in.views(cmp, names) {
		total := v.d.Totals[v.c]
		if first == 0 {
			first = total.TensionN
		}
		row := []string{v.name, in.Units.ForceU(total.TensionN, total.UTensionN)}
		if change, ok := totalChange(v.d, v.c); ok {
			row = append(row, show.SignedPercent(change, 1))
		}
		row = append(row, show.SignedPercent(total.TensionN/first-1, 1))
		for _, term := range terms {
			row = append(row, v.misfit(term))
		}
		t.Row(append(row, strconv.Itoa(len(v.d.Broken)))...)
	}
	t.Note("Misfit: 100 x root mean square of ln(value/target), near enough percent.%s", in.severalNote(cmp))
}

func (in *Input) severalNote(cmp *Comparison) string {
	for _, c := range cmp.Asked {
		if len(c.Cases) > 1 {
			return " Where a column has several tunings, the overtone misfit and the limits are those of its set in all of them."
		}
	}
	return ""
}

// termsOf lists the terms that count in some column.
func (in *Input) termsOf(cmp *Comparison) []choice.Term {
	var out []choice.Term
	for _, term := range []choice.Term{choice.TensionTerm, choice.BendingForceTerm, choice.OvertoneTerm} {
		for _, one := range cmp.Compared {
			if one.Detail != nil && one.Plan.HasTerm(term) {
				out = append(out, term)
				break
			}
		}
	}
	return out
}

func (v view) misfit(term choice.Term) string {
	if !v.in.Plan.HasTerm(term) {
		return none
	}
	return show.Fixed(v.misfitOf(term), 2)
}

// misfitOf is that of the view's tuning by itself, but for the inharmonicity,
// which is that of all tunings of the column.
func (v view) misfitOf(term choice.Term) float64 {
	switch term {
	case choice.BendingForceTerm:
		return v.d.Totals[v.c].BendingForceMisfit
	case choice.OvertoneTerm:
		return v.d.OvertoneMisfit
	}
	return v.d.Totals[v.c].TensionMisfit
}

// bent gives the bend at the k-th fret, or why there is none.
func (v view) bent(i, k int) (choice.BendDetail, error) {
	bends := v.d.Strings[i].Cases[v.c].Bends
	if k >= len(bends) {
		return choice.BendDetail{}, errors.New("not bent")
	}
	return bends[k], bends[k].Err
}
