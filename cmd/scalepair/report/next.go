package report

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"scalepair/cmd/scalepair/document"
	"scalepair/cmd/scalepair/table"
	"scalepair/data/unit"
	"scalepair/gauges"
	"scalepair/gauges/fit"
	"scalepair/tension/choice"
)

// Next is what to weigh next for one pair and set.
type Next struct {
	Head
	Pair   PairOf       `json:"pair"`
	Aim    string       `json:"aim"` // "total_tension" or "feel_error"
	Total  unit.Force   `json:"total_tension_n"`
	UTotal unit.Force   `json:"total_tension_standard_uncertainty_n"`
	Error  unit.Ratio   `json:"feel_error_percent"`
	UError unit.Ratio   `json:"feel_error_standard_uncertainty_percent"`
	Worth  bool         `json:"a_weighing_is_worth_it"`
	Unread []string     `json:"never_weighed"`
	Next   *table.Table `json:"next"`
	Parts  *table.Table `json:"parts"`
	Pieces *table.Table `json:"pieces"`

	in      *Input
	d       *choice.Detail
	of      choice.Next
	list    []fit.Suggestion // those that help
	longest unit.Length
}

// worthwhile is how much of its uncertainty a weighing must take off to be
// advised, feltTension the least change of total tension that anybody would
// notice. Judgement.
const (
	worthwhile  = 0.05
	feltTension = 0.01
)

// NewNext works up what a further weighing of up to the longest piece would do
// to what is known of a detail.
func NewNext(in *Input, d *choice.Detail, of choice.Next, longest unit.Length) *Next {
	list := in.Run.Stock.WhatToWeigh(of.Density, longest)
	total := d.Totals[0].Tension
	out := &Next{Head: in.head(d), Pair: in.pairOf(d.Pair), Aim: "total_tension", Unread: []string{}, Total: total.Value, UTotal: total.U, Error: d.Error, in: in, d: d, of: of, longest: longest}
	if of.OfError {
		out.Aim, out.UError = "feel_error", unit.Ratio(of.U)
	}
	for _, s := range list {
		if s.After < s.Before { // a weighing poorer than those there are helps nobody
			out.list = append(out.list, s)
		}
	}
	out.Worth = len(out.list) > 0 && out.takes(out.list[0]) > worthwhile && (of.OfError || of.U >= feltTension*of.Value)
	var inPlay []gauges.Gauge
	for i, g := range in.Plan.Stock() {
		if of.Density[i] == 0 {
			continue
		}
		inPlay = append(inPlay, g)
		if g.Readings == 0 {
			out.Unread = append(out.Unread, g.Label)
		}
	}
	out.tables(inPlay)
	return out
}

// takes is the part of the uncertainty that a suggestion takes off; what cores add
// by themselves stays.
func (n *Next) takes(s fit.Suggestion) unit.Ratio {
	after := math.Sqrt(max(0, n.of.U*n.of.U-s.Before*s.Before+s.After*s.After))
	return unit.Ratio(1 - after/n.of.U)
}

func (n *Next) tables(inPlay []gauges.Gauge) {
	in, u := n.in, n.in.Units.Decimal()
	gauge := func(s fit.Suggestion) gauges.Gauge {
		g, _ := in.Run.Stock.Lookup(s.Gauge)
		return g
	}
	strings := func(s fit.Suggestion) []int { // that carry the gauge
		out := []int{}
		for i, g := range n.d.Gauges {
			if in.Plan.Stock()[g].Label == s.Gauge {
				out = append(out, i+1)
			}
		}
		return out
	}
	n.Next = table.Of("next", "One further weighing, best first", n.list,
		table.Words("gauge", "gauge", func(s fit.Suggestion) string { return s.Gauge }).As(func(s fit.Suggestion) string { return marked(gauge(s)) }),
		table.Words("on string", "", func(s fit.Suggestion) string { return numbers(strings(s)) }),
		table.Values("strings", func(s fit.Suggestion) any { return strings(s) }),
		table.Percent("known to", "standard_uncertainty", 1, func(s fit.Suggestion) unit.Ratio { return gauge(s).RelU() }).
			As(func(s fit.Suggestion) string { return known(gauge(s).RelU()) }),
		table.Length(u, "least length", "length_to_weigh", 0, func(s fit.Suggestion) unit.Length { return s.Length }),
		table.Percent("takes off", "uncertainty_removed", 1, n.takes),
	).Note("Known to: one standard uncertainty. Takes off: of the uncertainty. Least length: to weigh, in one piece or several together; it brings nine tenths of what "+u.LenText(n.longest, 0)+" would. The weighing is taken to agree with what is known.",
		"The set stays as chosen. A new reading may change it: run advise again.")
	parts := slices.DeleteFunc(slices.Clone(n.of.Parts), func(p choice.Part) bool { return p.Share < unit.Percent(1) })
	n.Parts = table.Of("parts", "What the uncertainty is made of", parts,
		table.Words("part", "part", n.partWords),
		table.Percent("share", "of_the_variance", 0, func(p choice.Part) unit.Ratio { return p.Share }),
		table.Words("what would help", "what_would_help", n.help),
	).Note("Share: of the variance, which is the uncertainty squared; parts below 1 % are left out. Moduli, densities and the model's own errors are not counted.")
	n.Pieces = table.Of("pieces", "Length that gives 1 % in one weighing", inPlay,
		table.Words("gauge", "gauge", func(g gauges.Gauge) string { return g.Label }).As(marked),
		table.Percent("known to", "standard_uncertainty", 1, gauges.Gauge.RelU).As(func(g gauges.Gauge) string { return known(g.RelU()) }),
		table.Length(u, "length", "length_for_1_percent", 0, in.forOnePercent),
	).Note("In one piece or in several of one length together, on this balance and ruler. Both percentages are standard uncertainties.")
}

// known prints how well something is known, in percent; nothing is known
// perfectly.
func known(r unit.Ratio) string {
	if r < unit.Percent(0.1) {
		return "< 0.1"
	}
	return unit.Fixed(r.Percent(), 1)
}

// partWords says what a part of the uncertainty is.
func (n *Next) partWords(p choice.Part) string {
	if p.Gauge >= 0 {
		return "the linear density of " + n.in.Plan.Stock()[p.Gauge].Label
	}
	if label, ok := strings.CutPrefix(p.Source, gauges.CoreSource("")); ok {
		return "the diameter of the core of " + label
	}
	return "the " + p.Source
}

// help says what would make a part smaller.
func (n *Next) help(p choice.Part) string {
	if p.Gauge >= 0 {
		return "weigh more of it"
	}
	if label, ok := strings.CutPrefix(p.Source, gauges.CoreSource("")); ok {
		if g, _ := n.in.Run.Stock.Lookup(label); g.Estimated {
			return "weigh a piece of it"
		}
		return "a micrometer"
	}
	if kind, _, ok := strings.Cut(p.Source, " of "); ok && (kind == "fit" || kind == "slope") {
		return "weigh the gauges that are estimated"
	}
	return map[string]string{gauges.SourceCalipers: "check the calipers with a gauge block", "balance": "check the balance with a known mass", "ruler": "check the ruler against another"}[p.Source]
}

// Document says first what to weigh.
func (n *Next) Document() *document.Document {
	in, u := n.in, n.in.Units
	doc := &document.Document{Title: in.title("What to weigh next for")}
	doc.Para("%s", n.weighAgain())
	if n.Worth || len(n.Suspects) == 0 {
		doc.Para("%s", n.verdict())
	}
	aim := fmt.Sprintf("total tension %s", u.ForceUText(n.d.Totals[0].Tension))
	if n.of.OfError {
		aim = fmt.Sprintf("feel error %s ± %s", table.PercentText(n.Error, 1), table.PercentText(n.UError, 1))
	}
	doc.Para("Pair %s, set %s, low string first: %s, one standard uncertainty.", in.Pair(n.d.Bass, n.d.Treble), in.Set(n.d.Gauges), aim)
	if len(n.Unread) > 0 {
		doc.Cautions(fmt.Sprintf("Never weighed: %s. Buy one single string, weigh it, and run again before you buy the rest.", listed(n.Unread)))
	}
	if len(n.list) > 0 {
		doc.Table(n.Next)
	}
	doc.Table(n.Parts)
	doc.Table(n.Pieces)
	return doc
}

// verdict says in a sentence or two what to weigh.
func (n *Next) verdict() string {
	u := n.in.Units.Decimal()
	if len(n.list) == 0 || n.of.U == 0 {
		return fmt.Sprintf("Nothing: no weighing of up to %s would help, since what there is was weighed better.", u.LenText(n.longest, 0))
	}
	best := n.list[0]
	takes := table.PercentText(n.takes(best), 1)
	switch {
	case n.Worth:
		return fmt.Sprintf("Weigh %s next, %s of it or more, in one piece or several together: it takes %s of the uncertainty off.", best.Gauge, u.LenText(best.Length, 0), takes)
	case n.takes(best) > worthwhile:
		return fmt.Sprintf("Nothing need be weighed: the total tension is known to %s %%, and neither hand nor neck can tell less than about 1 %% (judgement).", known(unit.Ratio(n.of.U/n.of.Value)))
	}
	return fmt.Sprintf("Nothing: the best single weighing, of %s, takes %s of the uncertainty off. What it is made of stands below.", best.Gauge, takes)
}
