package report

import (
	"scalepair/cmd/scalepair/document"
	"scalepair/tension/choice"
)

// Tension is one pair with one set, string by string.
type Tension struct {
	Head
	Strung
}

// NewTension works up the strings of a detail.
func NewTension(in *Input, d *choice.Detail) *Tension {
	return &Tension{in.head(d), in.strung(d, whole)}
}

// Document prints it.
func (t *Tension) Document() *document.Document {
	in, p := t.in, t.Pair
	doc := &document.Document{Title: in.title("Tensions for")}
	doc.Para("%s", t.weighAgain())
	doc.Para("Pair %s; set %s, low string first; A4 = %s Hz.", in.Pair(p.Bass, p.Treble), in.Set(t.d.Gauges), trim(in.pitchStandard().Hz()))
	for c := range t.Tunings {
		doc.Para("Tuning: %s.", in.caseWords(c))
	}
	doc.Table(t.together())
	for c, one := range t.Tunings {
		doc.Table(one.Strings)
		t.tensionBars(doc, c)
		doc.Table(t.bends(c))
		if words := t.totalWords(c); words != "" {
			doc.Para("Total tension %s; bass half %s, treble half %s.", words, in.Units.ForceText(one.BassHalf), in.Units.ForceText(one.TrebleHalf))
		}
	}
	if t.d.Strings[0].Target > 0 {
		doc.Para("Feel error (root mean square over the strings of ln(value/wanted), near enough percent below 20): %s.", t.errorWords())
	}
	addLimitsBroken(doc, t.LimitsBroken)
	doc.Cautions(t.Cautions...)
	return doc
}
