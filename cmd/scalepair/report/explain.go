package report

import (
	"errors"
	"fmt"
	"strconv"
	"strings"

	"scalepair/cmd/scalepair/job"
	"scalepair/cmd/scalepair/show"
	"scalepair/tension"
	"scalepair/tension/choice"
)

// Explain prints the work for one string, step by step.
func Explain(in *Input, d *choice.Detail, w *job.Work) *show.Report {
	r := &show.Report{Title: in.title("The work for string " + strconv.Itoa(w.String) + " of")}
	s := d.Strings[w.String-1]
	cd := s.Cases[w.Case]
	r.Para("String %d, %s, gauge %s, on the pair %s: %s.", w.String, in.note(w.Case, w.String), marked(w.Gauge),
		in.Pair(d.BassMM, d.TrebleMM), in.resultWords(cd))
	if cases := in.Plan.Request().Cases; len(cases) > 1 {
		r.Para("The build has %d tunings; this is the first of them, %s. --tuning asks for another.", len(cases), in.caseWords(w.Case, cases[w.Case]))
	}
	r.Para("Every step follows from those above it. Numbers are in SI units (m, kg, N, Pa, Hz) with the digits that the next steps need. Read 2 q/EA as 2 times q, over EA; x^2 is a power; log2(x) is ln(x)/ln(2); words in place of a formula say how the number was found; \"by changing that input\" is what the result moves by when the input moves by its standard uncertainty. The figure in brackets is the source, listed at the end.")
	var sources sourceList
	in.workTable(r, "gauge", "From the readings to the linear density", w.FromGauge, &sources)
	in.workTable(r, "string", "Pitch and length", w.Place, &sources)
	open := in.workTable(r, "tension", "Tension, breaking share and inharmonicity", w.Open, &sources)
	open.Note("Length and pitch count as exact, so they have no share in the uncertainty.")
	if w.CapoFret > 0 {
		open.Note("Capo at fret %d: L and f are from the capo on. Their product is that of the open string, and so is the tension.", w.CapoFret)
	}
	in.workOfBend(r, w, &sources)
	if w.NoCompensation != nil {
		r.Para("No compensation: %v.", w.NoCompensation)
	} else {
		t := in.workTable(r, "compensation", "Compensation of the saddle", w.Compensation, &sources)
		if w.CapoFret > 0 || w.Case > 0 {
			t.Note("The saddle is set for the open string in the first tuning, without a capo.")
		}
		in.assumedNotes(t)
	}
	sources.table(r)
	r.Heading("Cautions")
	r.Cautions(in.workCautions(w)...)
	return r
}

// workOfBend prints the steps of the bend, or why there are none.
func (in *Input) workOfBend(r *show.Report, w *job.Work, sources *sourceList) {
	if w.Fret == 0 {
		return
	}
	fret := strconv.FormatFloat(w.Fret, 'f', -1, 64)
	if w.NoBend != nil {
		r.Para("No bend at fret %s: %v.", fret, w.NoBend)
		return
	}
	side := "treble"
	if in.Plan.TowardsBass(w.String) {
		side = "bass"
	}
	t := in.workTable(r, "bend", "Bend of "+trim(in.Plan.Request().Feel.BendCents)+" cents at fret "+fret+", towards the "+side, w.Bend, sources)
	if w.CapoFret > 0 {
		t.Note("The fret n counts from the capo; the tails hold the string between nut and capo too, which is assumed to slide under it.")
	}
	if in.Plan.Request().TailsAssumed {
		t.Note("The string beyond nut and saddle is assumed: 60 mm and 25 mm unless given.")
	}
}

// assumedNotes says which inputs of the compensation nobody gave.
func (in *Input) assumedNotes(t *show.Table) {
	if in.Plan.Request().ActionAssumed {
		t.Note("The height over fret 12 is assumed: 1.6 mm at the treble, 2.0 mm at the bass, straight between.")
	}
}

// resultWords gives the answers that the steps lead to.
func (in *Input) resultWords(cd choice.CaseDetail) string {
	words := []string{"tension " + in.Units.ForceTextU(cd.TensionN, cd.UTensionN)}
	if cd.UTensionN > 0 {
		words[0] += " (one standard uncertainty)"
	}
	if cd.ShareOpen > 0 {
		words = append(words, "breaking share "+show.PercentText(cd.ShareOpen, 0)+" open")
	}
	if cd.InharmonicityCents > 0 {
		words = append(words, "inharmonicity "+show.Cents(cd.InharmonicityCents)+" cents")
	}
	return listed(words)
}

// workTable prints steps, one a row.
func (in *Input) workTable(r *show.Report, name, caption string, steps []tension.Step, sources *sourceList) *show.Table {
	t := r.Table(name, caption, show.Words("step"), show.Figures("value"), show.Words("unit"), show.Words("what it is, and its source"))
	for _, s := range steps {
		t.Row(stepWords(s), stepValue(s), s.Unit, fmt.Sprintf("%s [%d]", s.Name, sources.number(s.Source)))
	}
	return t
}

// stepWords gives "T = 2 q/(1 + sqrt(1 + 4 q/EA))", a symbol alone for a given
// number, or a formula alone for a number that no other step uses.
func stepWords(s tension.Step) string {
	switch {
	case s.Formula == "":
		return s.Symbol
	case s.Symbol == "":
		return s.Formula
	}
	return s.Symbol + " = " + s.Formula
}

// stepValue prints a number with the digits that the next steps need.
func stepValue(s tension.Step) string {
	text := strconv.FormatFloat(s.Value, 'g', s.Digits, 64)
	if s.Unit == "%" {
		text = show.Fixed(s.Value, 2)
	}
	mantissa, exponent, found := strings.Cut(text, "e")
	if !found {
		return text
	}
	n, err := strconv.Atoi(exponent)
	if err != nil {
		panic("report: an exponent that is no number: " + text)
	}
	return mantissa + "e" + strconv.Itoa(n)
}

// sourceList numbers sources in the order in which steps name them.
type sourceList struct{ texts []string }

func (l *sourceList) number(text string) int {
	for i, t := range l.texts {
		if t == text {
			return i + 1
		}
	}
	l.texts = append(l.texts, text)
	return len(l.texts)
}

func (l *sourceList) table(r *show.Report) {
	t := r.Table("sources", "Where the formulas and numbers come from", show.Figures("source"), show.Words("is"))
	for i, text := range l.texts {
		t.Row(strconv.Itoa(i+1), text)
	}
}

// workCautions are those that the gauge's own marks ask for, and the usual.
func (in *Input) workCautions(w *job.Work) []string {
	var out []string
	if w.Gauge.Suspect || w.Gauge.Disagrees {
		out = append(out, "The readings of "+w.Gauge.Label+" are suspect: scalepair gauges says why. Weigh it again before you trust these numbers.")
	}
	if w.Gauge.Estimated {
		out = append(out, "The linear density of "+w.Gauge.Label+" is estimated from the fit of its kind: buy one, weigh it, run again.")
	}
	if errors.Is(w.NoBend, tension.ErrNotReachable) {
		out = append(out, "A bend that is not reachable must not be tried: "+w.NoBend.Error()+".")
	}
	return append(out, shortCautions[0])
}

// StepJSON is one step of the work.
type StepJSON struct {
	Section string  `json:"section"`
	Symbol  string  `json:"symbol,omitempty"`
	Name    string  `json:"name"`
	Formula string  `json:"formula,omitempty"`
	Value   float64 `json:"value"`
	Unit    string  `json:"unit,omitempty"`
	Source  string  `json:"source"`
}

// ExplainJSON is the work for one string.
type ExplainJSON struct {
	Build          string     `json:"build"`
	String         StringJSON `json:"string"`
	Tuning         string     `json:"tuning"`
	CapoFret       int        `json:"capo_fret,omitempty"`
	Fret           float64    `json:"bend_fret,omitempty"`
	Steps          []StepJSON `json:"steps"`
	NoBend         string     `json:"no_bend,omitempty"`
	NoCompensation string     `json:"no_compensation,omitempty"`
	Cautions       []string   `json:"cautions"`
}

// ExplainValues gives what explain prints as JSON.
func ExplainValues(in *Input, d *choice.Detail, w *job.Work) ExplainJSON {
	out := ExplainJSON{
		Build: in.Job.Build.Name, String: in.stringValues(&d.Strings[w.String-1], w.Case), Tuning: in.Tunings()[w.Case].String(),
		CapoFret: w.CapoFret, Fret: w.Fret, Cautions: in.workCautions(w),
	}
	for _, section := range []struct {
		name  string
		steps []tension.Step
	}{{"gauge", w.FromGauge}, {"string", w.Place}, {"tension", w.Open}, {"bend", w.Bend}, {"compensation", w.Compensation}} {
		for _, s := range section.steps {
			out.Steps = append(out.Steps, StepJSON{section.name, s.Symbol, s.Name, s.Formula, s.Value, s.Unit, s.Source})
		}
	}
	if w.NoBend != nil {
		out.NoBend = w.NoBend.Error()
	}
	if w.NoCompensation != nil {
		out.NoCompensation = w.NoCompensation.Error()
	}
	return out
}
