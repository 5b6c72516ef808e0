package choice

import (
	"context"
	"math"
	"math/rand/v2"
	"slices"

	"scalepair/data/unit"
	"scalepair/fan"
	"scalepair/gauges"
	"scalepair/tension"
)

// Confidence says how far the picks can be trusted, given how well the linear
// densities and core diameters are known. Moduli, densities and the model's own
// errors are not varied; nor are limits looked at again.
type Confidence struct {
	Trials int              `json:"trials"`
	Seed   uint64           `json:"seed"`
	Picks  []PickConfidence `json:"picks"` // in the order of Result.Picks
}

// PickConfidence is one pick over the trials.
type PickConfidence struct {
	Kind PickKind `json:"pick"`
	// Good is the part of the trials in which the pick stays good; nil where no pair
	// comes near.
	Good *unit.Ratio `json:"stays_good_percent"`
	// Low and High bound E in 95 % of the trials.
	Low  unit.Ratio `json:"feel_error_low_percent"`
	High unit.Ratio `json:"feel_error_high_percent"`
	// Uncertain says that the pick stays good in fewer than half.
	Uncertain bool `json:"uncertain"`
}

// trialRoom is the extra room that a pick has in a trial, as a part of what is
// noticeable, so that a pick on the edge is not near 50 % by construction.
const trialRoom = 0.5

// mostRivals is how many pairs are asked in a trial for the least error, spread
// evenly over those as good as the best (judgement: where it lies moves little).
const mostRivals = 40

// strungPair is a pair with all worked out that no trial changes.
type strungPair struct {
	set    []int
	places []place
}

// Confidence gives the stock other densities and cores in every trial, with the
// picks' sets as chosen.
// A trial counts for a pick where its error is at most max(E_best, n) + 1.5 n
// with that trial's least error (each with U taken off); a bend that cannot be
// made counts the trial as not good. Equal arguments give equal results, whatever
// the number of processors. stock has the order of the request's Stock.
func (p *Plan) Confidence(ctx context.Context, r *Result, stock *gauges.Drawer, trials int, seed uint64) (*Confidence, error) {
	out := &Confidence{Trials: trials, Seed: seed}
	if len(r.Picks) == 0 || trials < 1 {
		return out, nil
	}
	var picks, rivals []strungPair
	for _, k := range r.Picks {
		picks = append(picks, p.strungPair(k.Bass, k.Treble, k.Gauges))
	}
	f := r.field
	asGood := f.good()
	for _, at := range append([]int{f.first(asGood, f.errorOf)}, thinned(asGood, mostRivals)...) {
		bass, treble := f.lengths(at)
		rivals = append(rivals, p.strungPair(bass, treble, f.points[at].set))
	}
	e, good := make([][]float64, len(picks)), make([][]bool, len(picks)) // by pick, then trial
	for k := range picks {
		e[k], good[k] = make([]float64, trials), make([]bool, trials)
	}
	err := onAll(ctx, trials, func() func(n int) {
		t := p.newTrial()
		return func(n int) {
			// Every trial has its own stream, so that it does not matter which
			// goroutine makes it.
			stock.Draw(rand.New(rand.NewPCG(seed, uint64(n))), t.stock)
			t.begin(p)
			for k := range picks {
				e[k][n] = t.errorOf(&picks[k], math.Inf(1))
				good[k][n] = t.good(e[k][n], rivals)
			}
		}
	})
	for k, pick := range r.Picks {
		one := confidenceOf(pick.Kind, e[k], good[k])
		if r.NoneNear {
			one.Good, one.Uncertain = nil, false
		}
		out.Picks = append(out.Picks, one)
	}
	return out, err
}

// confidenceOf sums up the trials of a pick.
func confidenceOf(kind PickKind, e []float64, good []bool) PickConfidence {
	count := 0
	for _, is := range good {
		if is {
			count++
		}
	}
	share := unit.Ratio(float64(count) / float64(len(good)))
	out := PickConfidence{Kind: kind, Good: &share, Uncertain: share < 0.5}
	known := slices.DeleteFunc(e, func(x float64) bool { return math.IsInf(x, 1) })
	if slices.Sort(known); len(known) > 0 {
		out.Low, out.High = unit.Ratio(known[len(known)*25/1000]), unit.Ratio(known[(len(known)-1)*975/1000])
	}
	return out
}

// strungPair sets a pair out; it was kept, so that it can be built.
func (p *Plan) strungPair(bass, treble unit.Length, set []int) strungPair {
	frame, err := fan.NewFrame(p.SpecOf(bass, treble, set))
	if err != nil {
		panic(err)
	}
	out := strungPair{set: set, places: p.newPlaces()}
	p.putAll(&frame, out.places)
	return out
}

// trial is the memory for one trial: the plan of its chooser has this trial's wires
// and targets.
type trial struct {
	*chooser
	stock []gauges.Drawn
}

func (p *Plan) newTrial() *trial {
	t := &trial{newChooser(p), make([]gauges.Drawn, len(p.wires))}
	t.p.wires = slices.Clone(p.wires)
	return t
}

// begin takes over the stock that was drawn, and what the reference then feels
// like.
func (t *trial) begin(p *Plan) {
	for g := range t.p.wires {
		t.p.wires[g] = redrawn(p.wires[g], t.stock[g])
	}
	t.p.targets = t.p.wanted(t.p.wires)
}

// redrawn gives a wire another linear density and core: the stretch stiffness
// goes with the square of the diameter, the bending stiffness with the fourth
// power.
func redrawn(w tension.Wire, to gauges.Drawn) tension.Wire {
	w.LinearDensity = to.LinearDensity
	if w.CoreDia > 0 && to.Core > 0 {
		r := float64(to.Core / w.CoreDia)
		rr := r * r
		w.CoreDia = to.Core
		w.CoreArea *= rr
		w.EA *= unit.Force(rr)
		w.EI *= rr * rr
	}
	return w
}

// errorOf is a pair's error in the trial; infinite where a bend cannot be made, or
// where its square is seen to be more than most. The low strings, mostly without
// bends, come first.
func (t *trial) errorOf(pair *strungPair, most float64) float64 {
	t.p.takeMeans(pair.set, pair.places)
	left := most * float64(t.p.strings)
	for i, g := range slices.Backward(pair.set) {
		var known bool
		if t.e2[i], known = t.p.measure(i, g, &pair.places[i], left, t.strung[i], nil); !known {
			return math.Inf(1)
		}
		left -= t.e2[i]
	}
	return math.Sqrt(mean(t.e2))
}

// good reports whether an error is good in the trial. Up to n + 1.5 n it is,
// whatever the least error; beyond, only where no rival's is so much less.
func (t *trial) good(e float64, rivals []strungPair) bool {
	n, removed := float64(t.p.req.Feel.Noticeable), t.p.removed
	room := (1 + trialRoom) * n
	own := felt(e*e, removed)
	if own <= n+room || math.IsInf(e, 1) {
		return !math.IsInf(e, 1)
	}
	return !slices.ContainsFunc(rivals, func(r strungPair) bool {
		e := t.errorOf(&r, (own-room)*(own-room)+removed)
		return felt(e*e, removed) < own-room
	})
}
