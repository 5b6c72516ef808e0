package job

import (
	"scalepair/cmd/scalepair/report"
	"scalepair/data/unit"
)

// Gauges works up the strings in stock, or those named with every reading.
func (j *Job) Gauges(labels []string) (*report.Gauges, error) {
	if j.missing != nil {
		return nil, j.missing
	}
	return report.NewGauges(j.Input, labels)
}

// Next says what to weigh next for the pair and the set in use, in pieces of
// together at most the longest.
func (j *Job) Next(longest unit.Length) (*report.Next, error) {
	d, err := j.detail()
	if err != nil {
		return nil, err
	}
	good, err := j.goodTrials()
	if err != nil {
		return nil, err
	}
	of := j.Plan.NextOf(d, good)
	return report.NewNext(j.Input, d, of, longest), nil
}

// goodTrials is the part of the trials in which the pick in use stays good; 1
// where pair and set are given, or no trials are asked for.
func (j *Job) goodTrials() (unit.Ratio, error) {
	pick, err := j.Run.Pick()
	if err != nil || pick.HasPair() || pick.Gauges != nil {
		return 1, err
	}
	r, err := j.Plan.Search(j.Context)
	if err != nil {
		return 1, err
	}
	confidence, err := j.confidence(r)
	if err != nil || confidence == nil {
		return 1, err
	}
	for _, p := range confidence.Picks {
		if best := r.Preferred(); best != nil && p.Kind == best.Kind {
			return p.Good, nil
		}
	}
	return 1, nil
}
