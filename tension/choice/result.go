package choice

import (
	"context"
	"slices"

	"scalepair/data/unit"
)

// Result is the outcome of a search over a grid.
type Result struct {
	Tried  int `json:"pairs_tried"`
	Kept   int `json:"pairs_kept"`
	AsGood int `json:"pairs_as_good"`
	// Best is the least feel error of the pairs kept, Allowed the greatest that is
	// as good, and NotRemovable U, what no set can remove, which both contain.
	Best         unit.Ratio `json:"least_feel_error_percent"`
	Allowed      unit.Ratio `json:"allowed_feel_error_percent"`
	NotRemovable unit.Ratio `json:"not_removable_percent"`
	// AllAsGood says that every pair kept is as good as the best: only limits and
	// range decide. NoneNear says that no pair comes near what is wanted, so that
	// nothing should be called as good.
	AllAsGood bool `json:"all_as_good"`
	NoneNear  bool `json:"none_near"`

	Picks []Pick `json:"picks"`
	// ClearEnoughLacks, above 0, says that no pair as good is clear enough; that
	// pick is then the one with the least inharmonicity, which misses by so much.
	ClearEnoughLacks unit.Cents `json:"clear_enough_lacks_cents,omitempty"`
	TradeOff         []Step     `json:"trade_off"`
	StopsSmallestFan *Stop      `json:"stops_smallest_fan,omitempty"`
	StopsLongestBass *Stop      `json:"stops_longest_bass,omitempty"`
	Dropped          []Dropped  `json:"dropped"`
	// Settled says that the picks stood once equal gaps were those of their own
	// sets.
	Settled bool `json:"settled"`

	plan  *Plan
	field *field
}

// Pick is one of the pairs among which a builder decides.
type Pick struct {
	Kind PickKind `json:"pick"`
	Pair
	// StockDecides names the strings that are far from the wanted tension for
	// want of a heavier or lighter gauge: this, not feel, moves the lengths.
	StockDecides []Missing `json:"strings_in_stock_decide,omitempty"`
}

// Missing is a string more than 10 % from the wanted tension, strung with the
// heaviest or lightest gauge in stock (of its construction, where that binds).
type Missing struct {
	String    int                `json:"string"`
	Gauge     int                `json:"-"`
	Deviation unit.Ratio         `json:"tension_deviation_percent"`
	Wanted    unit.LinearDensity `json:"wanted_linear_density_g_per_m"`
	Heaviest  bool               `json:"heaviest"`
}

// Step is one row of the trade-off between the fan and the lowest string.
type Step struct {
	Pair
	// MoreInharmonicity is the change from the first row.
	MoreInharmonicity unit.Cents `json:"inharmonicity_change_cents"`
}

// Pick gives the pick of a kind; nil where there is none.
func (r *Result) Pick(k PickKind) *Pick {
	if i := slices.IndexFunc(r.Picks, func(p Pick) bool { return p.Kind == k }); i >= 0 {
		return &r.Picks[i]
	}
	return nil
}

// Preferred is the pick that is taken while no pair is chosen: the one asked
// for, else with gauges given the best feel, else clear enough where a wanted
// inharmonicity is stated, else the middle; nil where no pair was kept.
func (r *Result) Preferred() *Pick {
	order := []PickKind{r.plan.req.Feel.Prefer, ClearEnough, MiddlePick, BestFeel}
	if r.plan.req.Given != nil {
		order = []PickKind{r.plan.req.Feel.Prefer, BestFeel}
	}
	for _, k := range order {
		if p := r.Pick(k); p != nil {
			return p
		}
	}
	return nil
}

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
	c := newChooser(p)
	for _, at := range places {
		if f.points[at].fixed {
			continue
		}
		changed = true
		bass, treble := f.lengths(at)
		e2, cents, miss := c.ownSpacing(bass, treble, f.setOf(at))
		if miss.Limit != Kept {
			f.dropped.drop(miss, 1)
		}
		f.put(at, point{e2: e2, cents: cents, limit: miss.Limit, fixed: true}, c.set)
	}
	return changed
}

// ownSpacing works a pair out with equal gaps between the strings of its own
// set, beginning with a set: the set that is best for the spacing that it makes
// itself. Where none is found in a few rounds, the last is taken as it is.
func (c *chooser) ownSpacing(bass, treble unit.Length, set []int) (e2, cents float64, miss Miss) {
	p := c.p
	for range rounds {
		base, err := p.baseFor(set)
		if err != nil {
			return 0, 0, Miss{Limit: Unbuildable, Bass: bass, Treble: treble, Gauge: -1}
		}
		if e2, cents, miss = c.pairOf(base, bass, treble); miss.Limit != Kept && miss.Limit < InharmonicityLimit || slices.Equal(set, c.set) {
			return e2, cents, miss
		}
		set = slices.Clone(c.set)
	}
	copy(c.set, set)
	d, err := p.Detail(bass, treble, set)
	if err != nil {
		return 0, 0, Miss{Limit: Unbuildable, Bass: bass, Treble: treble, Gauge: -1}
	}
	miss = append(d.Broken, Miss{Bass: bass, Treble: treble, Gauge: -1})[0]
	return float64(d.Error * d.Error), d.Inharmonicity.Value(), miss
}

// fill works out what is printed.
func (p *Plan) fill(ctx context.Context, r *Result) error {
	f := r.field
	good := f.good()
	for _, v := range f.points {
		if v.limit == Kept {
			r.Kept++
		}
	}
	r.AsGood, r.Dropped = len(good), f.dropped.list()
	r.NotRemovable = unit.Ratio(sqrt(p.removed))
	if r.Kept == 0 {
		return ctx.Err()
	}
	r.Best, r.Allowed = unit.Ratio(sqrt(f.points[f.first(good, f.errorOf)].e2)), unit.Ratio(sqrt(f.allowed*f.allowed+p.removed))
	r.AllAsGood, r.NoneNear = r.AsGood == r.Kept, f.noneNear()
	picks, lacks := f.picks()
	r.ClearEnoughLacks = unit.Cents(lacks)
	for _, k := range picks {
		d, err := p.detailAt(f, k.at)
		if err != nil {
			return err
		}
		r.Picks = append(r.Picks, Pick{Kind: k.kind, Pair: f.spanned(d.Pair, k.at, good), StockDecides: p.missing(d)})
	}
	for _, at := range f.tradeOff(good) {
		d, err := p.detailAt(f, at)
		if err != nil {
			return err
		}
		s := Step{Pair: f.spanned(d.Pair, at, good)}
		if len(r.TradeOff) > 0 {
			s.MoreInharmonicity = s.Inharmonicity - r.TradeOff[0].Inharmonicity
		}
		r.TradeOff = append(r.TradeOff, s)
	}
	r.StopsSmallestFan, r.StopsLongestBass = p.stops(r)
	return ctx.Err()
}

// detailAt works out a pair of the grid.
func (p *Plan) detailAt(f *field, at int) (*Detail, error) {
	bass, treble := f.lengths(at)
	return p.Detail(bass, treble, f.setOf(at))
}

// missing finds the strings for which the stock decides.
func (p *Plan) missing(d *Detail) []Missing {
	var out []Missing
	for i, s := range d.Strings {
		if s.Target == 0 || p.targets.own || s.Deviation >= -farOff && s.Deviation <= farOff {
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
