package gauges

import "math"

// dot is one gauge as the fit of its family sees it. The law is
//
//	y = level + slope (x - centre)
//
// with y the ln of a density and slope 0, or y = ln w and x = ln d.
type dot struct {
	gauge  int // index in the stock
	x, y   float64
	lean   float64   // d ln w/d y: 1, or the wrap's share of the weight
	u      float64   // standard uncertainty of y from errors of this gauge alone
	shared []float64 // from each shared source, in the order of family.sources
}

// form is the form of a family's law.
type form struct {
	sloped bool
	usual  float64 // scatter before any gauge is seen
}

// law is a fitted line with the variances of level and slope, which are
// independent about the centre, and what the shared errors do to both.
type law struct {
	form
	centre, level, slope   float64
	vLevel, vSlope         float64
	levelShare, slopeShare []float64
	scatter                float64 // the gauges' own, root mean square of the belief
	belief                 belief
	dots                   int
}

func sameX(dots []dot, but int) bool {
	first := 0
	if but == 0 {
		first = 1
	}
	for i := first; i < len(dots); i++ {
		if i != but && math.Abs(dots[i].x-dots[first].x) > 1e-9 {
			return false
		}
	}
	return true
}

// assumed tells whether the scatter is mostly the usual one: fewer than three
// differences show it.
func (l *law) assumed() bool {
	if l.sloped {
		return l.dots < 5
	}
	return l.dots < 4
}

// solve sets level and slope of all dots but one for a given scatter.
func (l *law) solve(dots []dot, but int, tau float64) {
	var sw, sx, sy, sxx, sxy float64
	for i, d := range dots {
		if i != but {
			w := d.weightAt(tau)
			sw, sx, sy = sw+w, sx+w*d.x, sy+w*d.y
		}
	}
	l.centre, l.level, l.vLevel = sx/sw, sy/sw, 1/sw
	if !l.sloped {
		return
	}
	for i, d := range dots {
		if i != but {
			w, dx := d.weightAt(tau), d.x-l.centre
			sxx, sxy = sxx+w*dx*dx, sxy+w*dx*d.y
		}
	}
	l.slope, l.vSlope = sxy/sxx, 1/sxx
}

// weightAt is the dot's weight in a fit where gauges scatter by tau.
func (d dot) weightAt(tau float64) float64 { return 1 / (d.u*d.u + tau*tau) }

// y is the fitted line at x.
func (l *law) y(x float64) float64 { return l.level + l.slope*(x-l.centre) }

// share carries the shared errors of all dots but one through to level and
// slope.
func (l *law) share(dots []dot, but int) {
	n := len(dots[0].shared)
	both := make([]float64, 2*n)
	l.levelShare, l.slopeShare = both[:n:n], both[n:]
	for i, d := range dots {
		if i == but {
			continue
		}
		w := d.weightAt(l.scatter)
		toSlope := w * (d.x - l.centre) * l.vSlope
		for k, s := range d.shared {
			l.levelShare[k] += w * l.vLevel * s
			l.slopeShare[k] += toSlope * s
		}
	}
}

// shareAt is what shared source k does to the line at x.
func (l *law) shareAt(k int, x float64) float64 {
	return l.levelShare[k] + (x-l.centre)*l.slopeShare[k]
}

// vAt is the variance of the line at x from the dots' own errors and scatter.
func (l *law) vAt(x float64) float64 {
	return l.vLevel + (x-l.centre)*(x-l.centre)*l.vSlope
}

// spread parts the variance u^2 of a gauge about the line at x, its own scatter
// included, into what is known and how it rises with the square of the scatter:
// u^2 = known + rise tau^2, rise = 1 + v(x)/(n v_level) for a line that itself
// rests on scattered dots.
func (l *law) spread(u, x float64) (known, rise float64) {
	rise = 1 + l.vAt(x)/(float64(l.dots)*l.vLevel)
	return max(0, u*u-rise*l.scatter*l.scatter), rise
}

// widened is u made to hold in the tail of chance p although the scatter is
// known only as far as the belief says: the normal quantile of p times it is
// exceeded with the chance p.
func (l *law) widened(u, x, p float64) float64 {
	known, rise := l.spread(u, x)
	return l.belief.bound(p, known, rise) / normalQuantile(p)
}

// about is how far a dot stands off from the line, which must have been fitted
// without it, and the standard uncertainty of that. The distance is taken in
// the linear density itself, not in its ln, since that is where a balance's errors
// are even to both sides: (w - w_fit)/w_fit = lean (exp(y - y_fit) - 1).
func (l *law) about(d dot) (off, u float64) {
	v := d.u*d.u + l.scatter*l.scatter + l.vAt(d.x)
	for k, s := range d.shared {
		differ := s - l.shareAt(k, d.x)
		v += differ * differ
	}
	return math.Expm1(d.y - l.y(d.x)), math.Sqrt(v)
}

// suspects tells whether the dot stands off beyond its Judgement's limit, with
// less work. p is the chance in one tail that may raise a false alarm.
func (l *law) suspects(d dot, p float64) bool {
	off, u := l.about(d)
	if off = math.Abs(off); d.lean*off <= leastSlip {
		return false
	}
	known, rise := l.spread(u, d.x)
	chance, _ := l.belief.beyond(off, known, rise)
	return chance < p
}

// leastSlip is how far a reading must stand off at least to be called suspect,
// as a fraction. Judgement: strings of one size differ by that much.
const leastSlip = 0.02
