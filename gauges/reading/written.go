package reading

import "scalepair/data/unit"

// Written is how the sizes of a row were written down, so that messages and
// tables speak in the builder's own unit and as finely. A form that is not known
// speaks in millimetres, grams or kilograms.
type Written struct {
	Outer, Core, Length, Mass, Speaking, HungMass unit.Written
}

// AsWritten prints a quantity in a form; in the unit named, with at most that
// many decimals, where the form is not known.
func AsWritten[Q unit.Quantity](form unit.Written, x Q, unitName string, decimals int) string {
	if form.Known() {
		return form.Text(float64(x), 0)
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
