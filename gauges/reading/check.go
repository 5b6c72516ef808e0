package reading

import (
	"fmt"
	"math"
	"strings"

	"scalepair/data/fault"
	"scalepair/data/unit"
)

// Placer gives the place of a column in the row that is checked.
type Placer func(column string) fault.Place

// size is one size of a row with the range that it can have on a string.
// Judgement: the ranges are wider than any string, so that only a wrong unit or
// a slip falls outside.
type size struct {
	column    string
	x         float64                      // SI; 0 not given
	low, high float64                      // SI
	units     []string                     // that are mistaken for each other, the likeliest first
	text      func(x, step float64) string // as it was written, at least as fine as a step
	unitSizes func(name string) unit.Written
}

func lengthSize(column string, x unit.Length, low, high float64, form unit.Written) size {
	return size{column, x.M(), low, high, []string{"mm", "in", "cm", "m"},
		func(x, step float64) string { return asWritten(form, unit.Length(x), step, "mm", 4) },
		func(name string) unit.Written { return unit.Form[unit.Length]("", name) }}
}

func massSize(column string, x unit.Mass, low, high float64, form unit.Written) size {
	return size{column, x.Kg(), low, high, []string{"g", "mg", "kg", "lb"},
		func(x, step float64) string { return asWritten(form, unit.Mass(x), step, "g", 6) },
		func(name string) unit.Written { return unit.Form[unit.Mass]("", name) }}
}

func numberSize(column string, x, low, high, scale float64, unitName string) size {
	return size{column: column, x: x, low: low * scale, high: high * scale,
		text: func(x, _ float64) string { return Decimals(x/scale, 4) + " " + unitName }}
}

func (r *Reading) sizes() []size {
	w, none := r.Written, unit.Written{}
	return []size{
		lengthSize("outer", r.Outer, 0.05e-3, 6e-3, w.Outer),
		lengthSize("core", r.Core, 0.05e-3, 3e-3, w.Core),
		lengthSize("winding", r.Winding, 0.1, 5, none),
		lengthSize("length", r.Length, 2e-3, 5, w.Length),
		lengthSize("length_resolution", r.LengthResolution, 1e-6, 0.05, none),
		massSize("mass", r.Mass, 1e-7, 1, w.Mass),
		massSize("mass_resolution", r.MassResolution, 1e-9, 0.1, none),
		massSize("hung_mass", r.HungMass, 0.05, 100, w.HungMass),
		massSize("hung_resolution", r.HungResolution, 1e-7, 1, none),
		lengthSize("speaking_length", r.Speaking, 0.05, 5, w.Speaking),
		numberSize("pitch", r.Pitch.Hz(), 10, 5000, 1, "Hz"),
		numberSize("pitch_cents", r.PitchU.Value(), 0.01, 100, 1, "cents"),
		numberSize("density_kg_m3", r.DensityKgM3, 500, 25000, 1, "kg/m3"),
		numberSize("youngs_gpa", r.YoungsPa, 0.1, 1000, 1e9, "GPa"),
		numberSize("strength_mpa", r.StrengthPa, 10, 10000, 1e6, "MPa"),
	}
}

// check reports a size that no string has.
func (s *size) check(place Placer, faults *fault.List) {
	if s.x == 0 || s.x >= s.low && s.x <= s.high {
		return
	}
	if math.IsNaN(s.x) || math.IsInf(s.x, 0) {
		faults.Add(place(s.column), plainName(s.column)+" is no number", "", "leave it out where it is not known")
		return
	}
	remedy := s.bound(s.low) + " to " + s.bound(s.high) + " is possible"
	if other := s.otherUnit(); other != "" {
		remedy = "did you mean " + other + "? " + remedy
	}
	faults.Add(place(s.column), plainName(s.column)+" is no size of a string's", s.text(s.x, 0), remedy)
}

// bound prints a bound without zeros behind.
func (s *size) bound(x float64) string {
	number, name := cutUnit(s.text(x, x/100))
	if strings.Contains(number, ".") {
		number = strings.TrimRight(strings.TrimRight(number, "0"), ".")
	}
	return number + " " + name
}

// cutUnit cuts "25 1/2 in" into number and unit.
func cutUnit(text string) (number, name string) {
	i := strings.LastIndex(text, " ")
	return text[:i], text[i+1:]
}

// likely is what a column most often holds, in SI (judgement).
func (s *size) likely(si float64) bool {
	low, high := 50e-3, 2.0
	switch s.column {
	case "outer", "core":
		low, high = 0.15e-3, 4.5e-3
	case "mass":
		low, high = 0.02e-3, 0.1
	case "hung_mass":
		low, high = 1, 40
	}
	return si >= low && si <= high
}

// otherUnit guesses the size that was meant, where the number would be a likely
// one in another unit, or in thousandths of an inch; "" where none is.
func (s *size) otherUnit() string {
	number, name := cutUnit(s.text(s.x, 0))
	x, err := unit.ParseNumber(number)
	if err != nil || s.unitSizes == nil {
		return ""
	}
	for _, u := range s.units {
		if si := s.unitSizes(u).SI(x); u != name && s.likely(si) {
			return number + " " + u
		}
	}
	if si := x * unit.Inch / 1000; (s.column == "outer" || s.column == "core") && s.likely(si) {
		return Decimals(x/1000, 4) + " in"
	}
	return ""
}

// Check reports everything that one row alone shows to be wrong.
func (r *Reading) Check(place Placer, faults *fault.List) {
	before := len(*faults)
	if strings.TrimSpace(r.Gauge) == "" {
		faults.Add(place("gauge"), "a row without a gauge", "", "give every gauge a label of its own")
	}
	for _, s := range r.sizes() {
		s.check(place, faults)
	}
	if len(*faults) > before {
		return
	}
	for _, missing := range r.lacks() {
		faults.Add(place(missing[0]), missing[1], "", missing[2])
	}
	if other := r.otherKind(); other != "" {
		faults.Add(place("kind"), "a row of the kind "+r.Kind.String()+" with "+other, r.Kind.String(), "every reading has a row and a kind of its own")
	}
	r.CheckCore(place, faults)
}

// lacks lists column, fault and remedy of what the row's kind needs and does
// not have.
func (r *Reading) lacks() (out [][3]string) {
	need := func(missing bool, column, remedy string) {
		if missing {
			out = append(out, [3]string{column, fmt.Sprintf("a %s without %s", r.noun(), plainName(column)), remedy})
		}
	}
	switch r.Kind {
	case Weighed:
		if r.Mass == 0 && r.Length == 0 {
			return [][3]string{{"gauge", "a weighing without mass and length", "give both, or write the kind as listed for a gauge that was not weighed"}}
		}
		need(r.Mass == 0, "mass", "give the mass, as 0.43 g; its column is mass_g")
		need(r.Length == 0, "length", "give the length of the piece, as 300 mm; its column is length_mm")
	case Hung:
		need(r.HungMass == 0, "hung_mass", "weigh all that hangs, lower clamp and hook included, as 6.5 kg")
		need(r.Speaking == 0, "speaking_length", "measure from clamp to clamp, as 600 mm")
		need(r.Pitch == 0, "pitch", "give the pitch that sounded, as 196 Hz or G3-4c")
	}
	return out
}

func (r *Reading) noun() string {
	if r.Kind == Hung {
		return "hung test"
	}
	return "weighing"
}

// otherKind names what belongs to another kind of row; "" for none.
func (r *Reading) otherKind() string {
	weighing, hanging := r.Mass > 0 || r.Length > 0, r.HungMass > 0 || r.Speaking > 0 || r.Pitch > 0
	switch {
	case r.Kind != Weighed && weighing:
		return "the mass or length of a weighed piece"
	case r.Kind != Hung && hanging:
		return "a hung mass, speaking length or pitch"
	}
	return ""
}

// CheckCore reports a core that does not go with the outer diameter.
func (r *Reading) CheckCore(place Placer, faults *fault.List) {
	switch {
	case r.Core == 0 || r.Outer == 0:
	case IsPlain(r.Construction) && r.Core != r.Outer:
		faults.Add(place("core"), "a plain gauge with a core of another diameter", r.CoreText(), "leave the core empty, or name the wound kind under construction")
	case !IsPlain(r.Construction) && r.Construction != "" && r.Shape.Bed(r.Core) >= r.Outer:
		faults.Add(place("core"), "the core is as thick as the whole string", r.CoreText(),
			"it must be less than the outer diameter of "+r.OuterText()+" with room for the wrap")
	}
}

// Decimals prints x with at most that many decimals, without trailing zeros.
func Decimals(x float64, n int) string {
	s := unit.Fixed(x, n)
	if strings.Contains(s, ".") {
		s = strings.TrimRight(strings.TrimRight(s, "0"), ".")
	}
	return s
}
