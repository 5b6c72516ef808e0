package gauges

import (
	"fmt"
	"math"
	"slices"

	"scalepair/data/fault"
	"scalepair/data/unit"
)

// Combine makes the stock out of readings and constructions: linear densities with
// uncertainties, the fits, the suspects and the estimates. A listed gauge
// without reading or construction is estimated from the fit of its family; one
// that cannot be is a fault. The error is a fault.List of every fault; the stock
// is then empty. A stock keeps the readings, which must not be changed afterwards.
func Combine(readings []Reading, built []Construction, tools Instruments, o Options) (Stock, error) {
	var faults fault.List
	tools = tools.filled()
	if tools.check(&faults); len(faults) > 0 {
		return Stock{}, faults.Err()
	}
	for i := range readings {
		r := &readings[i]
		at := func(string) fault.Place { return r.Place }
		before := len(faults)
		if r.check(at, true, &faults); len(faults) == before {
			tools.checkSteps(r, at, &faults)
		}
	}
	if err := faults.Err(); err != nil {
		return Stock{}, err
	}
	c := combiner{tools: tools, options: o, entries: gather(readings, built, tools, &faults)}
	if err := faults.Err(); err != nil {
		return Stock{}, err
	}
	stock := c.stock(&faults)
	if err := faults.Err(); err != nil {
		return Stock{}, err
	}
	return stock, nil
}

// combiner makes the stock.
type combiner struct {
	tools   Instruments
	options Options
	entries []*entry
}

func (c combiner) stock(faults *fault.List) Stock {
	s := Stock{by: c, Gauges: make([]Gauge, 0, len(c.entries))}
	c.fixPacking()
	for _, e := range c.entries {
		g := c.gauge(e)
		s.Gauges = append(s.Gauges, g)
		s.Hung = append(s.Hung, c.hungTests(e, g)...)
	}
	noteNamesakes(s.Gauges)
	c.fitAll(&s, faults)
	for i := range s.Gauges {
		s.Gauges[i].implied()
	}
	return s
}

// gauge is what readings and construction say of one gauge. A gauge without
// either has the linear density 0 until it is estimated.
func (c combiner) gauge(e *entry) Gauge {
	g := Gauge{
		Label: e.r.Gauge, Family: e.r.Construction, Material: e.material.Name, Outer: unit.Length(e.r.OuterM), Core: unit.Length(e.r.CoreM),
		Shape: e.r.Shape, Winding: unit.Length(e.r.WindingM), Readings: len(e.rows), Built: e.built != nil, Rows: e.rows,
	}
	outer, core := c.diameters(e)
	g.outer, g.core = outer, core
	g.UOuter, g.Core, g.UCore = unit.Length(outer.u()), unit.Length(core.d), unit.Length(core.u())
	g.CoreParts = core.parts(coreSource(g.Label))
	if g.Family == Plain {
		g.Shape = Round
	}
	g.stiffen(e.material)
	kinds, chi2, dof := c.kinds(e, float64(g.EA), g.EI)
	if len(kinds) == 0 {
		return g
	}
	all := combineKinds(kinds)
	g.set(all.value)
	if e.built != nil {
		g.Packing = unit.Ratio(e.built.fills(float64(g.LinearDensity)))
	}
	g.chi2, g.dof = chi2+all.chi2, dof+all.dof
	g.compare(e, kinds, all)
	return g
}

// set takes a value over.
func (g *Gauge) set(v value) {
	g.LinearDensity, g.Indep, g.bounded, g.U = unit.LinearDensity(v.w), unit.LinearDensity(v.indep), v.bounded, unit.LinearDensity(v.u())
	g.Common = v.common.dropZeros()
}

// diameters are the outer and the core diameter; a plain gauge has one, and an
// unknown core is 0.
func (c combiner) diameters(e *entry) (outer, core diameter) {
	if e.r.Construction == Plain {
		d := c.tools.wire(e.r.OuterM, e.r.OuterFrom)
		return d, d
	}
	if e.r.CoreM > 0 {
		core = c.tools.wire(e.r.CoreM, e.r.CoreFrom)
	}
	return c.tools.outside(e.r.OuterM, e.r.OuterFrom), core
}

// kinds gives one value each of weighing, hanging and construction, as far as
// they are there, and how well the rows of one kind agree among themselves.
func (c combiner) kinds(e *entry, ea, ei float64) (kinds []value, chi2 float64, dof int) {
	var hung []value
	for i := range e.rows {
		if r := &e.rows[i]; r.Kind == Hung {
			hung = append(hung, c.tools.value(r, ea, ei, 1))
		}
	}
	for _, values := range [][]value{c.tools.weighings(e.weighed()), hung} {
		if len(values) > 0 {
			m := mean(values)
			kinds, chi2, dof = append(kinds, m.value), chi2+m.chi2, dof+m.dof
		}
	}
	if e.built != nil {
		kinds = append(kinds, e.built.value(e.r.Gauge, e.r.Construction))
	}
	return kinds, chi2, dof
}

func (e *entry) weighed() []Reading {
	if !slices.ContainsFunc(e.rows, func(r Reading) bool { return r.Kind != Weighed }) {
		return e.rows
	}
	return slices.DeleteFunc(slices.Clone(e.rows), func(r Reading) bool { return r.Kind != Weighed })
}

// compare says in a note how weighing, hanging and construction agree.
func (g *Gauge) compare(e *entry, kinds []value, all average) {
	if len(kinds) < 2 {
		return
	}
	names := e.kindNames()
	for i := 1; i < len(kinds); i++ {
		a, b := kinds[0], kinds[i]
		apart := b.w/a.w - 1
		may := b.less(a).within95() / a.w
		verdict := "within what their uncertainties allow"
		if math.Abs(apart) > may {
			verdict = "more than their uncertainties allow"
		}
		g.note(fmt.Sprintf("%s gives %s g/m, %s %s g/m: %s %% apart, %s (%s %%)", names[0], decimals(a.w*1e3, 4),
			names[i], decimals(b.w*1e3, 4), decimals(100*math.Abs(apart), 2), verdict, decimals(100*may, 2)))
	}
}

// kindNames names the kinds in the order of combiner.kinds.
func (e *entry) kindNames() []string {
	var names []string
	for _, k := range []struct {
		kind Kind
		name string
	}{{Weighed, "weighing"}, {Hung, "hanging"}} {
		if slices.ContainsFunc(e.rows, func(r Reading) bool { return r.Kind == k.kind }) {
			names = append(names, k.name)
		}
	}
	if e.built != nil {
		names = append(names, "construction")
	}
	return names
}

// hungTests sets the hung readings of a gauge against its breaking load.
func (c combiner) hungTests(e *entry, g Gauge) []HungTest {
	var out []HungTest
	gravity, _ := c.tools.gravity()
	for _, r := range e.rows {
		if r.Kind != Hung {
			continue
		}
		h := HungTest{Place: r.Place, Gauge: g.Label, Load: unit.Force(r.HungKg * gravity)}
		strength := g.StrengthPa
		if strength == 0 && g.MusicWire() && c.options.MinStrength != nil && g.Core > 0 {
			strength, h.OutsideTable = c.options.MinStrength(float64(g.Core))
		}
		h.Breaking = unit.Force(strength * g.AreaM2)
		out = append(out, h)
	}
	return out
}

// implied fills in the density that the linear density stands for: the wrap's where
// the core is known, else that of the whole cross-section; kg/m3. It is the
// figure that the fit of the family holds constant, see FitKind.see.
func (g *Gauge) implied() {
	kind := WrapDensity
	if g.Family == Plain || g.Core == 0 || g.DensityKgM3 == 0 {
		kind = OneDensity
	}
	_, y := kind.see(g, float64(g.LinearDensity))
	g.ImpliedKgM3 = math.Exp(y)
}
