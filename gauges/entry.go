package gauges

import (
	"fmt"
	"math"
	"slices"

	"scalepair/data"
	"scalepair/data/fault"
)

// entry is one gauge while the stock is made: its rows and what they say of it
// together.
type entry struct {
	r        Reading   // sizes and material, put together from all rows
	rows     []Reading // weighed and hung, in the order of the file
	first    int       // where in the file's rows they begin
	material data.Material
	built    *wound // nil without a construction
}

// gather makes one entry of each label, in the order of first appearance.
func gather(readings []Reading, built []Construction, tools Instruments, faults *fault.List) []*entry {
	var out []*entry
	byLabel := map[string]*entry{}
	find := func(first *Reading) (e *entry, isNew bool) {
		key := labelKey(first.Gauge)
		e, known := byLabel[key]
		if !known {
			e = &entry{r: *first}
			byLabel[key], out = e, append(out, e)
		}
		return e, !known
	}
	rows := slices.Clone(readings)
	for i := range rows {
		r := &rows[i]
		if isPlain(r.Construction) {
			r.Construction = Plain
		}
		e, isNew := find(r)
		if !isNew {
			e.merge(r, faults)
		}
		if r.Kind != Listed {
			e.take(rows, i)
		}
	}
	for _, c := range built {
		if w, ok := tools.lookUp(c, faults); ok {
			r := c.reading(w)
			e, _ := find(&r)
			e.mergeBuilt(c, w, faults)
		}
	}
	for _, e := range out {
		e.finish(faults)
	}
	return out
}

// take adds the i-th row. Rows of one gauge that follow each other stay where
// they are.
func (e *entry) take(rows []Reading, i int) {
	if len(e.rows) == 0 {
		e.first = i
	}
	if e.first+len(e.rows) == i {
		e.rows = rows[e.first : i+1 : i+1]
		return
	}
	e.rows = append(e.rows, rows[i])
}

// merge takes over what a row says of the gauge and reports what contradicts
// an earlier row.
func (e *entry) merge(r *Reading, faults *fault.List) {
	ours, theirs := e.r.kept(), r.kept()
	if e.r.OuterM == 0 {
		e.r.OuterFrom, e.r.Given.Outer = r.OuterFrom, r.Given.Outer
	}
	if e.r.CoreM == 0 {
		e.r.CoreFrom, e.r.Given.Core = r.CoreFrom, r.Given.Core
	}
	e.mergeWord("construction", &e.r.Construction, r.Construction, r.Place, faults)
	e.mergeWord("material", &e.r.Material, r.Material, r.Place, faults)
	for i, a := range ours {
		b := theirs[i]
		if *b.x > 0 && *a.x > 0 && *b.x != *a.x {
			e.conflict(a.what, b.told.text(*b.x), a.told.text(*a.x), r.Place, faults)
		}
		*a.x = first(*a.x, *b.x)
	}
	if r.Shape != ShapeAssumed && e.r.Shape != ShapeAssumed && r.Shape != e.r.Shape {
		e.conflict("core shape", r.Shape.String(), e.r.Shape.String(), r.Place, faults)
	}
	e.r.Shape = max(e.r.Shape, r.Shape)
}

// keptSize is a size that belongs to the gauge, not to one reading.
type keptSize struct {
	what string
	x    *float64
	told told
}

func (r *Reading) kept() [6]keptSize {
	return [6]keptSize{
		{"outer diameter", &r.OuterM, r.Given.outer()}, {"core", &r.CoreM, r.Given.core()}, {"wound length", &r.WindingM, r.Given.winding()},
		{"density", &r.DensityKgM3, plainly(showDensity)}, {"modulus", &r.YoungsPa, plainly(showGPa)}, {"strength", &r.StrengthPa, plainly(showMPa)},
	}
}

func (e *entry) mergeWord(what string, into *string, from string, at fault.Place, faults *fault.List) {
	if from != "" && *into != "" && labelKey(from) != labelKey(*into) {
		e.conflict(what, from, *into, at, faults)
	}
	if *into == "" {
		*into = from
	}
}

func (e *entry) conflict(what, here, there string, at fault.Place, faults *fault.List) {
	earlier := "earlier"
	if e.r.Place != (fault.Place{}) {
		earlier = "in " + e.r.Place.String()
	}
	faults.Add(at, fmt.Sprintf("gauge %q has another %s than %s, where it is %s", e.r.Gauge, what, earlier, there), here,
		"one label is one gauge: correct one of them, or give them two labels")
}

// outerAgrees is how far the outside reckoned from core and wraps may stand
// from the one in the readings. Judgement: wraps seat themselves and ground
// strings are thinner, but a wrong wire differs by more.
const outerAgrees = 0.05

// mergeBuilt puts a construction to the gauge's readings.
func (e *entry) mergeBuilt(c Construction, w wound, faults *fault.List) {
	if e.built != nil {
		faults.Add(c.Place, "a second construction of the same gauge", c.Gauge, "keep one of them")
		return
	}
	e.built = &w
	r := c.reading(w)
	if e.r.OuterM > 0 && math.Abs(e.r.OuterM/r.OuterM-1) > outerAgrees {
		e.conflict("outer diameter", e.r.Given.outer().text(r.OuterM), e.r.Given.outer().text(e.r.OuterM), c.Place, faults)
	}
	r.OuterM = e.r.OuterM
	e.merge(&r, faults)
	e.r.OuterM = first(e.r.OuterM, w.outer())
}

// stiffness is the core's against stretching (N) and bending (N m2), 0 where
// core or modulus is unknown; see Gauge.stiffen.
func (e *entry) stiffness() (ea, ei float64) {
	d := e.r.coreM()
	return e.material.YoungsPa * e.r.Shape.area(d), e.material.YoungsPa * e.r.Shape.secondMoment(d)
}

// finish checks what only all rows together show, and finds the material.
func (e *entry) finish(faults *fault.List) {
	at := func(string) fault.Place { return e.r.Place }
	if e.r.Construction == "" {
		faults.Add(e.r.Place, fmt.Sprintf("gauge %q has no construction", e.r.Gauge), "", "write plain, or a name of yours for its kind of wound string")
	}
	if e.r.OuterM == 0 {
		faults.Add(e.r.Place, fmt.Sprintf("gauge %q has no outer diameter", e.r.Gauge), "", "give it in one of the gauge's rows")
	}
	e.r.checkCore(at, faults)
	m, err := material(e.r)
	if err != nil {
		faults.Include(e.r.Place, err)
		return
	}
	e.material = m
	for _, r := range e.rows {
		e.checkDensity(r, faults)
		e.checkStiff(r, faults)
	}
}
