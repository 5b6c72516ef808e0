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

// Lines are the lines of the pair in use.
func (q *Question) Lines() (*report.FanLines, error) {
	if err := q.marks(); err != nil {
		return nil, err
	}
	l, d, err := q.fretted()
	if err != nil {
		return nil, err
	}
	return report.NewFanLines(q.Input, l, d)
}

// Strung is one pair with a set and its fan; Tension is nil where no set is settled.
type Strung struct {
	Tension *report.Tension  `json:"tension"`
	Layout  *report.Layout   `json:"layout"`
	Lines   *report.FanLines `json:"fan"`
}

// Strung works up the pair and the set in use, and its fan.
func (q *Question) Strung() (*Strung, error) {
	if err := q.marks(); err != nil {
		return nil, err
	}
	l, d, err := q.fretted()
	if err != nil {
		return nil, err
	}
	s := &Strung{Layout: report.NewLayout(q.Input, l)}
	if d != nil {
		s.Tension = report.NewTension(q.Input, d)
	}
	s.Lines, err = report.NewFanLines(q.Input, l, d)
	return s, err
}
