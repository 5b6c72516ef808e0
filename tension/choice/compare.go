package choice

import (
	"cmp"
	"fmt"
	"math"
	"slices"

	"scalepair/data/fault"
	"scalepair/fan"
)

// Column asks for one column of a comparison.
type Column struct {
	// Name stands in faults.
	Name string
	// Request is the whole request of the column; its grid holds one pair. Its
	// Given is not read.
	Request Request
	// Set is the column's set, by string, as indexes into the request's stock;
	// nil asks for the best set of the stock.
	Set []int
}

// Compared is one column worked out.
type Compared struct {
	Plan *Plan
	// Suggested says that the set is the best of the stock for this column.
	Suggested bool
	// Detail is nil where the stock has no set that keeps the limits on
	// strings; None is then the limit that removed most from one string.
	Detail *Detail
	None   Miss
	// Swaps are the single swaps that help, each with what it changes, the most
	// helpful first.
	Swaps []Swap
}

// Compare works out the columns of a comparison. Limits are reported and drop
// nothing; only the choice of a set keeps the limits on strings.
func Compare(columns []Column) ([]Compared, error) {
	var out []Compared
	var faults fault.List
	for _, c := range columns {
		one, err := compareOne(c)
		if err != nil {
			faults.Include(fault.Place{Input: c.Name}, err)
			continue
		}
		out = append(out, one)
	}
	return out, faults.Err()
}

// prepare makes a column ready.
func (c Column) prepare() (*Plan, error) {
	if len(c.Request.Bass) != 1 || len(c.Request.Treble) != 1 {
		panic(fmt.Sprintf("choice: column %q is not of one pair", c.Name))
	}
	c.Request.Given = c.Set
	return Prepare(c.Request)
}

func compareOne(c Column) (Compared, error) {
	plan, err := c.prepare()
	if err != nil {
		return Compared{}, err
	}
	out := Compared{Plan: plan, Suggested: c.Set == nil}
	bass, treble, set := c.Request.Bass[0], c.Request.Treble[0], c.Set
	if set == nil {
		if set = plan.onlySet(); set == nil && !plan.CanSuggest() {
			return out, errNoTarget
		}
		if plan.CanSuggest() {
			if set, out.None = plan.Suggest(bass, treble); set == nil {
				return out, nil
			}
		}
	}
	if out.Detail, err = plan.Detail(bass, treble, set); err == nil {
		out.Swaps, err = plan.Swaps(out.Detail)
	}
	return out, err
}

// alike is how little tensions differ that are called alike (judgement: about
// half of what a hand notices).
const alike = 0.02

// Alike reports whether every string's tension differs by less than 2 % between
// two details, tuning by tuning.
func Alike(a, b *Detail) bool {
	if len(a.Strings) != len(b.Strings) || len(a.Totals) != len(b.Totals) {
		return false
	}
	for i := range a.Strings {
		for c := range a.Totals {
			x, y := a.Strings[i].Tunings[c].Tension.Value.N(), b.Strings[i].Tunings[c].Tension.Value.N()
			if math.Abs(x-y) >= alike*min(x, y) {
				return false
			}
		}
	}
	return true
}

// OneSet is the set of the stock that suits the tunings of all columns best, each
// column counting alike, on the one pair that they have in common. Where there is
// none the set is nil, and the miss is what removed most from one string.
func OneSet(columns []Column) (set []int, none Miss, err error) {
	if len(columns) == 0 {
		return nil, Miss{}, nil
	}
	first := columns[0].Request
	all := first
	all.Given, all.Cases = nil, nil
	for _, c := range columns {
		if c.Request.Bass[0] != first.Bass[0] || c.Request.Treble[0] != first.Treble[0] {
			return nil, Miss{}, fault.Fault{Place: fault.Place{Input: c.Name}, What: "one set is chosen for the tunings of one pair", Remedy: "give one --pair, and ask again for the next"}
		}
		total := 0.0
		for _, one := range c.Request.Cases {
			total += one.Weight
		}
		for _, one := range c.Request.Cases {
			one.Weight /= total
			all.Cases = append(all.Cases, one)
		}
	}
	plan, err := Prepare(all)
	if err != nil {
		return nil, Miss{}, err
	}
	set, none = plan.Suggest(first.Bass[0], first.Treble[0])
	return set, none, nil
}

// Swap is one string with another gauge, and what that changes.
type Swap struct {
	String, From, To int // number; indexes into the stock
	// Mends says that the gauge as it is breaks a limit or cannot make its bends.
	Mends bool
	// Detail is the whole set then.
	Detail *Detail
}

// worthSwapping is by how much, as a part of what is noticeable, a swap has to
// lower the error to be listed (judgement).
const worthSwapping = 0.1

// Swaps lists, for each string of a detail, the one other gauge of the stock
// that lowers the pair's error most and keeps the limits on strings and, where it
// is on, the ordering rule beside its neighbours; the most helpful first.
// Lengths stay those of the set as it is while gauges are compared.
func (p *Plan) Swaps(d *Detail) ([]Swap, error) {
	frame, err := fan.NewFrame(d.Spec)
	if err != nil {
		return nil, err
	}
	places, all, e2 := p.newPlaces(), make([]*strung, p.strings), make([]float64, p.strings)
	mends := make([]bool, p.strings)
	for i, g := range d.Gauges {
		p.put(&frame, i, &places[i])
		all[i] = p.newStrung(i)
		m := misses{loose: true}
		var known bool
		if e2[i], known = p.measure(i, g, &places[i], math.Inf(1), all[i], &m); !known {
			e2[i] = math.Inf(1)
		}
		mends[i] = !known || len(m.list) > 0
	}
	now := sqrt(mean(p.squares(e2, all)))
	var out []Swap
	for i, own := range d.Gauges {
		to, least := p.bestSwap(d, i, places, all, e2)
		if to < 0 || !mends[i] && !(now-least >= worthSwapping*float64(p.req.Feel.Noticeable)) {
			continue
		}
		set := slices.Clone(d.Gauges)
		set[i] = to
		s := Swap{String: i + 1, From: own, To: to, Mends: mends[i]}
		if s.Detail, err = p.Detail(d.Bass, d.Treble, set); err != nil {
			return nil, err
		}
		out = append(out, s)
	}
	slices.SortStableFunc(out, Swap.before)
	return out, nil
}

// bestSwap is the gauge for string i that gives the least error of the set, and
// that error; -1 where none keeps the limits.
func (p *Plan) bestSwap(d *Detail, i int, places []place, all []*strung, e2 []float64) (to int, least float64) {
	to, least = -1, math.Inf(1)
	others, costs := slices.Clone(all), slices.Clone(e2)
	set := slices.Clone(d.Gauges)
	others[i] = p.newStrung(i)
	for _, g := range p.sorted {
		set[i] = g
		m := misses{first: true}
		cost, known := p.measure(i, g, &places[i], math.Inf(1), others[i], &m)
		if g == d.Gauges[i] || !known || p.req.Ordering && !p.inOrder(set[max(0, i-1):min(len(set), i+2)]) {
			continue
		}
		costs[i] = cost
		if e := sqrt(mean(p.squares(costs, others))); e < least {
			to, least = g, e
		}
	}
	return to, least
}

// before orders swaps: those that mend something first, then the most helpful.
func (s Swap) before(o Swap) int {
	order := func(s Swap) float64 {
		switch {
		case s.Detail.ErrorUnknown:
			return math.Inf(1)
		case s.Mends:
			return float64(s.Detail.Error) - 1e6
		}
		return float64(s.Detail.Error)
	}
	return cmp.Compare(order(s), order(o))
}
