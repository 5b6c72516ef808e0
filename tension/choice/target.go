package choice

import (
	"math"

	"scalepair/tension"
)

// targets holds the wanted values of a request. A 0 means that there is none.
type targets struct {
	tension      []float64   // by string, N
	bendingForce [][]float64 // by string, then bend fret, N; nil off the bend strings
	overtone     float64     // of the lowest string, cents
	// Rise of a wound string is only a lower bound, so it is not compared with
	// a plain one; overtoneWound says which kind the target speaks of, and
	// overtoneAny that it is a stated number and holds for both.
	overtoneWound, overtoneAny bool
}

// across gives, for string i (from 0) of n, the position among m strings as
// the two strings beside it and the share of the second.
func across(i, n, m int) (lo, hi int, share float64) {
	if m == 1 || n == 1 {
		return 0, 0, 0
	}
	at := float64(i) * float64(m-1) / float64(n-1)
	lo = min(int(at), m-1)
	hi = min(lo+1, m-1)
	return lo, hi, at - float64(lo)
}

// mapped takes values by string of the reference to n strings. A value of 0
// is 'none' and makes what depends on it none too.
func mapped(values []float64, n int, how Mapping) []float64 {
	out := make([]float64, n)
	for i := range out {
		if how == FromTreble {
			out[i] = values[min(i, len(values)-1)]
			continue
		}
		lo, hi, share := across(i, n, len(values))
		switch {
		case share == 0 || values[lo] == values[hi]:
			out[i] = values[lo]
		case values[lo] > 0 && values[hi] > 0:
			out[i] = math.Exp((1-share)*math.Log(values[lo]) + share*math.Log(values[hi]))
		}
	}
	return out
}

// spread gives a stated target's values by string: one value stands for all.
func spread(values []float64, n int) []float64 {
	out := make([]float64, n)
	for i := range out {
		if len(values) == 1 {
			out[i] = values[0]
		} else if i < len(values) {
			out[i] = values[i]
		}
	}
	return out
}

// referenceFeel is what the reference does with given wires: tension by
// string, bending force by bend fret and reference string, rise of its lowest string.
type referenceFeel struct {
	tension      []float64
	bendingForce [][]float64 // by bend fret, then string; 0 where it cannot be told
	overtone     float64
}

// feelOf computes the reference's feel. wires are by string.
func (p *Plan) feelOf(wires []tension.Wire) referenceFeel {
	r := p.ref
	f := referenceFeel{tension: make([]float64, len(wires))}
	for i, w := range wires {
		f.tension[i] = tension.Open(w, r.lengthM[i], r.freqHz[i])
	}
	for k := range p.req.Feel.BendFrets {
		row := make([]float64, len(wires))
		for i, w := range wires {
			if bend, err := tension.BendingForce(w, r.bendAt[i][k]); err == nil {
				row[i] = bend.BendingForceN
			}
		}
		f.bendingForce = append(f.bendingForce, row)
	}
	low := len(wires) - 1
	if wires[low].EI > 0 {
		f.overtone = tension.InharmonicityCents(
			tension.Inharmonicity(wires[low], f.tension[low], r.lengthM[low]))
	}
	return f
}

// targetsFrom fills the targets of a request, those like the reference from
// feel, which may be empty when there is no reference.
func (p *Plan) targetsFrom(feel referenceFeel) targets {
	n := p.strings
	t := targets{tension: make([]float64, n), bendingForce: make([][]float64, n)}
	switch p.req.Feel.Tension.Source {
	case LikeReference:
		t.tension = mapped(feel.tension, n, p.req.Feel.MoreStrings)
	case Stated:
		t.tension = spread(p.req.Feel.Tension.Values, n)
	}
	for _, i := range p.bend {
		t.bendingForce[i] = make([]float64, len(p.req.Feel.BendFrets))
	}
	for k := range p.req.Feel.BendFrets {
		row := make([]float64, n)
		switch p.req.Feel.BendingForce.Source {
		case LikeReference:
			row = mapped(feel.bendingForce[k], n, p.req.Feel.MoreStrings)
		case Stated:
			row = spread(p.req.Feel.BendingForce.Values, n)
		}
		for _, i := range p.bend {
			if p.fretMade[k] {
				t.bendingForce[i][k] = row[i]
			}
		}
	}
	switch p.req.Feel.Overtone.Source {
	case LikeReference:
		t.overtone, t.overtoneWound = feel.overtone, p.ref.lowWound
	case Stated:
		t.overtone, t.overtoneAny = p.req.Feel.Overtone.Values[0], true
	}
	return t
}
