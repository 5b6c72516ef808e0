package fit

import (
	"cmp"
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
	sloped   bool
	expected float64 // scatter before any gauge is seen
}

// What gauges of one kind are taken to scatter by about their law before any
// of them is seen, as a fraction: woundScatter for wound strings; plainScatter
// for plain wire, whose diameter counts by itself, so that only the material is
// left to vary. expectedFreedom is how many differences between gauges that guess
// is worth. Judgement; with 2, simulated stocks come out best.
const (
	woundScatter    = 0.02
	plainScatter    = 0.005
	expectedFreedom = 2
)

// law is a fitted line with the variances of level and slope, which are
// independent about the centre, and what the shared errors do to both.
type law struct {
	form
	centre, level, slope   float64
	vLevel, vSlope         float64
	levelShare, slopeShare []float64
	scatter                float64 // the gauges' own
	freedom                float64 // degrees of freedom of scatter, the guess counted
	dots                   int
}

// fitLaw fits dots by weighted least squares.
//
//	weight = 1/(u^2 + tau^2)
//
// tau: the family's own scatter. Shared errors do not weigh, since they move all
// dots together; they are carried through the same sums afterwards. false where
// the dots do not determine the law: fewer than two, or a slope asked of one
// diameter. Source: the Guide, H.3.
func fitLaw(dots []dot, of form) (*law, bool) {
	l := &law{form: of, dots: len(dots), freedom: float64(len(dots)) - 1 + expectedFreedom}
	if of.sloped {
		l.freedom--
	}
	if len(dots) < 2 || of.sloped && sameX(dots) {
		return l, false
	}
	l.findScatter(dots)
	l.levelShare, l.slopeShare = make([]float64, len(dots[0].shared)), make([]float64, len(dots[0].shared))
	for _, d := range dots {
		toLevel := l.vLevel / (d.u*d.u + l.scatter*l.scatter)
		toSlope := toLevel / l.vLevel * (d.x - l.centre) * l.vSlope
		for k, s := range d.shared {
			l.levelShare[k] += toLevel * s
			l.slopeShare[k] += toSlope * s
		}
	}
	return l, true
}

func sameX(dots []dot) bool {
	return !slices.ContainsFunc(dots, func(d dot) bool { return math.Abs(d.x-dots[0].x) > 1e-9 })
}

// findScatter finds the scatter tau that explains how far the dots lie from the
// line.
//
//	sum((y - line)^2/(u^2 + tau^2)) + nu_0 2 tau_0^2/(tau_0^2 + tau^2) = n - k + nu_0
//
// n: dots; k: 1, or 2 with a slope; tau_0, nu_0: the expected scatter and what it
// is worth. The left side falls with tau, so that bisection finds it. Source:
// R. C. Paule and J. Mandel, Journal of Research of the National Bureau of
// Standards 87 (1982) 377, without the second term, which is ours: it makes the
// scatter tau_0 where nothing shows it, as nu_0 gauges known to tau_0 would that
// scatter by as much again.
func (l *law) findScatter(dots []dot) {
	low, high := 1e-4, 1.0
	for range 30 {
		l.scatter = math.Sqrt(low * high)
		if l.solve(dots)+expectedFreedom*2/(1+math.Pow(l.scatter/l.expected, 2)) > l.freedom {
			low = l.scatter
		} else {
			high = l.scatter
		}
	}
	l.solve(dots)
}

// solve sets level and slope for the scatter, and gives the weighted sum of
// squares that is left.
func (l *law) solve(dots []dot) (chi2 float64) {
	var sw, sx, sy, sxx, sxy float64
	weight := func(d *dot) float64 { return 1 / (d.u*d.u + l.scatter*l.scatter) }
	for i := range dots {
		d := &dots[i]
		w := weight(d)
		sw, sx, sy = sw+w, sx+w*d.x, sy+w*d.y
	}
	l.centre, l.level, l.vLevel = sx/sw, sy/sw, 1/sw
	if l.sloped {
		for i := range dots {
			d := &dots[i]
			w, dx := weight(d), d.x-l.centre
			sxx, sxy = sxx+w*dx*dx, sxy+w*dx*d.y
		}
		l.slope, l.vSlope = sxy/sxx, 1/sxx
	}
	for i := range dots {
		d := &dots[i]
		r := d.y - l.y(d.x)
		chi2 += weight(d) * r * r
	}
	return chi2
}

// assumed reports whether the scatter is mostly the expected one: fewer than three
// differences show it.
func (l *law) assumed() bool { return l.freedom-expectedFreedom < 3 }

// y is the fitted line at x.
func (l *law) y(x float64) float64 { return l.level + l.slope*(x-l.centre) }

// shareAt is what shared source k does to the line at x.
func (l *law) shareAt(k int, x float64) float64 {
	return l.levelShare[k] + (x-l.centre)*l.slopeShare[k]
}

// vAt is the variance of the line at x from the dots' own errors and scatter.
func (l *law) vAt(x float64) float64 {
	return l.vLevel + (x-l.centre)*(x-l.centre)*l.vSlope
}

// deviation is how far a dot lies from the line, which must have been fitted
// without it, and the standard uncertainty of that, its own scatter included.
// The distance is taken in the linear density itself, not in its ln, since that
// is where a balance's errors are even to both sides:
// (w - w_fit)/w_fit = lean (exp(y - y_fit) - 1).
func (l *law) deviation(d dot) (x, u float64) {
	v := d.u*d.u + l.scatter*l.scatter + l.vAt(d.x)
	for k, s := range d.shared {
		differ := s - l.shareAt(k, d.x)
		v += differ * differ
	}
	return math.Expm1(d.y - l.y(d.x)), math.Sqrt(v)
}

// widened is the standard uncertainty u of a gauge about the line made to hold
// in the tail of chance p although the scatter is known by few gauges only: the
// normal quantile of p times it is exceeded with the chance p.
//
//	u t_p(nu)/z_p,  nu = freedom max(1, u^2/s^2)^2
//
// s2: the part of u^2 that is known no better than the scatter. Source:
// effective degrees of freedom of Welch and Satterthwaite, the Guide G.4, with
// the other parts known for sure.
func (l *law) widened(u, p, s2 float64) float64 {
	return u * studentQuantile(p, l.freedom*math.Pow(max(1, u*u/s2), 2)) / normalQuantile(p)
}

// normalQuantile is how many standard deviations leave the chance p above
// them.
//
//	z = sqrt(2) erfinv(1 - 2p)
//
// p: chance in the upper tail, 1e-9 < p < 1 (1-2p keeps seven digits down to
// there). Source: Abramowitz and Stegun, Handbook of Mathematical Functions,
// 26.2.
func normalQuantile(p float64) float64 { return math.Sqrt2 * math.Erfinv(1-2*p) }

// studentQuantile is the quantile of Student's distribution that leaves the
// chance p above it.
//
//	t = sqrt(nu (exp(c z^2/nu) - 1)),  c = (8 nu + 3)/(8 nu + 1) squared
//
// z: the normal quantile of p; nu: degrees of freedom, above 1. Within 4 % of t
// from 5 degrees on for p down to 0.0001, within 0.5 % from 10 on. Source:
// D. L. Wallace, Annals of Mathematical Statistics 30 (1959) 1124, solved for t.
func studentQuantile(p, nu float64) float64 {
	z := normalQuantile(p) * (8*nu + 3) / (8*nu + 1)
	return math.Sqrt(nu * math.Expm1(z*z/nu))
}

// robustLine is a line that bad rows cannot move: the weighted median of the
// levels or, for a sloped law, the median of the slopes between all pairs and
// then of the levels. level is y at x = 0.
//
// Source: P. K. Sen, Journal of the American Statistical Association 63 (1968)
// 1379, after Theil.
func robustLine(dots []dot, sloped bool) (level, slope float64) {
	var slopes, dx []float64
	for i, a := range dots {
		for _, b := range dots[:i] {
			if d := a.x - b.x; sloped && math.Abs(d) > 1e-9 {
				slopes, dx = append(slopes, (a.y-b.y)/d), append(dx, math.Abs(d))
			}
		}
	}
	slope = weightedMedian(slopes, dx)
	levels, weight := make([]float64, len(dots)), make([]float64, len(dots))
	for i, d := range dots {
		levels[i], weight[i] = d.y-slope*d.x, d.medianWeight()
	}
	return weightedMedian(levels, weight), slope
}

// medianWeight is what a dot counts in a median; woundScatter keeps one dot from
// outweighing all others.
func (d dot) medianWeight() float64 { return 1 / (d.u*d.u + woundScatter*woundScatter) }

// weightedMedian is the value with half of the weight on either side; halfway
// between two values where the weight parts exactly there. Empty gives 0.
func weightedMedian(values, weights []float64) float64 {
	order := make([]int, len(values))
	total := 0.0
	for i := range order {
		order[i] = i
		total += weights[i]
	}
	slices.SortStableFunc(order, func(a, b int) int { return cmp.Compare(values[a], values[b]) })
	below := 0.0
	for n, i := range order {
		below += weights[i]
		switch {
		case 2*below > total:
			return values[i]
		case 2*below == total && n+1 < len(order):
			return (values[i] + values[order[n+1]]) / 2
		}
	}
	return 0
}
