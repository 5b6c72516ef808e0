package choice

import (
	"scalepair/fan"
	"scalepair/tension"
)

// bassTopHz parts basses from the rest by the pitch of the highest string
// (judgement: below the third string of a guitar it is a bass, which lies
// between a six-string bass's C3 and a baritone's G3).
const bassTopHz = 165

// chooseBendStrings names the bend strings before any gauge is chosen: as
// given, else the reference's plain ones, else the plain ones of the gauges
// given, else strings 1 to 3, and none on a bass.
func (p *Plan) chooseBendStrings() {
	p.isBend = make([]bool, p.strings)
	for _, s := range p.bendNumbers() {
		if s <= p.strings {
			p.isBend[s-1] = true
		}
	}
	for i, bent := range p.isBend {
		if bent {
			p.bend = append(p.bend, i)
		}
	}
	p.dir = make([]float64, p.strings)
	for i := range p.dir {
		p.dir[i] = bendSign(i, p.strings, p.req.Feel.Towards)
	}
}

func (p *Plan) bendNumbers() []int {
	switch {
	case p.req.Feel.BendStrings != nil:
		return p.req.Feel.BendStrings
	case p.req.Reference != nil:
		return p.plainNumbers(p.req.Reference.Gauges)
	case p.req.Given != nil:
		return p.plainNumbers(p.req.Given)
	case p.req.Cases[0].FreqsHz[0] < bassTopHz:
		return nil
	}
	return []int{1, 2, 3}
}

func (p *Plan) plainNumbers(set []int) []int {
	var out []int
	for i, g := range set {
		if p.wires[g].Plain {
			out = append(out, i+1)
		}
	}
	return out
}

// TowardsBass tells whether a string, 1 the highest, is bent towards the bass
// side; else it is towards the treble. A number of no string panics.
func (p *Plan) TowardsBass(number int) bool { return p.dir[number-1] > 0 }

// bendSign is +1 for a bend towards the bass side, -1 towards the treble.
func bendSign(i, n int, towards []Direction) float64 {
	d := Usual
	if i < len(towards) {
		d = towards[i]
	}
	if d == TowardsBass || d == Usual && i < (n+1)/2 {
		return 1
	}
	return -1
}

// towards is the tangent of a crown's slant seen in the direction of a bend; a
// square crown is 0 from either side, never -0.
func towards(dir, tan float64) float64 { return dir*tan + 0 }

// seatOn fills s with string i's place on a frame.
func (p *Plan) seatOn(f *fan.Frame, i int, s *seat) {
	s.lengthM = f.Length(i).M()
	for c := range p.req.Cases {
		v := 2 * s.lengthM * p.req.Cases[c].FreqsHz[i]
		s.speed2[c] = v * v
		s.soundingM[c] = s.lengthM * p.capos[c].sounds
	}
	if !p.isBend[i] {
		return
	}
	frets := len(p.fretMade)
	for k, n := range p.req.Feel.BendFrets {
		at := tension.BendAt{
			LengthM: s.lengthM, Fret: n, Cents: p.req.Feel.BendCents, Tails: p.req.Tails[i],
			TanSlant: towards(p.dir[i], f.TanSlant(n)), ReachM: f.Reach(i, n, p.dir[i] > 0).M(),
		}
		for c := range p.req.Cases {
			if p.behind[c*frets+k] {
				continue
			}
			if before := p.alike[i][c*frets+k]; before < c*frets+k {
				s.bends[c*frets+k], s.contacts[c*frets+k] = s.bends[before], s.contacts[before]
				continue
			}
			at.FreqHz = p.req.Cases[c].FreqsHz[i]
			b := p.capos[c].bendsOf(at, float64(p.req.Cases[c].CapoFret))
			s.bends[c*frets+k] = b
			s.contacts[c*frets+k], _ = p.spots[c*frets+k].Contact(b)
		}
	}
}

func (p *Plan) newPositions() []seat {
	cases := len(p.req.Cases)
	out := make([]seat, p.strings)
	for i := range out {
		out[i].speed2, out[i].soundingM = make([]float64, cases), make([]float64, cases)
		if p.isBend[i] {
			out[i].bends = make([]tension.BendAt, len(p.spots))
			out[i].contacts = make([]tension.Contact, len(p.spots))
		}
	}
	return out
}
