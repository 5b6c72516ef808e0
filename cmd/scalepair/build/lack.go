package build

import (
	"context"

	"scalepair/data/unit"
	"scalepair/gauges"
	"scalepair/tension/choice"
)

// Lack is a string that wants a gauge which is not in stock.
type Lack struct {
	choice.Lack
	Outer unit.Length // of such a gauge, as the fit of its kind has it; 0 where there is none
}

// Lacks finds what the stock lacks for a pick, and what a search finds with it;
// no result where nothing is lacking.
func (r *Run) Lacks(ctx context.Context, p *choice.Plan, found *choice.Result, pick *choice.Pick) ([]Lack, *choice.Result, error) {
	var out []Lack
	var sized []choice.Lack
	var more []gauges.Gauge
	for _, l := range p.Lacks(found, pick) {
		if g, ok := r.Stock.Sized(p.Stock()[l.Gauge], l.Wanted); ok {
			sized, more = append(sized, l), append(more, g)
		} else {
			out = append(out, Lack{Lack: l})
		}
	}
	if more == nil {
		return out, nil, nil
	}
	taken, with, err := p.With(ctx, sized, more)
	for _, i := range taken {
		out = append(out, Lack{sized[i], more[i].Outer})
	}
	return out, with, err
}
