package reading

import (
	"scalepair/data/csvtable"
	"scalepair/data/unit"
)

// Written is how the sizes of a row were written down, so that messages and
// tables speak in the builder's own unit and as finely. A form that is not known
// speaks in millimetres, grams or kilograms.
type Written struct {
	Outer, Core, Length, Mass, Speaking, HungMass unit.Written
}

// note keeps the form of a cell.
func (w *Written) note(c csvtable.Cell) {
	switch c.Name() {
	case "outer":
		w.Outer = unit.Form[unit.Length](c.Text(), c.Unit())
	case "core":
		w.Core = unit.Form[unit.Length](c.Text(), c.Unit())
	case "length":
		w.Length = unit.Form[unit.Length](c.Text(), c.Unit())
	case "speaking_length":
		w.Speaking = unit.Form[unit.Length](c.Text(), c.Unit())
	case "mass":
		w.Mass = unit.Form[unit.Mass](c.Text(), c.Unit())
	case "hung_mass":
		w.HungMass = unit.Form[unit.Mass](c.Text(), c.Unit())
	}
}

// AsWritten prints a quantity in a form; in the unit named, with at most that
// many decimals, where the form is not known.
func AsWritten[Q unit.Quantity](form unit.Written, x Q, unitName string, decimals int) string {
	return asWritten(form, x, 0, unitName, decimals)
}

func asWritten[Q unit.Quantity](form unit.Written, x Q, step float64, unitName string, decimals int) string {
	if form.Known() {
		return form.Text(float64(x), step)
	}
	return Decimals(unit.Form[Q]("", unitName).Value(float64(x)), decimals) + " " + unitName
}

// OuterText, CoreText and the others print a size of the row as it was written.
func (r *Reading) OuterText() string { return AsWritten(r.Written.Outer, r.Outer, "mm", 3) }

// CoreText prints the core's diameter.
func (r *Reading) CoreText() string { return AsWritten(r.Written.Core, r.Core, "mm", 3) }

// LengthText prints the length of a piece, or of a hung string from clamp to clamp.
func (r *Reading) LengthText() string {
	if r.Kind == Hung {
		return AsWritten(r.Written.Speaking, r.Speaking, "mm", 2)
	}
	return AsWritten(r.Written.Length, r.Length, "mm", 2)
}

// MassText prints the mass of the pieces, or what hung on the string.
func (r *Reading) MassText() string {
	if r.Kind == Hung {
		return AsWritten(r.Written.HungMass, r.HungMass, "kg", 3)
	}
	return AsWritten(r.Written.Mass, r.Mass, "g", 3)
}
