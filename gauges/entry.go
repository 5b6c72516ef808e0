package gauges

import (
	"fmt"
	"math"

	"scalepair/data"
	"scalepair/data/fault"
	"scalepair/data/unit"
	"scalepair/gauges/reading"
)

// entry is one gauge while the table is made: its rows and what they say of it
// together.
type entry struct {
	all      reading.Reading   // sizes and material, put together from all rows
	rows     []reading.Reading // weighed and hung, in the order of the file
	material data.Material
	built    *wound // nil without a construction
}

// gather makes one entry of each label, in the order of first appearance.
func (in Input) gather(faults *fault.List) []*entry {
	var out []*entry
	byLabel := map[string]*entry{}
	merge := func(r reading.Reading) *entry {
		if reading.IsPlain(r.Construction) {
			r.Construction = reading.Plain
		}
		key := reading.Key(r.Gauge)
		e := byLabel[key]
		if e == nil {
			e = &entry{all: r}
			byLabel[key], out = e, append(out, e)
		} else {
			e.merge(&r, faults)
		}
		return e
	}
	for _, r := range in.Readings {
		e := merge(r)
		if r.Kind != reading.Listed {
			e.rows = append(e.rows, r)
		}
	}
	for _, c := range in.Constructions {
		w, ok := in.newWound(c, faults)
		if !ok {
			continue
		}
		r := c.reading(w)
		if e := byLabel[reading.Key(c.Gauge)]; e != nil {
			e.checkBuilt(&r, faults)
			r.Outer = first(e.all.Outer, r.Outer)
		}
		merge(r).built = &w
	}
	for _, e := range out {
		e.finish(in.Materials, faults)
	}
	return out
}

// merge takes over what a row says of the gauge and reports what contradicts
// an earlier row.
func (e *entry) merge(r *reading.Reading, faults *fault.List) {
	all := &e.all
	if all.Outer == 0 && r.Outer > 0 {
		all.OuterFrom, all.Written.Outer = r.OuterFrom, r.Written.Outer
	}
	if all.Core == 0 && r.Core > 0 {
		all.CoreFrom, all.Written.Core = r.CoreFrom, r.Written.Core
	}
	mergeOne(e, r, "construction", &all.Construction, r.Construction, func(s string) string { return s }, faults)
	mergeOne(e, r, "material", &all.Material, r.Material, func(s string) string { return s }, faults)
	mergeOne(e, r, "outer diameter", &all.Outer, r.Outer, func(d unit.Length) string { return reading.AsWritten(r.Written.Outer, d, "mm", 3) }, faults)
	mergeOne(e, r, "core", &all.Core, r.Core, func(d unit.Length) string { return reading.AsWritten(r.Written.Core, d, "mm", 3) }, faults)
	mergeOne(e, r, "core shape", &all.Shape, r.Shape, reading.Shape.String, faults)
	mergeOne(e, r, "wound length", &all.Winding, r.Winding, unit.Length.String, faults)
	number := func(x float64) string { return reading.Decimals(x, 3) }
	mergeOne(e, r, "density", &all.DensityKgM3, r.DensityKgM3, number, faults)
	mergeOne(e, r, "modulus", &all.YoungsPa, r.YoungsPa, number, faults)
	mergeOne(e, r, "strength", &all.StrengthPa, r.StrengthPa, number, faults)
}

// mergeOne takes over one fact, the zero value of which is not known.
func mergeOne[T comparable](e *entry, r *reading.Reading, what string, into *T, x T, text func(T) string, faults *fault.List) {
	var none T
	if x == none {
		return
	}
	if *into != none && *into != x && reading.Key(text(*into)) != reading.Key(text(x)) {
		faults.Add(r.Place, fmt.Sprintf("gauge %q has another %s than in %s, where it is %s", e.all.Gauge, what, e.all.Place, text(*into)), text(x),
			"one label is one gauge: correct one of them, or give them two labels")
	}
	if *into == none {
		*into = x
	}
}

// outerAgrees is how far the outside worked out from core and wraps may be from
// the one in the readings. Judgement: wraps settle and ground strings are
// thinner, but a wrong wire differs by more.
const outerAgrees = 0.05

// checkBuilt reports a construction that does not go with the gauge's rows.
func (e *entry) checkBuilt(r *reading.Reading, faults *fault.List) {
	switch {
	case e.built != nil:
		faults.Add(r.Place, "a second construction of the same gauge", r.Gauge, "keep one of them")
	case e.all.Outer > 0 && math.Abs(float64(e.all.Outer/r.Outer)-1) > outerAgrees:
		faults.Add(r.Place, fmt.Sprintf("gauge %q: core and wraps make another outer diameter than the readings, %s", r.Gauge, e.all.OuterText()), r.OuterText(),
			"correct a wire of the construction, or the outer diameter")
	}
}

// finish checks what only all rows together show, and finds the material.
func (e *entry) finish(own []Material, faults *fault.List) {
	r := &e.all
	if r.Construction == "" {
		faults.Add(r.Place, fmt.Sprintf("gauge %q has no construction", r.Gauge), "", "write plain, or a name of yours for its kind of wound string")
	}
	if r.Outer == 0 {
		faults.Add(r.Place, fmt.Sprintf("gauge %q has no outer diameter", r.Gauge), "", "give it in one of the gauge's rows")
	}
	r.CheckCore(r.Place, faults)
	var err error
	if e.material, err = materialOf(r, own); err != nil {
		faults.Include(r.Place, err)
		return
	}
	for i := range e.rows {
		e.checkDensity(&e.rows[i], faults)
		checkStiff(&e.rows[i], e.material.YoungsPa*r.Shape.SecondMoment(r.CoreWire()), faults)
	}
}
