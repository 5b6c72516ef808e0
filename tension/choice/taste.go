package choice

import (
	"context"

	"scalepair/data/unit"
)

// Taste says how the picks move when what is a matter of taste is halved or
// doubled.
type Taste struct {
	// What is "bend_weight" or "noticeable", Value what it was set to (noticeable
	// as a part of 1).
	What  string  `json:"what"`
	Value float64 `json:"value"`
	// Moves are the picks that move; none where nothing does.
	Moves []Move `json:"moves"`
}

// Move is a pick that moves.
type Move struct {
	Kind PickKind `json:"pick"`
	From Pair     `json:"from"`
	// To has a bass of 0 where there is no such pick any more.
	To Pair `json:"to"`
}

// Taste takes the picks again with the weight of bends and what is noticeable
// halved and doubled, one at a time.
func (p *Plan) Taste(ctx context.Context, r *Result) ([]Taste, error) {
	var out []Taste
	for _, factor := range []float64{0.5, 2, 0.5, 2} {
		q := *r.plan
		t := Taste{What: "bend_weight"}
		if f := &q.req.Feel; len(out) < 2 {
			f.BendWeight *= factor
			t.Value = f.BendWeight
		} else {
			f.Noticeable *= unit.Ratio(factor)
			t.What, t.Value = "noticeable", float64(f.Noticeable)
		}
		one, err := q.moved(ctx, r, t)
		if err != nil {
			return nil, err
		}
		out = append(out, one)
	}
	return out, nil
}

// moved notes which picks of r the plan takes elsewhere.
func (p *Plan) moved(ctx context.Context, r *Result, t Taste) (Taste, error) {
	f, _, err := p.settled(ctx)
	if err != nil {
		return t, err
	}
	picks, _ := f.picks()
	for _, from := range r.Picks {
		move := Move{Kind: from.Kind, From: from.Pair}
		for _, k := range picks {
			if k.kind == from.Kind {
				move.To = f.spanned(p.detailAt(f, k.at).Pair, k.at, f.good())
			}
		}
		if move.To.Bass != from.Bass || move.To.Treble != from.Treble {
			t.Moves = append(t.Moves, move)
		}
	}
	return t, nil
}

// LimitCost is a limit that raises the least feel error by more than is
// noticeable: without it the least would be Best, on Pair.
type LimitCost struct {
	Limit  Limit      `json:"limit"`
	Best   unit.Ratio `json:"least_feel_error_percent"`
	Raises unit.Ratio `json:"raises_feel_error_percent"`
	Pair   Pair       `json:"pair"`
}

// without gives the limits without one of them; false where that is not set.
func (l Limits) without(limit Limit) (Limits, bool) {
	before := l
	if off := limitInfo[limit].off; off != nil {
		off(&l)
	}
	return l, l != before
}

// LimitCosts searches again without each limit, where some could raise the
// least error by more than is noticeable.
func (p *Plan) LimitCosts(ctx context.Context, r *Result) ([]LimitCost, error) {
	n := float64(p.req.Feel.Noticeable)
	if r.Kept == 0 || r.field.best <= n {
		return nil, nil
	}
	var out []LimitCost
	for limit := range limits {
		q := *r.plan
		var set bool
		if q.req.Limits, set = p.req.Limits.without(limit); !set {
			continue
		}
		f, err := q.explore(ctx)
		if err != nil {
			return nil, err
		}
		f.rate()
		if !(r.field.best-f.best > n) {
			continue
		}
		d := q.detailAt(f, f.first(f.good(), f.errorOf, f.difference))
		out = append(out, LimitCost{Limit: limit, Best: d.Error, Raises: r.Best - d.Error, Pair: d.Pair})
	}
	return out, nil
}
