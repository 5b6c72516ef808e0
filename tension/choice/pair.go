package choice

import (
	"math"

	"scalepair/data/unit"
	"scalepair/fan"
)

// searcher tries pairs one after another, without allocating. Every
// goroutine of a search has its own.
type searcher struct {
	p      *Plan
	seats  []seat
	rungs  []int // the set of the pair at hand, as rungs
	set    []int // the same as stock indexes
	least  []float64
	before []lastLeast
	parts  []squares // by string, what the rung at hand contributes
	feel   *strung
	misses misses
	travel travelMemo
	made   madeBends

	// most is what a pair may cost; a dearer one is given up. order is that in
	// which its strings are looked at.
	most  float64
	order []int

	// For the pairs whose best gauges break the ordering rule; nil until one
	// comes, see withAll.
	costs   seatCosts
	steps   *ladderSearch
	ordered []int // the last set that such a pair ended with; nil at first

	removed [reasons]int
	nearest [reasons]Miss
}

func newSearcher(p *Plan) *searcher {
	rungs := len(p.rungs.w)
	return &searcher{
		p: p, seats: p.newPositions(), feel: p.newStrung(),
		rungs: make([]int, p.strings), set: make([]int, p.strings),
		least: make([]float64, p.strings), parts: make([]squares, p.strings), before: make([]lastLeast, p.strings),
		misses: misses{first: true}, travel: newTravelMemo(p.strings, rungs),
		made: madeBends{perEA: make([]float64, len(p.req.Cases)*len(p.req.Feel.BendFrets))},
		most: math.Inf(1), order: indexes(p.strings),
	}
}

// withAll makes room for the costs of every rung as every string.
func (w *searcher) withAll() {
	if w.costs != nil {
		return
	}
	rungs := len(w.p.rungs.w)
	w.costs, w.steps = make(seatCosts, w.p.strings), newLadderSearch(w.p.strings, rungs)
	for i := range w.costs {
		w.costs[i] = make([]float64, rungs)
	}
}

// try settles one pair: its frame, the score-best set in w.set and the
// squares of that set; or the limit that dropped it.
func (w *searcher) try(bassMM, trebleMM float64) (fan.Frame, squares, Miss) {
	frame, miss := w.p.frameWithin(bassMM, trebleMM)
	if miss.Reason != Kept {
		return frame, squares{}, miss
	}
	var total squares
	if w.p.req.Given != nil {
		total, miss = w.takeGiven(&frame)
	} else {
		total, miss = w.chooseSet(&frame)
	}
	miss.BassMM, miss.TrebleMM = bassMM, trebleMM
	return frame, total, miss
}

// tooDifferent tells whether the limit on the difference drops a pair, whatever
// else does.
func (p *Plan) tooDifferent(bassMM, trebleMM float64) bool {
	limit := p.req.Limits.DifferenceMM
	return limit > 0 && math.Abs(bassMM-trebleMM) > limit*(1+limitSlack)
}

// frameWithin settles a pair's geometry and looks at the limits on a pair.
func (p *Plan) frameWithin(bassMM, trebleMM float64) (fan.Frame, Miss) {
	miss := Miss{BassMM: bassMM, TrebleMM: trebleMM, Gauge: -1}
	if bassMM < trebleMM && !p.req.Neck.AllowReverse {
		miss.Reason, miss.Value = ReverseFan, bassMM-trebleMM
		return fan.Frame{}, miss
	}
	frame, reason := p.base.Frame(unit.MM(bassMM), unit.MM(trebleMM))
	if reason != fan.Fits {
		miss.Reason, miss.Neck = Unbuildable, reason
		return frame, miss
	}
	p.pairLimits(&frame, func(r Reason, value, limit float64) bool {
		miss.Reason, miss.Value, miss.Limit = r, value, limit
		return true
	})
	return frame, miss
}

// limitSlack keeps a value that meets a limit exactly, but for the rounding of
// inches to metres, from counting as beyond it.
const limitSlack = 1e-9

// pairLimits reports the limits that a frame breaks, in the order of the
// reasons, until report says to stop.
func (p *Plan) pairLimits(f *fan.Frame, report func(r Reason, value, limit float64) bool) {
	lim := &p.req.Limits
	over := func(r Reason, value, limit float64) bool {
		return limit > 0 && value > limit*(1+limitSlack) && report(r, value, limit)
	}
	if over(Difference, math.Abs(f.Difference().MM()), lim.DifferenceMM) ||
		over(FretSlant, p.fretSlant(f), lim.FretSlantRad) ||
		over(SaddleSlant, math.Abs(math.Atan(f.SaddleTan())), lim.SaddleSlantRad) ||
		over(NutToFret1, f.NutToFret1().MM(), lim.NutToFret1MM) {
		return
	}
	if short := p.blankShortMM(f); short > 0 {
		report(BlankSize, short, 0)
	}
}

// fretSlant is the greatest slant of nut and frets, without its sign. The
// slant rises or falls steadily along the board, so an end has it.
func (p *Plan) fretSlant(f *fan.Frame) float64 {
	last := f.TanSlant(float64(p.req.Neck.Frets))
	return math.Atan(max(math.Abs(f.NutTan()), math.Abs(last)))
}

// blankShortMM is how much the best of the blanks on offer is too small, in
// the direction in which it lacks more; 0 or less where one serves, or where
// none is asked for.
func (p *Plan) blankShortMM(f *fan.Frame) float64 {
	if p.req.Limits.Blanks == nil {
		return 0
	}
	need := f.LeastBlank()
	short := math.Inf(1)
	for _, o := range p.req.Limits.Blanks {
		short = min(short, max(need.Length-o.Length, need.Width-o.Width).MM())
	}
	return short
}

// takeGiven measures the given gauges; any limit drops the pair.
func (w *searcher) takeGiven(f *fan.Frame) (squares, Miss) {
	var total squares
	all := w.p.newOwnMeans()
	for i, g := range w.p.req.Given {
		w.p.seatOn(f, i, &w.seats[i])
		w.set[i] = g
		w.misses.list = w.misses.list[:0]
		w.p.measure(i, g, &w.seats[i], w.feel, &w.misses)
		if len(w.misses.list) > 0 {
			return total, w.onString(w.misses.list[0], i, g)
		}
		total.add(w.p.squaresOf(i, g, w.feel))
		all.take(i, w.feel)
	}
	total.add(all.squares())
	return total, Miss{Gauge: -1}
}

func (w *searcher) onString(m Miss, i, g int) Miss {
	m.String, m.Gauge = i+1, g
	return m
}

// chooseSet finds the score-best set among admissible gauges.
func (w *searcher) chooseSet(f *fan.Frame) (squares, Miss) {
	sum := 0.0
	for _, i := range w.order {
		w.p.seatOn(f, i, &w.seats[i])
		if !w.leastOn(i, w.most-sum) {
			if !math.IsInf(w.most, 1) {
				return squares{}, Miss{Reason: dearer, Gauge: -1}
			}
			w.fillCosts(i)
			return squares{}, w.emptyChoice()
		}
		sum += w.least[i]
	}
	if w.p.req.Ordering && !w.p.rungs.ordered(w.rungs) && !w.reorder() {
		return squares{}, Miss{Reason: OrderingRule, Gauge: -1}
	}
	var total squares
	for i, k := range w.rungs {
		w.set[i] = w.p.rungs.stock[k]
		total.add(w.parts[i])
	}
	return total, Miss{Gauge: -1}
}

// fillCosts works out the contribution of every rung as string i, and counts
// the limits that remove rungs.
func (w *searcher) fillCosts(i int) {
	w.withAll()
	clear(w.removed[:])
	for k := range w.p.rungs.stock {
		part, miss := w.contribution(i, k)
		w.costs[i][k] = part.score(w.p.req.Feel.Weights)
		if miss.Reason != Kept {
			w.costs[i][k] = math.Inf(1)
			w.remove(miss)
		}
	}
}

// contribution is what a rung gives as string i, or the first limit it breaks.
func (w *searcher) contribution(i, k int) (squares, Miss) {
	g := w.p.rungs.stock[k]
	w.misses.list = w.misses.list[:0]
	w.p.measure(i, g, &w.seats[i], w.feel, &w.misses)
	if len(w.misses.list) > 0 {
		return squares{}, w.onString(w.misses.list[0], i, g)
	}
	return w.p.squaresOf(i, g, w.feel), Miss{}
}

// remove counts a gauge that a limit took from a string's choice, and keeps
// the one nearest to the limit.
func (w *searcher) remove(m Miss) {
	w.removed[m.Reason]++
	if w.removed[m.Reason] == 1 || m.Excess() < w.nearest[m.Reason].Excess() {
		w.nearest[m.Reason] = m
	}
}

// emptyChoice is the miss of a string with no gauge left: that of the limit
// that removed most.
func (w *searcher) emptyChoice() Miss {
	most := Kept
	for r, count := range w.removed {
		if count > w.removed[most] {
			most = Reason(r)
		}
	}
	return w.nearest[most]
}
