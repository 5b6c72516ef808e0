package choice

import (
	"slices"

	"errors"
	"math"

	"scalepair/tension"
)

// ErrBehindCapo says why there is no bend at a fret: the capo lies there or
// nearer to the bridge, or less than a fret behind it.
var ErrBehindCapo = errors.New("the capo leaves no room to bend there")

// capo is what a capo at a fret does to every string.
//
// The string sounds from the capo's fret, so its length shrinks and its pitch
// rises by the same steps, and the tension is that of the open string:
//
//	L' = L 2^(-c/12), f' = f 2^(c/12), w (2 L' f')^2 = w (2 L f)^2
//
// The piece L k(c) between nut and capo is assumed to slide under it, and so
// joins the string beyond the nut. What the capo itself stretches the string
// is not counted. Equal temperament, as in fan.K; the rest follows from it.
// Without a capo every factor is exactly 1 or 0, so that nothing changes.
type capo struct {
	sounds float64 // L'/L
	hidden float64 // k(c), share of the length between nut and capo
	raise  float64 // f'/f
}

func capoAt(fret int) capo {
	n := float64(fret) / 12
	return capo{sounds: math.Exp2(-n), hidden: -math.Expm1(-n * math.Ln2), raise: math.Exp2(n)}
}

// bendsOf gives the bend seen from the capo: fret, length and pitch count from
// it. The slant and the reach stay those of the real fret.
func (c capo) bendsOf(at tension.BendAt, fret float64) tension.BendAt {
	at.Tails.NutM += at.LengthM * c.hidden
	at.LengthM *= c.sounds
	at.FreqHz *= c.raise
	at.Fret -= fret
	return at
}

// setSpots makes the bends' frets and interval ready, case by case: a fret
// that a capo leaves no room at has no bend in that case.
func (p *Plan) setSpots() error {
	frets := p.req.Feel.BendFrets
	count := len(p.req.Cases) * len(frets)
	p.spots, p.behind = make([]tension.Spot, count), make([]bool, count)
	p.pushShare = make([]float64, count)
	p.fretMade = make([]bool, len(frets))
	for c, from := range p.req.Cases {
		p.capos = append(p.capos, capoAt(from.CapoFret))
		for k, n := range frets {
			at := c*len(frets) + k
			if p.behind[at] = n-float64(from.CapoFret) < 1; p.behind[at] {
				continue
			}
			p.fretMade[k] = true
			var err error
			if p.spots[at], err = tension.NewSpot(n-float64(from.CapoFret), p.req.Feel.BendCents); err != nil {
				return err
			}
		}
	}
	for k := range frets {
		p.shareOut(k)
	}
	return nil
}

// shareOut gives the weight of one bend fret to the cases that can bend there.
func (p *Plan) shareOut(k int) {
	frets, left := len(p.req.Feel.BendFrets), 0.0
	all := true
	for c, share := range p.share {
		if p.behind[c*frets+k] {
			all = false
		} else {
			left += share
		}
	}
	for c, share := range p.share {
		switch {
		case all:
			p.pushShare[c*frets+k] = share
		case !p.behind[c*frets+k]:
			p.pushShare[c*frets+k] = share / left
		}
	}
}

// bendable counts the bend frets that some case can bend at.
func (p *Plan) bendable() int {
	count := 0
	for _, made := range p.fretMade {
		if made {
			count++
		}
	}
	return count
}

// setAlike finds the bends that several cases have in common: a string that
// they tune alike, under the same capo, bends alike, so that it is made once.
func (p *Plan) setAlike() {
	frets := len(p.req.Feel.BendFrets)
	p.alike, p.tuned, p.tunedShare = make([][]int, p.strings), make([][]int, p.strings), make([][]float64, p.strings)
	for i := range p.alike {
		p.tuned[i], p.tunedShare[i] = p.tunedAlike(i)
		p.alike[i] = make([]int, len(p.req.Cases)*frets)
		for at := range p.alike[i] {
			p.alike[i][at] = at
		}
		for c, one := range p.req.Cases {
			for before, other := range p.req.Cases[:c] {
				if one.FreqsHz[i] == other.FreqsHz[i] && one.CapoFret == other.CapoFret {
					for k := range frets {
						p.alike[i][c*frets+k] = before*frets + k
					}
					break
				}
			}
		}
	}
}

// tunedAlike gives for every case the first that tunes string i alike, and for
// those first ones the shares of all that do.
func (p *Plan) tunedAlike(i int) (first []int, share []float64) {
	first, share = make([]int, len(p.req.Cases)), make([]float64, len(p.req.Cases))
	for c, one := range p.req.Cases {
		first[c] = slices.IndexFunc(p.req.Cases, func(other Case) bool { return other.FreqsHz[i] == one.FreqsHz[i] })
		share[first[c]] += p.share[c]
	}
	return first, share
}
