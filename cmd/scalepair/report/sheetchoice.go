package report

import (
	"strconv"

	"scalepair/cmd/scalepair/show"
	"scalepair/tension/choice"
)

// choice prints the ranking, how sure it is, and the trade-off as a picture.
func (c *composer) choice() {
	a := c.f.Advice
	c.add(func(r *show.Report) {
		r.Heading("The choice")
		if len(a.Result.Best) == 0 {
			r.Text("No pair of the grid keeps every limit, so the pair below was settled by hand.")
			return
		}
		r.Para("%s tried, %d kept; the best, each with its best gauges:", plural(a.Result.Tried, "pair"), a.Result.Kept)
		c.ranking(r)
		c.decides(r, a)
		c.edges(r, a)
		if a.Confidence != nil && len(a.Confidence.Standing) > 1 {
			c.sure(r, a.Confidence)
		}
	})
}

// ranking prints the best pairs in as many columns as a page takes.
func (c *composer) ranking(r *show.Report) {
	u, a := c.Units, c.f.Advice
	bendingForce := c.Plan.HasTerm(choice.BendingForceTerm)
	columns := []show.Column{show.Figures("rank"), show.Figures(u.HeadLen("bass")), show.Figures(u.HeadLen("treble")),
		show.Figures("tension misfit %")}
	if bendingForce {
		columns = append(columns, show.Figures("bending force misfit %"))
	}
	columns = append(columns, show.Figures("saddle slant °"), show.Figures(u.HeadLen("nut to fret 1")), show.Words("gauges, low string first"))
	t := r.Table("pairs", "", columns...)
	l := c.f.SetOut.Layout
	for i, p := range a.Result.Best {
		rank := strconv.Itoa(i + 1)
		if p.BassMM == l.Spec.Bass.MM() && p.TrebleMM == l.Spec.Treble.MM() {
			rank = "→ " + rank
			t.Note("→ is the pair of this sheet.")
		}
		row := []string{rank, c.scale(p.BassMM), c.scale(p.TrebleMM), show.Fixed(p.TensionMisfit, 2)}
		if bendingForce {
			row = append(row, show.Fixed(p.BendingForceMisfit, 2))
		}
		t.Row(append(row, show.Deg(p.SaddleSlantRad), u.Len(p.NutToFret1MM, scaleDecimals), c.Set(p.Gauges))...)
	}
	t.Note("Misfit: 100 x root mean square of ln(value/target), near enough percent.")
}

// sure says how far the weighing tells the pairs apart.
func (c *composer) sure(r *show.Report, conf *choice.Confidence) {
	if len(conf.Tie) == 1 {
		r.Para("Your weighing and calipers tell the best pair from the other %d compared: none beats it in 5 %% or more of %d draws of linear densities and cores.", len(conf.Standing)-1, conf.Trials)
		return
	}
	more := ""
	if conf.Cut {
		more = "at least "
	}
	r.Para("Your weighing and calipers cannot tell %s%d pairs apart: each beats the best in 5 %% or more of %d draws of linear densities and cores. They span %s of bass, %s of treble and %s of difference; with nothing else to decide, take the smaller difference.",
		more, len(conf.Tie), conf.Trials, c.spanOf(conf.BassMM), c.spanOf(conf.TrebleMM), c.spanOf(conf.DifferenceMM))
}
