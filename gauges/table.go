package gauges

import (
	"fmt"
	"math"

	"scalepair/data/fault"
	"scalepair/data/trace"
	"scalepair/data/unit"
	"scalepair/gauges/reading"
)

// Input is what a table of gauges is made from. The zero values of Readings,
// Constructions and Materials are none.
type Input struct {
	Readings      []reading.Reading
	Constructions []Construction
	Materials     []Material // the builder's own, before those of the list
	Instruments   Instruments
}

// Table makes the table of gauges: linear densities with uncertainties, from
// readings and constructions, in order of first appearance. A listed gauge
// without either has the linear density 0, for the fit of its kind to estimate.
// The error is a fault.List of every fault. The work for the gauge of one label
// is recorded in tr, nil for none.
func (in Input) Table(label string, tr *trace.Trace) ([]Gauge, error) {
	var faults fault.List
	entries := in.gather(&faults)
	if err := faults.Err(); err != nil {
		return nil, err
	}
	in.fixPacking(entries)
	out := make([]Gauge, 0, len(entries))
	for _, e := range entries {
		of := tr
		if reading.Key(e.all.Gauge) != reading.Key(label) {
			of = nil
		}
		out = append(out, in.gauge(e, of))
	}
	return out, nil
}

// nominal marks the symbols of a plain wire's core while only its nominal size
// is known.
func nominal(r *reading.Reading) string {
	if reading.IsPlain(r.Construction) {
		return "n"
	}
	return ""
}

// record writes down what follows from a core; mark is as in nominal.
func (g *Gauge) record(tr *trace.Trace, mark string) {
	if tr == nil || g.EA == 0 {
		return
	}
	area, moment := "pi/4 d@^2", "pi/64 d@^4"
	if g.Shape == reading.Hex {
		area, moment = "sqrt(3)/2 d@^2", "5 sqrt(3)/144 d@^4"
	}
	k := work{Trace: tr, core: mark}
	k.step("A@, area of the core", area, g.AreaM2, "m2", "geometry")
	k.given("E, modulus of "+g.Material, g.YoungsPa, "Pa", g.source)
	k.step("EA@, stiffness against stretching", "E A@", g.EA.N(), "N", "Hooke's law")
	k.step("EI@, stiffness against bending", "E "+moment, g.EI, "N m2", "geometry")
}

// gauge is what readings and construction say of one gauge.
func (in Input) gauge(e *entry, tr *trace.Trace) Gauge {
	r, t := &e.all, in.Instruments
	g := Gauge{
		Label: r.Gauge, Place: r.Place, Family: r.Construction, Material: e.material.Name, Outer: r.Outer, Core: r.CoreWire(),
		Shape: r.Shape, Winding: r.Winding, Readings: len(e.rows), Built: e.built != nil, Rows: e.rows, written: r.Written,
	}
	tr.Given("D, outer diameter", g.Outer.M(), "m", "the readings")
	if g.IsPlain() {
		tr.Step("dn, diameter of the wire, nominal", "D", g.Outer.M(), "m", "a plain string is its own core")
		g.Shape = reading.Round
		g.OuterParts = t.diameterParts(CoreSource(g.Label), r.OuterFrom, wireTolerance(g.Outer))
		g.CoreParts = g.OuterParts
	} else {
		g.OuterParts = t.diameterParts(own, r.OuterFrom, WoundTolerance)
		if g.Core > 0 {
			tr.Given("d, core", g.Core.M(), "m", "the readings")
			g.CoreParts = t.diameterParts(CoreSource(g.Label), r.CoreFrom, wireTolerance(g.Core))
		}
	}
	g.UOuter, g.UCore = unit.Length(g.OuterParts.U()), unit.Length(g.CoreParts.U())
	g.stiffen(e.material)
	g.record(tr, nominal(r))
	kinds, all := in.kinds(e, g.EA.N(), g.EI, tr)
	if len(kinds) == 0 {
		return g
	}
	g.Set(all.Value)
	g.Chi2, g.DoF = all.Chi2, all.DoF
	g.Imply()
	g.compare(kinds)
	if e.built != nil {
		g.Packing = unit.Ratio(e.built.fills(g.LinearDensity.KgPerM()))
	}
	all.Settle(tr)
	if g.IsPlain() && g.Readings > 0 && e.material.DensityKgM3 > 0 {
		g.weighedCore(e.material.DensityKgM3, e.material.DensityU, tr)
	}
	return g
}

// kind is what one kind of reading says of a gauge.
type kind struct {
	name string
	Average
}

// kinds gives weighing, hanging and construction, as far as they are there, and
// all of them together, with how well the rows agree among themselves.
func (in Input) kinds(e *entry, ea, ei float64, tr *trace.Trace) (kinds []kind, all Average) {
	within := Average{} // how the rows of one kind differ
	differ := func(a Average) { within.Chi2, within.DoF = within.Chi2+a.Chi2, within.DoF+a.DoF }
	add := func(name, symbol, number string, values ...Value) {
		if len(values) > 0 {
			a := Mean(values)
			work{Trace: tr, number: number}.mean(len(values), a, symbol)
			kinds = append(kinds, kind{name, a})
			differ(a)
		}
	}
	var weighed, hung []Value
	for i, p := range pieces(e.rows) {
		a, _ := in.Instruments.weigh(p, work{Trace: tr, number: fmt.Sprint(i + 1)})
		differ(a)
		weighed = append(weighed, a.Value)
	}
	for _, r := range e.rows {
		if r.Kind == reading.Hung {
			v, _ := in.Instruments.hang(r, ea, ei, work{tr, fmt.Sprintf("h%d", len(hung)+1), nominal(&e.all)})
			hung = append(hung, v)
		}
	}
	add("weighing", "W", "", weighed...)
	add("hanging", "H", "h", hung...)
	if e.built != nil {
		add("construction", "", "", e.built.value(e.all.Gauge, e.all.Construction, tr))
	}
	if kinds == nil {
		return nil, all
	}
	values := make([]Value, len(kinds))
	for i, k := range kinds {
		values[i] = k.Value
	}
	all = MeanOfKinds(values)
	if len(kinds) > 1 {
		tr.Step("wK, linear density, of all kinds together", "weighted by 1/u^2 of each", all.W, "kg/m", "weighted mean")
		tr.Step("oK, standard uncertainty from errors of its own", "root of the sum of squares, widened where the kinds disagree", all.Indep, "kg/m", guideSum)
	}
	all.Chi2, all.DoF = all.Chi2+within.Chi2, all.DoF+within.DoF
	return kinds, all
}

// compare says in a note how weighing, hanging and construction agree.
func (g *Gauge) compare(kinds []kind) {
	for _, b := range kinds[1:] {
		a := kinds[0]
		apart := b.W/a.W - 1
		may := b.Plus(-1, a.Value).Within95() / a.W
		verdict := "within what their uncertainties allow"
		if math.Abs(apart) > may {
			verdict = "more than their uncertainties allow"
		}
		g.Note(fmt.Sprintf("%s gives %s g/m, %s %s g/m: %s %% apart, %s (%s %%)", a.name, reading.Decimals(a.W*1e3, 4),
			b.name, reading.Decimals(b.W*1e3, 4), reading.Decimals(100*math.Abs(apart), 2), verdict, reading.Decimals(100*may, 2)))
	}
}

// Imply fills in the density that the linear density stands for: the wrap's
// where the core is known, else that of the whole cross-section.
func (g *Gauge) Imply() {
	w, ring := g.LinearDensity.KgPerM(), reading.Round.Area(g.Outer)
	if !g.IsPlain() && g.Core > 0 && g.DensityKgM3 > 0 {
		core, wrap := g.CoreAndRing()
		w, ring = w-core, wrap
	}
	g.Implied = unit.Density(w / ring)
}

// CoreAndRing is the core's share of the linear density, kg/m, and the
// cross-section of the ring that the wrap fills, m2.
func (g *Gauge) CoreAndRing() (core, ring float64) {
	return g.DensityKgM3 * g.Shape.Area(g.Core), reading.Round.Area(g.Outer) - reading.Round.Area(g.Shape.Bed(g.Core))
}

// Value is what one weighed or hung reading says of the linear density, with what
// each of its inputs adds to the uncertainty. ea and ei (N m2) are the core's
// stiffness against stretching and bending, ea 0 where unknown; only a hung reading
// uses them. A listed reading gives 0 and nothing.
func (t Instruments) Value(r reading.Reading, ea unit.Force, ei float64) (Value, []Component) {
	switch r.Kind {
	case reading.Weighed:
		a, inputs := t.weigh(piece{r, []float64{r.Mass.Kg()}}, work{})
		return a.Value, inputs
	case reading.Hung:
		return t.hang(r, ea.N(), ei, work{})
	}
	return Value{}, nil
}
