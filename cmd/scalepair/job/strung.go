package job

import "scalepair/cmd/scalepair/report"

// Pairs is every pair that a search tries.
func (j *Job) Pairs() (*report.Pairs, error) {
	if err := j.strings(); err != nil {
		return nil, err
	}
	r, err := j.Plan.Search(j.Context)
	if err != nil {
		return nil, err
	}
	return report.NewPairs(j.Input, r), nil
}

// Lines are the lines of the pair in use.
func (j *Job) Lines() (*report.FanLines, error) {
	if err := j.marks(); err != nil {
		return nil, err
	}
	l, d, err := j.fretted()
	if err != nil {
		return nil, err
	}
	return report.NewFanLines(j.Input, l, d)
}

// Strung is one pair with a set and its fan; Tension is nil where no set is settled.
type Strung struct {
	Tension *report.Tension  `json:"tension"`
	Layout  *report.Layout   `json:"layout"`
	Lines   *report.FanLines `json:"fan"`
}

// Strung works up the pair and the set in use, and its fan.
func (j *Job) Strung() (*Strung, error) {
	if err := j.marks(); err != nil {
		return nil, err
	}
	l, d, err := j.fretted()
	if err != nil {
		return nil, err
	}
	s := &Strung{Layout: report.NewLayout(j.Input, l)}
	if d != nil {
		s.Tension = report.NewTension(j.Input, d)
	}
	s.Lines, err = report.NewFanLines(j.Input, l, d)
	return s, err
}
