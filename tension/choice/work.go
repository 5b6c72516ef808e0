package choice

import (
	"scalepair/fan"
	"scalepair/tension"
)

// StringAt gives what package tension needs to show the work for one string
// (index from 0) of a detail in one case: its wire and, at a fret, its bend. A
// fret of 0 asks for the open string. Under a capo length, pitch, fret and nut
// tail count from the capo. The error is ErrBehindCapo where the capo leaves
// no room at the fret.
func (p *Plan) StringAt(d *Detail, c, i int, fret float64) (tension.Wire, tension.BendAt, error) {
	wire := p.wires[d.Gauges[i]]
	at := tension.BendAt{
		LengthM: d.Strings[i].LengthM, FreqHz: p.req.Cases[c].FreqsHz[i], Fret: fret,
		Cents: p.req.Feel.BendCents, Tails: p.req.Tails[i],
	}
	capo := float64(p.req.Cases[c].CapoFret)
	if fret == 0 || fret-capo < 1 {
		at.Fret = 0
		open := p.capos[c].bendsOf(at, 0)
		if fret == 0 {
			return wire, open, nil
		}
		return wire, open, ErrBehindCapo
	}
	frame, err := fan.NewFrame(d.Spec)
	if err != nil {
		return wire, at, err
	}
	at.TanSlant = towards(p.dir[i], frame.TanSlant(fret))
	at.ReachM = frame.Reach(i, fret, p.dir[i] > 0).M()
	return wire, p.capos[c].bendsOf(at, capo), nil
}
