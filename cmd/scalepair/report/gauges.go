package report

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"scalepair/cmd/scalepair/document"
	"scalepair/cmd/scalepair/table"
	"scalepair/data/unit"
	"scalepair/gauges"
	"scalepair/gauges/fit"
	"scalepair/gauges/reading"
	"scalepair/tension/choice"
)

// Craft is how a weighing is done well, for the help and in short for the
// report.
const Craft = `Weigh cut-offs, or a retired set: the speaking part only, without ball, twist,
silk, kink or bare core. Crimp a wound string before the cut, or its wrap
slips. Weigh long pieces, or several of one length together: what the balance
cannot see of one cut-off counts for little on ten. Lay the piece straight
along the ruler and read both ends.`

// Gauges is what the readings say of the gauges in stock, or of some of them.
type Gauges struct {
	Head
	Readings  string        `json:"readings_file"`
	Gauges    *table.Table  `json:"gauges"`
	Fits      []fit.Fit     `json:"fits"`
	Suspects  []fit.Suspect `json:"suspects"`
	Hung      *table.Table  `json:"hung_tests"`
	Measuring Measuring     `json:"measuring"`
	Cautions  []string      `json:"cautions"`

	in    *Input
	list  []gauges.Gauge
	named bool // the builder asked for these by name
}

// Measuring is the measuring tools as they were counted. Assumed lists the keys
// of [measuring] that the build file leaves open.
type Measuring struct {
	gauges.Instruments
	Gravity  unit.Number `json:"gravity_m_s2"`
	UGravity unit.Number `json:"gravity_standard_uncertainty_m_s2"`
	Assumed  []string    `json:"assumed"`
}

// NewGauges works up the gauges of those labels, or all of them without any. The
// error is a fault.List of the labels that are not in stock.
func NewGauges(in *Input, labels []string) (*Gauges, error) {
	stock := in.Run.Stock
	out := &Gauges{Head: in.head(), Readings: in.Run.Build.Readings, Fits: append([]fit.Fit{}, stock.Fits...), Suspects: []fit.Suspect{}, Cautions: []string{},
		Measuring: in.measuring(), in: in, list: stock.Gauges, named: len(labels) > 0}
	if out.named {
		var err error
		if out.list, err = stock.Named(labels); err != nil {
			return nil, err
		}
	}
	for _, s := range stock.Suspects() {
		if slices.ContainsFunc(out.list, func(g gauges.Gauge) bool { return g.Label == s.Gauge }) {
			out.Suspects = append(out.Suspects, s)
		}
	}
	out.Gauges = in.gaugeTable(out.list)
	out.Hung = in.hungTable(out.list)
	if out.Hung.Len() > 0 {
		out.Cautions = append(out.Cautions, gauges.HungCaution)
	}
	return out, nil
}

// measuring gives the tools with what is assumed of them.
func (in *Input) measuring() Measuring {
	t := in.Run.Build.Measuring
	g, u := t.GravityUsed()
	out := Measuring{Instruments: t, Gravity: unit.Number(g), UGravity: unit.Number(u), Assumed: []string{}}
	for _, key := range []string{"balance_resolution", "ruler_resolution", "caliper_resolution", "hung_resolution", "pitch_uncertainty_cents", "gravity_m_s2"} {
		if !in.Run.Build.Given("measuring." + key) {
			out.Assumed = append(out.Assumed, key)
		}
	}
	return out
}

// Document prints the suspects first, then the table.
func (g *Gauges) Document() *document.Document {
	in := g.in
	doc := &document.Document{Title: in.title("Gauges of")}
	if g.named {
		for _, one := range g.list {
			in.oneGauge(doc, one, g.Suspects)
		}
		return g.hung(doc)
	}
	doc.Para("%s", g.counted())
	if len(g.Suspects) == 0 {
		doc.Para("No reading deviates from its fit further than chance allows.")
	} else {
		doc.Heading("Look at these again")
		doc.List(suspectWords(g.Suspects)...)
		doc.Para("Nothing was changed: a suspect reading counts for its own gauge as it is, and is kept out of the fit. Weigh the piece again, and correct or delete the row.")
	}
	doc.Figure("Readings against the fits", FitPlot(in).SVG())
	doc.Table(g.Gauges.Note(append(slices.Clone(gaugeNotes), flagNotes(g.list)...)...))
	doc.Table(in.fitTable())
	doc.List(in.noteWords(g.list)...)
	doc.Heading("What could not have shown")
	doc.List(in.blindWords()...)
	g.hung(doc)
	doc.Heading("Balance, ruler and calipers")
	doc.List(g.toolWords()...)
	doc.Heading("Weighing well")
	doc.Para("%s", strings.ReplaceAll(Craft, "\n", " "))
	if len(g.list) > 0 {
		thin := slices.MinFunc(g.list, func(a, b gauges.Gauge) int { return cmp.Compare(a.LinearDensity, b.LinearDensity) })
		doc.Para("A standard uncertainty of 1 %% takes %s of %s, the lightest here, on this balance and ruler; half of it takes twice the length.",
			in.Units.Decimal().LenText(in.forOnePercent(thin), 0), thin.Label)
	}
	return doc
}

// counted says what the stock rests on.
func (g *Gauges) counted() string {
	readings, none := 0, 0
	for _, one := range g.list {
		if readings += one.Readings; one.Readings == 0 {
			none++
		}
	}
	text := fmt.Sprintf("%s in stock, by %s in %s", plural(len(g.list), "gauge"), plural(readings, "reading"), g.Readings)
	if none > 0 {
		text += fmt.Sprintf("; %d of them have none", none)
	}
	return text + "."
}

func suspectWords(list []fit.Suspect) []string {
	var out []string
	for _, s := range list {
		text := fmt.Sprintf("%s (%s) %s. %s.", s.Gauge, s.Place, s.Why, s.WouldFit)
		if len(s.Slips) > 0 {
			text += " Perhaps: " + strings.Join(s.Slips, " Or: ")
		}
		out = append(out, text)
	}
	return out
}

// hung prints the hung tests against the breaking loads, with the caution that
// belongs to them.
func (g *Gauges) hung(doc *document.Document) *document.Document {
	if g.Hung.Len() > 0 {
		doc.Heading("Hung tests")
		doc.Table(g.Hung.Note("Breaking load: least strength of the core's wire times its cross-section; old or kinked strings bear less."))
	}
	doc.Cautions(g.Cautions...)
	return doc
}

// hungTest is one hung weight against the breaking load of its string.
type hungTest struct {
	gauge          string
	line           int
	load, breaking unit.Force // breaking 0: not known
	outside        bool       // strength from beyond its table
}

func (h hungTest) known() bool    { return h.breaking > 0 }
func (h hungTest) overHalf() bool { return h.known() && h.load > h.breaking/2 }

func (h hungTest) verdict() string {
	out := "within half"
	switch {
	case !h.known():
		out = "breaking load not known"
	case h.overHalf():
		out = "MORE THAN HALF: hang less"
	}
	if h.outside {
		out += ", outside the strength table"
	}
	return out
}

func (in *Input) hungTable(list []gauges.Gauge) *table.Table {
	var rows []hungTest
	gravity, _ := in.Run.Build.Measuring.GravityUsed()
	for _, g := range list {
		for _, r := range g.Rows {
			if r.Kind == reading.Hung {
				rows = append(rows, hungTest{g.Label, r.Place.Line, unit.Force(r.HungMass.Kg() * gravity), breakingLoad(g), choice.WireOf(g).OutsideTable})
			}
		}
	}
	u := in.Units
	return table.Of("hung", "", rows,
		table.Words("gauge", "gauge", func(h hungTest) string { return h.gauge }),
		table.Whole("line", "line", func(h hungTest) int { return h.line }),
		table.Force(u, "load hung", "load", func(h hungTest) unit.Force { return h.load }),
		table.Force(u, "breaking load", "least_breaking_load", func(h hungTest) unit.Force { return h.breaking }).NotZero(),
		table.Percent("of it", "of_breaking_load", 0, func(h hungTest) unit.Ratio { return unit.Ratio(h.load / h.breaking) }).Known(hungTest.known),
		table.Bool("verdict", "over_half_the_breaking_load", hungTest.overHalf).As(hungTest.verdict),
	)
}
