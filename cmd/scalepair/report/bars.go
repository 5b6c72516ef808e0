package report

import (
	"fmt"
	"slices"

	"scalepair/cmd/scalepair/chart"
	"scalepair/cmd/scalepair/document"
)

// tensionBars draws the tensions of one tuning, the low string first.
func (s *Strung) tensionBars(doc *document.Document, tuning int) {
	in, u := s.in, s.in.Units
	bars := chart.Bars{Title: "Tension of the strings", XLabel: "tension, " + u.Force.Symbol()}
	for _, one := range slices.Backward(s.d.Strings) {
		t := one.Tunings[tuning]
		bars.Bars = append(bars.Bars, chart.Bar{
			Label: fmt.Sprintf("%d · %s · %s", one.Number, in.note(tuning, one.Number), in.gauge(one.Gauge)),
			Value: u.Force.Value(t.Tension.Value), U: u.Force.Value(t.Tension.U), Target: u.Force.Value(one.Target),
		})
	}
	doc.Figure("Tensions", bars.SVG())
}
