package report

import (
	"fmt"

	"scalepair/cmd/scalepair/document"
	"scalepair/cmd/scalepair/table"
	"scalepair/data/unit"
	"scalepair/fan"
	"scalepair/tension/choice"
)

// PairOf is a scale pair with the labels of its set, low string first.
type PairOf struct {
	choice.Pair
	Gauges []string `json:"gauges"`
}

func (in *Input) pairOf(p choice.Pair) PairOf { return PairOf{p, in.labels(p.Gauges)} }

// Strung is one pair with its set, string by string, in every tuning.
type Strung struct {
	Pair PairOf `json:"pair"`
	fan.Neutral
	PitchStandard unit.Frequency `json:"pitch_standard_hz"`
	Bend          unit.Cents     `json:"bend_cents"`
	Reference     unit.Force     `json:"reference_total_tension_n"` // 0 without a reference
	NotRemovable  unit.Ratio     `json:"not_removable_percent"`     // of the feel error, by any set
	Tunings       []Tuned        `json:"tunings"`
	LimitsBroken  []string       `json:"limits_broken"`
	Cautions      []string       `json:"cautions"`

	in *Input
	d  *choice.Detail
}

// Tuned is a strung pair in one tuning.
type Tuned struct {
	Tuning     string       `json:"tuning"`
	Name       string       `json:"tuning_name"`
	CapoFret   int          `json:"capo_fret"`
	Total      unit.Force   `json:"total_tension_n"`
	U          unit.Force   `json:"total_tension_standard_uncertainty_n"`
	BassHalf   unit.Force   `json:"bass_half_n"`
	TrebleHalf unit.Force   `json:"treble_half_n"`
	Change     *unit.Ratio  `json:"change_from_reference_percent"`
	PerString  *unit.Ratio  `json:"change_per_string_percent,omitempty"` // where the reference has another number of strings
	Error      unit.Ratio   `json:"feel_error_percent"`                  // of this tuning by itself
	Strings    *table.Table `json:"strings"`
}

// strung works a detail up for print.
func (in *Input) strung(d *choice.Detail, at look) Strung {
	req := in.Plan.Request()
	cases := req.Cases
	out := Strung{Pair: in.pairOf(d.Pair), Neutral: d.Spec.Neutral,
		PitchStandard: in.pitchStandard(), Bend: req.Feel.Bend, Reference: d.ReferenceTension, NotRemovable: d.NotRemovable, LimitsBroken: in.broken(d.Broken),
		Cautions: append(in.detailCautions(d), stringCautions...), in: in, d: d}
	for c, total := range d.Totals {
		name, title := "strings", ""
		if len(cases) > 1 {
			name, title = fmt.Sprintf("strings-%d", c+1), in.caseWords(c)
		}
		out.Tunings = append(out.Tunings, Tuned{Tuning: in.Tunings()[c].String(), Name: cases[c].Name, CapoFret: cases[c].CapoFret,
			Total: total.Tension.Value, U: total.Tension.U, BassHalf: total.BassHalf, TrebleHalf: total.TrebleHalf,
			Change: totalChange(d, c), PerString: in.changePerString(d, c), Error: total.Error, Strings: in.stringTable(name, title, d, c, at)})
	}
	return out
}

// caseWords names one tuning by its own name, where it has one, and its notes,
// with the capo and what sounds above it: "B1 E2 A2, capo at fret 2 (sounds C#2
// F#2 B2)".
func (in *Input) caseWords(c int) string {
	t, one := in.Tunings()[c], in.Plan.Request().Cases[c]
	words := t.String()
	if one.CapoFret > 0 {
		words = fmt.Sprintf("%s, capo at fret %d (sounds %s)", t, one.CapoFret, t.Up(one.CapoFret))
	}
	if one.Name != t.String() {
		return one.Name + ", " + words
	}
	return words
}

// bends is the table of the bends in one tuning, nil where no string is bent.
func (s *Strung) bends(c int) *table.Table {
	t := s.in.bendTable(s.in.stringRows(s.d, c), true)
	if t.Len() == 0 {
		return nil
	}
	if len(s.Tunings) > 1 {
		t.Name, t.Title = fmt.Sprintf("bends-%d", c+1), t.Title+" in "+s.Tunings[c].Name
	}
	return t.Note(s.in.bendNotes(s.d, c)...)
}

// together sets the tensions of several tunings side by side; nil for one.
func (s *Strung) together() *table.Table {
	if len(s.Tunings) < 2 {
		return nil
	}
	columns := []table.Column[stringRow]{
		table.Whole("string", "string", func(r stringRow) int { return r.string().Number }),
		table.Words("gauge", "gauge", func(r stringRow) string { return marked(r.gauge()) }),
	}
	for c, t := range s.Tunings {
		tension := func(r stringRow) unit.Force { return r.string().Tunings[c].Tension.Value }
		columns = append(columns,
			table.Force(s.in.Units, t.Name, "tension", tension),
			table.Percent("deviation", "tension_deviation", 1, func(r stringRow) unit.Ratio { return unit.Ratio(tension(r)/r.string().Target - 1) }).
				Signed().Known(stringRow.wanted))
	}
	return table.Of("tensions", "Tension in every tuning", s.in.stringRows(s.d, 0), columns...)
}

// totalWords say how hard the strings pull together in one tuning.
func (s *Strung) totalWords(c int) string {
	t, u := s.Tunings[c], s.in.Units
	if t.Total == 0 {
		return ""
	}
	text := u.ForceUText(s.d.Totals[c].Tension)
	if t.Change == nil {
		return text
	}
	change := table.SignedPercentText(*t.Change, 1) + " against"
	if change == "0.0 % against" {
		change = "the same as"
	}
	text = fmt.Sprintf("%s, %s the reference's %s", text, change, u.ForceText(s.d.ReferenceTension))
	if t.PerString != nil {
		text += fmt.Sprintf(" (%d strings against %d: %s a string)", len(s.d.Strings), len(s.in.Plan.Request().Reference.Gauges), table.SignedPercentText(*t.PerString, 1))
	}
	return text
}

// errorWords give the feel error with the worst string beside it.
func (s *Strung) errorWords() string {
	p := s.Pair
	if p.ErrorUnknown {
		return "not known, since a bend cannot be made or computed"
	}
	text := table.PercentText(p.Error, 1)
	if s.NotRemovable > 0 {
		text += fmt.Sprintf(", and no one set comes below %s in these tunings", table.PercentText(s.NotRemovable, 1))
	}
	if words := s.worstWords(); words != "" {
		text += "; worst is " + words
	}
	return text
}

// addLimitsBroken adds the limits that the pair breaks, if any, in a section of
// their own.
func addLimitsBroken(doc *document.Document, list []string) {
	if len(list) > 0 {
		doc.Heading("Limits broken")
		doc.List(list...)
	}
}
