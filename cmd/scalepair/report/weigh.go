package report

import (
	"fmt"
	"math"
	"strings"

	"scalepair/cmd/scalepair/show"
	"scalepair/gauges/fit"
	"scalepair/tension/choice"
)

// Weigh is what weigh found: a result, how it leans on the stock, and what one
// further weighing of a gauge would do to its uncertainty. The result is the
// lead of the best pair over a rival, in score, or the total tension in N of
// one pair when Rival is nil.
type Weigh struct {
	Best, Rival *choice.Detail
	RivalRank   int
	Lead        float64 // score of the rival less that of the best, not below 0

	// ByWeight and ByCore are the change of the result per relative change of
	// the linear density and of the core of every gauge of the stock.
	ByWeight, ByCore []float64

	Next     []fit.Suggestion // uncertainties from linear densities alone
	LongestM float64
	Within   float64 // the relative uncertainty that a weighing is to reach
}

// Result works the result out under a plan.
func (w *Weigh) Result(p *choice.Plan) (float64, error) {
	best, err := p.Detail(w.Best.BassMM, w.Best.TrebleMM, w.Best.Gauges)
	if err != nil || w.Rival == nil {
		if err != nil {
			return 0, err
		}
		return best.Totals[0].TensionN, nil
	}
	rival, err := p.Detail(w.Rival.BassMM, w.Rival.TrebleMM, w.Rival.Gauges)
	if err != nil {
		return 0, err
	}
	return rival.Score - best.Score, nil
}

// InPlay lists the gauges that the result can depend on, as indexes into the
// stock, each once.
func (w *Weigh) InPlay(in *Input) []int {
	sets := [][]int{w.Best.Gauges}
	if w.Rival != nil {
		sets = append(sets, w.Rival.Gauges)
		if ref := in.Plan.Request().Reference; ref != nil {
			sets = append(sets, ref.Gauges)
		}
	}
	var out []int
	seen := map[int]bool{}
	for _, set := range sets {
		for _, g := range set {
			if !seen[g] {
				seen[g] = true
				out = append(out, g)
			}
		}
	}
	return out
}

// WhatToWeigh prints what to weigh next, and what the uncertainty hangs on.
func WhatToWeigh(in *Input, w *Weigh) *show.Report {
	r := &show.Report{Title: in.title("What to weigh next for")}
	parts := w.parts(in)
	u := w.uncertainty(parts)
	if w.Rival == nil {
		in.tensionNow(r, w, u)
	} else {
		in.leadNow(r, w, u)
	}
	in.firstOfAll(r, w)
	if w.Rival == nil || w.chance(u) >= toldShare {
		in.verdict(r, w, u, parts)
		in.next(r, w, u)
	}
	in.hangsOn(r, w, parts, u)
	in.pieces(r, w)
	return r
}

// tensionNow says how well the total tension is known.
func (in *Input) tensionNow(r *show.Report, w *Weigh, u float64) {
	total := w.Best.Totals[0].TensionN
	enough := ""
	if u < feltShare*total {
		enough = " Neither hand nor neck can tell less than about 1 %, so this will do."
	}
	where := ""
	if cases := in.Plan.Request().Cases; len(cases) > 1 {
		where = " in " + cases[0].Name
	}
	r.Para("Pair %s, gauges %s (low string first): total tension%s %s, one standard uncertainty being %s.%s", in.Pair(w.Best.BassMM, w.Best.TrebleMM),
		in.Set(w.Best.Gauges), where, in.Units.ForceTextU(total, u), show.PercentText(u/total, 1), enough)
}

// feltShare is the least change of total tension that anybody would notice
// (judgement).
const feltShare = 0.01

// leadNow says how sure it is that the best pair beats its rival.
func (in *Input) leadNow(r *show.Report, w *Weigh, u float64) {
	r.Bullets(
		fmt.Sprintf("Pair 1: %s, gauges %s (low string first).", in.Pair(w.Best.BassMM, w.Best.TrebleMM), in.Set(w.Best.Gauges)),
		fmt.Sprintf("Pair %d: %s, gauges %s.", w.RivalRank, in.Pair(w.Rival.BassMM, w.Rival.TrebleMM), in.Set(w.Rival.Gauges)),
	)
	chance := w.chance(u)
	share := "about " + show.PercentText(chance, 1)
	if chance < 0.001 {
		share = "less than 0.1 %"
	}
	text := fmt.Sprintf("As well as your readings know the strings, pair %d may be the better one in %s of cases.", w.RivalRank, share)
	switch {
	case chance < toldShare:
		text += " That is below 5 %: the two are told apart, and no weighing is needed to choose between them. What to weigh for a better tension: --for tension."
	case chance > 0.45:
		text += " The two score so alike that hardly any weighing will part them: let slant, reach or the blank decide."
	default:
		text += " Below 5 % they would count as told apart."
	}
	r.Text(text)
}

// toldShare is the share of cases below which pairs count as told apart, as
// in advise.
const toldShare = 0.05

// chance is the share of cases in which the rival is the better pair, when the
// lead has the uncertainty u: the normal distribution's tail beyond the lead.
func (w *Weigh) chance(u float64) float64 {
	if u == 0 {
		return 0
	}
	return math.Erfc(w.Lead/u/math.Sqrt2) / 2
}

// after is the result's uncertainty with one suggestion followed: what cores
// and moduli of the cores add stays.
func (w *Weigh) after(u float64, s fit.Suggestion) float64 {
	return math.Sqrt(max(0, u*u-s.Before*s.Before+s.After*s.After))
}

// firstOfAll names gauges whose linear density cannot be relied on.
func (in *Input) firstOfAll(r *show.Report, w *Weigh) {
	var odd, never, out []string
	for _, i := range w.InPlay(in) {
		switch g := in.Plan.Stock()[i]; {
		case g.Suspect || g.Disagrees:
			odd = append(odd, g.Label)
		case g.Readings == 0:
			never = append(never, g.Label)
		}
	}
	if odd != nil {
		out = append(out, fmt.Sprintf("Before anything else weigh a fresh piece of %s: a reading there is suspect, and what follows takes it as it stands. scalepair gauges says why.", listed(odd)))
	}
	if never != nil {
		of := "it"
		if len(never) > 1 {
			of = "each"
		}
		out = append(out, fmt.Sprintf("Never weighed: %s. Buy one single string of %s, weigh it, and run again before you buy the rest.", listed(never), of))
	}
	r.Cautions(out...)
}

// worthwhile is how much of its uncertainty the result must lose for a
// weighing to be advised (judgement).
const worthwhile = 0.05

// verdict says in one sentence what to weigh.
func (in *Input) verdict(r *show.Report, w *Weigh, u float64, parts []part) {
	if len(w.Next) == 0 || u == 0 {
		r.Para("No weighing of up to %s %s would help: what there is was weighed better.", in.pieceLength(w.LongestM), in.pieceUnit())
		return
	}
	best := w.Next[0]
	after := w.after(u, best)
	if after > (1-worthwhile)*u {
		text := fmt.Sprintf("No single weighing would change much: the best, of %s, takes %s of the uncertainty away. Most of it comes from %s",
			best.Gauge, show.PercentText(1-after/u, 1), parts[0].words)
		if parts[0].help != "" {
			text += " (" + parts[0].help + ")"
		}
		r.Text(text + ".")
		return
	}
	r.Para("Weigh %s next, %s %s of it or more, in one piece or several together: it takes %s of the uncertainty away.",
		best.Gauge, in.pieceLength(float64(best.Length)), in.pieceUnit(), show.PercentText(1-after/u, 0))
}

// mostNext is how many suggestions the table shows, fewNext how many when none
// is worth the while.
const mostNext, fewNext = 12, 4

// next is the table of further weighings, best first.
func (in *Input) next(r *show.Report, w *Weigh, u float64) {
	if len(w.Next) == 0 {
		return
	}
	columns := []show.Column{show.Words("gauge")}
	if w.Rival != nil {
		columns = append(columns, show.Words("on pair 1"), show.Words(fmt.Sprintf("on pair %d", w.RivalRank)), show.Words("on the reference"))
	} else {
		columns = append(columns, show.Words("on string"))
	}
	columns = append(columns, show.Figures("known to %"), show.Figures("length to weigh "+in.pieceUnit()), show.Figures("takes away %"))
	if w.Rival != nil {
		columns = append(columns, show.Figures(fmt.Sprintf("then pair %d better, %% of cases", w.RivalRank)))
	} else {
		columns = append(columns, show.Figures(in.Units.HeadForce("then total known to")))
	}
	t := r.Table("next", "One further weighing, best first", columns...)
	shown := mostNext
	if w.after(u, w.Next[0]) > (1-worthwhile)*u {
		shown = fewNext
	}
	for _, s := range w.Next[:min(shown, len(w.Next))] {
		t.Row(in.nextRow(w, s, u)...)
	}
	t.Note("Known to: one standard uncertainty. Takes away: of the uncertainty. Length to weigh: the least length, in one piece or several together, that brings nine tenths of what %s would. The weighing is taken to agree with what is known.",
		in.pieceLength(w.LongestM)+" "+in.pieceUnit())
	if w.Rival != nil {
		t.Note("The sets stay as chosen. A new reading may change them: run advise again.")
	}
}

func (in *Input) nextRow(w *Weigh, s fit.Suggestion, u float64) []string {
	index := in.stockIndex(s.Gauge)
	g := in.Plan.Stock()[index]
	row := []string{marked(g), stringsOf(w.Best.Gauges, index)}
	if w.Rival != nil {
		var ref []int
		if reference := in.Plan.Request().Reference; reference != nil {
			ref = reference.Gauges
		}
		row = append(row, stringsOf(w.Rival.Gauges, index), stringsOf(ref, index))
	}
	after := w.after(u, s)
	row = append(row, show.Percent(float64(g.RelU()), 1), in.pieceLength(float64(s.Length)), show.Percent(1-after/u, 1))
	if w.Rival != nil {
		return append(row, show.Percent(w.chance(after), 1))
	}
	return append(row, in.forceU(after))
}

// forceU prints an uncertainty of a force one place finer than forces.
func (in *Input) forceU(n float64) string { return in.Units.Force.Format(forceOf(n), 2) }

// stockIndex is the place of a gauge in the stock.
func (in *Input) stockIndex(label string) int {
	for i, g := range in.Job.Stock.Gauges {
		if g.Label == label {
			return i
		}
	}
	panic("report: no gauge " + label + " in stock")
}

// stringsOf lists the strings that carry a gauge: "2" or "3, 4".
func stringsOf(set []int, gauge int) string {
	list := numbersOf(set, gauge)
	if len(list) == 0 {
		return none
	}
	return strings.Trim(strings.ReplaceAll(fmt.Sprint(list), " ", ", "), "[]")
}

// numbersOf gives the numbers of the strings that have a gauge.
func numbersOf(set []int, gauge int) []int {
	out := []int{}
	for i, g := range set {
		if g == gauge {
			out = append(out, i+1)
		}
	}
	return out
}

// pieces is the table of the shortest pieces that reach a wanted uncertainty.
func (in *Input) pieces(r *show.Report, w *Weigh) {
	within := trimFixed(100*w.Within, 2) + " %"
	t := r.Table("pieces", "Length that gives "+within+" in one weighing", show.Words("gauge"), show.Figures("known to %"),
		show.Figures("length for "+within+" "+in.pieceUnit()), show.Words("remark"))
	for _, i := range w.InPlay(in) {
		g := in.Plan.Stock()[i]
		remark := ""
		if float64(g.RelU()) <= w.Within && !g.Suspect {
			remark = "known as well already"
		}
		t.Row(marked(g), show.Percent(float64(g.RelU()), 1), in.lengthWithin(g, w.Within), remark)
	}
	t.Note("In one piece or in several of one length together, on this balance and ruler. Both per cents are standard uncertainties. scalepair gauges has the length for 1 %% of every gauge.")
}
