package gauges

import (
	"scalepair/data/csvtable"
	"scalepair/data/unit"
)

// AsWritten is a size as the builder wrote it: the cell's text, and the unit
// that its heading states. Messages quote it and stay in its unit; the zero
// value is not known.
type AsWritten struct{ Text, Unit string }

// Given is how the sizes of a reading were written down: in its row of the file,
// and for a diameter that it leaves out in another of the gauge. What is not
// known is told in millimetres, grams and kilograms.
type Given struct {
	row, outerRow, coreRow *csvtable.Row // nil where the reading stands in no file
	// Fractions tells that lengths of this file are written in fractions, so
	// that a whole number of inches among them is one too.
	Fractions bool
}

// givenIn is how the sizes of a row are written down.
func givenIn(row *csvtable.Row) Given { return Given{row: row, outerRow: row, coreRow: row} }

func asWritten(row *csvtable.Row, column string) AsWritten {
	if row == nil {
		return AsWritten{}
	}
	return AsWritten{row.Get(column), row.Unit(column)}
}

// Outer and Core are the diameters as written.
func (g Given) Outer() AsWritten { return asWritten(g.outerRow, "outer") }
func (g Given) Core() AsWritten  { return asWritten(g.coreRow, "core") }

// Length and Mass are those of a weighing as written.
func (g Given) Length() AsWritten { return asWritten(g.row, "length") }
func (g Given) Mass() AsWritten   { return asWritten(g.row, "mass") }

// Speaking and Hung are the length and the mass of a hung test as written.
func (g Given) Speaking() AsWritten { return asWritten(g.row, "speaking_length") }
func (g Given) Hung() AsWritten     { return asWritten(g.row, "hung_mass") }

// HungUnit is the unit that the hung mass was given in, "kg" or "lb" say; ""
// where it is not known.
func (r Reading) HungUnit() string { return massForm(r.Given.Hung()).Unit }

func lengthForm(a AsWritten) unit.Written { return unit.Form[unit.Length](a.Text, a.Unit) }
func massForm(a AsWritten) unit.Written   { return unit.Form[unit.Mass](a.Text, a.Unit) }

// anyFraction tells whether a cell holds a fraction.
func (a AsWritten) anyFraction() bool {
	for _, c := range a.Text {
		switch c {
		case '/', '⁄', '½', '¼', '¾', '⅛', '⅜', '⅝', '⅞':
			return true
		}
	}
	return false
}

// told says how a size is printed in messages: in the form it was written in,
// or as usual where that is not known. Sizes are in SI. The form is read only
// when a message asks for it, since nearly all sizes are sound.
type told struct {
	written AsWritten
	read    func(AsWritten) unit.Written // nil where a size has one unit only
	usual   func(si float64) string
}

// form is how the size was written; the zero value where that is not known.
func (t told) form() unit.Written {
	if t.read == nil {
		return unit.Written{}
	}
	return t.read(t.written)
}

// text prints a size as finely as it was written.
func (t told) text(si float64) string {
	if form := t.form(); form.Known() {
		return form.Text(si, 0)
	}
	return t.usual(si)
}

// short prints a size of another origin, known to a step, without noughts
// behind.
func (t told) short(si, step float64) string {
	if form := t.form(); form.Known() {
		return form.Text(si, step)
	}
	return t.usual(si)
}

// bounds prints what a size may be.
func (t told) bounds(low, top float64) string {
	if form := t.form(); form.Known() {
		return form.Range(low, top)
	}
	return t.usual(low) + " to " + t.usual(top)
}

func (g *Given) outer() told      { return told{g.Outer(), lengthForm, showDiameter} }
func (g *Given) core() told       { return told{g.Core(), lengthForm, showDiameter} }
func (g *Given) winding() told    { return g.piece(asWritten(g.row, "winding")) }
func (g *Given) length() told     { return g.piece(g.Length()) }
func (g *Given) lengthStep() told { return g.piece(asWritten(g.row, "length_resolution")) }
func (g *Given) speaking() told   { return g.piece(g.Speaking()) }
func (g *Given) mass() told       { return told{g.Mass(), massForm, showG} }
func (g *Given) massStep() told   { return told{asWritten(g.row, "mass_resolution"), massForm, showG} }
func (g *Given) hung() told       { return told{g.Hung(), massForm, showKg} }
func (g *Given) hungStep() told   { return told{asWritten(g.row, "hung_resolution"), massForm, showG} }

// piece tells a length along the string.
func (g *Given) piece(a AsWritten) told {
	if g.Fractions {
		return told{a, wholeIsFraction, showMM}
	}
	return told{a, lengthForm, showMM}
}

// wholeIsFraction reads a length of a file that has fractions.
func wholeIsFraction(a AsWritten) unit.Written {
	w := lengthForm(a)
	if w.Known() && w.Over == 0 && w.Decimals == 0 {
		w.Over = 1
	}
	return w
}

// exampleLength is a length to follow where a cell is empty, in the heading's
// unit or else the diameter's.
func (g *Given) exampleLength(a AsWritten, m float64) string {
	for _, name := range []string{a.Unit, lengthForm(g.Outer()).Unit, "mm"} {
		if w := unit.Form[unit.Length]("", name); w.Known() {
			return w.About(m, 2)
		}
	}
	return showMM(m)
}

// exampleMass is a mass to follow where a cell is empty.
func exampleMass(a AsWritten, usual string, kg float64) string {
	for _, name := range []string{a.Unit, usual} {
		if w := unit.Form[unit.Mass]("", name); w.Known() {
			return w.About(kg, 2)
		}
	}
	return showG(kg)
}
