package choice

import (
	"math"

	"scalepair/tension"
)

// seat is one string's place on one pair: what does not depend on the gauge.
type seat struct {
	lengthM float64
	speed2  []float64 // by case: (2 L f)^2, which times a linear density is the textbook tension
	// soundingM by case: from the capo, or the nut without one.
	soundingM []float64
	bends     []tension.BendAt // by case, then bend fret; empty off the bend strings
	// contacts are bends set out for any gauge. One that cannot be set out is
	// the zero value, whose Shape fails; one behind a capo is not looked at.
	contacts []tension.Contact
}

// strung is what one gauge does as one string of a pair.
type strung struct {
	tensionN []float64      // by case
	bends    []tension.Bend // by case, then bend fret; empty off the bend strings
	failed   []bool         // the same: the bend cannot be made
	riseCent []float64      // by case; 0 where EI is not known

	// ln(value/target)^2 of tension by case and of bending force by bend, as far as they
	// were asked for; what cases have in common is taken from the first of them.
	tensionSquares, pushSquares []float64
}

func (p *Plan) newStrung() *strung {
	cases, bends := len(p.req.Cases), len(p.req.Cases)*len(p.req.Feel.BendFrets)
	return &strung{
		tensionN: make([]float64, cases), riseCent: make([]float64, cases),
		bends: make([]tension.Bend, bends), failed: make([]bool, bends),
		tensionSquares: make([]float64, cases), pushSquares: make([]float64, bends),
	}
}

// misses takes the limits that a gauge breaks. With first set it is full
// after one, so that measuring stops there.
type misses struct {
	first bool
	list  []Miss
}

// add notes a miss and says whether measuring should stop.
func (m *misses) add(r Reason, value, limit float64) bool {
	m.list = append(m.list, Miss{Reason: r, Value: value, Limit: limit})
	return m.first
}

// addBend is add for a limit on the bend at a fret.
func (m *misses) addBend(r Reason, fret, value, limit float64) bool {
	m.list = append(m.list, Miss{Reason: r, BendFret: fret, Value: value, Limit: limit})
	return m.first
}

// measure fills f with what gauge g does as string i on a seat, and m with
// the limits it breaks, cheapest first. It stops early when m is full.
func (p *Plan) measure(i, g int, s *seat, f *strung, m *misses) {
	if p.measureTension(i, g, s, f, m) {
		return
	}
	if p.isBend[i] && p.measureBends(i, g, s, f, m) {
		return
	}
	if i == p.strings-1 && p.measureRise(i, g, s, f, m) {
		return
	}
	p.measureCompensation(i, g, s, m)
}

func (p *Plan) measureTension(i, g int, s *seat, f *strung, m *misses) bool {
	w, lim := &p.wires[g], &p.req.Limits
	if need := p.req.Tails[i].SaddleM + s.lengthM + windingSpareM; p.windingM[g] > 0 && need > p.windingM[g] {
		if m.add(WindingLength, p.windingM[g], need) {
			return true
		}
	}
	if lim.BreakingOpen > 0 && (w.CoreAreaM2 == 0 || w.StrengthPa == 0) {
		if m.add(StrengthUnknown, 0, 0) {
			return true
		}
	}
	for c := range p.req.Cases {
		before := p.tuned[i][c]
		if before < c && m.first { // nothing was broken there
			f.tensionN[c] = f.tensionN[before]
			continue
		}
		t := tension.Stretched(w.LinearDensity*s.speed2[c], w.Compliance())
		f.tensionN[c] = t
		if lim.LeastTensionN > 0 && t < lim.LeastTensionN && m.add(LeastTension, t, lim.LeastTensionN) {
			return true
		}
		if lim.MostTensionN > 0 && t > lim.MostTensionN && m.add(MostTension, t, lim.MostTensionN) {
			return true
		}
		share := tension.BreakingShare(t, w.CoreAreaM2, w.StrengthPa)
		if lim.BreakingOpen > 0 && share > lim.BreakingOpen && m.add(BreakingOpen, share, lim.BreakingOpen) {
			return true
		}
	}
	return false
}

// windingSpareM is how much winding must lie beyond the nut (DESIGN: own
// length and saddle tail, and 10 mm; judgement).
const windingSpareM = 0.010

func (p *Plan) measureBends(_, g int, s *seat, f *strung, m *misses) bool {
	w, lim := &p.wires[g], &p.req.Limits
	if w.EA == 0 {
		for at := range s.contacts {
			f.failed[at] = true
		}
		return p.bendable() > 0 && m.add(StiffnessUnknown, 0, 0)
	}
	for at := range s.contacts {
		if f.failed[at] = p.behind[at]; f.failed[at] {
			continue
		}
		b, share, ok := bendOn(&s.contacts[at], w)
		f.bends[at], f.failed[at] = b, !ok
		fret := p.req.Feel.BendFrets[at%len(p.fretMade)]
		if !ok {
			if m.addBend(BendUnreachable, fret, 0, 0) {
				return true
			}
			continue
		}
		if lim.BreakingBent > 0 && share > lim.BreakingBent && m.addBend(BreakingBent, fret, share, lim.BreakingBent) {
			return true
		}
		if lim.MostBendingForceN > 0 && b.BendingForceN > lim.MostBendingForceN && m.addBend(MostBendingForce, fret, b.BendingForceN, lim.MostBendingForceN) {
			return true
		}
	}
	return false
}

// bendOn bends a wire whose stiffness is known, as tension.Bending force does, from a
// contact that is set out already; ok is false beyond the board's edge or past
// breaking.
func bendOn(c *tension.Contact, w *tension.Wire) (b tension.Bend, share float64, ok bool) {
	shape, ok := c.Shape(w.StretchSpeed2())
	if !ok {
		return tension.Bend{}, 0, false
	}
	b = shape.Bend(w.EA)
	share = tension.BreakingShare(b.TensionN, w.CoreAreaM2, w.StrengthPa)
	if share > 1 {
		return tension.Bend{}, 0, false
	}
	return b, share, true
}

func (p *Plan) measureRise(_, g int, s *seat, f *strung, m *misses) bool {
	w, limit := &p.wires[g], p.req.Limits.InharmonicityCents
	if w.EI == 0 {
		clear(f.riseCent)
		return limit > 0 && m.add(StiffnessUnknown, 0, 0)
	}
	for c, t := range f.tensionN {
		f.riseCent[c] = tension.InharmonicityCents(tension.Inharmonicity(*w, t, s.soundingM[c]))
		if limit > 0 && f.riseCent[c] > limit && m.add(Inharmonicity, f.riseCent[c], limit) {
			return true
		}
	}
	return false
}

// saddleSpareM is left at either end of the saddle's travel (DESIGN 4.4;
// judgement).
const saddleSpareM = 0.001

func (p *Plan) measureCompensation(i, g int, s *seat, m *misses) {
	limit := p.req.Limits.SaddleTravelM
	if limit == 0 {
		return
	}
	for c := range p.req.Cases {
		need, err := p.saddleNeed(i, g, c, s.lengthM)
		if err != nil {
			if m.add(StiffnessUnknown, 0, 0) {
				return
			}
			continue
		}
		if need > limit && m.add(SaddleTravel, need, limit) {
			return
		}
	}
}

// saddleNeed is the travel that a saddle needs for gauge g as string i of a
// length: its upper end of the compensation, and the spare at both ends.
func (p *Plan) saddleNeed(i, g, c int, lengthM float64) (float64, error) {
	_, hi, err := tension.Compensation(p.wires[g], lengthM, p.req.Cases[c].FreqsHz[i], p.req.ActionM[i], p.req.Tails[i])
	return hi + 2*saddleSpareM, err
}

// squares are the parts of a score: the sums of squared ln(value/target) of
// one string, each already divided by the number of terms in its mean.
type squares struct{ tension, bendingForce, overtone float64 }

func (a *squares) add(b squares) {
	a.tension += b.tension
	a.bendingForce += b.bendingForce
	a.overtone += b.overtone
}

// score weighs the squares.
func (a squares) score(w Weights) float64 {
	return float64(w.Tension*a.tension) + float64(w.BendingForce*a.bendingForce) + float64(w.Overtone*a.overtone)
}

// blend puts one term of several cases together.
type blend struct {
	by Combining
	v  float64
}

func (b *blend) add(share, square float64) {
	if b.by == Worst {
		b.v = max(b.v, square)
		return
	}
	b.v += float64(share * square)
}

func squareLog(value, target float64) float64 {
	l := math.Log(value / target)
	return l * l
}

// squaresOf compares one string with its targets.
func (p *Plan) squaresOf(i, g int, f *strung) squares {
	s := squares{tension: p.tensionSquare(i, f)}
	if p.isBend[i] {
		s.bendingForce = p.pushSquare(i, f)
	}
	if i == p.strings-1 {
		s.overtone = p.overtoneSquare(g, f)
	}
	return s
}

func (p *Plan) tensionSquare(i int, f *strung) float64 {
	want := p.targets.tension[i]
	if want == 0 {
		return 0
	}
	b := blend{by: p.req.By}
	for c, t := range f.tensionN {
		if before := p.tuned[i][c]; before < c {
			f.tensionSquares[c] = f.tensionSquares[before]
		} else {
			f.tensionSquares[c] = squareLog(t, want)
		}
		b.add(p.share[c], f.tensionSquares[c])
	}
	return b.v / float64(p.tensionTerms)
}

// pushSquare compares the bends that can be made; the others a search never
// gets to see, and a detail reports one by one.
func (p *Plan) pushSquare(i int, f *strung) float64 {
	sum := 0.0
	for k, want := range p.targets.bendingForce[i] {
		if want == 0 {
			continue
		}
		b := blend{by: p.req.By}
		for c := range f.tensionN {
			at := c*len(p.fretMade) + k
			if f.failed[at] {
				continue
			}
			if before := p.alike[i][at]; before < at {
				f.pushSquares[at] = f.pushSquares[before]
			} else {
				f.pushSquares[at] = squareLog(f.bends[at].BendingForceN, want)
			}
			b.add(p.pushShare[at], f.pushSquares[at])
		}
		sum += b.v / float64(p.pushTerms)
	}
	return sum
}

func (p *Plan) overtoneSquare(g int, f *strung) float64 {
	want := p.targets.overtone
	if want == 0 || !p.comparable(g) {
		return 0
	}
	b := blend{by: p.req.By}
	for c, rise := range f.riseCent {
		if rise > want {
			b.add(p.share[c], squareLog(rise, want))
		}
	}
	return b.v
}

// comparable says whether a gauge's inharmonicity may be set beside the
// target: a wound string's rise is only a lower bound, so like goes with like.
func (p *Plan) comparable(g int) bool {
	return p.targets.overtoneAny || p.targets.overtoneWound == !p.wires[g].Plain
}
