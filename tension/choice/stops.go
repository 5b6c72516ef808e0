package choice

import (
	"cmp"
	"math"
	"slices"

	"scalepair/data/unit"
)

// Stop says what keeps the longest bass from being longer, or the smallest fan
// from being smaller: what its neighbours, one step further, fail by.
type Stop struct {
	Kind StopKind `json:"kind"`
	// Pair is the neighbour spoken of; none with StopStraight and StopFeelAndMore.
	Pair Pair `json:"pair"`
	// Misses is what excludes it: one with StopExcluded, several with StopSeveral.
	Misses []Miss `json:"-"`
	// Allowed, with StopFeel, is the error that would be as good, beside Pair.Error.
	Allowed unit.Ratio `json:"allowed_feel_error_percent,omitempty"`
}

// StopKind is what stops a pick.
type StopKind int

const (
	StopStraight    StopKind = iota // the frets are straight: feel asks for no fan
	StopExcluded                    // one is as good, and only the range or one limit excludes it
	StopFeel                        // the best that is kept there is not as good
	StopSeveral                     // one is as good, and several limits exclude it
	StopFeelAndMore                 // feel, and a limit or the range
)

var stopKeys = []string{"straight", "excluded", "feel", "several", "feel_and_more"}

// MarshalText gives the kind's key.
func (k StopKind) MarshalText() ([]byte, error) { return []byte(stopKeys[k]), nil }

// stops says what stops the smallest fan and the longest bass.
func (p *Plan) stops(r *Result) (smallest, longest *Stop) {
	basses, trebles := beyond(p.req.Bass), beyond(p.req.Treble)
	if k := r.Pick(SmallestFan); k != nil {
		smallest = p.stop(r, smallerFans(basses, trebles, k.Difference), k.Difference == 0)
	}
	if k := r.Pick(LongestBass); k != nil {
		var next [][2]unit.Length
		if i := slices.IndexFunc(basses, func(b unit.Length) bool { return rounded(b.M()) > rounded(k.Bass.M()) }); i >= 0 {
			for _, t := range trebles {
				next = append(next, [2]unit.Length{basses[i], t})
			}
		}
		longest = p.stop(r, next, false)
	}
	return smallest, longest
}

// smallerFans lists the pairs one difference smaller than a pick's.
func smallerFans(basses, trebles []unit.Length, than unit.Length) [][2]unit.Length {
	var out [][2]unit.Length
	limit, next := rounded(math.Abs(than.M())), -1.0
	for _, b := range basses {
		for _, t := range trebles {
			switch d := rounded(math.Abs((b - t).M())); {
			case d >= limit || d < next:
			case d > next:
				out, next = [][2]unit.Length{{b, t}}, d
			default:
				out = append(out, [2]unit.Length{b, t})
			}
		}
	}
	return out
}

func (p *Plan) stop(r *Result, pairs [][2]unit.Length, straight bool) *Stop {
	if straight {
		return &Stop{Kind: StopStraight}
	}
	var list []*Detail
	for _, pair := range pairs {
		if pair[0] >= pair[1] || p.req.Neck.AllowReverse {
			if d := p.judge(pair[0], pair[1]); d != nil {
				list = append(list, d)
			}
		}
	}
	slices.SortStableFunc(list, func(a, b *Detail) int {
		return cmp.Compare(rounded(math.Abs(a.Difference.M())), rounded(math.Abs(b.Difference.M())))
	})
	good := func(d *Detail) bool {
		return !d.ErrorUnknown && felt(float64(d.Error*d.Error), p.removed) <= r.field.allowed
	}
	of := func(kind StopKind, is func(*Detail) bool) *Stop {
		if i := slices.IndexFunc(list, is); i >= 0 {
			return &Stop{Kind: kind, Pair: list[i].Pair, Misses: list[i].Broken}
		}
		return nil
	}
	if s := of(StopExcluded, func(d *Detail) bool { return good(d) && len(d.Broken) == 1 }); s != nil {
		return s
	}
	var kept *Detail
	for _, d := range list {
		if len(d.Broken) == 0 && !d.ErrorUnknown && (kept == nil || d.Error < kept.Error) {
			kept = d
		}
	}
	if kept != nil {
		return &Stop{Kind: StopFeel, Pair: kept.Pair, Allowed: r.Allowed}
	}
	return cmp.Or(of(StopSeveral, good), &Stop{Kind: StopFeelAndMore})
}

// judge works out a pair and all that excludes it, the range among it, with equal
// gaps those of its own set; nil where no neck can be drawn or no set found. Where
// limits on gauges leave a string without any, the set is that of least error
// without those limits, so that it can be said which it breaks.
func (p *Plan) judge(bass, treble unit.Length) *Detail {
	set := p.req.Given
	if set == nil {
		set, _ = p.Suggest(bass, treble)
	}
	if set == nil {
		free := *p
		free.req.Limits = Limits{}
		set, _ = free.Suggest(bass, treble)
	}
	if set == nil {
		return nil
	}
	d, err := p.Detail(bass, treble, set)
	if err != nil {
		return nil
	}
	for _, end := range []struct {
		value unit.Length
		tried []unit.Length
	}{{bass, p.req.Bass}, {treble, p.req.Treble}} {
		if bound := min(max(end.value, end.tried[0]), end.tried[len(end.tried)-1]); end.value != bound {
			d.Broken = append([]Miss{{Limit: Range, Value: end.value.M(), Bound: bound.M(), Gauge: -1, Bass: bass, Treble: treble}}, d.Broken...)
			break
		}
	}
	return d
}
