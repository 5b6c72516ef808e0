package reading

import (
	"fmt"
	"strings"

	"scalepair/data/csvtable"
	"scalepair/data/fault"
	"scalepair/data/unit"
)

// size is the range that a column's sizes can have on a string, in SI or as
// the column has it, and in which they most often lie (none where no
// slip of the unit is asked after). Judgement: the ranges are wider than any
// string, so that only a wrong unit or a slip falls outside.
type size struct {
	low, high             float64
	likelyLow, likelyHigh float64
	forms                 []unit.Written // that are mistaken for each other, the likeliest first
}

var (
	lengthForms = forms[unit.Length]("mm", "in", "cm", "m")
	massForms   = forms[unit.Mass]("g", "mg", "kg", "lb")

	sizes = map[string]size{
		"outer":             {0.05e-3, 6e-3, 0.15e-3, 4.5e-3, lengthForms},
		"core":              {0.05e-3, 3e-3, 0.15e-3, 4.5e-3, lengthForms},
		"winding":           {0.1, 5, 0.05, 2, lengthForms},
		"length":            {2e-3, 5, 0.05, 2, lengthForms},
		"length_resolution": {1e-6, 0.05, 0, 0, nil},
		"mass":              {1e-7, 1, 0.02e-3, 0.1, massForms},
		"mass_resolution":   {1e-9, 0.1, 0, 0, nil},
		"hung_mass":         {0.05, 100, 1, 40, massForms},
		"hung_resolution":   {1e-7, 1, 0, 0, nil},
		"speaking_length":   {0.05, 5, 0.05, 2, lengthForms},
		"pitch":             {low: 10, high: 5000},
		"pitch_cents":       {low: 0.01, high: 100},
		"density_kg_m3":     {low: 500, high: 25000},
		"youngs_gpa":        {low: 0.1, high: 1000},
		"strength_mpa":      {low: 10, high: 10000},
	}
)

func forms[Q unit.Quantity](names ...string) (out []unit.Written) {
	for _, name := range names {
		out = append(out, unit.Form[Q]("", name))
	}
	return out
}

// checkSize reports a size that no string has.
func (p *cellReader) checkSize(c csvtable.Cell, x float64, form unit.Written) {
	s := sizes[c.Name()]
	if x >= s.low && x <= s.high {
		return
	}
	given, remedy := c.Text(), fmt.Sprintf("%g to %g is possible", s.low, s.high)
	if form.Known() {
		given, remedy = form.Text(x, 0), form.Range(s.low, s.high)+" is possible"
	}
	if other := s.meant(form, x); other != "" {
		remedy = "did you mean " + other + "? " + remedy
	}
	p.faults.Add(c.Place(), plainName(c.Name())+" is no size of a string's", given, remedy)
}

// meant is the size that was meant, where the number would be a likely one in
// another unit, or in thousandths of an inch; "" where none is.
func (s size) meant(form unit.Written, si float64) string {
	likely := func(si float64) bool { return si >= s.likelyLow && si <= s.likelyHigh }
	for _, other := range s.forms {
		if x := form.Value(si); other.Unit != form.Unit && likely(other.SI(x)) {
			return form.Number(x) + " " + other.Unit
		}
	}
	if thousandths := form.Value(si) / 1000; s.forms != nil && s.likelyHigh < 0.01 && likely(thousandths*unit.Inch) {
		return Decimals(thousandths, 4) + " in"
	}
	return ""
}

// check reports what the row of a reading does not have, and what it has of
// another kind.
func (p *cellReader) check(r *Reading) {
	need := func(missing bool, column, what, remedy string) {
		if missing {
			p.faults.Add(p.row.Place(column), what+" without "+plainName(column), "", remedy)
		}
	}
	switch {
	case r.Kind == Hung:
		need(r.HungMass == 0, "hung_mass", "a hung test", "weigh all that hangs, lower clamp and hook included, as 6.5 kg")
		need(r.Speaking == 0, "speaking_length", "a hung test", "measure from clamp to clamp, as 600 mm")
		need(r.Pitch == 0, "pitch", "a hung test", "give the pitch that sounded, as 196 Hz or G3-4c")
	case r.Kind == Weighed && r.Mass == 0 && r.Length == 0:
		p.faults.Add(p.row.Place("gauge"), "a weighing without mass and length", "", "give both, or write the kind as listed for a gauge that was not weighed")
	case r.Kind == Weighed:
		need(r.Mass == 0, "mass", "a weighing", "give the mass, as 0.43 g; its column is mass_g")
		need(r.Length == 0, "length", "a weighing", "give the length of the piece, as 300 mm; its column is length_mm")
	}
	other := ""
	switch {
	case r.Kind != Weighed && (r.Mass > 0 || r.Length > 0):
		other = "the mass or length of a weighed piece"
	case r.Kind != Hung && (r.HungMass > 0 || r.Speaking > 0 || r.Pitch > 0):
		other = "a hung mass, speaking length or pitch"
	}
	if other != "" {
		p.faults.Add(p.row.Place("kind"), "a row of the kind "+r.Kind.String()+" with "+other, r.Kind.String(), "every reading has a row and a kind of its own")
	}
	r.CheckCore(p.row.Place("core"), p.faults)
}

// CheckCore reports a core that does not go with the outer diameter.
func (r *Reading) CheckCore(place fault.Place, faults *fault.List) {
	switch {
	case r.Core == 0 || r.Outer == 0:
	case IsPlain(r.Construction) && r.Core != r.Outer:
		faults.Add(place, "a plain gauge with a core of another diameter", r.CoreText(), "leave the core empty, or name the wound kind under construction")
	case !IsPlain(r.Construction) && r.Construction != "" && r.Shape.Bed(r.Core) >= r.Outer:
		faults.Add(place, "the core is as thick as the whole string", r.CoreText(),
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
