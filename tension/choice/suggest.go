package choice

import (
	"slices"

	"scalepair/data/fault"
	"scalepair/data/unit"
	"scalepair/fan"
)

// Suggest is the set of least error of the stock for one pair, exact as in a
// search, whatever gauges the request gives; with equal gaps, for the spacing
// that it makes itself. Limits on the pair and the set as a whole are left to a
// Detail to report. Where there is none the set is nil, and the miss is the limit
// that removed most from one string.
func (p *Plan) Suggest(bass, treble unit.Length) (set []int, none Miss) {
	c := newChooser(p)
	base, err := fan.NewBase(p.spacedFor(nil))
	for range rounds {
		if err != nil {
			return nil, Miss{Limit: Unbuildable, Bass: bass, Treble: treble, Gauge: -1}
		}
		frame, miss := p.frameOf(base, bass, treble)
		if miss.Limit != Kept {
			return nil, miss
		}
		p.putAll(&frame, c.places)
		if broken := c.choose(); broken != nil {
			broken[0].Bass, broken[0].Treble = bass, treble
			return nil, broken[0]
		}
		if !p.gaps || slices.Equal(set, c.set) {
			return slices.Clone(c.set), Miss{}
		}
		set = slices.Clone(c.set)
		base, err = fan.NewBase(p.spacedFor(set))
	}
	return set, Miss{}
}

// CanSuggest reports whether the error parts one set from another: tension or
// bending force has a target that does not come from the set itself.
func (p *Plan) CanSuggest() bool {
	for i := range p.strings {
		if p.targets.tension[i] > 0 || p.targets.force[i] != nil {
			return true
		}
	}
	return false
}

// onlySet is the set that uses every gauge that may be chosen once, where there
// are just as many as strings and the ordering rule says where each goes; else nil.
func (p *Plan) onlySet() []int {
	if !p.req.Ordering || len(p.sorted) != p.strings || !p.inOrder(p.sorted) {
		return nil
	}
	return slices.Clone(p.sorted)
}

// errNoTarget says that gauges are to be chosen, and nothing says by what.
var errNoTarget = fault.Fault{What: "no set can be suggested: neither tension nor bending force has a target that any set could meet",
	Remedy: "give the gauges, describe a [reference], or say under [feel] what tension is wanted"}
