package answer

import "scalepair/cmd/scalepair/report"

// Pairs is every pair that a search tries.
func (q *Question) Pairs() (*report.Pairs, error) {
	if err := q.strings(); err != nil {
		return nil, err
	}
	r, err := q.Plan.Search(q.Context)
	if err != nil {
		return nil, err
	}
	return report.NewPairs(q.Input, r), nil
}

// Strung is one pair with a set and its fan; Layout is nil where it was not asked for.
type Strung struct {
	Tension *report.Tension  `json:"tension"`
	Lines   *report.FanLines `json:"fan"`
	Layout  *report.Layout   `json:"layout"`
}

// Strung works up the pair and the set in use, and its fan; with marks its layout too.
func (q *Question) Strung(marks bool) (*Strung, error) {
	d, err := q.detail()
	if err != nil {
		return nil, err
	}
	l, err := q.laidOut(d.Spec)
	if err != nil {
		return nil, err
	}
	s := &Strung{Tension: report.NewTension(q.Input, d)}
	if marks {
		s.Layout = report.NewLayout(q.Input, l)
	}
	s.Lines, err = report.NewFanLines(q.Input, l)
	return s, err
}
