package choice

import (
	"math"

	"scalepair/data/unit"
	"scalepair/fan"
	"scalepair/tension"
)

// reference is the reference instrument made ready.
type reference struct {
	*Reference
	lengths []unit.Length      // by its string
	bends   [][]tension.BendAt // by its string, then bend fret
	like    []int              // by string of the candidate: the reference's, from 0
}

// newReference works out where the reference's strings lie, how they are bent,
// and which of them each string is compared with.
func (p *Plan) newReference() (*reference, error) {
	r := p.req.Reference
	spec := r.Neck
	spec.Strings, spec.AllowReverse, spec.Diameters = len(r.Pitches), true, nil
	for _, g := range r.Gauges {
		spec.Diameters = append(spec.Diameters, p.req.Stock[g].Outer)
	}
	frame, err := fan.NewFrame(spec)
	if err != nil {
		return nil, err
	}
	out := &reference{Reference: r, like: p.pairing()}
	for i := range r.Pitches {
		out.lengths = append(out.lengths, frame.Length(i))
		var at []tension.BendAt
		for _, fret := range p.req.Feel.BendFrets {
			at = append(at, p.bendAt(&frame, i, float64(fret), Middle.sign(i, spec.Strings), r.Tails[i], r.Pitches[i]))
		}
		out.bends = append(out.bends, at)
	}
	return out, nil
}

// bendAt is a bend of string i of a frame, towards the bass side where dir is 1.
func (p *Plan) bendAt(f *fan.Frame, i int, fret, dir float64, tails tension.Tails, pitch unit.Frequency) tension.BendAt {
	return tension.BendAt{
		Length: f.Length(i), Pitch: pitch, Fret: fret, Rise: p.req.Feel.Bend, Tails: tails,
		TanSlant: dir*f.TanSlant(fret) + 0, // a square crown is 0 from either side, never -0
		Reach:    f.Reach(i, fret, dir > 0),
	}
}

// pairing gives, by string, the reference string (from 0) that it is compared
// with: as listed, else the smaller set lies wholly inside the larger, at the
// shift with the least mean absolute interval between paired strings (of equal
// ones that nearest to the treble), and strings beyond an end are compared with
// that end. Of several tunings a string has its weighted mean note.
func (p *Plan) pairing() []int {
	var own, ref []float64 // octaves
	for i := range p.strings {
		own = append(own, 0)
		for c, one := range p.req.Cases {
			own[i] += p.share[c] * math.Log2(one.Pitches[i].Hz())
		}
	}
	for _, f := range p.req.Reference.Pitches {
		ref = append(ref, math.Log2(f.Hz()))
	}
	small, large := own, ref
	if len(own) > len(ref) {
		small, large = ref, own
	}
	least, best := math.Inf(1), 0
	for shift := range len(large) - len(small) + 1 {
		apart := 0.0
		for k := range small {
			apart += math.Abs(small[k] - large[k+shift])
		}
		if apart < least-1e-9 {
			least, best = apart, shift
		}
	}
	out := make([]int, len(own))
	for i := range out {
		switch list := p.req.Feel.ReferenceStrings; {
		case list != nil:
			out[i] = list[i] - 1
		case len(own) > len(ref):
			out[i] = min(max(i-best, 0), len(ref)-1)
		default:
			out[i] = i + best
		}
	}
	return out
}

// ReferenceStrings gives, by string, the number of the reference's string that
// it is compared with; nil without a reference.
func (p *Plan) ReferenceStrings() []int {
	if p.ref == nil {
		return nil
	}
	out := make([]int, p.strings)
	for i, k := range p.ref.like {
		out[i] = k + 1
	}
	return out
}

// targets are the wanted values of a request; a 0 means that there is none.
type targets struct {
	tension []float64   // by string, N
	means   []float64   // by tuning, N: those of a set, where its own mean is wanted
	force   [][]float64 // by string, then bend fret, N; nil where the bend has no target
	dist    [][]float64 // the same in m; nil where the bend distance has none
}

// wanted are the targets with given wires, those of the request or of a trial.
func (p *Plan) wanted(wires []tension.Wire) targets {
	n, f := p.strings, &p.req.Feel
	t := targets{tension: make([]float64, n), force: make([][]float64, n), dist: make([][]float64, n)}
	switch {
	case f.Tension.Kind == Stated:
		for i := range n {
			t.tension[i] = f.Tension.Forces[min(i, len(f.Tension.Forces)-1)].N()
		}
	case f.Tension.Kind != NoTarget && !p.own:
		feel := p.ref.tensions(wires)
		if f.Tension.Kind == Even {
			mean := 0.0
			for _, x := range feel {
				mean += math.Log(x) / float64(len(feel))
			}
			for k := range feel {
				feel[k] = math.Exp(mean)
			}
		}
		for i, k := range p.ref.like {
			t.tension[i] = feel[k]
		}
	}
	for i := range n {
		if p.isBend[i] && len(f.BendFrets) > 0 {
			t.force[i], t.dist[i] = p.wantedBends(i, wires)
		}
	}
	return t
}

// takeMeans makes the mean tension of a set, of its logarithms in each tuning, the
// wanted one, where it is the candidate's own.
func (p *Plan) takeMeans(set []int, places []place) {
	if !p.own {
		return
	}
	p.targets.means = make([]float64, len(p.req.Cases))
	for k := range p.targets.means {
		sum := 0.0
		for i, g := range set {
			w := &p.wires[g]
			sum += math.Log(tension.Stretched(w.LinearDensity.KgPerM()*places[i].notes[k].speed2, w.Compliance()))
		}
		p.targets.means[k] = math.Exp(sum / float64(len(set)))
	}
}

// want is the tension wanted of note k of string i; 0 for none.
func (p *Plan) want(i, k int) float64 {
	if p.targets.means != nil {
		return p.targets.means[k]
	}
	return p.targets.tension[i]
}

// wantedBends are the targets of string i's bends. Where the reference cannot
// make one of them, or its core is not known, the string has none.
func (p *Plan) wantedBends(i int, wires []tension.Wire) (force, dist []float64) {
	f := &p.req.Feel
	switch f.BendingForce.Kind {
	case Stated:
		for range f.BendFrets {
			force = append(force, f.BendingForce.Forces[min(i, len(f.BendingForce.Forces)-1)].N())
		}
		return force, nil
	case LikeReference:
		k := p.ref.like[i]
		for _, at := range p.ref.bends[k] {
			b, err := tension.BendString(nil, wires[p.ref.Gauges[k]], at)
			if err != nil {
				return nil, nil
			}
			force, dist = append(force, b.Force.N()), append(dist, b.Distance.M())
		}
	}
	return force, dist
}

// tensions are those of the reference's strings.
func (r *reference) tensions(wires []tension.Wire) []float64 {
	out := make([]float64, len(r.Gauges))
	for k, g := range r.Gauges {
		out[k] = tension.Open(nil, wires[g], r.lengths[k], r.Pitches[k]).N()
	}
	return out
}

// Term names a part of the feel error.
type Term string

// The two terms of the feel error.
const (
	TensionTerm      Term = "tension"
	BendingForceTerm Term = "bending force"
)

// LeftOut is a term, or the term of single strings, that the error does
// without, and why.
type LeftOut struct {
	Term    Term   `json:"term"`
	Strings []int  `json:"strings,omitempty"` // string numbers; empty when the whole term is left out
	Why     string `json:"why"`
}

// LeftOut lists the terms that the error does without.
func (p *Plan) LeftOut() []LeftOut { return p.leftOut }

// setTargets fixes the targets and U, and notes what the error must do without.
func (p *Plan) setTargets() {
	p.targets = p.wanted(p.wires)
	p.removed = p.irremovable()
	out := func(term Term, strings []int, why string) { p.leftOut = append(p.leftOut, LeftOut{term, strings, why}) }
	f := &p.req.Feel
	if f.Tension.Kind == NoTarget {
		out(TensionTerm, nil, "no target is given")
	}
	bends, made := p.BendStrings(), false
	var lost []int
	for i, t := range p.tuned {
		for _, n := range t.notes {
			made = made || len(n.bends) > 0
		}
		if p.isBend[i] && p.targets.force[i] == nil {
			lost = append(lost, i+1)
		}
	}
	switch {
	case f.BendingForce.Kind == NoTarget:
		out(BendingForceTerm, nil, "no target is given")
	case len(bends) == 0:
		out(BendingForceTerm, nil, "no string is named as a bend string")
	case len(f.BendFrets) == 0:
		out(BendingForceTerm, nil, "no fret is named for bends")
	case !made:
		out(BendingForceTerm, nil, "a capo leaves no room at the frets of the bends")
	case len(lost) > 0:
		why := "the reference string it is like cannot make the bend, or its core is not known"
		if len(lost) == len(bends) {
			lost = nil
		}
		out(BendingForceTerm, lost, why)
	}
}

// irremovable is U squared, the part of E squared that no set can remove since
// one set has several tunings: the mean over the strings of the weighted
// variance of 2 ln f over the tunings; where the worst tuning counts, of the
// square of half its range. Against the candidate's own mean only what strings
// do differently counts. 0 for one tuning, and without a wanted tension. It
// follows from ln T = ln w + 2 ln L + 2 ln f; stretch changes it by less than a
// hundredth.
func (p *Plan) irremovable() float64 {
	if p.req.Feel.Tension.Kind == NoTarget {
		return 0
	}
	means := make([]float64, len(p.req.Cases))
	if p.own {
		for c, one := range p.req.Cases {
			for _, f := range one.Pitches {
				means[c] += 2 * math.Log(f.Hz()) / float64(p.strings)
			}
		}
	}
	sum := 0.0
	for i := range p.strings {
		mean, lo, hi := 0.0, math.Inf(1), math.Inf(-1)
		x := make([]float64, len(means))
		for c, one := range p.req.Cases {
			x[c] = 2*math.Log(one.Pitches[i].Hz()) - means[c]
			mean += p.share[c] * x[c]
			lo, hi = min(lo, x[c]), max(hi, x[c])
		}
		if p.req.By == Worst {
			sum += (hi - lo) * (hi - lo) / 4
			continue
		}
		for c := range x {
			sum += p.share[c] * (x[c] - mean) * (x[c] - mean)
		}
	}
	return sum / float64(p.strings)
}
