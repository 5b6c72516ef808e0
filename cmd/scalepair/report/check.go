package report

import (
	"fmt"
	"math"
	"slices"

	"scalepair/cmd/scalepair/document"
	"scalepair/cmd/scalepair/table"
	"scalepair/data/unit"
	"scalepair/fan"
	"scalepair/fan/mark"
)

// Check is the judgement of measured marks.
type Check struct {
	Head
	Bass   unit.Length `json:"bass_mm"`
	Treble unit.Length `json:"treble_mm"`
	fan.Neutral
	mark.Report
	Slips              []Slip      `json:"slips"` // with words; they stand for Report's
	Tolerance          unit.Length `json:"tolerance_mm,omitempty"`
	ToleranceCents     unit.Cents  `json:"tolerance_cents,omitempty"`
	NutOffsetTolerance unit.Length `json:"nut_offset_tolerance_mm"`
	Measured           int         `json:"marks_measured"`
	RulerResolution    unit.Length `json:"ruler_resolution_mm"`
	CaliperResolution  unit.Length `json:"caliper_resolution_mm"`
	// A single mark that is off by more than the second would have shown in 95 % of
	// cases, by more than the first where the readings are best; at the Blind ones
	// that were measured no error could have.
	ShowsBest  unit.Length `json:"slip_that_would_show_at_best_mm,omitempty"`
	ShowsWorst unit.Length `json:"slip_that_would_show_mm,omitempty"`
	Blind      int         `json:"marks_that_could_not_show_one"`
	// Settled of the marks that are not sure would be so by one more reading by
	// the calipers.
	Settled int `json:"marks_that_calipers_would_settle"`
	// Says and Advice are the judgement in sentences, as the document prints them.
	Says   []string `json:"says"`
	Advice []string `json:"advice"`

	in *Input
	l  *fan.Layout
}

// leastU is the least uncertainty that is printed: nothing is known for sure.
const leastU = 0.01 * unit.Millimetre

// Slip is a likely slip in words.
type Slip struct {
	Finding
	Matters bool      `json:"matters"`
	Or      []Finding `json:"or"` // what explains the readings nearly as well
}

// Finding is one explanation in words, with what to do.
type Finding struct {
	mark.Finding
	Words string `json:"words"`
	Do    string `json:"do"`
	Place string `json:"place,omitempty"`
}

// NewCheck works up a judgement.
func NewCheck(in *Input, l *fan.Layout, found mark.Report, o mark.Options) *Check {
	o = o.WithDefaults()
	r := &Check{Head: in.head(), Bass: l.Spec.Bass, Treble: l.Spec.Treble, Neutral: l.Spec.Neutral, Report: found, Slips: []Slip{}, Tolerance: o.Tolerance, ToleranceCents: o.ToleranceCents,
		NutOffsetTolerance: o.NutOffsetTolerance, Measured: 2*(len(l.Frets)-1) - found.Unmeasured,
		RulerResolution: o.RulerResolution, CaliperResolution: o.CaliperResolution, in: in, l: l}
	for _, s := range found.Slips {
		slip := Slip{Finding: findingOf(s.Finding), Matters: s.Matters, Or: []Finding{}}
		for _, f := range s.Others {
			slip.Or = append(slip.Or, findingOf(f))
		}
		r.Slips = append(r.Slips, slip)
	}
	for _, line := range r.Lines {
		r.sumUp(line)
	}
	says := lines{r.verdict()}
	says.sayIf(r.Unsure > 0, "Not sure: %s. %s", plural(r.Unsure, "mark"), r.settles())
	says.sayIf(r.Unmeasured > 0, "Not measured, and not judged: %s.", plural(r.Unmeasured, "mark"))
	r.Says, r.Advice = says, r.advice()
	return r
}

// Document prints the verdict first, then what to do, then every mark.
func (r *Check) Document() *document.Document {
	doc := &document.Document{Title: r.in.title("Marks checked for")}
	for _, text := range r.Says {
		doc.Para("%s", text)
	}
	doc.Heading("What the passes say together")
	doc.List(r.Advice...)
	for _, line := range r.Lines {
		r.line(doc, line)
	}
	if r.Across == nil {
		doc.Para("Neither diagonals nor nut offset were measured. A slip in the treble nut shows on neither line alone: measure both diagonals.")
	} else {
		doc.Table(r.across())
	}
	tool := func(l unit.Length, name string) string {
		where := fmt.Sprintf("assumed; state yours as %s_resolution under [measuring] or [marking]", name)
		if _, from := r.in.Run.ResolutionOf(name); from != "" {
			where = fmt.Sprintf("%s_resolution under %s", name, from)
		}
		return fmt.Sprintf("%s (%s)", resolutionText(r.in.Units, l), where)
	}
	doc.Para("Judged by the pair %s, neutral %s, %d frets. Resolution of the tools, where a row states none: ruler %s, calipers %s.",
		r.in.Pair(r.l.Spec.Bass, r.l.Spec.Treble), neutralWords(r.l.Spec.Neutral), r.l.Spec.Frets, tool(r.RulerResolution, "ruler"), tool(r.CaliperResolution, "caliper"))
	if r.Pass {
		doc.Para("Saw in the same session and the same air: wood and marks move with the weather.")
	}
	return doc
}

// line prints the marks of one line.
func (r *Check) line(doc *document.Document, l mark.LineResult) {
	name, u := l.Line.String(), r.in.Units.Decimal()
	if !slices.ContainsFunc(l.Marks, func(m mark.Result) bool { return m.Readings > 0 }) {
		doc.Para("%s line: nothing was measured.", capital(name))
		return
	}
	known := func(m mark.Result) bool { return m.Error != nil }
	t := table.Of(name+"-marks", capital(name)+" line", l.Marks,
		table.Whole("fret", "fret", func(m mark.Result) int { return m.Fret }),
		table.Length(u, "nominal", "nominal", markDecimals, func(m mark.Result) unit.Length { return m.Nominal }),
		table.Length(u, "measured", "measured", markDecimals, func(m mark.Result) unit.Length { return *m.Measured }).Known(known),
		table.Length(u, "±", "standard_uncertainty", markDecimals, func(m mark.Result) unit.Length { return max(*m.U, leastU) }).Known(known),
		table.Length(u, "error", "error", markDecimals, func(m mark.Result) unit.Length { return *m.Error }).Signed().Known(known),
		table.Cents("error", "error", 1, func(m mark.Result) unit.Cents { return *m.ErrorCents }).Signed().Known(known),
		table.Words("verdict", "verdict", verdictWords))
	var notes lines
	notes.sayIf(l.Line == mark.Bass, "Measured: both passes together, from the nut, ± one standard uncertainty. An error is positive where the mark stands too near the bridge, and its note is then sharp. 'Not sure': nearer to the tolerance than twice the uncertainty. 'In doubt': a slip named above may concern this mark.")
	undecided := slices.ContainsFunc(l.Marks, func(m mark.Result) bool { return m.Verdict == mark.Undecided })
	notes.sayIf(undecided, "Undecided: no reading joins the mark to the nut. Measure the first of them from the nut.")
	notes.sayIf(len(l.LeftOut) > 0, "Left out as wrong: %s.", listed(l.LeftOut))
	notes.sayIf(l.Scatter > 0, "By these readings hand and marks scatter by about %s.", r.text(max(l.Scatter, leastU)))
	doc.Table(t.Note(notes...))
}

// verdictWords say how sure a verdict is.
func verdictWords(m mark.Result) string {
	switch {
	case m.Disputed:
		return string(m.Verdict) + ", in doubt"
	case m.Error != nil && !m.Sure:
		return string(m.Verdict) + ", not sure"
	}
	return string(m.Verdict)
}

// across says how the two lines stand to one another.
func (r *Check) across() *table.Table {
	type row struct {
		what, verdict string
		mark.Diagonal
	}
	a, u := r.Across, r.in.Units.Decimal()
	var rows []row
	for _, d := range a.Diagonals {
		rows = append(rows, row{mark.DiagonalName(d.Kind, d.Fret), none, d})
	}
	if a.Verdict != mark.NotMeasured {
		rows = append(rows, row{"nut offset, by all of these", verdictWords(mark.Result{Verdict: a.Verdict, Sure: a.Sure, Error: &a.Error}),
			mark.Diagonal{Nominal: a.Nominal, Measured: a.Measured, Expected: a.Nominal, U: a.U}})
	}
	of := func(heading string, f func(row) unit.Length) table.Column[row] {
		return table.Length(u, heading, "", markDecimals, f)
	}
	return table.Of("across", "Between the lines", rows,
		table.Words("what", "", func(r row) string { return r.what }),
		of("nominal", func(r row) unit.Length { return r.Nominal }),
		of("measured", func(r row) unit.Length { return r.Measured }),
		of("expected", func(r row) unit.Length { return r.Expected }),
		of("±", func(r row) unit.Length { return max(r.U, leastU) }),
		of("error", func(r row) unit.Length { return r.Measured - r.Expected }).Signed(),
		table.Words("verdict", "", func(r row) string { return r.verdict }),
	).Note(fmt.Sprintf("Expected: with the marks where they were measured. Nut offset: along the treble line, from the square through the bass nut mark; its tolerance is %s.", r.text(r.NutOffsetTolerance)))
}

// resolutionText names a resolution as short as it goes: "0.5 mm", "1/32 in",
// "0.0005 in".
func resolutionText(u table.Units, l unit.Length) string {
	if u.Length == unit.Millimetres {
		return trim(toDecimals(l.MM(), 4)) + " mm"
	}
	if parts := 64 * l.Inches(); parts >= 1-1e-9 && math.Abs(parts-math.Round(parts)) < 1e-9 {
		return unit.InchFractions.Format(l, 0) + " in"
	}
	return trim(toDecimals(l.Inches(), 5)) + " in"
}
