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

// form says what law a family is fitted with.
type form struct {
	sloped bool
	least  float64 // scatter that the family has at least
}

// law is a fitted line with the variances of level and slope, which are
// independent about the centre, and what the shared errors do to both.
type law struct {
	form
	centre, level, slope   float64
	vLevel, vSlope         float64
	levelShare, slopeShare []float64
	scatter                float64 // the gauges' own, standard deviation of y
	dof                    int     // gauges less parameters
	assumed                bool    // scatter is not from these gauges
}

// leastScatter is the least scatter of wound strings of one kind, as a
// fraction: what is seen of it in a few gauges is often less than there is.
// Plain wire has none beyond its diameter. Judgement.
const leastScatter = 0.005

// smallScatter is taken for the scatter of a family too small to show one; it
// is the least of one too small to show it well. Judgement.
const (
	smallScatter = 0.02
	wellShown    = 3 // degrees of freedom
)

// fitLaw fits dots by weighted least squares.
//
//	weight = 1/(u^2 + tau^2)
//
// tau: the family's own scatter, so large that the weighted squares add up to
// the degrees of freedom, or 0 where they add up to less. Below wellShown
// degrees of freedom it is not less than smallScatter, and never less than the
// form's least. Shared errors do not weigh, since they move all dots together;
// they are carried through the same sums afterwards. false where the dots do
// not determine the law: fewer than two, or a slope asked of one diameter.
// Source of tau: R. C. Paule and J. Mandel, Journal of Research of the National
// Bureau of Standards 87 (1982) 377.
func fitLaw(dots []dot, of form) (law, bool) {
	parameters := 1
	if of.sloped {
		parameters = 2
	}
	l := law{form: of, dof: len(dots) - parameters}
	if len(dots) < 2 || of.sloped && sameX(dots) {
		return l, false
	}
	l.scatter = max(of.least, l.paule(dots))
	if l.dof < wellShown && l.scatter < smallScatter {
		l.scatter, l.assumed = smallScatter, true
	}
	l.solve(dots, l.scatter)
	l.share(dots)
	return l, true
}

func sameX(dots []dot) bool {
	return !slices.ContainsFunc(dots, func(d dot) bool { return math.Abs(d.x-dots[0].x) > 1e-9 })
}

// solve sets level and slope for a given scatter and gives the weighted sum of
// squares that is left.
func (l *law) solve(dots []dot, tau float64) float64 {
	var sw, sx, sy float64
	for _, d := range dots {
		w := 1 / (d.u*d.u + tau*tau)
		sw, sx, sy = sw+w, sx+w*d.x, sy+w*d.y
	}
	l.centre, l.level, l.vLevel = sx/sw, sy/sw, 1/sw
	if l.sloped {
		var sxx, sxy float64
		for _, d := range dots {
			w, dx := 1/(d.u*d.u+tau*tau), d.x-l.centre
			sxx, sxy = sxx+w*dx*dx, sxy+w*dx*d.y
		}
		l.slope, l.vSlope = sxy/sxx, 1/sxx
	}
	chi2 := 0.0
	for _, d := range dots {
		r := d.y - l.y(d.x)
		chi2 += r * r / (d.u*d.u + tau*tau)
	}
	return chi2
}

// y is the fitted line at x.
func (l *law) y(x float64) float64 { return l.level + l.slope*(x-l.centre) }

// paule finds the scatter. The sum of squares falls as the scatter grows, so
// halving an interval finds it; fifty halvings of 1 (a factor of e in weight)
// leave nothing to find.
func (l *law) paule(dots []dot) float64 {
	wanted := float64(l.dof)
	if wanted < 1 || l.solve(dots, 0) <= wanted {
		return 0
	}
	low, high := 0.0, 1.0
	for range 50 {
		tau := (low + high) / 2
		if l.solve(dots, tau) > wanted {
			low = tau
		} else {
			high = tau
		}
	}
	return high
}

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

// freedom is how well the uncertainty u of a prediction of y at x is known,
// the gauge's own included. Its part from the scatter rests on these dots:
//
//	part^2 = tau^2 (2 - tau^2/s^2) (1 + h),   s^2 = n v_level,   h = v(x)/s^2
//
// s: what one dot stands off by, scatter and own uncertainty together; h: what
// the line adds to that. A scatter is seen through the dots' uncertainties, so
// part is tau where it is plain to see and nearer s where it is not; where no
// scatter shows, nothing rests on it. At least 3 degrees of freedom, below
// which the quantiles say more about ignorance than about strings. The factor
// in brackets and the bound are judgement; simulation bears them out.
func (l *law) freedom(u, x float64) float64 {
	if l.assumed || l.scatter <= l.least {
		return math.Inf(1) // judgement, not from these dots
	}
	n := float64(l.dof + 1)
	if l.sloped {
		n++
	}
	tau2, s2 := l.scatter*l.scatter, n*l.vLevel
	part := math.Sqrt((tau2 - l.least*l.least) * (2 - tau2/s2) * (1 + l.vAt(x)/s2))
	return max(3, EffectiveFreedom(u, part, float64(l.dof)))
}

// judge sets a dot against the line, which must have been fitted without it.
// p is the chance in one tail that may raise a false alarm. The distance is
// taken in the unit weight itself, not in its ln, since that is where a balance's
// errors are even to both sides: (w - w_fit)/w_fit = lean (exp(y - y_fit) - 1).
func (l *law) judge(d dot, p float64) Judgement {
	v := d.u*d.u + l.scatter*l.scatter + l.vAt(d.x)
	for k, s := range d.shared {
		differ := s - l.shareAt(k, d.x)
		v += differ * differ
	}
	u := math.Sqrt(v)
	return Judgement{
		Off:   d.lean * math.Expm1(d.y-l.y(d.x)),
		U:     d.lean * u,
		Limit: max(leastSlip, d.lean*u*studentQuantile(p, l.freedom(u, d.x))),
	}
}

// leastSlip is how far a reading must stand off at least to be called suspect,
// as a fraction. Judgement: strings of one size differ by that much.
const leastSlip = 0.02

// suspect tells whether the distance is beyond the limit.
func (j Judgement) suspect() bool { return math.Abs(j.Off) > j.Limit }
