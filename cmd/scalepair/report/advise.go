package report

import (
	"fmt"
	"strconv"
	"strings"

	"scalepair/cmd/scalepair/show"
	"scalepair/data/unit"
	"scalepair/fan"
	"scalepair/tension/choice"
)

// Advice is what advise found.
type Advice struct {
	Result     *choice.Result
	Confidence *choice.Confidence // nil when no draws were asked for
	Best       *choice.Detail     // of the first pair; nil when every pair was dropped
	Layout     *fan.Layout        // of Best
	FrontRows  int                // rows of the front that a table shows at most; 0 for all
}

// Advise prints the whole advice.
func Advise(in *Input, a *Advice) *show.Report {
	r := &show.Report{Title: in.title("Scale pair for")}
	in.asked(r)
	if len(a.Result.Best) == 0 {
		r.Heading("No pair is left")
		in.dropped(r, a.Result)
		r.Text(in.loosest(a.Result.Dropped))
		return r
	}
	in.bestPairs(r, a)
	in.front(r, a)
	in.decides(r, a)
	in.edges(r, a)
	in.confidence(r, a.Confidence)
	in.bestSet(r, a)
	in.fanOf(r, a.Layout)
	r.Heading("What was dropped")
	in.dropped(r, a.Result)
	r.Heading("Cautions")
	r.Cautions(append(in.detailCautions(a.Best), shortCautions...)...)
	return r
}

// title heads a report with the build's name.
func (in *Input) title(what string) string {
	if in.Job.Build.Name == "" {
		return what + " " + in.Job.Tunings()[0].String()
	}
	return what + " " + in.Job.Build.Name
}

func (in *Input) bestPairs(r *show.Report, a *Advice) {
	r.Heading("Best pairs")
	u := in.Units
	columns := []show.Column{show.Figures("rank"), show.Figures(u.HeadLen("bass")), show.Figures(u.HeadLen("treble")),
		show.Figures(u.HeadLen("difference")), show.Figures("tension misfit %")}
	bendingForce, rise := in.Plan.HasTerm(choice.BendingForceTerm), in.Plan.HasTerm(choice.OvertoneTerm)
	if bendingForce {
		columns = append(columns, show.Figures("bending force misfit %"))
	}
	if rise {
		columns = append(columns, show.Figures("overtone misfit %"))
	}
	columns = append(columns, show.Figures("nut slant °").Later(1), show.Figures("last fret slant °").Later(1), show.Figures("saddle slant °"),
		show.Figures(u.HeadLen("nut to fret 1")), show.Figures(u.HeadLen("blank length")).Later(1), show.Words("gauges, low string first").Later(2))
	t := r.Table("pairs", "", columns...)
	for i, c := range a.Result.Best {
		row := []string{strconv.Itoa(i + 1), in.scale(c.BassMM), in.scale(c.TrebleMM), in.scale(c.DifferenceMM()), show.Fixed(c.TensionMisfit, 2)}
		if bendingForce {
			row = append(row, show.Fixed(c.BendingForceMisfit, 2))
		}
		if rise {
			row = append(row, show.Fixed(c.OvertoneMisfit, 2))
		}
		t.Row(append(row, show.Deg(c.NutSlantRad), show.Deg(c.LastSlantRad), show.Deg(c.SaddleSlantRad),
			u.Len(c.NutToFret1MM, scaleDecimals), u.Len(c.BlankLengthMM, 0), in.Set(c.Gauges))...)
	}
	t.Note("Misfit: 100 x root mean square of ln(value/target), near enough percent while it is small. Slant: positive where the bass end is nearer the bridge.")
	if rise {
		t.Note("Overtone misfit: how far the lowest string's inharmonicity stands above the wanted one, in the same measure.")
	}
	if c := in.Job.Build.Chosen; c != nil {
		for i, b := range a.Result.Best {
			if unit.MM(b.BassMM) == c.Bass && unit.MM(b.TrebleMM) == c.Treble {
				t.Note("Rank %d is the pair that the build file has chosen.", i+1)
			}
		}
	}
	t.Note("Listed pairs differ by at least %s in bass, treble or difference.", u.LenText(in.Plan.Request().ApartMM, scaleDecimals))
}

// front prints the trade-off, thinned evenly when it is long.
func (in *Input) front(r *show.Report, a *Advice) {
	u := in.Units
	bendingForce := in.Plan.HasTerm(choice.BendingForceTerm)
	columns := []show.Column{show.Figures(u.HeadLen("difference")), show.Figures(u.HeadLen("bass")), show.Figures(u.HeadLen("treble")), show.Figures("tension misfit %")}
	if bendingForce {
		columns = append(columns, show.Figures("bending force misfit %"))
	}
	columns = append(columns, show.Figures("saddle slant °"), show.Words("gauges, low string first").Later(1))
	t := r.Table("front", "What less difference costs: no other pair is as good in tension misfit, bending force misfit and difference at once", columns...)
	rows := thinned(a.Result.Front, a.FrontRows)
	for _, c := range rows {
		row := []string{in.scale(c.DifferenceMM()), in.scale(c.BassMM), in.scale(c.TrebleMM), show.Fixed(c.TensionMisfit, 2)}
		if bendingForce {
			row = append(row, show.Fixed(c.BendingForceMisfit, 2))
		}
		t.Row(append(row, show.Deg(c.SaddleSlantRad), in.Set(c.Gauges))...)
	}
	if len(rows) < len(a.Result.Front) {
		t.Note("%d of %d pairs of the front, spread evenly; --front prints all.", len(rows), len(a.Result.Front))
	}
}

// thinned keeps the first, the last and others spread evenly, most in all.
func thinned(list []choice.Candidate, most int) []choice.Candidate {
	if most <= 1 || len(list) <= most {
		return list
	}
	out := make([]choice.Candidate, most)
	for i := range out {
		out[i] = list[i*(len(list)-1)/(most-1)]
	}
	return out
}

// evenMisfit is the tension misfit, in percent, below which a pair counts as
// strung to the target (judgement: half a step between neighbouring gauges is
// about as much).
const evenMisfit = 5

// decides says so when every pair can be strung to the target, and what then
// decides.
func (in *Input) decides(r *show.Report, a *Advice) {
	in.ruled(r, a)
	worst := a.Result.WorstTensionMisfit
	if !in.Plan.HasTerm(choice.TensionTerm) || worst > evenMisfit || a.Result.Kept < 2 {
		return
	}
	text := fmt.Sprintf("Every pair kept can be strung to the wanted tension: the worst misses by %s %%. So tension does not decide; ", show.Fixed(worst, 1))
	if in.Plan.HasTerm(choice.BendingForceTerm) {
		text += "bending force, slant, reach and the blank do."
	} else {
		text += "slant, reach and the blank do."
	}
	r.Text(text)
}

// edges says so when the best pair stands at an end of a range that was to be
// searched, since a better one may lie beyond.
func (in *Input) edges(r *show.Report, a *Advice) {
	req, best := in.Plan.Request(), a.Result.Best[0]
	var ends []string
	for _, g := range []struct {
		name string
		mm   []float64
		at   float64
	}{{"bass", req.BassMM, best.BassMM}, {"treble", req.TrebleMM, best.TrebleMM}} {
		switch {
		case len(g.mm) < 3:
		case g.at == g.mm[0]:
			ends = append(ends, "the shortest "+g.name+" length")
		case g.at == g.mm[len(g.mm)-1]:
			ends = append(ends, "the longest "+g.name+" length")
		}
	}
	if ends != nil {
		r.Para("The best pair stands at %s that was tried: a better one may lie beyond. Widen [scales] to see.", listed(ends))
	}
}

// confidence says how far the ranking can be trusted.
func (in *Input) confidence(r *show.Report, c *choice.Confidence) {
	if c == nil || len(c.Standing) == 0 {
		return
	}
	r.Heading("How sure the ranking is")
	if len(c.Standing) == 1 {
		r.Para("There is one pair, and none to tell it from.")
	} else if len(c.Tie) == 1 {
		r.Para("Your weighing and calipers tell the best pair from the other %d compared: none beats it in 5 %% or more of %d draws.", len(c.Standing)-1, c.Trials)
	} else {
		more := ""
		if c.Cut {
			more = " at least"
		}
		r.Para("Your weighing and calipers cannot tell%s %d pairs apart: each beats the best in 5 %% or more of %d draws. They span %s of bass, %s of treble and %s of difference; with nothing else to decide, take the smaller difference.",
			more, len(c.Tie), c.Trials, in.spanOf(c.BassMM), in.spanOf(c.TrebleMM), in.spanOf(c.DifferenceMM))
	}
	t := r.Table("confidence", "", show.Figures("rank"), show.Figures(in.Units.HeadLen("bass")), show.Figures(in.Units.HeadLen("treble")),
		show.Figures(in.Units.HeadLen("difference")), show.Figures("wins % of draws"), show.Figures("beats the best % of draws"), show.Words("told apart"))
	for j, s := range c.Standing {
		if j >= in.Plan.Request().Listed && (s.Told || len(c.Tie) == 1) {
			continue
		}
		told := "no"
		switch {
		case j == 0:
			told = "the best"
		case s.Told:
			told = "yes"
		}
		t.Row(strconv.Itoa(j+1), in.scale(s.BassMM), in.scale(s.TrebleMM), in.scale(s.DifferenceMM()), show.Percent(s.Wins, 1), show.Percent(s.BeatsBest, 1), told)
	}
	t.Note("%d draws of linear densities and core diameters, seed %d, shared by %s and by the reference. Moduli, densities and the model's own errors are not drawn.",
		c.Trials, c.Seed, plural(len(c.Standing), "pair"))
}

func (in *Input) spanOf(r [2]float64) string {
	if r[0] == r[1] {
		return in.Units.LenText(r[0], scaleDecimals)
	}
	return in.scale(r[0]) + " to " + in.Units.LenText(r[1], scaleDecimals)
}

// bestSet prints the string table of the best pair, tuning by tuning.
func (in *Input) bestSet(r *show.Report, a *Advice) {
	d := a.Best
	r.Heading("The best pair: %s", in.Pair(d.BassMM, d.TrebleMM))
	in.stringTables(r, d)
}

// stringTables prints a detail in every tuning.
func (in *Input) stringTables(r *show.Report, d *choice.Detail) {
	cases := in.Plan.Request().Cases
	if len(cases) > 1 {
		in.tuningsTogether(r, d)
	}
	for c := range cases {
		name, caption := "strings", "Strings"
		if len(cases) > 1 {
			name = fmt.Sprintf("strings-%d", c+1)
			caption = "Strings in " + in.caseWords(c, cases[c])
		}
		in.stringTable(r, name, caption, d, c)
		in.totals(r, d, c)
	}
}

// ruled says so when one term makes up nearly all of the best pair's score,
// since the ranking then follows that term.
func (in *Input) ruled(r *show.Report, a *Advice) {
	best := a.Result.Best[0]
	w := in.Plan.Request().Feel.Weights
	if best.Score == 0 {
		return
	}
	for _, t := range []struct {
		term choice.Term
		part float64
		key  string
	}{
		{choice.TensionTerm, w.Tension * square(best.TensionMisfit/100), "tension"},
		{choice.BendingForceTerm, w.BendingForce * square(best.BendingForceMisfit/100), "bending force"},
		{choice.OvertoneTerm, w.Overtone * square(best.OvertoneMisfit/100), "inharmonicity"},
	} {
		if t.part > ruling*best.Score {
			r.Para("%s makes up %s of the best pair's score, so the ranking mostly follows it. If that is not what you want, lower its weight: weights = { %s = ... } under [feel].",
				capital(string(t.term)), show.PercentText(t.part/best.Score, 0), t.key)
		}
	}
}

// ruling is the share of the score from which one term rules the ranking
// (judgement).
const ruling = 0.75

func square(x float64) float64 { return x * x }

func capital(word string) string { return strings.ToUpper(word[:1]) + word[1:] }
