package build

import (
	"context"

	"scalepair/gauges"
	"scalepair/tension/choice"
)

// Lacks finds what the stock lacks for a pick, and what a search finds with it;
// no result where nothing is lacking.
func (r *Run) Lacks(ctx context.Context, p *choice.Plan, found *choice.Result, pick *choice.Pick) (out []choice.Lack, with *choice.Result, err error) {
	var sized []choice.Lack
	var more []gauges.Gauge
	for _, l := range p.Lacks(found, pick) {
		if g, ok := r.Stock.Sized(p.Stock()[l.Gauge], l.Wanted); ok {
			sized, more = append(sized, l), append(more, g)
		} else {
			out = append(out, l)
		}
	}
	if more == nil {
		return out, nil, nil
	}
	taken, with, err := p.With(ctx, sized, more)
	for _, i := range taken {
		out = append(out, sized[i])
	}
	return out, with, err
}
