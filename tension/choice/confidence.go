package choice

import (
	"cmp"
	"math"
	"math/rand/v2"
	"runtime"
	"slices"
	"sync"
	"sync/atomic"

	"scalepair/data/unit"
	"scalepair/fan"
	"scalepair/gauges"
	"scalepair/tension"
)

// DefaultTrials and DefaultSeed are what a confidence uses unless told.
const (
	DefaultTrials = 1000
	DefaultSeed   = 1
)

// mostCompared is how many distinct pairs a confidence compares (judgement:
// beyond, a list helps nobody to decide).
const mostCompared = 40

// tieShare is the share of draws in which a pair must beat the best to count
// as not told apart from it.
const tieShare = 0.05

// Confidence says how far the ranking can be trusted, given how well the unit
// weights and core diameters are known. Moduli, densities and the model's own
// errors are not drawn.
type Confidence struct {
	Trials int
	Seed   uint64
	// Standing has the compared pairs, best first: the distinct best ones.
	Standing []Standing
	// Tie has the places in Standing of the best pair and of those not told
	// apart from it, smallest difference first.
	Tie []int
	// The ranges that the tie spans, least and greatest.
	BassMM, TrebleMM, DifferenceMM [2]float64
	// Cut says that even the last of the compared pairs is not told apart, so
	// that the tie may be wider than the ranges.
	Cut bool
}

// Standing is one compared pair.
type Standing struct {
	Candidate
	Wins      float64 // share of draws in which its score is the smallest
	BeatsBest float64 // share of draws in which it beats the best pair
	Told      bool    // told apart from the best pair
}

// drawn is the memory for scoring pairs in one draw.
type drawn struct {
	p     Plan // the plan with this draw's wires and targets
	stock []gauges.Drawn
	feel  *strung
	score []float64
}

// setOut is a compared pair with all worked out that no draw changes.
type setOut struct {
	gauges []int
	seats  []seat
}

// Confidence draws the stock again and again, scores the compared pairs of a
// result with their sets as chosen, and counts. Equal arguments give equal
// results, whatever the number of processors. stock draws in the order of the
// request's Stock.
func (p *Plan) Confidence(r *Result, stock *gauges.Drawer, draws int, seed uint64) *Confidence {
	return p.ConfidenceWatched(r, stock, draws, seed, Watch{})
}

// ConfidenceWatched is Confidence under watch.
func (p *Plan) ConfidenceWatched(r *Result, stock *gauges.Drawer, draws int, seed uint64, watch Watch) *Confidence {
	c := &Confidence{Trials: draws, Seed: seed}
	if len(r.Compared) == 0 {
		return c
	}
	pairs := make([]setOut, len(r.Compared))
	for j, candidate := range r.Compared {
		pairs[j] = p.setOut(candidate)
	}
	wins, beats := p.countTrials(pairs, stock, draws, seed, watch)
	for j, candidate := range r.Compared {
		s := Standing{Candidate: candidate,
			Wins: float64(wins[j]) / float64(draws), BeatsBest: float64(beats[j]) / float64(draws)}
		s.Told = j > 0 && s.BeatsBest < tieShare
		c.Standing = append(c.Standing, s)
	}
	c.setTie()
	return c
}

func (p *Plan) setOut(c Candidate) setOut {
	out := setOut{gauges: c.Gauges}
	frame, reason := p.base.Frame(unit.MM(c.BassMM), unit.MM(c.TrebleMM))
	if reason != fan.Fits {
		panic("a kept pair no longer fits its neck")
	}
	out.seats = p.newPositions()
	for i := range out.seats {
		p.seatOn(&frame, i, &out.seats[i])
	}
	return out
}

// countTrials counts, by pair, the draws that it wins and those in which it
// beats the first.
func (p *Plan) countTrials(pairs []setOut, stock *gauges.Drawer, draws int, seed uint64, watch Watch) (wins, beats []int) {
	wins, beats = make([]int, len(pairs)), make([]int, len(pairs))
	var next atomic.Int64
	var wait sync.WaitGroup
	var sum sync.Mutex
	for range min(runtime.GOMAXPROCS(0), draws) {
		wait.Go(func() {
			w, b := make([]int, len(pairs)), make([]int, len(pairs))
			d := p.newDrawn(len(pairs))
			for {
				n := next.Add(1) - 1
				if n >= int64(draws) || watch.stopped() {
					break
				}
				watch.step(int(n), draws)
				// Every draw has its own stream, so that it does not matter
				// which goroutine makes it.
				stock.Draw(rand.New(rand.NewPCG(seed, uint64(n))), d.stock)
				d.scoreAll(p, pairs)
				d.count(w, b)
			}
			sum.Lock()
			defer sum.Unlock()
			for j := range pairs {
				wins[j] += w[j]
				beats[j] += b[j]
			}
		})
	}
	wait.Wait()
	return wins, beats
}

func (p *Plan) newDrawn(pairs int) *drawn {
	d := &drawn{p: *p, stock: make([]gauges.Drawn, len(p.wires)), feel: p.newStrung(), score: make([]float64, pairs)}
	d.p.wires = slices.Clone(p.wires)
	return d
}

// scoreAll scores every pair with the drawn stock, against targets that the
// drawn reference sets.
func (d *drawn) scoreAll(p *Plan, pairs []setOut) {
	for g := range d.p.wires {
		d.p.wires[g] = redrawn(p.wires[g], d.stock[g])
	}
	feel := referenceFeel{}
	if p.ref != nil {
		feel = d.p.feelOf(d.p.wiresOf(p.ref.gauges))
	}
	d.p.targets = d.p.targetsFrom(feel)
	for j := range pairs {
		most := math.Inf(1)
		if j > 0 {
			most = d.score[0]
		}
		d.score[j] = d.scoreOf(&pairs[j], most)
	}
}

// redrawn gives a wire another linear density and core: the stretch stiffness
// goes with the square of the diameter, the bending stiffness with the fourth
// power.
func redrawn(w tension.Wire, to gauges.Drawn) tension.Wire {
	w.LinearDensity = float64(to.LinearDensity)
	if w.CoreDiaM > 0 && to.Core > 0 {
		r := float64(to.Core) / w.CoreDiaM
		rr := r * r
		w.CoreDiaM = float64(to.Core)
		w.CoreAreaM2 *= rr
		w.EA *= rr
		w.EI *= rr * rr
	}
	return w
}

// scoreOf scores one pair. It gives +Inf where a bend cannot be made, and may
// give +Inf where the score is above most, which then can neither win nor beat
// the best: what tension and overtones cost is worked out first, and bends only
// while the sum is not above most.
func (d *drawn) scoreOf(pair *setOut, most float64) float64 {
	if own := d.p.newOwnMeans(); own != nil {
		return d.evenScore(pair, own)
	}
	weights := d.p.req.Feel.Weights
	var total squares
	for i, g := range pair.gauges {
		w := &d.p.wires[g]
		d.pull(pair, i, w)
		total.tension += d.p.tensionSquare(i, d.feel)
		if i == d.p.strings-1 {
			total.overtone = d.p.overtoneSquare(g, d.feel)
		}
	}
	for _, i := range d.p.bend {
		if total.score(weights) > most {
			return math.Inf(1)
		}
		if !d.bend(pair, i, &d.p.wires[pair.gauges[i]]) {
			return math.Inf(1)
		}
		total.bendingForce += d.p.pushSquare(i, d.feel)
	}
	return total.score(weights)
}

// evenScore scores one pair against its own mean.
func (d *drawn) evenScore(pair *setOut, own *ownMeans) float64 {
	var total squares
	for i, g := range pair.gauges {
		w := &d.p.wires[g]
		d.pull(pair, i, w)
		if !d.bend(pair, i, w) {
			return math.Inf(1)
		}
		total.add(d.p.squaresOf(i, g, d.feel))
		own.take(i, d.feel)
	}
	total.add(own.squares())
	return total.score(d.p.req.Feel.Weights)
}

// pull works out tension and inharmonicity of one string.
func (d *drawn) pull(pair *setOut, i int, w *tension.Wire) {
	s, f := &pair.seats[i], d.feel
	for c, v := range s.speed2 {
		f.tensionN[c] = tension.Stretched(w.LinearDensity*v, w.Compliance())
		f.riseCent[c] = 0
		if w.EI > 0 && i == d.p.strings-1 {
			f.riseCent[c] = tension.InharmonicityCents(tension.Inharmonicity(*w, f.tensionN[c], s.soundingM[c]))
		}
	}
}

// bend works out the bends of one string; false where one cannot be made.
func (d *drawn) bend(pair *setOut, i int, w *tension.Wire) bool {
	s, f := &pair.seats[i], d.feel
	for at := range s.contacts {
		if f.failed[at] = d.p.behind[at]; f.failed[at] {
			continue
		}
		if made := d.p.alike[i][at]; made < at {
			f.bends[at] = f.bends[made]
			continue
		}
		shape, ok := s.contacts[at].Shape(w.StretchSpeed2())
		if !ok {
			return false
		}
		f.bends[at] = shape.Bend(w.EA)
	}
	return true
}

// count notes the winner, the first of equals, and who beats the best pair.
func (d *drawn) count(wins, beats []int) {
	best := 0
	for j, s := range d.score {
		if s < d.score[best] {
			best = j
		}
		if s < d.score[0] {
			beats[j]++
		}
	}
	wins[best]++
}

// setTie lists the pairs not told apart from the best and the ranges they
// span.
func (c *Confidence) setTie() {
	for j, s := range c.Standing {
		if s.Told {
			continue
		}
		c.Tie = append(c.Tie, j)
		widen(&c.BassMM, s.BassMM, len(c.Tie) == 1)
		widen(&c.TrebleMM, s.TrebleMM, len(c.Tie) == 1)
		widen(&c.DifferenceMM, s.DifferenceMM(), len(c.Tie) == 1)
	}
	c.Cut = len(c.Standing) == mostCompared && len(c.Tie) > 1 && !c.Standing[len(c.Standing)-1].Told
	slices.SortStableFunc(c.Tie, func(a, b int) int {
		return cmp.Compare(math.Abs(c.Standing[a].DifferenceMM()), math.Abs(c.Standing[b].DifferenceMM()))
	})
}

func widen(r *[2]float64, x float64, first bool) {
	if first {
		*r = [2]float64{x, x}
	}
	r[0], r[1] = min(r[0], x), max(r[1], x)
}
