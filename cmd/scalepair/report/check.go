package report

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"scalepair/cmd/scalepair/document"
	"scalepair/cmd/scalepair/table"
	"scalepair/data/unit"
	"scalepair/fan"
	"scalepair/fan/mark"
)

// Check is the judgement of measured marks.
type Check struct {
	Head
	mark.Report
	Slips              []Slip      `json:"slips"` // with words; they stand for Report's
	Tolerance          unit.Length `json:"tolerance_mm,omitempty"`
	ToleranceCents     unit.Cents  `json:"tolerance_cents,omitempty"`
	NutOffsetTolerance unit.Length `json:"nut_offset_tolerance_mm"`

	in       *Input
	l        *fan.Layout
	options  mark.Options
	readings []mark.Reading
}

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
func NewCheck(in *Input, l *fan.Layout, found mark.Report, readings []mark.Reading, o mark.Options) *Check {
	o = o.WithDefaults()
	r := &Check{Head: in.head(), Report: found, Slips: []Slip{}, Tolerance: o.Tolerance, ToleranceCents: o.ToleranceCents,
		NutOffsetTolerance: o.NutOffsetTolerance, in: in, l: l, options: o, readings: readings}
	for _, s := range found.Slips {
		slip := Slip{Finding: findingOf(s.Finding), Matters: s.Matters, Or: []Finding{}}
		for _, f := range s.Others {
			slip.Or = append(slip.Or, findingOf(f))
		}
		r.Slips = append(r.Slips, slip)
	}
	return r
}

func findingOf(f mark.Finding) Finding {
	out := Finding{Finding: f, Words: slipWords(f), Do: remedyOf(f)}
	if f.Place.Line > 0 {
		out.Place = f.Place.String()
	}
	return out
}

// Document prints the verdict first, then what to do, then every mark.
func (r *Check) Document() *document.Document {
	doc := &document.Document{Title: r.in.title("Marks checked for")}
	doc.Para("%s", r.verdict())
	if r.Unsure > 0 {
		doc.Para("Not sure: at %s the best position lies nearer to the tolerance than twice its own ±, so finer readings could still turn the verdict. To be certain of such a mark, measure it again.", plural(r.Unsure, "mark"))
	}
	if r.Unmeasured > 0 {
		doc.Para("Not measured, and not judged: %s.", plural(r.Unmeasured, "mark"))
	}
	doc.Heading("What the passes say together")
	doc.List(r.advice()...)
	for _, line := range r.Lines {
		r.line(doc, line)
	}
	if r.Across == nil {
		doc.Para("Neither diagonals nor nut offset were measured. A slip in the treble nut shows on neither line alone: measure both diagonals.")
	} else {
		doc.Table(r.across())
	}
	ruler, calipers := r.in.Run.ResolutionsFrom()
	doc.Para("Judged by the pair %s, neutral %s, %d frets. Resolution of the tools, where a row states none: ruler %s, calipers %s.",
		r.in.Pair(r.l.Spec.Bass, r.l.Spec.Treble), neutralWords(r.l.Spec.Neutral), r.l.Spec.Frets,
		r.tool(r.options.RulerResolution, ruler, "ruler_resolution"), r.tool(r.options.CaliperResolution, calipers, "caliper_resolution"))
	if r.Pass {
		doc.Para("Saw in the same session and the same air: wood and marks move with the weather.")
	}
	return doc
}

// verdict is the answer in one sentence or two.
func (r *Check) verdict() string {
	measured := 2*(len(r.l.Frets)-1) - r.Unmeasured
	switch {
	case r.Pass:
		return fmt.Sprintf("IN TOLERANCE: the %d marks that were measured stand within %s.", measured, r.tolerance())
	case r.onlyUnsure():
		return fmt.Sprintf("NOT SURE, MEASURE AGAIN: %s. Measure again, finely and both ways, before the saw touches wood; until then redraw nothing.", listed(r.reasons("may be")))
	}
	return fmt.Sprintf("NOT IN TOLERANCE: %s. Put this right before the saw touches wood, and measure again.", listed(r.reasons("is")))
}

// onlyUnsure reports whether a board fails for nothing but what lies outside
// without being sure to.
func (r *Check) onlyUnsure() bool {
	if r.Undecided > 0 || slices.ContainsFunc(r.Slips, func(s Slip) bool { return s.Matters }) || r.offsetOutside() && r.Across.Sure {
		return false
	}
	for _, l := range r.Lines {
		if slices.ContainsFunc(l.Marks, func(m mark.Result) bool { return m.Verdict == mark.Outside && (m.Sure || m.Disputed) }) {
			return false
		}
	}
	return r.Outside > 0 || r.offsetOutside()
}

func (r *Check) offsetOutside() bool { return r.Across != nil && r.Across.Verdict == mark.Outside }

// reasons say why a board does not pass; is is "is" or "may be".
func (r *Check) reasons(is string) []string {
	var out []string
	if r.Outside > 0 {
		are := is
		if is == "is" && r.Outside > 1 {
			are = "are"
		}
		out = append(out, fmt.Sprintf("%s %s off by more than %s (%s)", plural(r.Outside, "mark"), are, r.tolerance(), r.outside(false)))
	}
	if r.Undecided > 0 {
		out = append(out, "no reading joins "+plural(r.Undecided, "mark")+" to the nut")
	}
	if r.offsetOutside() {
		out = append(out, "the treble nut "+is+" off its place beside the bass nut")
	}
	if i := slices.IndexFunc(r.Slips, func(s Slip) bool { return s.Matters && (s.IsReading() || len(out) == 0) }); i >= 0 {
		words := "a slip must be cleared up"
		if r.Slips[i].IsReading() {
			words = "a reading must be taken again"
		}
		out = append(out, words)
	}
	return out
}

// mostNamed bounds the marks named in one sentence; the tables name all.
const mostNamed = 6

// outside names the marks outside the tolerance, with their errors where they are
// wanted.
func (r *Check) outside(sizes bool) string {
	var words []string
	for _, l := range r.Lines {
		for _, m := range l.Marks {
			if m.Verdict != mark.Outside {
				continue
			}
			word := fmt.Sprintf("%v %d", l.Line, m.Fret)
			if sizes {
				word += " by " + r.text(*m.Error)
			}
			words = append(words, word)
		}
	}
	if more := len(words) - mostNamed; more > 0 {
		return strings.Join(words[:mostNamed], ", ") + fmt.Sprintf(" and %d more", more)
	}
	return listed(words)
}

func (r *Check) tolerance() string {
	if r.ToleranceCents > 0 {
		return trim(r.ToleranceCents.Value()) + " cents"
	}
	return r.text(r.Tolerance)
}

// text prints a small length; one that rounds to nothing as the least that is
// printed.
func (r *Check) text(l unit.Length) string {
	return r.in.fineUnits().LenText(l, markDecimals)
}

// fineUnits print small differences in decimals, to 0.01 mm or 0.0001 in.
func (in *Input) fineUnits() table.Units { return in.fine().Units }

// advice names the slips with what to do, or says that none stands out.
func (r *Check) advice() []string {
	if len(r.Slips) == 0 {
		out := []string{"No reading and no mark stands out from the others." + r.shows()}
		if r.Outside > 0 {
			then := "Where the verdict is 'not sure', measure again first; then draw them anew from the nut."
			if r.onlyUnsure() {
				then = "Measure them again; draw anew from the nut only what is then off."
			}
			out = append(out, fmt.Sprintf("These marks lie outside the tolerance: %s. %s", r.outside(true), then))
		}
		return out
	}
	var out []string
	for _, s := range r.Slips {
		out = append(out, r.slip(s))
	}
	return out
}

// slip says of one slip what it is, how large, where entered, what to do, and what
// explains the readings as well.
func (r *Check) slip(s Slip) string {
	text := fmt.Sprintf("%s (%s).", capital(s.Words), r.sizeWords(s.Finding))
	if !s.Matters {
		return text + " This is smaller than the tolerance, and may stay."
	}
	if nominal := r.l.NutOffset; s.Kind == mark.OffsetSlip && nominal < 0 && size(s.Size+2*nominal) < r.NutOffsetTolerance {
		text += " Is its minus missing? It has one where the treble nut lies nearer the head than the bass nut, as here."
	}
	if len(s.Or) == 0 {
		return text + " Do: " + s.Do + "."
	}
	var or []string
	remedy := ""
	for _, f := range append([]Finding{s.Finding}, s.Or...) {
		if !f.IsReading() && remedy == "" {
			remedy = " If it stays so: " + f.Do + "."
		}
	}
	for _, f := range s.Or {
		or = append(or, fmt.Sprintf("%s (%s)", f.Words, r.sizeWords(f)))
	}
	return fmt.Sprintf("%s Or, which explains these readings as well: %s. Measure again before you redo anything.%s", text, strings.Join(or, "; or "), remedy)
}

// sizeWords say how large a slip is, which way, and where it was entered.
func (r *Check) sizeWords(f Finding) string {
	ways := [2]string{"too near the bridge", "too near the head"}
	if f.IsReading() {
		ways = [2]string{"too long", "too short"}
	}
	way := ways[0]
	if f.Size < 0 {
		way = ways[1]
	}
	text := fmt.Sprintf("%s ± %s %s", r.in.fineUnits().Len(size(f.Size), markDecimals), r.text(max(f.U, 0.01*unit.Millimetre)), way)
	if f.Finding.Place.Line > 0 {
		text += fmt.Sprintf(", line %d", f.Finding.Place.Line)
	}
	return text
}

// shows says how small an error of one mark these readings would have shown.
func (r *Check) shows() string {
	low, high, blind := math.Inf(1), 0.0, 0
	for _, l := range r.Lines {
		for _, m := range l.Marks {
			switch {
			case m.Shows > 0:
				low, high = min(low, m.Shows.M()), max(high, m.Shows.M())
			case m.Readings > 0:
				blind++
			}
		}
	}
	text := ""
	if high > 0 {
		text = fmt.Sprintf(" A single mark that is off by more than %s would have shown in 95 of 100 cases", r.text(unit.Length(high)))
		if r.text(unit.Length(low)) != r.text(unit.Length(high)) {
			text += fmt.Sprintf(", %s where the readings are best", r.text(unit.Length(low)))
		}
		text += "."
	}
	if blind > 0 {
		text += fmt.Sprintf(" At %s an error could not have shown.", plural(blind, "mark"))
	}
	return text
}

// line prints the marks of one line.
func (r *Check) line(doc *document.Document, l mark.LineResult) {
	name, u := l.Line.String(), r.in.fineUnits()
	if !slices.ContainsFunc(l.Marks, func(m mark.Result) bool { return m.Readings > 0 }) {
		doc.Para("%s line: nothing was measured.", capital(name))
		return
	}
	known := func(m mark.Result) bool { return m.Error != nil }
	t := table.Of(name+"-marks", capital(name)+" line", l.Marks,
		table.Whole("fret", "fret", func(m mark.Result) int { return m.Fret }),
		table.Length(u, "nominal", "nominal", markDecimals, func(m mark.Result) unit.Length { return m.Nominal }),
		table.Length(u, "measured", "measured", markDecimals, func(m mark.Result) unit.Length { return *m.Measured }).Known(known),
		table.Length(u, "±", "standard_uncertainty", markDecimals, func(m mark.Result) unit.Length { return max(*m.U, 0.01*unit.Millimetre) }).Known(known),
		table.Length(u, "error", "error", markDecimals, func(m mark.Result) unit.Length { return *m.Error }).Signed().Known(known),
		table.Cents("error", "error", 1, func(m mark.Result) unit.Cents { return *m.ErrorCents }).Signed().Known(known),
		table.Words("verdict", "verdict", verdictWords))
	if l.Line == mark.Bass {
		t.Note("Measured: both passes together, from the nut, ± one standard uncertainty. An error is positive where the mark stands too near the bridge, and its note is then sharp. 'Not sure': nearer to the tolerance than twice the uncertainty. 'In doubt': a slip named above may concern this mark.")
	}
	if slices.ContainsFunc(l.Marks, func(m mark.Result) bool { return m.Verdict == mark.Undecided }) {
		t.Note("Undecided: no reading joins the mark to the nut. Measure the first of them from the nut.")
	}
	if len(l.LeftOut) > 0 {
		t.Note("Left out as wrong: " + listed(l.LeftOut) + ".")
	}
	if l.Scatter > 0 {
		t.Note(fmt.Sprintf("By these readings hand and marks scatter by about %s.", r.text(max(l.Scatter, 0.01*unit.Millimetre))))
	}
	doc.Table(t)
}

// verdictWords say how sure a verdict is.
func verdictWords(m mark.Result) string {
	switch {
	case m.Disputed:
		return m.Verdict.String() + ", in doubt"
	case m.Error != nil && !m.Sure:
		return m.Verdict.String() + ", not sure"
	}
	return m.Verdict.String()
}

// acrossRow is one distance between the lines.
type acrossRow struct {
	what                                  string
	nominal, measured, expected, u, error unit.Length
	verdict                               string
}

// across says how the two lines stand to one another.
func (r *Check) across() *table.Table {
	a, u := r.Across, r.in.fineUnits()
	var rows []acrossRow
	for _, d := range a.Diagonals {
		rows = append(rows, acrossRow{mark.DiagonalName(d.Kind, d.Fret), d.Nominal, d.Measured, d.Expected, d.U, d.Measured - d.Expected, none})
	}
	if a.Verdict != mark.NotMeasured {
		verdict := a.Verdict.String()
		if !a.Sure {
			verdict += ", not sure"
		}
		rows = append(rows, acrossRow{"nut offset, by all of these", a.Nominal, a.Measured, a.Nominal, a.U, a.Error, verdict})
	}
	of := func(heading string, f func(acrossRow) unit.Length) table.Column[acrossRow] {
		return table.Length(u, heading, "", markDecimals, f)
	}
	return table.Of("across", "Between the lines", rows,
		table.Words("what", "", func(a acrossRow) string { return a.what }),
		of("nominal", func(a acrossRow) unit.Length { return a.nominal }),
		of("measured", func(a acrossRow) unit.Length { return a.measured }),
		of("expected", func(a acrossRow) unit.Length { return a.expected }),
		of("±", func(a acrossRow) unit.Length { return max(a.u, 0.01*unit.Millimetre) }),
		of("error", func(a acrossRow) unit.Length { return a.error }).Signed(),
		table.Words("verdict", "", func(a acrossRow) string { return a.verdict }),
	).Note(fmt.Sprintf("Expected: with the marks where they were measured. Nut offset: along the treble line, from the square through the bass nut mark; its tolerance is %s.", r.text(r.NutOffsetTolerance)))
}

// tool names a tool's resolution and who states it.
func (r *Check) tool(l unit.Length, from, key string) string {
	if from == "" {
		return fmt.Sprintf("%s (assumed; state yours as %s under [measuring] or [marking])", resolutionText(r.in.Units, l), key)
	}
	return fmt.Sprintf("%s (%s under %s)", resolutionText(r.in.Units, l), key, from)
}

// resolutionText names a resolution as short as it goes: "0.5 mm", "1/32 in",
// "0.0005 in".
func resolutionText(u table.Units, l unit.Length) string {
	if u.Length == unit.Millimetres {
		return trim(math.Round(l.MM()*1e4)/1e4) + " mm"
	}
	if parts := 64 * l.Inches(); parts >= 1-1e-9 && math.Abs(parts-math.Round(parts)) < 1e-9 {
		return unit.InchFractions.Format(l, 0) + " in"
	}
	return trim(math.Round(l.Inches()*1e5)/1e5) + " in"
}
