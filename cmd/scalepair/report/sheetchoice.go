package report

import (
	"fmt"
	"math"
	"strconv"

	"scalepair/cmd/scalepair/chart"
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
		c.tradeOffs(r)
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

// fewest is the number of pairs from which a picture tells more than a table.
const fewest = 4

// tradeOffs pictures what a smaller difference costs, in tension and in bending force.
func (c *composer) tradeOffs(r *show.Report) {
	if len(c.f.Points) < fewest {
		return
	}
	caption := "Every point is a scale pair with its best gauges. Diamonds: no other pair is as good in tension misfit, bending force misfit and difference at once. Ringed: the best of the ranking, and the pair of this sheet."
	if c.f.Thinned {
		caption += " Of the others not all are drawn."
	}
	if c.Plan.HasTerm(choice.TensionTerm) {
		svg, err := c.tradeOff("Tension: what less difference costs", "tension misfit, %",
			func(p choice.Candidate) float64 { return p.TensionMisfit })
		c.picture(r, caption, svg, err)
		caption = "The same pairs by the bending force of their bends."
	}
	if c.Plan.HasTerm(choice.BendingForceTerm) {
		svg, err := c.tradeOff("Bending force: what less difference costs", "bending force misfit, %",
			func(p choice.Candidate) float64 { return p.BendingForceMisfit })
		c.picture(r, caption, svg, err)
	}
}

// tradeOff draws all kept pairs by difference and one misfit.
func (c *composer) tradeOff(title, yLabel string, cost func(choice.Candidate) float64) (string, error) {
	u, spec := c.Units, c.f.SetOut.Layout.Spec
	chart := chart.TradeOff{Title: title, XLabel: "difference of the lengths, " + u.Length.Symbol(), YLabel: yLabel}
	drawn, ringed := map[[2]float64]bool{}, map[[2]float64]bool{{spec.Bass.MM(), spec.Treble.MM()}: true}
	if best := c.f.Advice.Result.Best; len(best) > 0 {
		ringed[[2]float64{best[0].BassMM, best[0].TrebleMM}] = true
	}
	chart.Ringed = "best, and this sheet's pair"
	if len(ringed) == 1 {
		chart.Ringed = "best, this sheet's pair"
	}
	add := func(p choice.Candidate, front bool) {
		at := [2]float64{p.BassMM, p.TrebleMM}
		if drawn[at] {
			return
		}
		drawn[at] = true
		chart.Pairs = append(chart.Pairs, pairOn(u, p, cost(p), front, ringed[at]))
	}
	for _, p := range c.f.Advice.Result.Front {
		add(p, true)
	}
	if d := c.f.SetOut.Detail; d != nil {
		add(d.Candidate, false)
	}
	for _, p := range c.f.Points {
		add(choice.Candidate{BassMM: p.BassMM, TrebleMM: p.TrebleMM, TensionMisfit: p.TensionMisfit, BendingForceMisfit: p.BendingForceMisfit}, false)
	}
	return chart.SVG()
}

func pairOn(u show.Units, p choice.Candidate, cost float64, front, best bool) chart.Pair {
	return chart.Pair{
		X: math.Abs(lengthIn(u, p.DifferenceMM())), Y: cost, Front: front, Best: best,
		Label: fmt.Sprintf("%s / %s", u.Len(p.BassMM, scaleDecimals), u.Len(p.TrebleMM, scaleDecimals)),
	}
}
