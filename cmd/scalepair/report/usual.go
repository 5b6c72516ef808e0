package report

import (
	"scalepair/cmd/scalepair/show"
	"scalepair/data/odd"
	"scalepair/fan"
	"scalepair/fan/mark"
	"scalepair/gauges"
	"scalepair/tension/choice"
	"scalepair/tuning"
)

// watchedPart is the table of one part of the work.
type watchedPart struct {
	name, caption string
	rows          []odd.Usual
}

// watchedParts are all tables, in the order of the work.
func watchedParts() []watchedPart {
	return []watchedPart{
		{"stock", "Readings, materials and measuring tools", gauges.Watched()},
		{"pitch", "Pitches", tuning.Watched()},
		{"board", "Scale pair, board, fret wire and blanks", fan.Watched()},
		{"strings", "What strings do, and what is asked of them", choice.Watched()},
		{"marks", "Checking marks", mark.Watched()},
	}
}

// Usual prints what is watched, with the usual ranges.
func Usual(u show.Units) *show.Report {
	r := &show.Report{Title: "What is usual"}
	r.Para("A value outside its range is told on stderr, in JSON and on the bench sheet, with its number and its place. It is reckoned with as it stands. Ranges are wide: what falls outside is a slip more often than an instrument. Ranges of densities are widened, gauge by gauge, by what readings and diameters leave open. 'Judgement' has no source.")
	for _, p := range watchedParts() {
		t := r.Table(p.name, p.caption, show.Words("what"), show.Words("usual"), show.Words("where the range comes from"))
		for i := range p.rows {
			row := &p.rows[i]
			t.Row(row.Quantity, usualRange(u, row), row.Source)
		}
	}
	return r
}

// UsualJSON is one watched quantity; units and open ends as in UnusualJSON.
type UsualJSON struct {
	Part     string   `json:"part"`
	Quantity string   `json:"quantity"`
	Unit     string   `json:"unit,omitempty"`
	Low      *float64 `json:"usual_from,omitempty"`
	High     *float64 `json:"usual_to,omitempty"`
	Source   string   `json:"range_from"`
	Check    string   `json:"check"`
}

// UsualTableJSON is all that is watched.
type UsualTableJSON struct {
	Watched []UsualJSON `json:"watched"`
}

// UsualValues gives what usual prints as JSON.
func UsualValues() UsualTableJSON {
	out := UsualTableJSON{Watched: []UsualJSON{}}
	for _, p := range watchedParts() {
		for _, row := range p.rows {
			out.Watched = append(out.Watched, UsualJSON{p.name, row.Quantity, symbolOf(row.Measure),
				finite(row.Measure, row.Low), finite(row.Measure, row.High), row.Source, row.Check})
		}
	}
	return out
}
