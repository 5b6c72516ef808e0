package mark

import "math"

// noise is how the readings of one line scatter when nothing has slipped:
//
//	S = diag(step^2/12) + common terms + hand^2 1 + scatter^2 E E'
//
// hand     standard deviation of setting a tool on a mark, mm
// scatter  standard deviation of the marks about the plan, mm, the nut mark included
// E        effects of the marks on the readings
//
// It is held as its inverse, the marks' effects beside it.
type noise struct {
	hand2, scatter2 float64
	inverse         square
	logDet          float64
}

// scatterModel finds hand and scatter of one line.
type scatterModel struct {
	seen  []sighting
	marks int    // number of marks, the nut included
	base  square // the part that is known: steps and common terms
	ee    square // E E'
	off   []float64
	tied  bool // one pass only: hand and scatter cannot be told apart and are taken as equal

	assumed bool // too few readings: hand and scatter are not learnt from them
}

func newScatterModel(e evidence) scatterModel {
	n := len(e.seen)
	m := scatterModel{seen: e.seen, marks: len(e.plan.marks), base: newSquare(n), ee: newSquare(n)}
	for i, s := range e.seen {
		m.base.add(i, i, s.roundingVar())
		m.off = append(m.off, s.off)
	}
	for _, g := range e.common() {
		m.base.addOuter(g, 1)
	}
	for _, g := range e.effects() {
		m.ee.addOuter(g, 1)
	}
	m.tied = e.count(FromNut) == 0 || e.count(Step) == 0
	m.assumed = n < fewReadings
	return m
}

// at builds the noise for one hand and scatter (as variances); ok is false
// where the scatter so dwarfs the tools' steps that no inverse can be had.
func (m scatterModel) at(hand2, scatter2 float64) (out noise, ok bool) {
	s := newSquare(m.base.n)
	for i, x := range m.base.a {
		s.a[i] = x + scatter2*m.ee.a[i]
	}
	for i := range s.n {
		s.add(i, i, hand2)
	}
	lower, ok := s.cholesky()
	if !ok {
		return noise{}, false
	}
	out = noise{hand2: hand2, scatter2: scatter2, inverse: lower.inverse()}
	for i := range s.n {
		out.logDet += 2 * math.Log(lower.row(i)[i])
	}
	return out, true
}

// projection is the noise's inverse with the slips named so far taken out:
// P = S^-1 - S^-1 X (X' S^-1 X)^-1 X' S^-1.
type projection struct {
	p      square
	py     []float64
	logLik float64 // restricted log likelihood, up to a constant
}

func (m scatterModel) project(n noise, slips [][]float64) projection {
	out := projection{p: newSquare(n.inverse.n), logLik: -n.logDet / 2}
	copy(out.p.a, n.inverse.a)
	for _, x := range slips {
		// One slip at a time: taking x out of P leaves P' = P - P x x' P/(x' P x).
		px := out.p.times(x)
		weight := dot(x, px)
		if weight <= 0 {
			continue
		}
		out.p.addOuter(px, -1/weight)
		out.logLik -= math.Log(weight) / 2
	}
	out.py = out.p.times(m.off)
	out.logLik -= dot(m.off, out.py) / 2
	return out
}

// slope is the derivative of the restricted likelihood by hand^2 and
// scatter^2:
//
//	slope(k) = (y' P V(k) P y - tr P V(k))/2,  V(hand) = 1, V(scatter) = E E'
//
// Restricted maximum likelihood, Patterson and Thompson 1971 (from memory).
func (m scatterModel) slope(pr projection) [2]float64 {
	slope := [2]float64{dot(pr.py, pr.py), -dot(pr.p.a, m.ee.a)}
	for i := range pr.p.n {
		slope[0] -= pr.p.row(i)[i]
	}
	for _, x := range m.onMarks(pr.py) {
		slope[1] += x * x
	}
	return [2]float64{slope[0] / 2, slope[1] / 2}
}

// curve is the expected second derivative of the restricted likelihood, with
// the sign turned: curve(k,l) = tr(P V(k) P V(l))/2.
func (m scatterModel) curve(pr projection) (c curve) {
	effects := make([][]float64, pr.p.n) // row i of P E
	for i := range effects {
		effects[i] = m.onMarks(pr.p.row(i))
		c.both += dot(effects[i], effects[i]) / 2
	}
	c.hand = dot(pr.p.a, pr.p.a) / 2
	for n := range m.marks { // column n of E' P E
		for _, x := range m.onMarks(column(effects, n)) {
			c.scatter += x * x / 2
		}
	}
	c.tied = m.tied
	return c
}

// onMarks gives E' v: what a direction among the readings is on the marks.
func (m scatterModel) onMarks(v []float64) []float64 {
	out := make([]float64, m.marks)
	for i, s := range m.seen {
		out[s.to] += v[i]
		out[s.from] -= v[i]
	}
	return out
}

func column(rows [][]float64, n int) []float64 {
	out := make([]float64, len(rows))
	for i, row := range rows {
		out[i] = row[n]
	}
	return out
}
