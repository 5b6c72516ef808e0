package gauges

import "math"

// nobody is the index of no dot, for a law that leaves none out.
const nobody = -1

// moments are the weighted sums of a set of dots for each scatter of the grid.
// With one dot's terms taken off they are those of the others, so that the laws
// that leave out one dot each cost no more than one law.
type moments struct {
	form
	dots []dot
	near law // a line among the dots: y is counted from it and x from its centre, which keeps the sums small
	at   [len(scatterGrid)]sums
}

// sums are weighted sums over dots, x and y counted as in moments.
type sums struct{ w, x, y, xx, xy, yy, lnV float64 }

func newMoments(dots []dot, of form) *moments {
	m := &moments{form: of, dots: dots, near: law{form: of}}
	if !m.enough(nobody) {
		return m
	}
	m.near.solve(dots, nobody, of.usual)
	for k, tau := range scatterGrid {
		m.at[k] = m.sum(tau)
	}
	return m
}

// sum adds up the terms of all dots. Weights are multiplied before their ln is
// taken, as long as the product is a number of usual size.
func (m *moments) sum(tau float64) sums {
	var s sums
	product := 1.0
	for i := range m.dots {
		t := m.term(&m.dots[i], tau)
		s.add(t)
		if product *= t.w; !(product < 1e200 && product > 1e-200) {
			s.lnV, product = s.lnV-math.Log(product), 1
		}
	}
	s.lnV -= math.Log(product)
	return s
}

// enough tells whether the dots without one determine the law.
func (m *moments) enough(but int) bool {
	n := len(m.dots)
	if but != nobody {
		n--
	}
	return n >= 2 && !(m.sloped && sameX(m.dots, but))
}

// without gives the sums of all dots but one, or of all.
func (m *moments) without(but, k int) sums {
	s := m.at[k]
	if but != nobody {
		t := m.term(&m.dots[but], scatterGrid[k])
		s.less(t)
		s.lnV += math.Log(t.w)
	}
	return s
}

// term is what one dot adds to the sums, but for lnV: that is -ln w.
func (m *moments) term(d *dot, tau float64) sums {
	w, x, y := d.weightAt(tau), d.x-m.near.centre, d.y-m.near.y(d.x)
	return sums{w, w * x, w * y, w * x * x, w * x * y, w * y * y, 0}
}

func (s *sums) add(t sums) {
	s.w, s.x, s.y = s.w+t.w, s.x+t.x, s.y+t.y
	s.xx, s.xy, s.yy = s.xx+t.xx, s.xy+t.xy, s.yy+t.yy
}

func (s *sums) less(t sums) {
	s.w, s.x, s.y = s.w-t.w, s.x-t.x, s.y-t.y
	s.xx, s.xy, s.yy = s.xx-t.xx, s.xy-t.xy, s.yy-t.yy
}

// likelihood is the ln of how likely a scatter makes the dots, with level and
// slope free.
//
//	(ln v_level + ln v_slope - sum(ln v) - chi2)/2
//
// v: u^2 + tau^2 of a dot; chi2: weighted squares left by the line. Source:
// D. A. Harville, Journal of the American Statistical Association 72 (1977) 320,
// restricted likelihood.
func (s sums) likelihood(sloped bool) float64 {
	chi2 := s.yy - s.y*s.y/s.w
	free := s.w // 1/(v_level v_slope)
	if sloped {
		xx, xy := s.xx-s.x*s.x/s.w, s.xy-s.x*s.y/s.w
		chi2 -= xy * xy / xx
		free *= xx
	}
	return -(math.Log(free) + s.lnV + chi2) / 2
}

// law fits all dots but one, or all, by weighted least squares.
//
//	weight = 1/(u^2 + tau^2)
//
// tau: the family's own scatter, see belief. Shared errors do not weigh, since
// they move all dots together; they are carried through the same sums
// afterwards. false where the dots do not determine the law: fewer than two, or
// a slope asked of one diameter. Source: the Guide, H.3.
func (m *moments) law(but int) (law, bool) {
	l := law{form: m.form, dots: len(m.dots)}
	if but != nobody {
		l.dots--
	}
	if !m.enough(but) {
		return l, false
	}
	l.belief = m.belief(but)
	l.scatter = math.Sqrt(l.belief.meanSquare())
	l.solve(m.dots, but, l.scatter)
	l.share(m.dots, but)
	return l, true
}

// belief weighs the scatters of the grid by what the dots show, one left out.
//
//	share(tau) ~ tau exp(-(tau/tau_0)^2/2) likelihood(tau)
//
// tau_0: the form's usual scatter, the root mean square before any dot is seen;
// the factor tau is the grid's step, its ln
// here counted from the grid's first; the likelihood is sums.likelihood. Many
// dots override tau_0, few do not. Source: Bayes' rule with a half-normal prior.
func (m *moments) belief(but int) belief {
	var b belief
	best := math.Inf(-1)
	for k, tau := range scatterGrid {
		b[k] = float64(k)*lnScatterStep - tau*tau/(2*m.usual*m.usual) + m.without(but, k).likelihood(m.sloped)
		best = max(best, b[k])
	}
	sum := 0.0
	for k := range b {
		b[k] = math.Exp(b[k] - best)
		sum += b[k]
	}
	for k := range b {
		b[k] /= sum
	}
	return b
}
