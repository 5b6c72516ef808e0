package report

import (
	"fmt"
	"math"
	"strings"

	"scalepair/cmd/scalepair/show"
	"scalepair/data/unit"
	"scalepair/gauges"
	"scalepair/gauges/fit"
	"scalepair/gauges/reading"
)

// GaugesShown prints some gauges of the stock, each with every reading that
// went in, and what they rest on.
func GaugesShown(in *Input, list []gauges.Gauge) *show.Report {
	r := &show.Report{Title: in.title("Gauges of")}
	var last *show.Table
	hung := in.hungOf(list)
	for _, g := range list {
		r.Heading("%s", marked(g))
		in.suspectsOf(r, g)
		r.Bullets(in.gaugeWords(g)...)
		if len(g.Rows) > 0 {
			last = in.rows(r, g, len(hung) > 0)
		}
	}
	if last != nil {
		last.Note("Line: of %s. Off the gauge: against the linear density of all its readings together.", in.Job.Build.Readings)
	}
	if len(hung) > 0 {
		last.Note("Hung: length from clamp to clamp, mass of all that hung.")
	}
	in.hungTests(r, hung)
	return r
}

// gaugeWords says in points what is known of one gauge.
func (in *Input) gaugeWords(g gauges.Gauge) []string {
	symbol := in.diameterUnit().Symbol()
	items := []string{
		fmt.Sprintf("%s, outer %s %s; %s.", capital(g.Family), show.WithU(in.diameterUnit().Value(unit.Length(g.Outer)),
			in.diameterUnit().Value(unit.Length(g.UOuter)), in.diameterDecimals()), symbol, in.coreWords(g)),
		fmt.Sprintf("Linear density %s %s (%s), from %s.", in.weight(float64(g.LinearDensity), float64(g.U)), in.weightUnit(), show.PercentText(float64(g.RelU()), 1), restsOn(g)),
		in.within95Words(g),
		in.sharedWords(g),
	}
	if g.Packing > 0 {
		items = append(items, fmt.Sprintf("The wraps fill %s of their rings with metal.", show.PercentText(float64(g.Packing), 0)))
	}
	items = append(items, fmt.Sprintf("Density %s g/cm3, of the %s.", density(g.ImpliedKgM3), densityOf(g)))
	if g.EA > 0 {
		items = append(items, fmt.Sprintf("Stiffness EA %s %s.", in.stiffness(float64(g.EA)), in.Units.Force.Symbol()))
	}
	items = append(items, in.breakingWords(g), in.fitOfGauge(g))
	if words := in.unseenWords(g); words != "" {
		items = append(items, words)
	}
	items = append(items, fmt.Sprintf("For a standard uncertainty of 1 %% in one weighing: %s %s of string, in one piece or several together.",
		in.lengthWithin(g, onePercent), in.pieceUnit()))
	for _, n := range others(g.Notes) {
		items = append(items, capital(in.inUnits(n))+".")
	}
	return items
}

// within95Words says how far off the linear density may be.
func (in *Input) within95Words(g gauges.Gauge) string {
	return fmt.Sprintf("In 95 %% of cases the true one lies within %s %s (%s) of that: %s standard uncertainties, of which ± is one.",
		in.weight(float64(g.Within95()), 0), in.weightUnit(), show.PercentText(float64(g.Within95()/g.LinearDensity), 1), show.Fixed(g.Coverage95(), 2))
}

// restsOn says in a sentence what the linear density rests on.
func restsOn(g gauges.Gauge) string {
	weighed, hung := countRows(g)
	var words []string
	if weighed > 0 {
		words = append(words, plural(weighed, "weighing"))
	}
	if hung > 0 {
		words = append(words, plural(hung, "hung test"))
	}
	if g.Built {
		words = append(words, "core and wraps")
	}
	if words == nil {
		return "the fit of its kind"
	}
	return listed(words)
}

func (in *Input) diameterDecimals() int {
	if in.diameterUnit() == unit.Millimetres {
		return 3
	}
	return 4
}

// leastShown is the least part of an uncertainty that two decimals of a per
// cent show.
const leastShown = 0.00005

// sharedWords parts the uncertainty into the gauge's own and what it shares
// with others.
func (in *Input) sharedWords(g gauges.Gauge) string {
	words := []string{show.PercentText(float64(g.Indep/g.LinearDensity), 2) + " of its own"}
	for _, c := range g.Common {
		if math.Abs(c.U) < leastShown*float64(g.LinearDensity) {
			continue
		}
		words = append(words, show.PercentText(math.Abs(c.U)/float64(g.LinearDensity), 2)+" from "+in.sourceWords(c.Source))
	}
	if len(words) == 1 {
		return "Uncertainty: " + words[0] + "."
	}
	return "Uncertainty, the parts squared and added: " + listed(words) + "."
}

// sourceWords puts the name of a shared error in the words of a sentence.
func (in *Input) sourceWords(source string) string {
	label, isCore := strings.CutPrefix(source, "core of ")
	switch {
	case source == "gravity":
		return source
	case isCore && in.Job.Stock.Gauges[in.stockIndex(label)].Family == gauges.Plain:
		return "the diameter of " + label
	case isCore:
		return "the diameter of the core of " + label
	}
	return "the " + source
}

func (in *Input) fitOfGauge(g gauges.Gauge) string {
	switch {
	case g.Judged != nil:
		return fmt.Sprintf("Against the fit of its kind made without it (%s %s): %s %%; up to %s would pass, so that a stock without a slip raises an alarm in %s of 100 cases.",
			in.weight(float64(g.Judged.Fit), 0), in.weightUnit(), offFit(g), show.PercentText(float64(g.Judged.Limit), 1), trim(100*fit.FalseAlarm))
	case g.Estimated:
		return "Never weighed: estimated from the fit of its kind. Buy one, weigh it, and run again before you buy a set."
	case g.Readings == 0:
		return "Never weighed: reckoned from core and wraps."
	}
	return "Nothing of its kind to compare it with, so a slip in it would not show."
}

// unseenWords lists the slips that would have passed.
func (in *Input) unseenWords(g gauges.Gauge) string {
	for _, b := range in.Job.Stock.Blind() {
		if b.Gauge == g.Label && len(b.Slips) > 0 {
			return "A slip that could not have shown: " + strings.Join(b.Slips, "; ") + "."
		}
	}
	return ""
}

// suspectsOf repeats the suspects of one gauge.
func (in *Input) suspectsOf(r *show.Report, g gauges.Gauge) {
	var items []string
	for _, s := range in.Job.Stock.Suspects() {
		if s.Gauge == g.Label {
			items = append(items, "Look again: "+in.suspectWords(s))
		}
	}
	r.Cautions(items...)
}

// rows prints every reading of a gauge. hung makes room for a pitch.
func (in *Input) rows(r *show.Report, g gauges.Gauge, hung bool) *show.Table {
	columns := []show.Column{show.Figures("line"), show.Words("kind"), show.Figures("pieces"), show.Figures(in.Units.HeadLen("length")), show.Figures("mass g")}
	if hung {
		columns = append(columns, show.Figures("pitch Hz"))
	}
	t := r.Table("readings", "Readings of "+g.Label, append(columns, show.Figures("linear density "+in.weightUnit()), show.Figures("off the gauge %"),
		show.Words("mostly uncertain through").Later(1), show.Words("date").Later(2), show.Words("remark").Later(3))...)
	for _, row := range g.Rows {
		t.Row(in.row(g, row, hung)...)
	}
	return t
}

func (in *Input) row(g gauges.Gauge, row reading.Reading, hung bool) []string {
	w := in.weigh(row, g)
	length, pieces := in.lengthCell(row.Length.M(), row.Written.Length), fmt.Sprint(max(row.Pieces, 1))
	mass := in.massCell(row, row.Mass.Kg(), row.Written.Mass)
	if row.Kind == reading.Hung {
		length, pieces = in.lengthCell(row.Speaking.M(), row.Written.Speaking), none
		mass = in.massCell(row, row.HungMass.Kg(), row.Written.HungMass)
	}
	cells := []string{fmt.Sprint(row.Place.Line), row.Kind.String(), pieces, length, mass}
	if hung && row.Kind == reading.Hung {
		cells = append(cells, show.Fixed(row.Pitch.Hz(), 2))
	} else if hung {
		cells = append(cells, none)
	}
	return append(cells, in.weight(w.linearDensity, w.u), show.SignedPercent(w.linearDensity/float64(g.LinearDensity)-1, 1), w.mostly, row.Date, row.Remark)
}

// lengthCell prints a length to a tenth of a millimetre. On a page in inches
// one that was read in inches stays as it was read, fractions and all.
func (in *Input) lengthCell(m float64, as unit.Written) string {
	form := as
	if form.Unit == "in" && in.Units.Length != unit.Millimetres {
		return form.Number(form.Value(m))
	}
	return in.Units.LenM(m, 1)
}

// massCell prints a mass in grams as the balance showed it: to the step of its
// display, and finer where it was written finer. One that was given in another
// unit keeps it.
func (in *Input) massCell(row reading.Reading, kg float64, as unit.Written) string {
	if form := as; form.Known() && !metric(form.Unit) {
		return form.Text(kg, 0)
	}
	t, step := in.Job.Tools(), row.MassResolution
	switch {
	case row.Kind == reading.Hung && row.HungResolution > 0:
		step = row.HungResolution
	case row.Kind == reading.Hung:
		step = t.HungResolution
	case step == 0:
		step = t.BalanceResolution
	}
	return show.Fixed(unit.Mass(kg).G(), max(decimalsOf(step.Kg()), decimalsOf(kg)))
}

// metric tells whether grams show a mass in that unit without noughts and odd digits.
func metric(name string) bool { return name == "g" || name == "mg" || name == "kg" }

// decimalsOf is how many decimals of a gram show a mass in full, five at most.
func decimalsOf(kg float64) int {
	for n := range 5 {
		if x := unit.Mass(kg).G() * math.Pow10(n); math.Abs(x-math.Round(x)) < 1e-6 {
			return n
		}
	}
	return 5
}
