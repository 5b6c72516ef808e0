package report

import (
	"cmp"
	"fmt"
	"math"
	"slices"

	"scalepair/cmd/scalepair/build"
	"scalepair/cmd/scalepair/document"
	"scalepair/cmd/scalepair/table"
	"scalepair/data/unit"
	"scalepair/tension/choice"
)

// Comparison is what compare prints: columns side by side.
type Comparison struct {
	Head
	OneSet  []string    `json:"one_set"` // low string first; empty unless asked for
	Verdict string      `json:"verdict"`
	Lacking []LackOf    `json:"lacking_in_stock"` // by the one set
	Columns []*ColumnOf `json:"columns"`

	in     *Input
	strung []*ColumnOf // the columns that have a set
	same   bool        // the suggested set is that of the first column
}

// ColumnOf is one column, worked out.
type ColumnOf struct {
	Name      string      `json:"column"`
	Suggested bool        `json:"set_is_suggested"`
	NoSet     string      `json:"no_set"` // why there is none; empty where there is
	Change    *unit.Ratio `json:"change_from_first_column_percent"`
	Fitting
	Lacking []LackOf     `json:"lacking_in_stock"`
	Swaps   *table.Table `json:"swaps"`
	*Strung
}

// NewComparison works up columns as asked for and as worked out, one for one.
// oneSet is the set that was found for all of them, nil where none was asked
// for.
func NewComparison(in *Input, asked []build.Column, found []choice.Compared, oneSet []int) *Comparison {
	out := &Comparison{OneSet: []string{}, Lacking: []LackOf{}, in: in}
	if len(found) == 2 && found[0].Detail != nil && found[1].Detail != nil && found[1].Suggested {
		a, b := found[0].Detail, found[1].Detail
		out.same = slices.Equal(a.Gauges, b.Gauges) && a.Bass == b.Bass && a.Treble == b.Treble && choice.Alike(a, b)
	}
	var details []*choice.Detail
	names := in.columnNames(asked)
	for i, one := range found {
		if out.same && i == 1 {
			break
		}
		own := *in
		own.Plan, own.tunings = one.Plan, asked[i].Tunings
		c := &ColumnOf{Name: names[i], Suggested: one.Suggested}
		out.Columns = append(out.Columns, c)
		if one.Detail == nil {
			c.NoSet = own.MissWords(one.None)
			continue
		}
		details = append(details, one.Detail)
		c.Strung, c.Fitting, c.Swaps, c.Lacking = new(own.strung(one.Detail, compared)), own.fitting(one.Detail.Pair), own.swapTable(one.Swaps), []LackOf{}
		out.strung = append(out.strung, c)
		if one.Suggested || out.same {
			c.Lacking = lacking([]*ColumnOf{c}, offAlone)
		}
		if first, total := out.strung[0].Tunings[0].Total, c.Tunings[0].Total; c != out.strung[0] && first > 0 && total > 0 {
			c.Change = new(unit.Ratio(total/first - 1))
		}
	}
	if oneSet != nil {
		out.OneSet, out.Lacking = in.labels(oneSet), lacking(out.strung, offTogether)
	}
	out.Head, out.Verdict = in.head(details...), out.verdict()
	return out
}

// Document prints the verdict first, then the columns side by side.
func (c *Comparison) Document() *document.Document {
	doc := &document.Document{Title: c.in.title("Comparison for")}
	doc.Para("%s", c.weighAgain())
	if len(c.OneSet) > 0 {
		doc.Para("One set for all columns, low string first: %s.", c.in.Set(c.strung[0].d.Gauges))
	}
	doc.Para("%s", c.Verdict)
	doc.List(c.missing()...)
	if len(c.strung) > 0 {
		doc.Table(c.sideBySide())
		doc.Table(c.stringByString())
	}
	var broken, cautions []string
	var shared []shared
	for _, one := range c.strung {
		for _, line := range one.LimitsBroken {
			broken = append(broken, one.Name+": "+line)
		}
		if t := one.Swaps; t.Len() > 0 && len(c.OneSet) == 0 { // a swap would part the sets
			t.Title = "Swaps that bring " + one.Name + " nearer, one at a time"
			doc.Table(t)
		}
		for _, text := range one.in.detailCautions(one.d) {
			shared = share(shared, text, one.Name)
		}
	}
	addLimitsBroken(doc, broken)
	for _, s := range shared {
		if len(s.by) < len(c.strung) { // else it is said of all
			s.text += fmt.Sprintf(" (%s.)", capital(listed(s.by)))
		}
		cautions = append(cautions, s.text)
	}
	doc.Cautions(append(cautions, stringCautions...)...)
	return doc
}

// verdict says in a line what the comparison comes to.
func (c *Comparison) verdict() string {
	if len(c.strung) == 0 {
		return "No column has a set that keeps the limits on strings."
	}
	best := slices.MinFunc(c.strung, func(a, b *ColumnOf) int { return cmp.Compare(a.removable(), b.removable()) })
	switch name := capital(best.Name); {
	case c.same:
		return fmt.Sprintf("%s is the one that the stock suggests: feel error %s.", name, best.errorWords())
	case len(c.Columns) == 1:
		return fmt.Sprintf("Nothing to compare: name a second pair, tuning or set (--pair, --tuning, --gauges). This one's feel error is %s.", best.errorWords())
	case len(c.strung) == 1:
		return fmt.Sprintf("Only %s has a set: feel error %s.", best.Name, best.errorWords())
	case best.Pair.ErrorUnknown:
		return "No feel error is known: in every column a bend cannot be made or computed."
	}
	feel := c.in.Plan.Request().Feel
	n, good := feel.Noticeable, "as good"
	if feel.NoneNear(best.removable()) {
		good = "as far off"
	}
	text := fmt.Sprintf("%s comes nearest to the wanted feel, with an error of %s", capital(best.Name), best.errorText())
	for _, one := range c.strung {
		is := "further off"
		switch {
		case one == best:
			continue
		case choice.Alike(best.d, one.d):
			is = "alike, no string differing by 2 %"
		case one.removable() <= max(best.removable(), n)+n:
			is = good
		}
		text += fmt.Sprintf("; %s: %s (%s)", is, one.Name, one.errorText())
	}
	return text + "."
}

func (o *ColumnOf) errorText() string {
	if o.Pair.ErrorUnknown {
		return "not known"
	}
	return table.PercentText(o.Pair.Error, 1)
}

// removable is the part of the feel error that another set could remove, by
// which columns are compared; infinite where the error is not known.
func (o *ColumnOf) removable() unit.Ratio {
	if o.Pair.ErrorUnknown {
		return unit.Ratio(math.Inf(1))
	}
	e, u := float64(o.Pair.Error), float64(o.d.NotRemovable)
	return unit.Ratio(math.Sqrt(max(0, e*e-u*u)))
}

// missing says why columns have no set, and which gauges strings want where a set
// was chosen from the stock.
func (c *Comparison) missing() []string {
	var out lines
	for _, one := range c.Columns {
		out.sayIf(one.Strung == nil, "%s: no set of the stock keeps the limits on strings: %s.", one.Name, one.NoSet)
		for _, l := range one.Lacking {
			out.say("%s: %s.", one.Name, one.in.wants(l))
		}
	}
	for _, l := range c.Lacking {
		out.say("For all columns: %s.", c.in.wants(l))
	}
	return out
}

// property is a line of the side by side: what it is, and its text in a column, ""
// where there is none.
type property struct {
	name string
	of   func(*ColumnOf) string
}

// sideBySide has a row for each property and a column for each column.
func (c *Comparison) sideBySide() *table.Table {
	u := c.in.Units
	perTuning := func(o *ColumnOf, text func(i int) string) string {
		var words []string
		for i := range o.Tunings {
			words = append(words, text(i))
		}
		return listed(words)
	}
	rows := []property{
		{"tuning", func(o *ColumnOf) string { return perTuning(o, o.in.caseWords) }},
		{"pair", func(o *ColumnOf) string { return o.in.Pair(o.Pair.Bass, o.Pair.Treble) }},
		{"set", func(o *ColumnOf) string { return o.in.Set(o.d.Gauges) }},
		{"total tension " + u.Force.Symbol(), func(o *ColumnOf) string {
			return perTuning(o, func(i int) string { return u.Newtons(o.Tunings[i].Total) })
		}},
		{"change from the first %", func(o *ColumnOf) string {
			if o.Change == nil {
				return ""
			}
			return table.WithSign(unit.Fixed(o.Change.Percent(), 1))
		}},
		{"feel error", (*ColumnOf).errorText},
		{"worst string", func(o *ColumnOf) string { return o.worstWords() }},
		{"inharmonicity cents", func(o *ColumnOf) string {
			if o.Pair.Inharmonicity == 0 { // not known
				return ""
			}
			return unit.Fixed(o.Pair.Inharmonicity.Value(), 1)
		}},
		{"slant of nut / last fret / saddle °", func(o *ColumnOf) string {
			return table.Deg(o.Pair.NutSlant) + " / " + table.Deg(o.Pair.LastFretSlant) + " / " + table.Deg(o.Pair.SaddleSlant)
		}},
		{"nut to fret 1 " + u.Length.Symbol(), func(o *ColumnOf) string { return u.Len(o.Pair.NutToFret1, scaleDecimals) }},
		{"bend that stands out", func(o *ColumnOf) string { return o.bendLine() }},
		{"blanks that fit", func(o *ColumnOf) string {
			if len(o.Pair.Blanks) == 0 {
				return ""
			}
			return o.in.fittingWords(o.Fitting)
		}},
	}
	rows = slices.DeleteFunc(rows, func(p property) bool {
		return !slices.ContainsFunc(c.strung, func(o *ColumnOf) bool { return p.of(o) != "" })
	})
	columns := []table.Column[property]{table.Words("column", "", func(p property) string { return p.name })}
	for _, one := range c.strung {
		columns = append(columns, table.Words(one.Name, "", func(p property) string { return cmp.Or(p.of(one), none) }))
	}
	return table.Of("columns", "", rows, columns...)
}

// stringByString sets the strings of all columns beside one another.
func (c *Comparison) stringByString() *table.Table {
	var rows []stringRow
	for i := range c.strung[0].d.Strings {
		for _, one := range c.strung {
			for k := range one.Tunings {
				r := one.in.stringRows(one.d, k)[i]
				if r.column = one.Name; len(one.Tunings) > 1 {
					r.column += ", " + one.Tunings[k].Name
				}
				rows = append(rows, r)
			}
		}
	}
	columns := slices.Insert(c.in.stringColumns(compared), 1, table.Words("column", "", func(r stringRow) string { return r.column }).When(len(rows) > len(c.strung[0].d.Strings)))
	return table.Of("strings", "String by string", rows, columns...).Note(c.strung[0].in.stringNotes(c.strung[0].d, 0, compared)...)
}

// swapTable lists the single swaps that bring a set nearer, best first.
func (in *Input) swapTable(swaps []choice.Swap) *table.Table {
	u := in.Units
	gauge := func(heading, key string, of func(choice.Swap) int) table.Column[choice.Swap] {
		return table.Words(heading, key, func(s choice.Swap) string { return in.Plan.Stock()[of(s)].Label }).As(func(s choice.Swap) string { return in.gauge(of(s)) })
	}
	return table.Of("swaps", "", swaps,
		table.Whole("string", "string", func(s choice.Swap) int { return s.String }),
		gauge("from", "from_gauge", func(s choice.Swap) int { return s.From }),
		gauge("to", "to_gauge", func(s choice.Swap) int { return s.To }),
		table.Force(u, "tension then", "tension_then", func(s choice.Swap) unit.Force { return s.Detail.Strings[s.String-1].Tunings[0].Tension.Value }),
		table.Percent("deviation then", "tension_deviation_then", 1, func(s choice.Swap) unit.Ratio { return s.Detail.Strings[s.String-1].Deviation }).Signed(),
		table.Bool("mends a limit", "mends_a_limit", func(s choice.Swap) bool { return s.Mends }).When(slices.ContainsFunc(swaps, func(s choice.Swap) bool { return s.Mends })),
		table.Percent("feel error then", "feel_error_then", 1, func(s choice.Swap) unit.Ratio { return s.Detail.Error }),
	)
}
