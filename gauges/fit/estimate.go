package fit

import (
	"fmt"
	"math"

	"scalepair/data/fault"
	"scalepair/data/trace"
	"scalepair/data/unit"
	"scalepair/gauges"
	"scalepair/gauges/reading"
)

// Fit is the law that ties the gauges of one family together.
type Fit struct {
	Family   string `json:"construction"`
	Material string `json:"core_material"`
	Law      Law    `json:"law"`

	Density   unit.Density `json:"density_g_per_cm3"` // of the wire or the wrap; 0 for a power law
	UDensity  unit.Density `json:"density_standard_uncertainty_g_per_cm3"`
	Exponent  unit.Number  `json:"exponent"` // of a power law; else 0
	UExponent unit.Number  `json:"exponent_standard_uncertainty"`

	Scatter        unit.Ratio `json:"scatter_percent"`    // the family's own, of the fitted density (power law: of the linear density)
	ScatterAssumed bool       `json:"scatter_is_assumed"` // too few gauges to see a scatter: the expected one, judgement

	MinOuter unit.Length `json:"from_outer_mm"` // the fitted diameters
	MaxOuter unit.Length `json:"to_outer_mm"`
	Used     []string    `json:"gauges"`              // labels of the gauges that the fit is made of
	LeftOut  []string    `json:"kept_out_as_suspect"` // labels of suspect gauges

	family      *family
	line        *law
	coreDensity float64
}

// makeFit gives the family's fit on the trusted dots; false where they make
// none.
func (f *family) makeFit(list []gauges.Gauge) (Fit, bool) {
	in := make([]bool, len(f.dots))
	for i := range in {
		in[i] = f.judged[i].in
	}
	l, ok := fitLaw(others(f.dots, -1, in), f.form())
	if !ok {
		return Fit{}, false
	}
	out := Fit{Family: f.name, Material: f.material, Law: f.law, Scatter: unit.Ratio(l.scatter), ScatterAssumed: l.assumed(),
		MinOuter: unit.Length(math.Inf(1)), LeftOut: []string{}, family: f, line: l}
	for i, d := range f.dots {
		g := list[d.gauge]
		if !in[i] {
			out.LeftOut = append(out.LeftOut, g.Label)
			continue
		}
		out.Used = append(out.Used, g.Label)
		out.MinOuter, out.MaxOuter = min(out.MinOuter, g.Outer), max(out.MaxOuter, g.Outer)
		out.coreDensity = g.DensityKgM3
	}
	if f.law == PowerLaw {
		out.Exponent = unit.Number(l.slope)
		out.UExponent = unit.Number(gauges.RootSum(append([]float64{math.Sqrt(l.vSlope)}, l.slopeShare...)...))
	} else {
		out.Density = unit.Density(math.Exp(l.level))
		out.UDensity = out.Density * unit.Density(gauges.RootSum(append([]float64{math.Sqrt(l.vLevel)}, l.levelShare...)...))
	}
	return out, true
}

// predict is the law's linear density of a gauge, kg/m, with x and the leans
// there.
func (f Fit) predict(g *gauges.Gauge) (x, w float64, by leans) {
	if f.Law == PowerLaw {
		x = math.Log(g.Outer.M())
	}
	w = f.Law.weightAt(g, f.line.y(x))
	return x, w, f.Law.leans(g, w, f.line.slope)
}

// estimate gives a gauge without a reading the linear density of its family's
// law.
//
//	plain: w = rho A    wrap density: w = rho_c A_c + rho R    power law: ln w = level + slope (ln d - centre)
//
// A, A_c, R as in Law.see. Its uncertainty holds the law's, the gauge's
// diameters', and the family's own scatter; it is widened where the scatter
// rests on few gauges, so that 1.96 of it still make 95 %. Two estimates of one
// family share the law's part.
func (f Fit) estimate(g *gauges.Gauge, tr *trace.Trace) {
	x, w, by := f.predict(g)
	l := f.line
	perY := w / by.byWeight // kg/m for a change of y by 1
	outer, core := -perY*by.byOuter/g.Outer.M(), 0.0
	if by.byCore != 0 {
		core = -perY * by.byCore / g.Core.M()
	}
	name := "fit of " + f.Family
	if g.IsPlain() {
		name += " " + f.Material
	}
	v := gauges.Value{W: w, Indep: perY * l.scatter}
	for _, p := range g.OuterParts {
		if p.U *= outer; p.Source != gauges.SourceCalipers && !g.IsPlain() {
			p.Source = "" // of a wound string's outside alone
		}
		v.Add(p)
	}
	v.Common = v.Common.Plus(core, g.CoreParts...)
	v.Add(gauges.Part{Source: name, U: perY * math.Sqrt(l.vLevel)})
	v.Add(gauges.Part{Source: "slope of the " + name, U: (x - l.centre) * w * math.Sqrt(l.vSlope)})
	for k, s := range f.family.sources {
		v.Add(gauges.Part{Source: s, U: perY * l.shareAt(k, x), Bounded: f.family.bounded[k]})
	}
	scattered := l.scatter * l.scatter * (1 + l.vAt(x)/(float64(l.dots)*l.vLevel)) // of u^2, what rises with the scatter
	wide := perY * l.widened(v.U()/perY, 0.025, scattered)
	v.Indep = math.Sqrt(max(0, wide*wide-math.Pow(v.Common.U(), 2)))
	g.Set(v)
	g.Estimated = true
	g.Imply()
	f.record(g, v, tr)
}

// record writes down how an estimate was made.
func (f Fit) record(g *gauges.Gauge, v gauges.Value, tr *trace.Trace) {
	if tr == nil {
		return
	}
	const fromFit = "the fit of its kind"
	formula := "exp(level + b (ln D - centre)), b the exponent"
	if f.Law != PowerLaw {
		tr.Given("rho, density of the fit", float64(f.Density), "kg/m3", fromFit)
		formula = "rho pi/4 D^2"
	}
	if f.Law == WrapDensity {
		core, ring := g.CoreAndRing()
		tr.Step("wc, weight of the core", "density of the core times its area", core, "kg/m", "definition")
		tr.Step("R, ring that the wrap fills", "pi/4 (D^2 - D_bed^2)", ring, "m2", "geometry")
		formula = "wc + rho R"
	}
	tr.Step("wF, linear density of the fit", formula, v.W, "kg/m", fromFit)
	tr.Step("oF, standard uncertainty from its own scatter and outside", "as the family scatters, widened for few gauges", v.Indep, "kg/m", fromFit)
	for _, p := range v.Common {
		tr.Step(", standard uncertainty from the "+p.Source+", shared", "through the fit and the diameters", p.U, "kg/m", fromFit)
	}
	v.Settle(tr)
}

// LinearDensity is the law's linear density of a size. A wrap density needs the
// core, the other laws ignore it. A size that has no place for a wrap gives 0.
func (f Fit) LinearDensity(outer, core unit.Length, shape reading.Shape) unit.LinearDensity {
	g := gauges.Gauge{Family: f.Family, Outer: outer, Core: core, Shape: shape, DensityKgM3: f.coreDensity}
	if outer <= 0 || f.Law == WrapDensity && (core <= 0 || shape.Bed(core) >= outer) {
		return 0
	}
	_, w, _ := f.predict(&g)
	return unit.LinearDensity(w)
}

// fill estimates the family's gauges without a reading and adds those that
// cannot be to those left out.
func (f *family) fill(list []gauges.Gauge, fit Fit, fitted, outside bool, tr func(label string) *trace.Trace, out *[]LeftOut) {
	for _, i := range f.waiting {
		g := &list[i]
		beyond := g.Outer < fit.MinOuter*(1-1e-9) || g.Outer > fit.MaxOuter*(1+1e-9)
		switch {
		case !fitted:
			*out = append(*out, LeftOut{g.Label, fault.Fault{Place: g.Place, What: fmt.Sprintf("gauge %q has no reading, and its kind, %s, has too few for a fit: two of different diameters", g.Label, f.name),
				Remedy: "weigh a piece of it, or weigh two gauges of its kind on either side of it"}})
			continue
		case beyond && !outside:
			form := g.Written().Outer
			*out = append(*out, LeftOut{g.Label, fault.Fault{Place: g.Place, What: fmt.Sprintf("gauge %q has no reading and lies outside the fitted diameters, %s to %s", g.Label,
				reading.AsWritten(form, fit.MinOuter, "mm", 3), reading.AsWritten(form, fit.MaxOuter, "mm", 3)), Given: g.OuterText(),
				Remedy: "weigh a piece of it, or allow the estimate with estimate_outside = true under [measuring]"}})
			continue
		case beyond:
			g.Note("estimated beyond the fitted diameters")
		}
		fit.estimate(g, tr(g.Label))
	}
}
