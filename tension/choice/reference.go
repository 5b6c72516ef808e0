package choice

import (
	"scalepair/data/unit"
	"scalepair/fan"
	"scalepair/tension"
)

// newRef works out where the reference's strings lie and how they are bent.
func (p *Plan) newRef(r *Reference) (*refPlan, error) {
	spec := r.Neck
	spec.Strings = len(r.FreqsHz)
	spec.AllowReverse = true
	spec.Diameters = make([]unit.Length, spec.Strings)
	for i, g := range r.Gauges {
		spec.Diameters[i] = p.req.Stock[g].Outer
	}
	frame, err := fan.NewFrame(spec)
	if err != nil {
		return nil, err
	}
	ref := &refPlan{freqHz: r.FreqsHz, gauges: r.Gauges}
	ref.lowWound = !p.wires[r.Gauges[spec.Strings-1]].Plain
	for i := range r.FreqsHz {
		length := frame.Length(i).M()
		ref.lengthM = append(ref.lengthM, length)
		sign := bendSign(i, spec.Strings, nil)
		at := make([]tension.BendAt, len(p.req.Feel.BendFrets))
		for k, n := range p.req.Feel.BendFrets {
			at[k] = tension.BendAt{
				LengthM: length, FreqHz: r.FreqsHz[i], Fret: n, Cents: p.req.Feel.BendCents,
				TanSlant: towards(sign, frame.TanSlant(n)), Tails: r.Tails[i],
				ReachM: frame.Reach(i, n, sign > 0).M(),
			}
		}
		ref.bendAt = append(ref.bendAt, at)
	}
	return ref, nil
}

// feelOrNone is the reference's feel with the stock's linear densities, empty
// where there is no reference.
func (p *Plan) feelOrNone() referenceFeel {
	if p.ref == nil {
		return referenceFeel{}
	}
	return p.ref.feel
}

// setTargets fixes the targets and counts the terms of each mean, noting what
// the score must do without.
func (p *Plan) setTargets(feel referenceFeel) {
	p.targets = p.targetsFrom(feel)
	p.tensionTerms = p.countTension()
	p.pushTerms = p.countPush()
	f := &p.req.Feel
	if f.Tension.Source == Absent {
		p.leaveOut(TensionTerm, nil, "no target is given")
	}
	switch {
	case f.BendingForce.Source == Absent:
		p.leaveOut(BendingForceTerm, nil, "no target is given")
	case len(p.bend) == 0:
		p.leaveOut(BendingForceTerm, nil, "no string is named as a bend string")
	case len(f.BendFrets) == 0:
		p.leaveOut(BendingForceTerm, nil, "no fret is named for bends")
	case p.bendable() == 0:
		p.leaveOut(BendingForceTerm, nil, "a capo leaves no room at the frets of the bends")
	default:
		p.noteLostBends()
	}
	switch {
	case f.Overtone.Source == Absent:
		p.leaveOut(OvertoneTerm, nil, "no target is given")
	case p.targets.overtone == 0:
		p.leaveOut(OvertoneTerm, nil, "the core of the reference's lowest string is not known")
	}
}

func (p *Plan) leaveOut(term Term, strings []int, why string) {
	p.leftOut = append(p.leftOut, LeftOut{Term: term, Strings: strings, Why: why})
}

func (p *Plan) countTension() int {
	if p.req.Feel.Tension.Source == OwnMean {
		return p.strings
	}
	count := 0
	for _, t := range p.targets.tension {
		if t > 0 {
			count++
		}
	}
	return count
}

func (p *Plan) countPush() int {
	if p.req.Feel.BendingForce.Source == OwnMean {
		return len(p.bend) * p.bendable()
	}
	count := 0
	for _, row := range p.targets.bendingForce {
		for _, t := range row {
			if t > 0 {
				count++
			}
		}
	}
	return count
}

// noteLostBends names the bend strings whose target cannot be told, since
// the reference string they are like has an unknown core or cannot reach the
// bend.
func (p *Plan) noteLostBends() {
	if p.req.Feel.BendingForce.Source != LikeReference {
		return
	}
	var lost []int
	for _, i := range p.bend {
		for k, t := range p.targets.bendingForce[i] {
			if t == 0 && p.fretMade[k] {
				lost = append(lost, i+1)
				break
			}
		}
	}
	why := "the reference string it is like cannot make the bend, or its core is not known"
	switch {
	case p.pushTerms == 0:
		p.leaveOut(BendingForceTerm, nil, why)
	case lost != nil:
		p.leaveOut(BendingForceTerm, lost, why)
	}
}
