package gauges

import (
	"math"
	"slices"
)

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

// fitLaw fits dots by weighted least squares.
//
//	weight = 1/(u^2 + tau^2)
//
// tau: the family's own scatter, see law.believe. Shared errors do not weigh,
// since they move all dots together; they are carried through the same sums
// afterwards. false where the dots do not determine the law: fewer than two, or
// a slope asked of one diameter. Source: the Guide, H.3.
func fitLaw(dots []dot, of form) (law, bool) {
	l := law{form: of, dots: len(dots)}
	if len(dots) < 2 || of.sloped && sameX(dots) {
		return l, false
	}
	l.belief = l.believe(dots)
	l.scatter = math.Sqrt(l.belief.meanSquare())
	l.solve(dots, l.scatter)
	l.share(dots)
	return l, true
}

func sameX(dots []dot) bool {
	return !slices.ContainsFunc(dots, func(d dot) bool { return math.Abs(d.x-dots[0].x) > 1e-9 })
}

// assumed tells whether the scatter is mostly the usual one: fewer than three
// differences show it.
func (l *law) assumed() bool {
	if l.sloped {
		return l.dots < 5
	}
	return l.dots < 4
}

// solve sets level and slope for a given scatter and gives the ln of how likely
// that scatter makes the dots, with level and slope free.
//
//	(sum(ln w) + ln v_level + ln v_slope - chi2)/2
//
// chi2: weighted squares left by the line. Source: D. A. Harville, Journal of
// the American Statistical Association 72 (1977) 320, restricted likelihood.
func (l *law) solve(dots []dot, tau float64) float64 {
	var sw, sx, sy, logs float64
	product := 1.0 // of the variances; its ln is taken before it can vanish
	for _, d := range dots {
		v := d.u*d.u + tau*tau
		sw, sx, sy = sw+1/v, sx+d.x/v, sy+d.y/v
		if product *= v; product < 1e-250 {
			logs, product = logs-math.Log(product), 1
		}
	}
	l.centre, l.level, l.vLevel = sx/sw, sy/sw, 1/sw
	logs += math.Log(l.vLevel / product)
	if l.sloped {
		var sxx, sxy float64
		for _, d := range dots {
			w, dx := 1/(d.u*d.u+tau*tau), d.x-l.centre
			sxx, sxy = sxx+w*dx*dx, sxy+w*dx*d.y
		}
		l.slope, l.vSlope = sxy/sxx, 1/sxx
		logs += math.Log(l.vSlope)
	}
	for _, d := range dots {
		r := d.y - l.y(d.x)
		logs -= r * r / (d.u*d.u + tau*tau)
	}
	return logs / 2
}

// y is the fitted line at x.
func (l *law) y(x float64) float64 { return l.level + l.slope*(x-l.centre) }

// share carries the shared errors of the dots through to level and slope.
func (l *law) share(dots []dot) {
	n := len(dots[0].shared)
	l.levelShare, l.slopeShare = make([]float64, n), make([]float64, n)
	for _, d := range dots {
		w := 1 / (d.u*d.u + l.scatter*l.scatter)
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
// the unit weight itself, not in its ln, since that is where a balance's errors
// are even to both sides: (w - w_fit)/w_fit = lean (exp(y - y_fit) - 1).
func (l *law) about(d dot) (off, u float64) {
	v := d.u*d.u + l.scatter*l.scatter + l.vAt(d.x)
	for k, s := range d.shared {
		differ := s - l.shareAt(k, d.x)
		v += differ * differ
	}
	return math.Expm1(d.y - l.y(d.x)), math.Sqrt(v)
}

// judge words that in figures of the unit weight. p is the chance in one tail
// that may raise a false alarm.
func (l *law) judge(d dot, p float64) Judgement {
	off, u := l.about(d)
	u = d.lean * l.widened(u, d.x, p)
	return Judgement{Off: d.lean * off, U: u, Limit: max(leastSlip, normalQuantile(p)*u)}
}

// suspects tells whether judge would find the dot beyond its limit, with less
// work.
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
