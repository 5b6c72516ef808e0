package answer

import (
	"scalepair/cmd/scalepair/report"
	"scalepair/data/unit"
)

// Gauges works up the strings in stock, or those named with every reading.
func (q *Question) Gauges(labels []string) (*report.Gauges, error) {
	if q.missing != nil {
		return nil, q.missing
	}
	return report.NewGauges(q.Input, labels)
}

// Next says what to weigh next for the pair and the set in use, in pieces of
// together at most the longest.
func (q *Question) Next(longest unit.Length) (*report.Next, error) {
	d, err := q.detail()
	if err != nil {
		return nil, err
	}
	good, err := q.goodTrials()
	if err != nil {
		return nil, err
	}
	of := q.Plan.NextOf(d, good)
	return report.NewNext(q.Input, d, of, longest), nil
}

// goodTrials is the part of the trials in which the pick in use stays good; 1
// where pair and set are given, or no trials are asked for.
func (q *Question) goodTrials() (unit.Ratio, error) {
	pick, err := q.Run.Pick()
	if err != nil || pick.HasPair() || pick.Gauges != nil {
		return 1, err
	}
	r, err := q.Plan.Search(q.Context)
	if err != nil {
		return 1, err
	}
	confidence, err := q.confidence(r)
	if err != nil || confidence == nil {
		return 1, err
	}
	for _, p := range confidence.Picks {
		if best := r.Preferred(); best != nil && p.Kind == best.Kind && p.Good != nil {
			return *p.Good, nil
		}
	}
	return 1, nil
}
