package choice

import (
	"cmp"
	"context"
	"slices"

	"scalepair/data/unit"
)

// rounds bounds how often the picks are taken again while equal gaps become
// those of their own sets (judgement: they stand after one or two).
const rounds = 5

// Search tries every pair of the grid and takes the picks. The error is that of
// ctx, or a fault where gauges are free and nothing is wanted that parts one set
// from another; the only set that there is is taken even then.
func (p *Plan) Search(ctx context.Context) (*Result, error) {
	if p.req.Given == nil && !p.CanSuggest() {
		q := *p
		if q.req.Given = p.onlySet(); q.req.Given == nil {
			return nil, errNoTarget
		}
		p = &q
	}
	f, settled, err := p.settled(ctx)
	if err != nil {
		return nil, err
	}
	r := &Result{Tried: len(f.points), Settled: settled, plan: p, field: f}
	return r, p.fill(ctx, r)
}

// settled is the grid worked out, with equal gaps those of their own sets
// wherever a pair is printed.
func (p *Plan) settled(ctx context.Context) (f *field, stands bool, err error) {
	if f, err = p.explore(ctx); err != nil {
		return nil, false, err
	}
	for range rounds {
		f.rate()
		if stands = !p.settle(f, f.printed()); stands {
			break
		}
	}
	f.rate()
	return f, stands, nil
}

// settle works out the pairs at some places with the spacing of their own sets,
// and reports whether any had not been so.
func (p *Plan) settle(f *field, places []int) bool {
	changed := false
	for _, at := range places {
		if f.points[at].fixed {
			continue
		}
		changed = true
		bass, treble := f.lengths(at)
		set, miss := p.Suggest(bass, treble)
		v := point{Miss: miss, fixed: true, set: set}
		if set != nil {
			d, err := p.Detail(bass, treble, set)
			if err != nil {
				d = &Detail{Broken: []Miss{{Limit: Unbuildable, Bass: bass, Treble: treble, Gauge: -1}}}
			}
			v.e2, v.cents = float64(d.Error*d.Error), d.Inharmonicity.Value()
			v.Miss = append(d.Broken, Miss{Gauge: -1})[0]
		}
		f.points[at] = v
	}
	return changed
}

// fill works out what is printed.
func (p *Plan) fill(ctx context.Context, r *Result) error {
	f := r.field
	good := f.good()
	for _, v := range f.points {
		if v.Limit == Kept {
			r.Kept++
		}
	}
	r.Dropped = f.dropped()
	r.NotRemovable = unit.Ratio(sqrt(p.removed))
	if r.Kept == 0 {
		return ctx.Err()
	}
	r.Best, r.Allowed = unit.Ratio(sqrt(f.points[f.first(good, f.errorOf)].e2)), unit.Ratio(sqrt(f.allowed*f.allowed+p.removed))
	if r.NoneNear = p.req.Feel.NoneNear(unit.Ratio(f.best)); !r.NoneNear {
		r.AsGood, r.AllAsGood = len(good), len(good) == r.Kept
	}
	picks, lacks := f.picks()
	r.ClearEnoughLacks = unit.Cents(lacks)
	for _, k := range picks {
		d := p.detailAt(f, k.at)
		r.Picks = append(r.Picks, Pick{Kind: k.kind, Pair: f.spanned(d.Pair, k.at, good), StockDecides: p.missing(d)})
	}
	rows := f.tradeOff(good)
	for _, k := range picks {
		if !slices.Contains(rows, k.at) {
			rows = append(rows, k.at)
		}
	}
	slices.SortStableFunc(rows, func(a, b int) int { return cmp.Compare(f.difference(a), f.difference(b)) })
	for _, at := range rows {
		s := Step{Pair: f.spanned(p.detailAt(f, at).Pair, at, good)}
		if len(r.TradeOff) > 0 {
			s.MoreInharmonicity = s.Inharmonicity - r.TradeOff[0].Inharmonicity
		}
		r.TradeOff = append(r.TradeOff, s)
	}
	r.StopsSmallestFan, r.StopsLongestBass = p.stops(r)
	return ctx.Err()
}

// detailAt works out a pair of the grid that was kept.
func (p *Plan) detailAt(f *field, at int) *Detail {
	bass, treble := f.lengths(at)
	return p.drawn(bass, treble, f.points[at].set)
}

// missing finds the strings for which the stock decides.
func (p *Plan) missing(d *Detail) []Missing {
	var out []Missing
	for i, s := range d.Strings {
		if s.Target == 0 || p.own || s.Deviation >= -farOff && s.Deviation <= farOff {
			continue
		}
		list := p.sorted
		if keep := p.keeps[i]; keep != either && keep == p.kindOf(s.Gauge) {
			list = p.kinds[keep]
		}
		heaviest := s.Deviation < 0
		end := list[0]
		if heaviest {
			end = list[len(list)-1]
		}
		if p.wires[end].LinearDensity == p.wires[s.Gauge].LinearDensity {
			out = append(out, Missing{String: i + 1, Gauge: s.Gauge, Deviation: s.Deviation, Wanted: s.Wanted, Heaviest: heaviest})
		}
	}
	return out
}

// farOff is how far a tension may be from the wanted before it is said what the
// stock lacks (judgement).
const farOff unit.Ratio = 0.10
