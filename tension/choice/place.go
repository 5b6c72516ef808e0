package choice

import (
	"scalepair/data/unit"
	"scalepair/fan"
	"scalepair/tension"
)

// place is where one string lies on a pair: what does not depend on its gauge.
type place struct {
	length float64 // m
	notes  []noteAt
}

// noteAt is one note of the string there.
type noteAt struct {
	speed2   float64          // (2 L f)^2, which times a linear density is the textbook tension
	at       []tension.BendAt // its bends
	contacts []tension.Contact
}

// newPlaces makes room for the strings of a pair.
func (p *Plan) newPlaces() []place {
	out := make([]place, p.strings)
	for i := range out {
		out[i].notes = make([]noteAt, len(p.tuned[i].notes))
		for k, n := range p.tuned[i].notes {
			out[i].notes[k].at = make([]tension.BendAt, len(n.bends))
			out[i].notes[k].contacts = make([]tension.Contact, len(n.bends))
		}
	}
	return out
}

// putAll fills the places of all strings of a frame.
func (p *Plan) putAll(f *fan.Frame, to []place) {
	for i := range to {
		p.put(f, i, &to[i])
	}
}

// put fills a place with string i's on a frame.
func (p *Plan) put(f *fan.Frame, i int, to *place) {
	to.length = f.Length(i).M()
	for k := range to.notes {
		n, at := &p.tuned[i].notes[k], &to.notes[k]
		v := 2 * to.length * n.pitch
		at.speed2 = v * v
		for j, b := range n.bends {
			at.at[j] = n.capo.bendOf(p.bendAt(f, i, float64(p.req.Feel.BendFrets[b]), p.dir[i], p.req.Tails[i], unit.Frequency(n.pitch)))
			at.contacts[j] = tension.NewContact(at.at[j])
		}
	}
}
