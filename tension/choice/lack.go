package choice

import (
	"context"
	"math"
	"slices"

	"scalepair/gauges"
)

// Lack is a string that wants a gauge which the stock does not have, and the pair
// on which it does.
type Lack struct {
	Missing
	Pair Pair
}

// Lacks lists the strings for which the stock has no gauge that is near enough,
// where gauges are free: on a pick those more than 10 % from the wanted tension,
// and where there are none and feel stops the smallest fan, the one that is
// farthest from it on the pair that would have been smaller.
func (p *Plan) Lacks(r *Result, pick *Pick) (out []Lack) {
	if p.req.Given != nil || !p.CanSuggest() {
		return nil
	}
	d := p.drawn(pick.Bass, pick.Treble, pick.Gauges)
	for _, s := range d.Strings {
		if s.Target > 0 && math.Abs(float64(s.Deviation)) > float64(farOff) {
			out = append(out, Lack{Missing{String: s.Number, Gauge: s.Gauge, Deviation: s.Deviation, Wanted: s.Wanted}, d.Pair})
		}
	}
	stop := r.StopsSmallestFan
	if out != nil || stop == nil || stop.Kind != StopFeel {
		return out
	}
	d = p.drawn(stop.Pair.Bass, stop.Pair.Treble, stop.Pair.Gauges)
	far := slices.MaxFunc(d.Strings, func(a, b StringDetail) int {
		if math.Abs(float64(a.Deviation)) > math.Abs(float64(b.Deviation)) {
			return 1
		}
		return -1
	})
	if far.Target > 0 {
		out = append(out, Lack{Missing{String: far.Number, Gauge: far.Gauge, Deviation: far.Deviation, Wanted: far.Wanted}, d.Pair})
	}
	return out
}

// With searches again with gauges added to the stock, one for each of lacks, and
// says which of them are then taken on their pair; a limit may keep such a gauge
// from its string. No result where none is.
func (p *Plan) With(ctx context.Context, lacks []Lack, more []gauges.Gauge) (taken []int, r *Result, err error) {
	req := p.req
	req.Stock, req.Usable = slices.Concat(req.Stock, more), slices.Clone(req.Usable)
	for i := range more {
		req.Usable = append(req.Usable, len(p.req.Stock)+i)
	}
	q, err := Prepare(req)
	if err != nil {
		return nil, nil, err
	}
	for i, l := range lacks {
		if set, _ := q.Suggest(l.Pair.Bass, l.Pair.Treble); set != nil && set[l.String-1] == len(p.req.Stock)+i {
			taken = append(taken, i)
		}
	}
	if taken == nil {
		return nil, nil, nil
	}
	r, err = q.Search(ctx)
	return taken, r, err
}
