package choice

import (
	"cmp"
	"math"
	"slices"

	"scalepair/data/fault"
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

func compareOne(c Column) (Compared, error) {
	c.Request.Given = c.Set
	plan, err := Prepare(c.Request)
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
		out.Swaps = plan.Swaps(out.Detail)
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
// is on, the ordering rule beside its neighbours; those that mend something first,
// then the most helpful.
func (p *Plan) Swaps(d *Detail) []Swap {
	var out []Swap
	for i, own := range d.Gauges {
		best := Swap{String: i + 1, From: own, Mends: d.breaks(i + 1)}
		set := slices.Clone(d.Gauges)
		for _, g := range p.sorted {
			set[i] = g
			if g == own || p.strengthUnknown(g) || p.req.Ordering && !p.inOrder(set[max(0, i-1):min(len(set), i+2)]) {
				continue
			}
			other := p.drawn(d.Bass, d.Treble, set)
			if !other.ErrorUnknown && !other.breaks(i+1) && (best.Detail == nil || other.Error < best.Detail.Error) {
				best.To, best.Detail = g, other
			}
		}
		if best.Detail != nil && (best.Mends || d.Error-best.Detail.Error >= worthSwapping*p.req.Feel.Noticeable) {
			out = append(out, best)
		}
	}
	slices.SortStableFunc(out, func(a, b Swap) int {
		if a.Mends != b.Mends {
			return map[bool]int{true: -1, false: 1}[a.Mends]
		}
		return cmp.Compare(a.Detail.Error, b.Detail.Error)
	})
	return out
}

// breaks reports whether a string, by its number, breaks a limit or cannot make
// its bends.
func (d *Detail) breaks(number int) bool {
	return slices.ContainsFunc(d.Broken, func(m Miss) bool { return m.String == number })
}
