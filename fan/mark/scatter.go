package mark

import "math"

// fewReadings are needed to learn from readings how they scatter (judgement).
const fewReadings = 8

// scarceMM is the scatter of hand and marks that is then assumed (judgement).
const scarceMM = 0.05

// scatters are the scatters that are tried, mm: none, and from far below what any
// hand can do to far above what any board may have, a fifth apart.
var scatters = func() (list []float64) {
	list = []float64{0}
	for s := 0.004; s < 0.6; s *= 1.2 {
		list = append(list, s)
	}
	return list
}()

// scale is how readings scatter when nothing has slipped, as the Cholesky factor
// of
//
//	S = diag(variance) + zeros + s^2 (1 + E E')
//
// s  standard deviation of setting a tool on a mark, and as much of the marks
// about their nominal places, the nut mark included; E  effects of the marks on
// the readings; zeros  the common part of a tool whose zero may be off. Hand and
// marks may well differ; that one number stands for both is what two passes of
// one line can bear.
type scale struct {
	scatter float64
	lower   square
	logDet  float64
}

// scales gives the scale for every scatter that is tried.
func (e evidence) scales() []scale {
	try := scatters
	if len(e.seen) < fewReadings {
		try = []float64{scarceMM}
	}
	known, marks := e.tools(), newSquare(len(e.seen))
	for i := range e.seen {
		marks.row(i)[i]++
	}
	for n := range e.plan.marks {
		marks.addOuter(e.moved(n, n), 1)
	}
	out := make([]scale, len(try))
	for i, scatter := range try {
		cov := newSquare(known.n)
		for j := range cov.a {
			cov.a[j] = known.a[j] + scatter*scatter*marks.a[j]
		}
		out[i] = newScale(scatter, cov)
	}
	return out
}

// tools is how readings scatter by their tools alone.
func (e evidence) tools() square {
	out := newSquare(len(e.seen))
	for i, s := range e.seen {
		out.row(i)[i] += s.variance
	}
	for kind, zero := range e.zero {
		out.addOuter(e.pass(Kind(kind), 0), zero*zero)
	}
	return out
}

func newScale(scatter float64, covariance square) scale {
	out := scale{scatter: scatter, lower: covariance.cholesky()}
	for i := range covariance.n {
		out.logDet += 2 * math.Log(out.lower.row(i)[i])
	}
	return out
}

// fit is what was read in units of its scatter, less what the slips named so far
// explain.
type fit struct {
	scale
	y      []float64
	basis  [][]float64 // of what the named slips do, orthonormal
	logLik float64     // restricted log likelihood, up to a constant
}

// fit takes slips out of the readings' errors. The restricted likelihood is
//
//	-(log|S| + log|X'S^-1 X| + y'Py)/2
//
// X  effects of the slips. Patterson and Thompson 1971 (from memory).
func (s scale) fit(errors []float64, slips []*candidate) fit {
	f := fit{scale: s, logLik: -s.logDet / 2}
	for _, c := range slips {
		if x, size := f.own(c.effect); size > 0 {
			for i := range x {
				x[i] /= size
			}
			f.basis = append(f.basis, x)
			f.logLik -= math.Log(size)
		}
	}
	f.y, _ = f.own(errors)
	f.logLik -= dot(f.y, f.y) / 2
	return f
}

// shared is the part of an effect's square that arithmetic leaves where named slips
// share all of it, and far below what a reading leaves.
const shared = 1e-12

// own gives an effect in units of the scatter, less what the named slips share
// with it, and its size; 0 where they share all of it.
func (f fit) own(effect []float64) (own []float64, size float64) {
	own = f.lower.halfSolve(effect)
	whole := dot(own, own)
	for _, b := range f.basis {
		share := dot(own, b)
		for i := range own {
			own[i] -= share * b[i]
		}
	}
	if rest := dot(own, own); rest > shared*whole {
		size = math.Sqrt(rest)
	}
	return own, size
}

// slip gives the size of a candidate that suits the readings best, its standard
// uncertainty, and their ratio:
//
//	d = a'Py/(a'Pa),  u(d) = 1/sqrt(a'Pa)
//
// all 0 where the named slips explain it already. Follows from normal scatter.
func (f fit) slip(c *candidate) (d, u, ratio float64) {
	a, size := f.own(c.effect)
	if size == 0 {
		return 0, 0, 0
	}
	d, u = dot(a, f.y)/(size*size), 1/size
	return d, u, math.Abs(d) / u
}

// greatest gives the candidate with the greatest ratio; the first listed where
// several are alike, nil for none.
func (f fit) greatest(candidates []*candidate) (best *candidate, ratio float64) {
	for _, c := range candidates {
		// A part in 1e6 keeps arithmetic noise from ordering equal effects.
		if _, _, r := f.slip(c); r > ratio*(1+1e-6) {
			best, ratio = c, r
		}
	}
	return best, ratio
}

// named makes a slip of the best candidate, and lists beside it what cannot be
// distinguished from it.
func (f fit) named(candidates []*candidate, best *candidate) Slip {
	out := Slip{Others: []Finding{}}
	_, _, most := f.slip(best)
	for _, c := range candidates {
		d, u, ratio := f.slip(c)
		found := c.Finding
		found.Size, found.U = millimetres(d), millimetres(u)
		switch {
		case c == best:
			out.Finding = found
		case ratio > 0 && most*most-ratio*ratio <= 2*likelyAs:
			out.Others = append(out.Others, found)
		}
	}
	return out
}
