package choice

import (
	"math"

	"scalepair/fan"
)

// Way is the set nearest to the wanted tension that differs from a given set
// in so many strings.
type Way struct {
	// Swaps are the strings with another gauge, string 1 first; none for the
	// set as it is.
	Swaps []Swap
	// Detail is the set then, worked out in full.
	Detail *Detail
	// Within says that the set then comes within the misfit asked for, and that
	// no string breaks a limit that some gauge of the stock would keep.
	Within bool
}

// Swap is one string with another gauge; From and To are indexes into the
// stock.
type Swap struct{ String, From, To int }

// mostEvenSwaps bounds the swaps that are tried when the target is the set's
// own mean, where every set must be looked at (judgement: past three swaps it
// is another set).
const mostEvenSwaps = 3

// Ways lists how a set comes within a tension misfit (in percent), fewest
// swaps first: the set as it is, then for one swap, two, and so on, the set of
// least tension misfit, as long as a further swap helps, up to the first that
// comes within. Swapped gauges are of the usable stock and keep the limits on
// strings; a string that breaks one must be swapped if any gauge keeps them.
// The ordering rule, where it is on, holds between neighbours of which one is
// swapped: two that stay are the builder's own.
//
// No set of the stock does better: the search is exact. With the set's own
// mean as the target it is so up to three swaps, and no more are tried. While
// sets are compared own lengths stay those of the given set; under equal gaps
// between strings they move by some hundredths of a millimetre with the
// gauges, which the details show. The result is nil without a wanted tension.
func (p *Plan) Ways(d *Detail, within float64) ([]Way, error) {
	if !p.HasTerm(TensionTerm) {
		return nil, nil
	}
	options, err := p.swapOptions(d)
	if err != nil {
		return nil, err
	}
	picks := leastBySwaps(options, p.req.Ordering)
	if p.req.Feel.Tension.Source == OwnMean {
		picks = p.evenBySwaps(options)
	}
	asIs := Way{Detail: d, Within: d.TensionMisfit <= within && stays(options)}
	ways := []Way{asIs}
	least := math.Inf(1)
	if stays(options) {
		least = d.TensionMisfit
	}
	for _, pick := range picks[1:] {
		if ways[len(ways)-1].Within {
			break
		}
		if pick == nil {
			continue
		}
		way, err := p.way(d, options, pick, within)
		if err != nil {
			return nil, err
		}
		if way.Detail.TensionMisfit < least {
			least = way.Detail.TensionMisfit
			ways = append(ways, way)
		}
	}
	return ways, nil
}

// way works out a set picked from options.
func (p *Plan) way(d *Detail, options [][]option, pick []int, within float64) (Way, error) {
	var out Way
	set := make([]int, len(pick))
	for i, o := range pick {
		set[i] = options[i][o].gauge
		if !options[i][o].kept {
			out.Swaps = append(out.Swaps, Swap{String: i + 1, From: d.Gauges[i], To: set[i]})
		}
	}
	var err error
	out.Detail, err = p.Detail(d.BassMM, d.TrebleMM, set)
	if err != nil {
		return out, err
	}
	out.Within = out.Detail.TensionMisfit <= within
	return out, nil
}

// option is one gauge that may be a string, or the one that is.
type option struct {
	gauge int
	w     float64 // linear density, kg/m
	plain bool
	kept  bool
	cost  float64   // what its tension adds to the mean square; 0 where the target is the set's own mean
	logs  []float64 // ln of its tension, by case
}

// stays says whether every string's own gauge is an option.
func stays(options [][]option) bool {
	for _, list := range options {
		if !list[0].kept {
			return false
		}
	}
	return true
}

// swapOptions lists, string by string, the gauge that is, first, and then all
// that keep the limits, lightest first. The gauge that is breaks a limit: it is
// no option, unless nothing else is one.
func (p *Plan) swapOptions(d *Detail) ([][]option, error) {
	frame, err := fan.NewFrame(d.Spec)
	if err != nil {
		return nil, err
	}
	seats := p.newPositions()
	out := make([][]option, p.strings)
	for i, own := range d.Gauges {
		p.seatOn(&frame, i, &seats[i])
		asIs, keeps := p.optionOf(i, own, &seats[i])
		asIs.kept = true
		list := []option{asIs}
		for _, g := range p.rungs.stock {
			if g == own {
				continue
			}
			if o, ok := p.optionOf(i, g, &seats[i]); ok {
				list = append(list, o)
			}
		}
		if !keeps && len(list) > 1 {
			list = list[1:]
		}
		out[i] = list
	}
	return out, nil
}

// optionOf measures gauge g as string i; false where it breaks a limit.
func (p *Plan) optionOf(i, g int, s *seat) (option, bool) {
	f := p.newStrung()
	var m misses
	p.measure(i, g, s, f, &m)
	o := option{gauge: g, w: p.wires[g].LinearDensity, plain: p.wires[g].Plain, cost: p.tensionSquare(i, f)}
	for _, t := range f.tensionN {
		o.logs = append(o.logs, math.Log(t))
	}
	return o, len(m.list) == 0
}

// mayNeighbour says whether b may stand on the bass side of a.
func mayNeighbour(a, b option, ordered bool) bool {
	return !ordered || a.kept && b.kept || b.w >= a.w && (!b.plain || a.plain)
}

// leastBySwaps gives, by number of swaps, the options of least total cost, nil
// where no set has so many. It is the exact optimum: string by string from the
// treble, the least total with this string at option o and s swaps so far is
// its cost plus the least total of the string before over all options that may
// stand beside o, with s swaps less o's own. Of equal totals the earlier, that
// is the lighter, option is taken.
//
// Source: ours, Bellman's principle of optimality on a chain, with the swaps
// counted along.
func leastBySwaps(options [][]option, ordered bool) [][]int {
	n := len(options)
	cells := make([][][]swapCell, n)
	for i, list := range options {
		cells[i] = make([][]swapCell, len(list))
		for o, opt := range list {
			cells[i][o] = make([]swapCell, n+1)
			for s := range cells[i][o] {
				cells[i][o][s] = bestBefore(options, cells, i, opt, s, ordered)
			}
		}
	}
	out := make([][]int, n+1)
	for s := range out {
		out[s] = walkBack(options, cells, s)
	}
	return out
}

// swapCell is the least total of strings 1 to i with string i at one option
// and so many swaps, and the option of the string before on that way.
type swapCell struct {
	total float64
	from  int
}

func bestBefore(options [][]option, cells [][][]swapCell, i int, opt option, s int, ordered bool) swapCell {
	before := s
	if !opt.kept {
		before--
	}
	cell := swapCell{total: math.Inf(1), from: -1}
	switch {
	case before < 0:
		return cell
	case i == 0:
		if before == 0 {
			cell.total = opt.cost
		}
		return cell
	}
	for o, prev := range options[i-1] {
		total := cells[i-1][o][before].total + opt.cost
		if total < cell.total && mayNeighbour(prev, opt, ordered) {
			cell = swapCell{total, o}
		}
	}
	return cell
}

func walkBack(options [][]option, cells [][][]swapCell, s int) []int {
	last := len(cells) - 1
	at, least := -1, math.Inf(1)
	for o := range cells[last] {
		if t := cells[last][o][s].total; t < least {
			at, least = o, t
		}
	}
	if at < 0 {
		return nil
	}
	pick := make([]int, last+1)
	for i := last; i >= 0; i-- {
		pick[i] = at
		from := cells[i][at][s].from
		if !options[i][at].kept {
			s--
		}
		at = from
	}
	return pick
}
