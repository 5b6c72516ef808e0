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
	r        *Reading  // sizes and material, put together from all rows; not to be changed
	rows     []Reading // weighed and hung, in the order of the file
	first    int       // where in the file's rows they begin
	material data.Material
	built    *wound // nil without a construction
}

// gather makes one entry of each label, in the order of first appearance.
func gather(readings []Reading, built []Construction, tools Instruments, faults *fault.List) []*entry {
	var out []*entry
	byLabel := make(map[string]*entry, len(readings)/2)
	find := func(first *Reading) (e *entry, isNew bool) {
		key := labelKey(first.Gauge)
		e, known := byLabel[key]
		if !known {
			e = &entry{r: first}
			byLabel[key], out = e, append(out, e)
		}
		return e, !known
	}
	rows := plainlyNamed(readings)
	for i := range rows {
		r := &rows[i]
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

// plainlyNamed gives the rows with every plain string's construction as [Plain]:
// the rows themselves where none is spelt otherwise.
func plainlyNamed(rows []Reading) []Reading {
	other := func(r Reading) bool { return r.Construction != Plain && isPlain(r.Construction) }
	if !slices.ContainsFunc(rows, other) {
		return rows
	}
	rows = slices.Clone(rows)
	for i := range rows {
		if isPlain(rows[i].Construction) {
			rows[i].Construction = Plain
		}
	}
	return rows
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
	all := *e.r
	ours, theirs := all.kept(), r.kept()
	if all.OuterM == 0 && r.OuterM > 0 {
		all.OuterFrom, all.Given.outerRow = r.OuterFrom, r.Given.outerRow
	}
	if all.CoreM == 0 && r.CoreM > 0 {
		all.CoreFrom, all.Given.coreRow = r.CoreFrom, r.Given.coreRow
	}
	e.mergeWord("construction", &all.Construction, r.Construction, r.Place, faults)
	e.mergeWord("material", &all.Material, r.Material, r.Place, faults)
	for i, a := range ours {
		b := theirs[i]
		if *b > 0 && *a > 0 && *b != *a {
			e.conflict(keptNames[i], r.Given.kept()[i].text(*b), all.Given.kept()[i].text(*a), r.Place, faults)
		}
		*a = first(*a, *b)
	}
	if r.Shape != ShapeAssumed && all.Shape != ShapeAssumed && r.Shape != all.Shape {
		e.conflict("core shape", r.Shape.String(), all.Shape.String(), r.Place, faults)
	}
	all.Shape = max(all.Shape, r.Shape)
	e.know(all)
}

// know sets what is known of the gauge; mostly that is what its first row says.
func (e *entry) know(all Reading) {
	if all != *e.r {
		own := all // all itself stays off the heap
		e.r = &own
	}
}

// kept are the sizes that belong to the gauge, not to one reading, in the order
// of keptNames.
func (r *Reading) kept() [len(keptNames)]*float64 {
	return [...]*float64{&r.OuterM, &r.CoreM, &r.WindingM, &r.DensityKgM3, &r.YoungsPa, &r.StrengthPa}
}

var keptNames = [...]string{"outer diameter", "core", "wound length", "density", "modulus", "strength"}

// kept tells those sizes.
func (g Given) kept() [len(keptNames)]told {
	return [...]told{g.outer(), g.core(), g.winding(), plainly(showDensity), plainly(showGPa), plainly(showMPa)}
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
	all := *e.r
	all.OuterM = first(all.OuterM, w.outer())
	e.know(all)
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
	for i := range e.rows {
		e.checkDensity(&e.rows[i], faults)
		e.checkStiff(&e.rows[i], faults)
	}
}
