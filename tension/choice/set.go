package choice

import (
	"math"
	"slices"
	"sort"

	"scalepair/tension"
)

// The two kinds of construction, as places in Plan.kinds.
const wound, plain = 0, 1

// either says that a string may have both kinds.
const either = -1

// setKinds parts the gauges that may be chosen by construction, and says which
// one each string keeps.
func (p *Plan) setKinds() {
	for _, g := range p.sorted {
		k := p.kindOf(g)
		p.kinds[k] = append(p.kinds[k], g)
	}
	for i := range p.strings {
		keep := either
		if p.ref != nil && p.req.Feel.Construction == LikeReferenceConstruction && p.targets.tension[i] > 0 {
			keep = p.kindOf(p.ref.Gauges[p.ref.like[i]])
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

// chooser finds and measures the set of one pair after another. Every goroutine has
// its own.
type chooser struct {
	p      *Plan // its own, lest another takes other means or wires
	places []place
	strung []*strung
	misses misses
	set    []int     // by string, stock indexes: the set of the pair at hand
	e2     []float64 // by string, its squared error
	kept   []int     // by string: the kind that it has to have on this pair, or either
	loose  []bool    // by string: gauges of unknown strength are admitted on this pair
}

func newChooser(p *Plan) *chooser {
	own := *p
	c := &chooser{p: &own, places: p.newPlaces(),
		set: make([]int, p.strings), e2: make([]float64, p.strings), kept: make([]int, p.strings), loose: make([]bool, p.strings)}
	for i := range p.strings {
		c.strung = append(c.strung, p.newStrung(i))
	}
	return c
}

// take measures a set on the pair whose places are set, and lists the limits that
// its strings break; known is false where a bend cannot be made.
func (c *chooser) take(set []int) (broken []Miss, known bool) {
	c.set, c.misses, known = set, misses{loose: true}, true
	c.p.takeMeans(set, c.places)
	for i, g := range set {
		e2, made := c.p.measure(i, g, &c.places[i], math.Inf(1), c.strung[i], &c.misses)
		c.e2[i], known = e2, known && made
	}
	return c.misses.list, known
}

// best is the least that a walk has found.
type best struct {
	e2    float64
	gauge int // -1 for none
	near  bool
}

// choose finds the set of least error among admissible gauges on the pair whose
// places are set; what it lists is what there is none for. Every string takes its
// least; where that breaks the ordering rule, an exact dynamic programme finds the
// set. A gauge whose strength is not known passes no limit on it while another is
// near the wanted tension; where none is, it is better than a string far off.
func (c *chooser) choose() []Miss {
	p := c.p
	for i := range p.strings {
		b := c.leastOf(i, false)
		if !b.near {
			b = c.leastOf(i, true)
		}
		if b.gauge < 0 {
			return []Miss{c.emptied(i)}
		}
		c.set[i], c.e2[i] = b.gauge, b.e2
	}
	if p.req.Ordering && !p.inOrder(c.set) && !c.reorder() {
		return []Miss{{Limit: OrderingRule, Gauge: -1}}
	}
	return nil
}

// leastOf is the admissible gauge of least error as string i, of the construction
// that it keeps where one of those is near.
func (c *chooser) leastOf(i int, loose bool) best {
	b := best{e2: math.Inf(1), gauge: -1}
	keep := c.p.keeps[i]
	c.loose[i], c.kept[i] = loose, keep
	c.walk(i, max(keep, 0), &b)
	if keep != either && (b.near || c.anyNear(i, keep)) {
		b.near = true
		return b
	}
	c.kept[i] = either
	c.walk(i, 1-max(keep, 0), &b)
	return b
}

// walk tries the gauges of a kind as string i, from that of the wanted tension to
// both sides, until the tension alone costs more than the best found.
func (c *chooser) walk(i, kind int, b *best) {
	list, at, want := c.p.kinds[kind], &c.places[i], c.p.targets.tension[i]
	from := sort.Search(len(list), func(k int) bool { return c.p.wires[list[k]].LinearDensity.KgPerM()*at.notes[0].speed2 >= want })
	for k := from; k < len(list) && c.p.beyond(i, list[k], at, true) <= b.e2; k++ {
		c.try(i, list[k], b)
	}
	for k := from - 1; k >= 0 && c.p.beyond(i, list[k], at, false) <= b.e2; k-- {
		c.try(i, list[k], b)
	}
}

// try takes gauge g as string i if it is admissible and costs less than the
// best so far, or as much and is lighter.
func (c *chooser) try(i, g int, b *best) {
	e2, ok := c.admit(i, g, b.e2)
	if !ok {
		return
	}
	b.near = b.near || math.Abs(c.p.mean(i, c.strung[i].logs)) <= near
	if e2 < b.e2 || b.gauge < 0 || c.p.wires[g].LinearDensity < c.p.wires[b.gauge].LinearDensity {
		b.e2, b.gauge = e2, g
	}
}

// admit is the squared error of gauge g as string i; false where a limit
// removes it or it costs more than most.
func (c *chooser) admit(i, g int, most float64) (float64, bool) {
	c.misses.list, c.misses.loose = c.misses.list[:0], c.loose[i]
	e2, known := c.p.measure(i, g, &c.places[i], most, c.strung[i], &c.misses)
	return e2, known && e2 <= most && len(c.misses.list) == 0
}

// anyNear looks through all gauges of a kind for an admissible one near the
// wanted tension, where the walk to the least met none.
func (c *chooser) anyNear(i, kind int) bool {
	return slices.ContainsFunc(c.p.kinds[kind], func(g int) bool {
		_, ok := c.admit(i, g, math.Inf(1))
		return ok && math.Abs(c.p.mean(i, c.strung[i].logs)) <= near
	})
}

// emptied is the miss of a string that no gauge is left for: of the limit that
// removed most, the gauge that missed by least.
func (c *chooser) emptied(i int) Miss {
	var removed tally
	for _, g := range c.p.sorted {
		if _, ok := c.admit(i, g, math.Inf(1)); !ok {
			removed.drop(c.misses.list[0])
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

// beyond bounds from below what the tension of gauge g, or of any gauge beyond it
// on the same side of the wanted tension, costs as string i: gauges are sorted by
// linear density, and tension rises with it but for the stretch. With q the
// textbook tension and c the greatest compliance in stock, a heavier one has
// T >= 2q/(1 + sqrt(1 + 4cq)), which rises with q, and a lighter one T <= q.
func (p *Plan) beyond(i, g int, at *place, heavier bool) float64 {
	want, sum := p.targets.tension[i], 0.0
	if want == 0 {
		return 0
	}
	for k, n := range p.tuned[i].notes {
		t := p.wires[g].LinearDensity.KgPerM() * at.notes[k].speed2
		r := math.Log(want / t)
		if heavier {
			r = math.Log(tension.Stretched(t, p.softest) / want)
		}
		if r = max(r, 0); p.req.By == Worst {
			sum = max(sum, r*r)
		} else {
			sum += n.weight * r * r
		}
	}
	return sum * slack
}
