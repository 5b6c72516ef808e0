package report

import (
	"fmt"
	"regexp"
	"slices"
	"strconv"
	"strings"

	"scalepair/cmd/scalepair/build"
	"scalepair/cmd/scalepair/document"
	"scalepair/cmd/scalepair/table"
	"scalepair/data/trace"
	"scalepair/data/unit"
	"scalepair/tension/choice"
)

// Explained is what tension --explain prints.
type Explained struct {
	Head
	Pair           PairOf       `json:"pair"`
	Tuning         string       `json:"tuning"`
	CapoFret       int          `json:"capo_fret"`
	Fret           float64      `json:"bend_fret"`
	Strings        *table.Table `json:"strings"` // the one string, as scalepair tension has it
	Steps          *table.Table `json:"steps"`
	NoBend         string       `json:"no_bend"`
	NoCompensation string       `json:"no_compensation"`
	Cautions       []string     `json:"cautions"`

	in      *Input
	row     stringRow
	w       *build.Work
	steps   []step
	sources []string // in the order in which they come
}

// step is one line of the work, with the number of its source.
type step struct {
	trace.Step
	section string
	source  int
}

// NewExplained works up the work for one string of a detail, in its first
// tuning.
func NewExplained(in *Input, d *choice.Detail, w *build.Work) *Explained {
	row := stringRow{in: in, d: d, i: w.String - 1}
	out := &Explained{Head: in.head(d), Pair: in.pairOf(d.Pair), Tuning: in.Tunings()[0].String(), CapoFret: in.Plan.Request().Cases[0].CapoFret,
		Fret: w.Fret, Strings: table.Of("strings", "", []stringRow{row}, in.stringColumns(whole)...), in: in, row: row, w: w}
	for _, s := range w.Sections {
		for _, one := range s.Steps {
			at := slices.Index(out.sources, one.Source)
			if at < 0 {
				at, out.sources = len(out.sources), append(out.sources, one.Source)
			}
			out.steps = append(out.steps, step{one, s.Name, at + 1})
		}
	}
	out.Steps = stepTable("steps", "", out.steps)
	for text, err := range map[*string]error{&out.NoBend: w.NoBend, &out.NoCompensation: w.NoCompensation} {
		if err != nil {
			*text = err.Error()
		}
	}
	out.Cautions = append(in.unsure([]int{row.string().Gauge}), stringCautions[0])
	return out
}

// Document prints the answer, then every step that leads to it, with its source.
func (e *Explained) Document() *document.Document {
	in, w, row := e.in, e.w, e.row
	doc := &document.Document{Title: in.title(fmt.Sprintf("The work for string %d of", w.String))}
	doc.Para("String %d, %s, gauge %s, on the pair %s: tension %s.", w.String, in.note(0, w.String), marked(row.gauge()), in.Pair(row.d.Bass, row.d.Treble), in.Units.ForceUText(row.tuned().Tension))
	if row.compensated() {
		doc.Para("Compensation: %s to %s.", in.Units.Len(row.tuned().Compensation.Lo, scaleDecimals), in.Units.LenText(row.tuned().Compensation.Hi, scaleDecimals))
	}
	if len(in.Tunings()) > 1 {
		doc.Para("The build has %d tunings; this is the first of them, %s. --tuning asks for another.", len(in.Tunings()), in.caseWords(0))
	}
	doc.Para("Every step follows from those above it. Numbers are in SI units (m, kg, N, Pa, Hz), with the digits that the next steps need. Read 2 q/EA as 2 times q, over EA; x^2 is a power; log2(x) is ln(x)/ln(2). The figure in brackets is the source, listed at the end.")
	if u := in.Units.Force; u != unit.Newtons {
		doc.Para("1 %s is %s N.", u.Symbol(), trim(toDecimals(1/u.Value(1), 6)))
	}
	for _, s := range w.Sections {
		rows := slices.DeleteFunc(slices.Clone(e.steps), func(one step) bool { return one.section != s.Name })
		doc.Table(stepTable(s.Name, e.sectionTitle(s.Name), rows).Note(e.sectionNotes(s.Name)...))
	}
	var none lines
	none.sayIf(e.NoBend != "", "No bend at fret %s: %s.", trim(w.Fret), e.NoBend)
	none.sayIf(e.NoCompensation != "", "No compensation: %s.", e.NoCompensation)
	doc.List(none...)
	doc.Table(table.Of("sources", "Where the formulas and numbers come from", e.sources,
		table.Whole("source", "", func(source string) int { return slices.Index(e.sources, source) + 1 }),
		table.Words("is", "", func(source string) string { return source })))
	doc.Cautions(e.Cautions...)
	return doc
}

func stepTable(name, title string, steps []step) *table.Table {
	return table.Of(name, title, steps,
		table.Words("", "section", func(s step) string { return s.section }),
		table.Words("", "symbol", func(s step) string { return s.Symbol }),
		table.Words("", "name", func(s step) string { return s.Name }),
		table.Words("", "formula", func(s step) string { return s.Formula }),
		table.Words("step", "", func(s step) string { // a symbol alone for a given number, or a formula alone for one that no other step uses
			if s.Symbol == "" || s.Formula == "" {
				return s.Symbol + s.Formula
			}
			return s.Symbol + " = " + s.Formula
		}),
		table.Number("", "value", 9, func(s step) float64 { return s.Value }),
		table.Words("value", "", stepValue),
		table.Words("unit", "unit", func(s step) string { return s.Unit }),
		table.Words("what it is, and its source", "", func(s step) string { return strings.TrimSpace(fmt.Sprintf("%s [%d]", s.Name, s.source)) }),
		table.Words("", "source", func(s step) string { return s.Source }),
	)
}

// exponent matches one as Go prints it, with its plus or its leading zero.
var exponent = regexp.MustCompile(`e(-?)\+?0*`)

// stepValue prints a number with the digits that the next steps need.
func stepValue(s step) string {
	if s.Unit == "%" {
		return unit.Fixed(s.Value, 2)
	}
	return exponent.ReplaceAllString(strconv.FormatFloat(s.Value, 'g', s.Digits, 64), "e$1")
}

// sectionTitle heads a section of the work.
func (e *Explained) sectionTitle(name string) string {
	side := map[bool]string{true: "bass", false: "treble"}[e.in.Plan.TowardsBass(e.w.String)]
	return map[string]string{"gauge": "From the readings to the linear density", "pitch": "Pitch and length",
		"tension": "Tension, breaking strength and inharmonicity", "compensation": "Compensation of the saddle",
		"bend": fmt.Sprintf("Bend of %s cents at fret %s, towards the %s", trim(e.in.Plan.Request().Feel.Bend.Value()), trim(e.w.Fret), side)}[name]
}

// sectionNotes say what of a section is assumed or left out.
func (e *Explained) sectionNotes(name string) []string {
	req := e.in.Plan.Request()
	capo := req.Cases[0].CapoFret > 0
	var out lines
	switch name {
	case "tension":
		out.say("Length and pitch count as exact, so they have no share in the uncertainty.")
		out.sayIf(capo, "Capo at fret %d: L and f are from the capo on. Their product is that of the open string, and so is the tension.", req.Cases[0].CapoFret)
	case "bend":
		out.sayIf(capo, "The fret n counts from the capo; the tails hold the string between nut and capo too, which is assumed to slide under it.")
		out.sayIf(req.TailsAssumed, "%s", e.in.assumedTails())
	case "compensation":
		out.sayIf(capo, "The saddle is set for the open string, without a capo.")
		out.sayIf(req.ActionAssumed, "%s", e.in.assumedAction())
	}
	return out
}
