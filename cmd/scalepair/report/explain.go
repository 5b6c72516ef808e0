package report

import (
	"errors"
	"fmt"
	"strconv"
	"strings"

	"scalepair/cmd/scalepair/build"
	"scalepair/cmd/scalepair/document"
	"scalepair/cmd/scalepair/table"
	"scalepair/data/trace"
	"scalepair/data/unit"
	"scalepair/tension"
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

	in *Input
	d  *choice.Detail
	w  *build.Work
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
		Fret: w.Fret, Strings: table.Of("strings", "", []stringRow{row}, in.stringColumns(whole)...), Cautions: in.workCautions(row, w), in: in, d: d, w: w}
	var all []step
	for _, s := range w.Sections {
		for _, one := range s.Steps {
			all = append(all, step{Step: one, section: s.Name})
		}
	}
	out.Steps = stepTable("steps", "", all)
	if w.NoBend != nil {
		out.NoBend = w.NoBend.Error()
	}
	if w.NoCompensation != nil {
		out.NoCompensation = w.NoCompensation.Error()
	}
	return out
}

// Document prints the answer, then every step that leads to it, with its source.
func (e *Explained) Document() *document.Document {
	in, w := e.in, e.w
	doc := &document.Document{Title: in.title(fmt.Sprintf("The work for string %d of", w.String))}
	row := stringRow{in: in, d: e.d, i: w.String - 1}
	doc.Para("String %d, %s, gauge %s, on the pair %s: tension %s.", w.String, in.note(0, w.String), marked(row.gauge()),
		in.Pair(e.d.Bass, e.d.Treble), in.Units.ForceUText(row.tuned().Tension))
	if len(in.Tunings()) > 1 {
		doc.Para("The build has %d tunings; this is the first of them, %s. --tuning asks for another.", len(in.Tunings()), in.caseWords(0))
	}
	doc.Para("Every step follows from those above it. Numbers are in SI units (m, kg, N, Pa, Hz), with the digits that the next steps need. Read 2 q/EA as 2 times q, over EA; x^2 is a power; log2(x) is ln(x)/ln(2). The figure in brackets is the source, listed at the end.")
	var sources []string
	for _, s := range w.Sections {
		var rows []step
		for _, one := range s.Steps {
			at := -1
			for i, text := range sources {
				if text == one.Source {
					at = i
				}
			}
			if at < 0 {
				at, sources = len(sources), append(sources, one.Source)
			}
			rows = append(rows, step{one, s.Name, at + 1})
		}
		doc.Table(stepTable(s.Name, in.sectionTitle(s.Name, w), rows).Note(in.sectionNotes(s)...))
	}
	if w.NoBend != nil {
		doc.Para("No bend at fret %s: %v.", trim(w.Fret), w.NoBend)
	}
	if w.NoCompensation != nil {
		doc.Para("No compensation: %v.", w.NoCompensation)
	}
	type source struct {
		number int
		text   string
	}
	var list []source
	for i, text := range sources {
		list = append(list, source{i + 1, text})
	}
	doc.Table(table.Of("sources", "Where the formulas and numbers come from", list,
		table.Whole("source", "source", func(s source) int { return s.number }),
		table.Words("is", "is", func(s source) string { return s.text })))
	doc.Cautions(e.Cautions...)
	return doc
}

func stepTable(name, title string, steps []step) *table.Table {
	return table.Of(name, title, steps,
		table.Words("", "section", func(s step) string { return s.section }),
		table.Words("", "symbol", func(s step) string { return s.Symbol }),
		table.Words("", "name", func(s step) string { return s.Name }),
		table.Words("", "formula", func(s step) string { return s.Formula }),
		table.Words("step", "", stepWords),
		table.Number("", "value", 9, func(s step) float64 { return s.Value }),
		table.Words("value", "", stepValue),
		table.Words("unit", "unit", func(s step) string { return s.Unit }),
		table.Words("what it is, and its source", "", func(s step) string { return strings.TrimSpace(fmt.Sprintf("%s [%d]", s.Name, s.source)) }),
		table.Words("", "source", func(s step) string { return s.Source }),
	)
}

// stepWords give "T = 2 q/(1 + sqrt(1 + 4 q/EA))", a symbol alone for a given
// number, or a formula alone for a number that no other step uses.
func stepWords(s step) string {
	switch {
	case s.Formula == "":
		return s.Symbol
	case s.Symbol == "":
		return s.Formula
	}
	return s.Symbol + " = " + s.Formula
}

// stepValue prints a number with the digits that the next steps need.
func stepValue(s step) string {
	if s.Unit == "%" {
		return unit.Fixed(s.Value, 2)
	}
	text := strconv.FormatFloat(s.Value, 'g', s.Digits, 64)
	if mantissa, exponent, ok := strings.Cut(text, "e"); ok {
		sign, digits := exponent[:1], strings.TrimLeft(exponent[1:], "0")
		return mantissa + "e" + strings.TrimPrefix(sign, "+") + digits
	}
	return text
}

// workCautions are those that the gauge's own marks ask for, and the one for
// every string.
func (in *Input) workCautions(r stringRow, w *build.Work) []string {
	var out []string
	g := r.gauge()
	if g.Suspect || g.Disagrees {
		out = append(out, "The readings of "+g.Label+" are suspect: scalepair gauges says why. Weigh it again before you trust these numbers.")
	}
	if g.Estimated {
		out = append(out, "The linear density of "+g.Label+" is estimated from the fit of its kind: buy one, weigh it, run again.")
	}
	if errors.Is(w.NoBend, tension.ErrNotReachable) {
		out = append(out, "A bend that is not reachable must not be tried: "+w.NoBend.Error()+".")
	}
	return append(out, stringCautions[0])
}

// sectionTitle heads a section of the work.
func (in *Input) sectionTitle(name string, w *build.Work) string {
	if name != "bend" {
		return map[string]string{"gauge": "From the readings to the linear density", "pitch": "Pitch and length",
			"tension": "Tension, breaking strength and inharmonicity", "compensation": "Compensation of the saddle"}[name]
	}
	side := "treble"
	if in.Plan.TowardsBass(w.String) {
		side = "bass"
	}
	return fmt.Sprintf("Bend of %s cents at fret %s, towards the %s", trim(in.Plan.Request().Feel.Bend.Value()), trim(w.Fret), side)
}

// sectionNotes say what of a section is assumed or left out.
func (in *Input) sectionNotes(s build.Section) []string {
	req := in.Plan.Request()
	capo := req.Cases[0].CapoFret
	var out []string
	add := func(on bool, note string) {
		if on {
			out = append(out, note)
		}
	}
	if u := in.Units.Force; u != unit.Newtons {
		for _, one := range s.Steps {
			if force := unit.Force(one.Value); s.Name == "tension" && one.Symbol == "T" || s.Name == "bend" && one.Symbol == "P" {
				out = append(out, fmt.Sprintf("%s is %s N, which is %s; 1 %s is %s N.", one.Symbol, stepValue(step{Step: one}), in.Units.ForceText(force), u.Symbol(), trim(toDecimals(1/u.Value(1), 6))))
			}
		}
	}
	switch s.Name {
	case "tension":
		out = append(out, "Length and pitch count as exact, so they have no share in the uncertainty.")
		add(capo > 0, fmt.Sprintf("Capo at fret %d: L and f are from the capo on. Their product is that of the open string, and so is the tension.", capo))
	case "bend":
		add(capo > 0, "The fret n counts from the capo; the tails hold the string between nut and capo too, which is assumed to slide under it.")
		add(req.TailsAssumed, in.assumedTails()+".")
	case "compensation":
		add(capo > 0, "The saddle is set for the open string, without a capo.")
		add(req.ActionAssumed, fmt.Sprintf("The action over fret 12 is assumed: %s at the treble, %s at the bass, straight between.", in.fine().text(req.Action[0]), in.fine().text(req.Action[len(req.Action)-1])))
	}
	return out
}
