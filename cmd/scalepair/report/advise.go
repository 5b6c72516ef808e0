package report

import (
	"fmt"
	"slices"

	"scalepair/cmd/scalepair/document"
	"scalepair/cmd/scalepair/table"
	"scalepair/data/unit"
	"scalepair/fan"
	"scalepair/tension/choice"
)

// Found is what a search found, all of it finished.
type Found struct {
	Result     *choice.Result     `json:"-"`
	Pick       *choice.Pick       `json:"-"`          // the one in use
	Detail     *choice.Detail     `json:"-"`          // of Pick
	Confidence *choice.Confidence `json:"confidence"` // nil when no trials were asked for
	Taste      []choice.Taste     `json:"taste"`
	LimitCosts []choice.LimitCost `json:"limits_that_raise_the_error"`
	Lacks      []choice.Lack      `json:"-"` // what the stock lacks for Pick
	With       *choice.Result     `json:"-"` // what a search finds with it; nil where nothing is lacking
}

// Advice is what advise prints: the pair that it advises, the other picks, and
// what stands behind them.
type Advice struct {
	Head
	Choice choice.PickKind `json:"pick"` // which of the picks is strung below
	Strung
	Picks      []PickOf `json:"picks"`
	SmallerFan *StopOf  `json:"stops_smallest_fan"`
	LongerBass *StopOf  `json:"stops_longest_bass"`
	*Found
	Lacking     []LackOf      `json:"lacking_in_stock"`
	WithThem    []choice.Pick `json:"picks_with_them"`
	TradeOff    []StepOf      `json:"trade_off"`
	Blanks      *table.Table  `json:"blanks"`
	Asked       []string      `json:"asked"`
	Reasons     []string      `json:"reasons"` // what stands behind the picks, in words
	DroppedList *table.Table  `json:"dropped"`
	// NotRemovable stands here, since the strung pair and the result have one each.
	NotRemovable unit.Ratio `json:"not_removable_percent"`
	*choice.Result

	full bool
}

// PickOf is a pick with its labels.
type PickOf struct {
	Kind choice.PickKind `json:"pick"`
	PairOf
	StockDecides []MissingOf `json:"strings_in_stock_decide"`
}

// MissingOf is a string for which the stock has no gauge that is right.
type MissingOf struct {
	choice.Missing
	Gauge string `json:"gauge"`
}

// StepOf is a row of the trade-off.
type StepOf struct {
	PairOf
	Pick              string     `json:"pick"`
	MoreInharmonicity unit.Cents `json:"inharmonicity_change_cents"`
	Fitting
}

// StopOf is what stops a pick.
type StopOf struct {
	Kind choice.StopKind `json:"kind"`
	Pair *choice.Pair    `json:"pair"` // the one beyond it that is spoken of
	Why  string          `json:"why"`
}

// NewAdvice works up what a search found; full prints all of it.
func NewAdvice(in *Input, f *Found, full bool) *Advice {
	r := f.Result
	a := &Advice{Head: in.head(f.Detail), Choice: f.Pick.Kind, Strung: in.strung(f.Detail, brief), NotRemovable: r.NotRemovable, Found: f, Result: r, full: full, Lacking: []LackOf{}, WithThem: []choice.Pick{},
		Blanks: in.blanksTable(wholeFits(f.Detail.Blanks)), Asked: in.asked(), DroppedList: in.droppedTable(r)}
	for _, p := range r.Picks {
		one := PickOf{Kind: p.Kind, PairOf: in.pairOf(p.Pair), StockDecides: []MissingOf{}}
		for _, m := range p.StockDecides {
			one.StockDecides = append(one.StockDecides, in.missingOf(m))
		}
		a.Picks = append(a.Picks, one)
	}
	f.LimitCosts = append([]choice.LimitCost{}, f.LimitCosts...)
	for _, l := range f.Lacks {
		a.Lacking = append(a.Lacking, in.lackOf(l.Missing, l.Pair))
	}
	if f.With != nil {
		a.WithThem = f.With.Picks
	}
	for _, s := range r.TradeOff {
		a.TradeOff = append(a.TradeOff, StepOf{in.pairOf(s.Pair), pickAt(r, s.Pair), s.MoreInharmonicity, in.fitting(s.Pair)})
	}
	if !r.NoneNear { // else there is nothing to be as good as
		a.SmallerFan, a.LongerBass = in.stopOf(r.StopsSmallestFan), in.stopOf(r.StopsLongestBass)
	}
	a.Reasons = a.reasons()
	return a
}

// Document prints the answer first, then the picks with what stands behind
// them, then the strings.
func (a *Advice) Document() *document.Document {
	in := a.in
	doc := &document.Document{Title: in.title("Scale pair for")}
	doc.List(a.answer()...)
	if a.Kept > 1 {
		doc.Table(a.pickTable())
	}
	doc.List(a.Reasons...)
	if a.Kept > 1 {
		doc.Figure("Map of scale pairs", a.Map())
	}
	if a.together() != nil && !a.full {
		doc.Table(a.together())
	} else {
		for c := range a.Tunings {
			doc.Table(a.Tunings[c].Strings)
		}
	}
	addLimitsBroken(doc, a.LimitsBroken)
	if a.full {
		a.rest(doc)
	}
	doc.Cautions(a.Cautions...)
	return doc
}

// rest adds what only --full prints.
func (a *Advice) rest(doc *document.Document) {
	doc.Table(a.together())
	for c := range a.Tunings {
		doc.Table(a.bends(c))
	}
	doc.Table(a.tradeOffTable())
	doc.Table(a.Blanks)
	if a.Confidence != nil {
		doc.Para("A trial gives every linear density and core diameter another value within its uncertainty, shared by all pairs and by the reference; sets, moduli, limits and the model's own error are not varied.")
	}
	doc.Heading("What was asked")
	doc.List(a.Asked...)
	doc.Table(a.DroppedList)
}

// answer is what a builder can act on.
func (a *Advice) answer() []string {
	in, p := a.in, a.Pair
	var out lines
	pick, fan := "", "none, straight frets"
	if a.Kept > 1 {
		pick = fmt.Sprintf(" (pick: %s)", a.Choice)
	}
	if p.Difference != 0 {
		fan = fmt.Sprintf("%s of difference; nut %s, last fret %s, saddle line %s; %s square", in.length(p.Difference),
			table.DegText(p.NutSlant), table.DegText(p.LastFretSlant), table.DegText(p.SaddleSlant), neutralWords(a.d.Spec.Neutral))
	}
	out.say("Pair: bass %s, treble %s%s.", in.length(p.Bass), in.length(p.Treble), pick)
	out.sayIf(len(a.Suspects) > 0, "%s", a.weighAgain())
	out.say("Fan: %s; nut to fret 1 %s.", fan, in.length(p.NutToFret1))
	out.say("Set, low string first: %s.", in.Set(p.Pair.Gauges))
	for c, t := range a.Tunings {
		where := ""
		if len(a.Tunings) > 1 {
			where = " in " + t.Name
		}
		out.sayIf(t.Total > 0, "Total tension%s: %s.", where, a.totalWords(c))
	}
	out.say("Feel error: %s.", a.errorWords())
	if words := a.bendLine(); words != "" {
		out.say("Bend that stands out: %s.", words)
	}
	fits := ""
	if len(p.Blanks) > 0 {
		fits = "; " + in.fittingWords(in.fitting(p.Pair))
	}
	out.say("Blank: at least %s x %s%s.", in.atLeast(p.BlankLength), in.atLeast(p.BlankWidth), fits)
	return out
}

// pickTable sets the picks side by side.
func (a *Advice) pickTable() *table.Table {
	return table.Of("picks", "", a.Picks, slices.Concat(
		[]table.Column[PickOf]{table.Words("pick", "", func(p PickOf) string { return p.Kind.String() })},
		pairColumns(a.in.Units, func(p PickOf) PairOf { return p.PairOf }),
		[]table.Column[PickOf]{table.Percent("stays good", "", 0, func(p PickOf) unit.Ratio {
			sure, _ := a.sure(p.Kind)
			return *sure.Good
		}).When(a.Confidence != nil && !a.NoneNear)})...)
}

// neutralWords name the line that stands square.
func neutralWords(n fan.Neutral) string {
	if n.Bridge {
		return "the bridge"
	}
	return "fret " + trim(n.Fret)
}
