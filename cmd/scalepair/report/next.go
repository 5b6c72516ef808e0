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
	Pair     PairOf       `json:"pair"`
	Aim      string       `json:"aim"` // "total_tension" or "feel_error"
	Total    unit.Force   `json:"total_tension_n"`
	UTotal   unit.Force   `json:"total_tension_standard_uncertainty_n"`
	Error    unit.Ratio   `json:"feel_error_percent"`
	UError   unit.Ratio   `json:"feel_error_standard_uncertainty_percent"`
	Worth    bool         `json:"a_weighing_is_worth_it"`
	Suspects []string     `json:"suspect_gauges"`
	Unread   []string     `json:"never_weighed"`
	Next     *table.Table `json:"next"`
	Parts    *table.Table `json:"parts"`
	Pieces   *table.Table `json:"pieces"`

	in      *Input
	d       *choice.Detail
	of      choice.Next
	list    []fit.Suggestion
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
func NewNext(in *Input, d *choice.Detail, of choice.Next, longest unit.Length) (*Next, error) {
	list, err := in.Run.Stock.WhatToWeigh(of.Density, longest)
	if err != nil {
		return nil, err
	}
	out := &Next{Head: in.head(d), Pair: in.pairOf(d.Pair), Aim: "total_tension", Suspects: in.suspects(), Unread: []string{}, in: in, d: d, of: of, longest: longest}
	total := d.Totals[0].Tension
	out.Total, out.UTotal, out.Error = total.Value, total.U, d.Error
	if of.OfError {
		out.Aim, out.UError = "feel_error", unit.Ratio(of.U)
	}
	for _, s := range list {
		if s.After < s.Before { // a weighing poorer than those there are helps nobody
			out.list = append(out.list, s)
		}
	}
	out.Worth = len(out.list) > 0 && out.takes(out.list[0]) > worthwhile && !(out.Aim == "total_tension" && of.U < feltTension*of.Value)
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
	return out, nil
}

// after is the quantity's uncertainty with one suggestion followed: what cores
// add by themselves stays.
func (n *Next) after(s fit.Suggestion) float64 {
	return math.Sqrt(max(0, n.of.U*n.of.U-s.Before*s.Before+s.After*s.After))
}

// takes is the part of the uncertainty that a suggestion takes off.
func (n *Next) takes(s fit.Suggestion) unit.Ratio { return unit.Ratio(1 - n.after(s)/n.of.U) }

func (n *Next) tables(inPlay []gauges.Gauge) {
	in, u := n.in, n.in.Units.Decimal()
	gauge := func(label string) gauges.Gauge {
		g, _ := in.Run.Stock.Lookup(label)
		return g
	}
	n.Next = table.Of("next", "One further weighing, best first", n.list,
		table.Words("gauge", "gauge", func(s fit.Suggestion) string { return s.Gauge }).As(func(s fit.Suggestion) string { return marked(gauge(s.Gauge)) }),
		table.Words("on string", "", func(s fit.Suggestion) string { return numbers(n.strings(s.Gauge)) }),
		table.Values("strings", func(s fit.Suggestion) any { return append([]int{}, n.strings(s.Gauge)...) }),
		table.Percent("known to", "standard_uncertainty", 1, func(s fit.Suggestion) unit.Ratio { return gauge(s.Gauge).RelU() }).
			As(func(s fit.Suggestion) string { return knownCell(gauge(s.Gauge).RelU()) }),
		table.Length(u, "least length", "length_to_weigh", 0, func(s fit.Suggestion) unit.Length { return s.Length }),
		table.Percent("takes off", "uncertainty_removed", 1, n.takes),
	).Note("Known to: one standard uncertainty. Takes off: of the uncertainty. Least length: to weigh, in one piece or several together; it brings nine tenths of what "+u.LenText(n.longest, 0)+" would. The weighing is taken to agree with what is known.",
		"The set stays as chosen. A new reading may change it: run advise again.")
	parts := slices.DeleteFunc(slices.Clone(n.of.Parts), func(p choice.Part) bool { return p.Share < unit.Percent(1) })
	n.Parts = table.Of("parts", "What the uncertainty is made of", parts,
		table.Words("part", "part", func(p choice.Part) string { return n.partWords(p) }),
		table.Percent("share", "of_the_variance", 0, func(p choice.Part) unit.Ratio { return p.Share }),
		table.Words("what would help", "what_would_help", n.help),
	).Note("Share: of the variance, which is the uncertainty squared; parts below 1 % are left out. Moduli, densities and the model's own errors are not counted.")
	n.Pieces = table.Of("pieces", "Length that gives 1 % in one weighing", inPlay,
		table.Words("gauge", "gauge", func(g gauges.Gauge) string { return g.Label }).As(marked),
		table.Percent("known to", "standard_uncertainty", 1, gauges.Gauge.RelU).As(func(g gauges.Gauge) string { return knownCell(g.RelU()) }),
		table.Length(u, "length", "length_for_1_percent", 0, in.forOnePercent),
	).Note("In one piece or in several of one length together, on this balance and ruler. Both percentages are standard uncertainties.")
}

// knownCell prints how well something is known, in percent; nothing is known
// perfectly.
func knownCell(r unit.Ratio) string {
	if r < unit.Percent(0.1) {
		return "< 0.1"
	}
	return unit.Fixed(r.Percent(), 1)
}

// knownText says the same in a sentence.
func knownText(r unit.Ratio) string {
	return strings.Replace(knownCell(r), "< ", "better than ", 1) + " %"
}

// strings lists the strings that carry a gauge, 1 the highest.
func (n *Next) strings(label string) []int {
	var out []int
	for i, g := range n.d.Gauges {
		if n.in.Plan.Stock()[g].Label == label {
			out = append(out, i+1)
		}
	}
	return out
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
	switch {
	case p.Gauge >= 0 && n.in.Plan.Stock()[p.Gauge].Readings == 0:
		return "weigh a piece of it"
	case p.Gauge >= 0:
		return "weigh more of it"
	case strings.HasPrefix(p.Source, gauges.CoreSource("")):
		if g, _ := n.in.Run.Stock.Lookup(strings.TrimPrefix(p.Source, gauges.CoreSource(""))); g.Estimated {
			return "weigh a piece of it"
		}
		return "a micrometer"
	case p.Source == gauges.SourceCalipers:
		return "check the calipers with a gauge block"
	case strings.HasPrefix(p.Source, "fit of"), strings.HasPrefix(p.Source, "slope of"):
		return "weigh the gauges that are estimated"
	case p.Source == "balance":
		return "check the balance with a known mass"
	case p.Source == "ruler":
		return "check the ruler against another"
	}
	return ""
}

// Document says first what to weigh.
func (n *Next) Document() *document.Document {
	in, u := n.in, n.in.Units
	doc := &document.Document{Title: in.title("What to weigh next for")}
	if words := weighAgain(n.Suspects); words != "" {
		doc.Para("%s What follows takes the reading as it is; scalepair gauges says why.", words)
	}
	doc.Para("%s", n.verdict())
	aim := fmt.Sprintf("total tension %s", u.ForceUText(n.d.Totals[0].Tension))
	if n.of.OfError {
		aim = fmt.Sprintf("feel error %s ± %s", table.PercentText(n.Error, 1), table.PercentText(n.UError, 1))
	}
	doc.Para("Pair %s, set %s, low string first: %s, one standard uncertainty.", in.Pair(n.d.Bass, n.d.Treble), in.Set(n.d.Gauges), aim)
	var first []string
	if len(n.Unread) > 0 {
		first = append(first, fmt.Sprintf("Never weighed: %s. Buy one single string, weigh it, and run again before you buy the rest.", listed(n.Unread)))
	}
	doc.Cautions(first...)
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
	switch {
	case len(n.list) == 0 || n.of.U == 0:
		return fmt.Sprintf("Nothing: no weighing of up to %s would help, since what there is was weighed better.", u.LenText(n.longest, 0))
	case n.Worth:
		best := n.list[0]
		return fmt.Sprintf("Weigh %s next, %s of it or more, in one piece or several together: it takes %s of the uncertainty off.",
			best.Gauge, u.LenText(best.Length, 0), table.PercentText(n.takes(best), 0))
	case n.takes(n.list[0]) > worthwhile:
		return fmt.Sprintf("Nothing need be weighed: the total tension is known to %s, and neither hand nor neck can tell less than about 1 %% (judgement).",
			knownText(unit.Ratio(n.of.U/n.of.Value)))
	}
	text := fmt.Sprintf("Nothing: the best single weighing, of %s, takes %s of the uncertainty off.", n.list[0].Gauge, table.PercentText(n.takes(n.list[0]), 1))
	if len(n.of.Parts) > 0 {
		text += fmt.Sprintf(" Most of it comes from %s.", n.partWords(n.of.Parts[0]))
	}
	return text
}
