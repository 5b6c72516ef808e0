package choice

import (
	"math"

	"scalepair/tension"
)

// The two kinds of construction, as places in Plan.kinds.
const wound, plain = 0, 1

// either says that a string may have both kinds.
const either = -1

// setKinds parts the gauges that may be chosen by construction, and says which
// one each string keeps.
func (p *Plan) setKinds() {
	p.rank = make([]int, len(p.wires))
	for r, g := range p.sorted {
		p.rank[g] = r
		k := p.kindOf(g)
		p.kinds[k] = append(p.kinds[k], g)
	}
	for i := range p.strings {
		keep := either
		if p.ref != nil && p.req.Feel.Construction == LikeReferenceConstruction && p.targets.tension[i] > 0 {
			keep = p.kindOf(p.ref.gauges[p.ref.like[i]])
		}
		p.keeps = append(p.keeps, keep)
	}
}

func (p *Plan) kindOf(g int) int {
	if p.wires[g].Plain {
		return plain
	}
	return wound
}

// near is how far, as a logarithm, a gauge may be from the wanted tension for its
// construction to be kept: 10 % (judgement).
var near = math.Log(1.1)

// chooser finds the best set of one pair after another, without allocating.
// Every goroutine of a search has its own.
type chooser struct {
	p      *Plan
	places []place
	strung []*strung
	misses misses
	set    []int     // by string, stock indexes: the set of the pair at hand
	e2     []float64 // by string, its squared error
	from   [2][]int  // by kind and string: where the last pair's best stood
	kept   []int     // by string: the kind that it has to have on this pair, or either
	loose  []bool    // by string: gauges of unknown strength are admitted on this pair

	costs   [][]float64 // by string and rank; for sets that break the ordering rule
	steps   chain
	ordered []int // the last set that the ordering rule made; nil at first
}

func newChooser(p *Plan) *chooser {
	c := &chooser{p: p, places: p.newPlaces(), misses: misses{first: true},
		set: make([]int, p.strings), e2: make([]float64, p.strings), kept: make([]int, p.strings), loose: make([]bool, p.strings)}
	for i := range p.strings {
		c.strung = append(c.strung, p.newStrung(i))
	}
	c.from[wound], c.from[plain] = make([]int, p.strings), make([]int, p.strings)
	return c
}

// best is the least that a walk has found.
type best struct {
	e2    float64
	gauge int // -1 for none
	near  bool
}

// choose finds the set of least error among admissible gauges, whose places are
// set; the miss says what there is none for. Every string takes its least; where
// that breaks the ordering rule, an exact dynamic programme finds the set. A gauge
// whose strength is not known passes no limit on it while another is near the
// wanted tension; where none is, it is better than a string far off.
func (c *chooser) choose() Miss {
	p := c.p
	for i := range p.strings {
		c.loose[i] = false
		b := c.leastOf(i)
		if !b.near && p.unsure {
			c.loose[i] = true
			b = c.leastOf(i)
		}
		if b.gauge < 0 {
			return c.emptied(i)
		}
		c.set[i], c.e2[i] = b.gauge, b.e2
	}
	if p.req.Ordering && !p.inOrder(c.set) && !c.reorder() {
		return Miss{Limit: OrderingRule, Gauge: -1}
	}
	return Miss{Gauge: -1}
}

// leastOf is the admissible gauge of least error as string i.
func (c *chooser) leastOf(i int) best {
	b := best{e2: math.Inf(1), gauge: -1}
	keep := c.p.keeps[i]
	if c.kept[i] = keep; keep == either {
		c.walk(i, wound, &b)
		c.walk(i, plain, &b)
		return b
	}
	c.walk(i, keep, &b)
	if !b.near {
		b.near = c.anyNear(i, keep, &b)
	}
	if !b.near {
		c.kept[i] = either
		c.walk(i, 1-keep, &b)
	}
	return b
}

// walk tries the gauges of a kind as string i, from where the last pair's best
// stood to both sides, until the tension alone costs more than the best found:
// the gauges are sorted by linear density, so tension rises with them but for
// the stretch, which is bounded.
func (c *chooser) walk(i, kind int, b *best) {
	list, from := c.p.kinds[kind], c.from[kind][i]
	for k := from; k < len(list) && c.p.heavier(i, list[k], &c.places[i]) <= b.e2; k++ {
		if c.try(i, list[k], b) {
			c.from[kind][i] = k
		}
	}
	for k := from - 1; k >= 0 && c.p.lighter(i, list[k], &c.places[i]) <= b.e2; k-- {
		if c.try(i, list[k], b) {
			c.from[kind][i] = k
		}
	}
}

// try takes gauge g as string i if it is admissible and costs less than the
// best so far, or as much and is lighter.
func (c *chooser) try(i, g int, b *best) bool {
	e2, ok := c.admit(i, g, b.e2)
	if !ok {
		return false
	}
	b.near = b.near || math.Abs(c.p.mean(i, c.strung[i].logs)) <= near
	if e2 == b.e2 && b.gauge >= 0 && c.p.rank[g] > c.p.rank[b.gauge] {
		return false
	}
	b.e2, b.gauge = e2, g
	return true
}

// admit is the squared error of gauge g as string i; false where a limit
// removes it or it costs more than most.
func (c *chooser) admit(i, g int, most float64) (float64, bool) {
	c.misses.list, c.misses.loose = c.misses.list[:0], c.loose[i]
	return c.p.measure(i, g, &c.places[i], most, c.strung[i], &c.misses)
}

// anyNear looks through all gauges of a kind for an admissible one near the
// wanted tension, where the walk to the least met none.
func (c *chooser) anyNear(i, kind int, b *best) bool {
	if b.gauge < 0 {
		return false
	}
	for _, g := range c.p.kinds[kind] {
		if _, ok := c.admit(i, g, math.Inf(1)); ok && math.Abs(c.p.mean(i, c.strung[i].logs)) <= near {
			return true
		}
	}
	return false
}

// emptied is the miss of a string that no gauge is left for: of the limit that
// removed most, the gauge that missed by least.
func (c *chooser) emptied(i int) Miss {
	var removed tally
	for _, g := range c.p.sorted {
		if _, ok := c.admit(i, g, math.Inf(1)); !ok {
			m := c.misses.list[0]
			m.String, m.Gauge = i+1, g
			removed.drop(m, 1)
		}
	}
	most := removed[Kept]
	for _, d := range removed {
		if d.Pairs > most.Pairs {
			most = d
		}
	}
	return most.Nearest
}

// slack covers the rounding of a bound.
const slack = 1 - 1e-9

// heavier bounds from below what the tension of gauge g, or of any heavier one,
// costs as string i. With q the textbook tension and c the greatest compliance
// in stock, T >= 2q/(1 + sqrt(1 + 4cq)), which rises with q.
func (p *Plan) heavier(i, g int, at *place) float64 {
	want, sum := p.targets.tension[i], 0.0
	for k := range at.notes {
		least := tension.Stretched(p.wires[g].LinearDensity.KgPerM()*at.notes[k].speed2, p.softest)
		if want > 0 && least > want {
			sum = p.also(sum, i, k, least/want)
		}
	}
	return sum * slack
}

// lighter bounds from below what the tension of gauge g, or of any lighter one,
// costs as string i, by T <= q.
func (p *Plan) lighter(i, g int, at *place) float64 {
	want, sum := p.targets.tension[i], 0.0
	for k := range at.notes {
		if most := p.wires[g].LinearDensity.KgPerM() * at.notes[k].speed2; most < want {
			sum = p.also(sum, i, k, want/most)
		}
	}
	return sum * slack
}

// also blends ln(r)^2 of one more note, r >= 1, into a bound, without a
// logarithm: ln r >= 2 (r - 1)/(r + 1), since both are 0 at 1 and the slopes
// differ by (r - 1)^2/(r (r + 1)^2) >= 0.
func (p *Plan) also(sum float64, i, k int, r float64) float64 {
	l := 2 * (r - 1) / (r + 1)
	if p.req.By == Worst {
		return max(sum, l*l)
	}
	return sum + p.tuned[i].notes[k].weight*l*l
}
