package report

import (
	"cmp"
	"fmt"
	"math"
	"slices"
	"strings"

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
	in      *Input
	same    bool // the suggested set is that of the first column
}

// same reports whether two columns have one set on one pair in one tuning.
func same(a, b choice.Compared) bool {
	return a.Detail != nil && slices.Equal(a.Detail.Gauges, b.Detail.Gauges) && a.Detail.Bass == b.Detail.Bass && a.Detail.Treble == b.Detail.Treble && choice.Alike(a.Detail, b.Detail)
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

	swaps []choice.Swap
}

// NewComparison works up columns as asked for and as worked out, one for one.
// oneSet is the set that was found for all of them, nil where none was asked
// for.
func NewComparison(in *Input, asked []build.Column, found []choice.Compared, oneSet []int) *Comparison {
	var details []*choice.Detail
	for _, one := range found {
		if one.Detail != nil {
			details = append(details, one.Detail)
		}
	}
	out := &Comparison{Head: in.head(details...), OneSet: []string{}, Lacking: []LackOf{}, in: in}
	names := in.columnNames(asked)
	var first unit.Force
	for i, one := range found {
		own := *in
		own.Plan, own.tunings = one.Plan, asked[i].Tunings
		c := &ColumnOf{Name: names[i], Suggested: one.Suggested, swaps: one.Swaps}
		out.Columns = append(out.Columns, c)
		if one.Detail == nil {
			c.NoSet = own.missWords(one.None, true)
			continue
		}
		if i == 1 && len(found) == 2 && one.Suggested && same(found[0], one) {
			out.Columns, out.same = out.Columns[:1], true
			out.Columns[0].Lacking = own.lacking(one.Detail)
			break
		}
		strung := own.strung(one.Detail, compared)
		c.Strung = &strung
		c.Fitting = own.fitting(one.Detail.Pair)
		if c.Lacking = []LackOf{}; one.Suggested {
			c.Lacking = own.lacking(one.Detail)
		}
		c.Swaps = own.swapTable(one.Swaps, one.Detail)
		if total := strung.Tunings[0].Total; first == 0 {
			first = total
		} else if total > 0 {
			change := unit.Ratio(total/first - 1)
			c.Change = &change
		}
	}
	if oneSet != nil {
		out.OneSet, out.Lacking = in.labels(oneSet), out.lackingTogether()
	}
	out.Verdict = out.verdict()
	return out
}

// Document prints the verdict first, then the columns side by side.
func (c *Comparison) Document() *document.Document {
	doc := &document.Document{Title: c.in.title("Comparison for")}
	if len(c.OneSet) > 0 {
		doc.Para("One set for all columns, low string first: %s; %s.", c.in.Set(c.strung()[0].d.Gauges), c.farthest())
	}
	doc.Para("%s", c.Verdict)
	doc.List(c.missing()...)
	doc.Table(c.sideBySide())
	doc.Table(c.stringByString())
	var broken []string
	for _, one := range c.strung() {
		for _, line := range one.LimitsBroken {
			broken = append(broken, one.Name+": "+line)
		}
		if t := one.Swaps; t.Len() > 0 && len(c.OneSet) == 0 { // a swap would part the sets
			t.Title = "Swaps in " + one.Name + " that bring it nearer, one at a time"
			doc.Table(t)
		}
	}
	addLimitsBroken(doc, broken)
	doc.Cautions(append(c.cautions(), stringCautions...)...)
	return doc
}

// cautions are those of the columns' own numbers, each once with the columns
// that it holds for.
func (c *Comparison) cautions() []string {
	var texts []string
	of := map[string][]string{}
	for _, one := range c.strung() {
		for _, text := range one.in.detailCautions(one.d) {
			if of[text] == nil {
				texts = append(texts, text)
			}
			of[text] = append(of[text], one.Name)
		}
	}
	for i, text := range texts {
		texts[i] = text + " (" + capital(listed(of[text])) + ".)"
	}
	return texts
}

// farthest names the string that is farthest from the wanted tension in any
// column, with how far it is in each.
func (c *Comparison) farthest() string {
	number, most := 0, unit.Ratio(0)
	for _, one := range c.strung() {
		for _, s := range slices.Backward(one.d.Strings) {
			if off := max(s.Deviation, -s.Deviation); off > most {
				number, most = s.Number, off
			}
		}
	}
	if number == 0 {
		return "no tension is wanted"
	}
	var words []string
	for _, one := range c.strung() {
		words = append(words, table.SignedPercentText(one.d.Strings[number-1].Deviation, 1)+" in "+one.Name)
	}
	return fmt.Sprintf("farthest from the wanted tension is string %d, %s", number, listed(words))
}

// strung gives the columns that have a set.
func (c *Comparison) strung() []*ColumnOf {
	return slices.DeleteFunc(slices.Clone(c.Columns), func(one *ColumnOf) bool { return one.Strung == nil })
}

// verdict says in a line what the comparison comes to.
func (c *Comparison) verdict() string {
	list := c.strung()
	switch len(list) {
	case 0:
		return "No column has a set that keeps the limits on strings."
	case 1:
		if c.same {
			return fmt.Sprintf("%s is the one that the stock suggests: feel error %s.", capital(list[0].Name), list[0].errorWords())
		}
		return fmt.Sprintf("One column, %s: feel error %s.", list[0].Name, list[0].errorWords())
	}
	best := slices.MinFunc(list, func(a, b *ColumnOf) int { return cmp.Compare(a.removable(), b.removable()) })
	n := c.in.Plan.Request().Feel.Noticeable
	var alike, good, worse []string
	if best.Pair.ErrorUnknown {
		return "No feel error is known: in every column a bend cannot be made or computed."
	}
	for _, one := range list {
		named := fmt.Sprintf("%s (%s)", one.Name, one.errorText())
		switch {
		case one == best:
		case choice.Alike(best.d, one.d):
			alike = append(alike, one.Name)
		case one.removable() <= max(best.removable(), n)+n:
			good = append(good, named)
		default:
			worse = append(worse, named)
		}
	}
	text := fmt.Sprintf("%s comes nearest to the wanted feel, with an error of %s", capital(best.Name), best.errorText())
	if alike != nil {
		text += "; alike, no string differing by 2 %: " + listed(alike)
	}
	if good != nil {
		text += "; as good: " + listed(good)
	}
	if worse != nil {
		text += "; further off: " + listed(worse)
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
	var out []string
	for _, one := range c.Columns {
		if one.Strung == nil {
			out = append(out, fmt.Sprintf("%s: no set of the stock keeps the limits on strings: %s.", one.Name, one.NoSet))
		}
		for _, l := range one.Lacking {
			out = append(out, fmt.Sprintf("%s: %s.", one.Name, one.in.wants(l)))
		}
	}
	for _, l := range c.Lacking {
		out = append(out, capital(c.in.wants(l))+".")
	}
	return out
}

// property is a line of the side by side: what it is, and its text in a column.
type property struct {
	name string
	of   func(*ColumnOf) string
}

// sideBySide has a row for each property and a column for each column.
func (c *Comparison) sideBySide() *table.Table {
	list := c.strung()
	if len(list) == 0 {
		return nil
	}
	u := c.in.Units
	rows := []property{
		{"tuning", func(o *ColumnOf) string {
			words := make([]string, len(o.Tunings))
			for i := range o.Tunings {
				words[i] = o.in.caseWords(i)
			}
			return listed(words)
		}},
		{"pair " + u.Length.Symbol(), func(o *ColumnOf) string {
			return u.Len(o.Pair.Bass, scaleDecimals) + " / " + u.Len(o.Pair.Treble, scaleDecimals)
		}},
		{"set", func(o *ColumnOf) string {
			if o.Suggested {
				return o.in.Set(o.d.Gauges) + " (suggested)"
			}
			return o.in.Set(o.d.Gauges)
		}},
		{"total tension " + u.Force.Symbol(), func(o *ColumnOf) string { return perTuning(o, func(t Tuned) string { return u.Newtons(t.Total) }) }},
		{"change from the first %", func(o *ColumnOf) string {
			if o.Change == nil {
				return none
			}
			return table.WithSign(unit.Fixed(o.Change.Percent(), 1))
		}},
		{"feel error", (*ColumnOf).errorText},
		{"worst string", func(o *ColumnOf) string { return orNone(o.worstWords()) }},
		{"inharmonicity cents", func(o *ColumnOf) string {
			if o.Pair.Inharmonicity == 0 {
				return none
			}
			return unit.Fixed(o.Pair.Inharmonicity.Value(), 1)
		}},
		{"slant of nut / last fret / saddle °", func(o *ColumnOf) string {
			return table.Deg(o.Pair.NutSlant) + " / " + table.Deg(o.Pair.LastFretSlant) + " / " + table.Deg(o.Pair.SaddleSlant)
		}},
		{"nut to fret 1 " + u.Length.Symbol(), func(o *ColumnOf) string { return u.Len(o.Pair.NutToFret1, scaleDecimals) }},
		{"limits broken", func(o *ColumnOf) string {
			return orNone(map[bool]string{true: fmt.Sprint(len(o.LimitsBroken))}[len(o.LimitsBroken) > 0])
		}},
	}
	for _, one := range list {
		if what, _ := one.hardestBend(); what != "" {
			rows = append(rows, property{strings.ToLower(what), func(o *ColumnOf) string {
				_, words := o.hardestBend()
				return orNone(words)
			}})
			break
		}
	}
	if len(c.in.Plan.Request().Blanks) > 0 {
		rows = append(rows, property{"blanks that fit", func(o *ColumnOf) string {
			return o.in.fittingWords(o.Fitting)
		}})
	}
	columns := []table.Column[property]{table.Words("column", "", func(p property) string { return p.name })}
	for _, one := range list {
		columns = append(columns, table.Words(one.Name, "", func(p property) string { return p.of(one) }))
	}
	return table.Of("columns", "", rows, columns...)
}

func orNone(text string) string {
	if text == "" {
		return none
	}
	return text
}

func perTuning(o *ColumnOf, f func(Tuned) string) string {
	words := make([]string, len(o.Tunings))
	for i, t := range o.Tunings {
		words[i] = f(t)
	}
	return listed(words)
}

// stringByString sets the strings of all columns beside one another.
func (c *Comparison) stringByString() *table.Table {
	var rows []stringRow
	list := c.strung()
	if len(list) == 0 {
		return nil
	}
	for i := range list[0].d.Strings {
		for _, one := range list {
			for k := range one.Tunings {
				r := one.in.stringRows(one.d, k)[i]
				if r.column = one.Name; len(one.Tunings) > 1 {
					r.column += ", " + one.Tunings[k].Name
				}
				rows = append(rows, r)
			}
		}
	}
	columns := c.in.stringColumns(compared)
	columns[0] = table.Words("string", "", func(r stringRow) string { return fmt.Sprintf("%d: %s", r.string().Number, r.column) })
	return table.Of("strings", "String by string", rows, columns...).Note(list[0].in.stringNotes(list[0].d, 0, compared)...)
}

// swapTable lists the single swaps that bring a set nearer, best first.
func (in *Input) swapTable(swaps []choice.Swap, d *choice.Detail) *table.Table {
	u := in.Units
	label := func(g int) string { return in.Plan.Stock()[g].Label }
	return table.Of("swaps", "", swaps,
		table.Whole("string", "string", func(s choice.Swap) int { return s.String }),
		table.Words("from", "from_gauge", func(s choice.Swap) string { return label(s.From) }).As(func(s choice.Swap) string { return in.gauge(s.From) }),
		table.Words("to", "to_gauge", func(s choice.Swap) string { return label(s.To) }).As(func(s choice.Swap) string { return in.gauge(s.To) }),
		table.Force(u, "tension then", "tension_then", func(s choice.Swap) unit.Force { return s.Detail.Strings[s.String-1].Tunings[0].Tension.Value }),
		table.Percent("deviation then", "tension_deviation_then", 1, func(s choice.Swap) unit.Ratio { return s.Detail.Strings[s.String-1].Deviation }).Signed(),
		table.Bool("mends a limit", "mends_a_limit", func(s choice.Swap) bool { return s.Mends }).When(slices.ContainsFunc(swaps, func(s choice.Swap) bool { return s.Mends })),
		table.Percent("feel error then", "feel_error_then", 1, func(s choice.Swap) unit.Ratio { return s.Detail.Error }),
	)
}
