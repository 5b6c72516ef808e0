package gauges

import (
	"fmt"
	"math"

	"scalepair/data/fault"
	"scalepair/data/unit"
)

// makeFit gives the family's fit on the trusted dots; false where they make
// none.
func (f *family) makeFit(all []Gauge, by *others) (Fit, bool) {
	l, ok := by.kept.law(nobody)
	if !ok {
		return Fit{}, false
	}
	out := Fit{
		Family: f.name, Material: f.material, Kind: f.kind, Scatter: unit.Ratio(l.scatter), ScatterAssumed: l.assumed(),
		MinOuter: unit.Length(math.Inf(1)), law: l, sources: f.sources, bounded: f.bounds(all),
	}
	for i, d := range f.dots {
		g := all[d.gauge]
		if !by.in[i] {
			out.LeftOut = append(out.LeftOut, g.Label)
			continue
		}
		out.Used = append(out.Used, g.Label)
		out.MinOuter, out.MaxOuter = min(out.MinOuter, g.Outer), max(out.MaxOuter, g.Outer)
		out.coreDensity = g.DensityKgM3
	}
	out.figures()
	return out, true
}

// figures fills in density or exponent with their uncertainties, shared errors
// included.
func (f *Fit) figures() {
	if f.Kind == PowerLaw {
		f.Exponent, f.UExponent = f.law.slope, RootSum(append([]float64{math.Sqrt(f.law.vSlope)}, f.law.slopeShare...)...)
		return
	}
	f.DensityKgM3 = math.Exp(f.law.level)
	f.UDensityKgM3 = f.DensityKgM3 * RootSum(append([]float64{math.Sqrt(f.law.vLevel)}, f.law.levelShare...)...)
}

// estimate gives a gauge without a reading the linear density of its family's
// law.
//
//	plain: w = rho A    wrap density: w = rho_c A_c + rho R    power law: ln w = level + slope (ln d - centre)
//
// A, A_c, R as in FitKind.see. Its uncertainty holds the law's, the gauge's
// diameters', and the family's own scatter; it is widened where the scatter
// rests on few gauges, so that 1.96 of it still make 95 %.
func (f Fit) estimate(g *Gauge) {
	x, w, by := f.predict(g)
	perY := w / by.byWeight // kg/m for a change of y by 1
	own, shared := f.fromDiameters(g, perY, by)
	shared = shared.plus(1, f.fromLaw(x, w, perY))
	v := value{w: w, indep: RootSum(own, perY*f.law.scatter), bounded: math.Abs(own), common: shared}
	wide := perY * f.law.widened(v.u()/perY, x, 0.025)
	v.indep = math.Sqrt(max(0, wide*wide-math.Pow(shared.size(), 2)))
	g.set(v)
	g.Estimated = true
}

// fromLaw is what the law's uncertainty does to an estimate at x, kg/m. Two
// estimates of one family share it.
func (f Fit) fromLaw(x, w, perY float64) parts {
	name := "fit of " + f.Family
	if f.Family == Plain {
		name += " " + f.Material
	}
	shared := one(name, perY*math.Sqrt(f.law.vLevel)).
		plus(1, one("slope of the "+name, (x-f.law.centre)*w*math.Sqrt(f.law.vSlope)))
	for k, s := range f.sources {
		part := one
		if f.bounded[k] {
			part = within
		}
		shared = shared.plus(1, part(s, perY*f.law.shareAt(k, x)))
	}
	return shared
}

// fromDiameters is what the diameters' uncertainties do to an estimate, kg/m:
// of its own for a wound string's outside, shared with the core that is drawn
// beside it, shared with all that the calipers measured.
func (f Fit) fromDiameters(g *Gauge, perY float64, by leans) (own float64, shared parts) {
	outer, core := -perY*by.byOuter, -perY*by.byCore
	shared = within(sourceCalipers, outer*g.outer.relCommon())
	if g.Family == Plain {
		return 0, shared.plus(1, within(coreSource(g.Label), outer*g.outer.relOwn()))
	}
	if core != 0 {
		shared = shared.plus(1, within(coreSource(g.Label), core*g.core.relOwn())).
			plus(1, within(sourceCalipers, core*g.core.relCommon()))
	}
	return outer * g.outer.relOwn(), shared
}

// predict is the law's linear density of a gauge, with x and the leans there.
func (f Fit) predict(g *Gauge) (x, w float64, by leans) {
	if f.Kind == PowerLaw {
		x = math.Log(float64(g.Outer))
	}
	w = f.Kind.weightAt(g, f.law.y(x))
	return x, w, f.Kind.leans(g, w, f.law.slope)
}

// LinearDensity is the law's linear density of a size, kg/m, with the standard
// uncertainty of the law itself (without that of the diameters and the
// family's scatter). outer and core in m; a wrap density needs the core, the
// other laws ignore it. A size that has no place for a wrap gives 0.
func (f Fit) LinearDensity(outer, core float64, shape Shape) (w, u float64) {
	g := Gauge{Family: f.Family, Outer: unit.Length(outer), Core: unit.Length(core), Shape: shape, DensityKgM3: f.coreDensity}
	if outer <= 0 || f.Kind == WrapDensity && (core <= 0 || shape.seat(core) >= outer) {
		return 0, 0
	}
	x, w, by := f.predict(&g)
	sum := f.law.vAt(x)
	for k := range f.sources {
		sum += math.Pow(f.law.shareAt(k, x), 2)
	}
	return w, w / by.byWeight * math.Sqrt(sum)
}

// fill estimates the family's gauges without a reading and reports those that
// cannot be.
func (f *family) fill(all []Gauge, fit Fit, fitted bool, extrapolate bool, entries []*entry, faults *fault.List) {
	for _, i := range f.waiting {
		g, at, told := &all[i], entries[i].r.Place, entries[i].r.Given.outer()
		switch {
		case !fitted:
			faults.Add(at, fmt.Sprintf("gauge %q has no reading, and %s", g.Label, f.whyNoFit(all)), "",
				orMeant("weigh a piece of it, or weigh two gauges of its kind on either side of it", g.Family, all))
			continue
		case !extrapolate && outside(float64(g.Outer), float64(fit.MinOuter), float64(fit.MaxOuter)):
			faults.Add(at, fmt.Sprintf("gauge %q has no reading and lies outside the fitted diameters, %s to %s", g.Label,
				told.short(float64(fit.MinOuter), diameterStep), told.short(float64(fit.MaxOuter), diameterStep)), told.text(float64(g.Outer)),
				"weigh a piece of it, or ask for it to be estimated beyond them")
			continue
		case outside(float64(g.Outer), float64(fit.MinOuter), float64(fit.MaxOuter)):
			g.note("estimated beyond the fitted diameters")
		}
		fit.estimate(g)
	}
}

// diameterStep is how finely diameters of a fit are told.
const diameterStep = 5e-6

func outside(d, low, top float64) bool { return d < low*(1-1e-9) || d > top*(1+1e-9) }

func (f *family) whyNoFit(all []Gauge) string {
	kind := "kind " + f.name
	if f.name == Plain {
		kind = "plain " + f.material
	}
	switch {
	case len(f.measured) == 0:
		return "no gauge of the " + kind + " has one"
	case len(f.measured) == 1:
		return fmt.Sprintf("one gauge of the %s, %q, makes no fit", kind, all[f.measured[0]].Label)
	}
	return "the weighed gauges of the " + kind + " all have one diameter, which makes no fit"
}
