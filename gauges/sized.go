package gauges

import (
	"math"
	"strings"

	"scalepair/data/fault"
	"scalepair/data/unit"
)

// check reports a size that no string has. g is how the row's sizes were written
// down, nil where they have one unit only.
func (s *sized) check(place placer, g *Given, faults *fault.List) {
	if s.x == 0 || s.x >= s.low && s.x <= s.top {
		return
	}
	told := s.told(g)
	add := func(what, remedy string) {
		faults.Add(place(s.column), words(s.column)+what, told.given(s.x), remedy)
	}
	switch {
	case math.IsNaN(s.x) || math.IsInf(s.x, 0):
		faults.Add(place(s.column), words(s.column)+" is no number", "", "leave it out where it is not known")
	case s.x < 0:
		add(" must be above 0", "leave it out where it is not known")
	default:
		remedy := told.bounds(s.low, s.top) + " is possible"
		if other := s.otherUnit(told); other != "" {
			remedy = "did you mean " + other + "? " + remedy
		}
		add(" is no size of a string's", remedy)
	}
}

// given quotes a size with its unit as it was written, or as usual where that
// is not known.
func (t told) given(si float64) string {
	text := strings.TrimSpace(t.written.Text)
	switch {
	case text == "":
		return t.text(si)
	case unit.Bare(text) && t.written.Unit != "":
		return text + " " + t.written.Unit
	}
	return text
}

// usualSize is what a column most often holds, and the units that are mistaken
// for each other there.
type usualSize struct {
	low, top float64 // SI; judgement
	units    []string
	read     func(text, unit string) (float64, error)
}

func readLength(text, unitName string) (float64, error) {
	x, err := unit.ParseLengthIn(text, unitName)
	return float64(x), err
}

func readMass(text, unitName string) (float64, error) {
	x, err := unit.ParseMassIn(text, unitName)
	return float64(x), err
}

// usualSizeOf gives the usual size of a column where a wrong unit can be told.
func usualSizeOf(column string) (size usualSize, known bool) {
	switch column {
	case "outer", "core":
		return usualSize{0.15e-3, 4.5e-3, []string{"mm", "in", "cm"}, readLength}, true
	case "length", "winding", "speaking_length":
		return usualSize{50e-3, 2, []string{"mm", "in", "cm", "m"}, readLength}, true
	case "mass":
		return usualSize{0.02e-3, 0.1, []string{"g", "mg", "kg"}, readMass}, true
	case "hung_mass":
		return usualSize{1, 40, []string{"kg", "g", "lb"}, readMass}, true
	}
	return usualSize{}, false
}

// otherUnit guesses the size that was meant, where the number would be one of a
// string's in another unit; "" where none is near. A diameter may have been
// written in thousandths of an inch.
func (s *sized) otherUnit(told told) string {
	l, ok := usualSizeOf(s.column)
	form := told.form()
	if !ok || !form.Known() {
		return s.otherDecade()
	}
	number := strings.TrimSpace(told.written.Text)
	if !unit.Bare(number) {
		number = form.Number(form.Value(s.x))
	}
	for _, u := range l.units {
		if x, err := l.read(number, u); err == nil && u != form.Unit && (form.Over == 0 || u == "in") && x >= l.low && x <= l.top {
			return number + " " + u
		}
	}
	if x := s.x / form.SI(1) * unit.Inch / 1000; (s.column == "outer" || s.column == "core") && x >= l.low && x <= l.top {
		return decimals(x/unit.Inch, 4) + " in"
	}
	return ""
}

// otherDecade guesses what was meant where a figure of a material stands in a
// unit a thousand times larger or smaller.
func (s *sized) otherDecade() string {
	for _, factor := range []float64{1000, 0.001} {
		if x := s.x * factor; x >= s.low && x <= s.top && s.written == nil {
			return s.usual(x)
		}
	}
	return ""
}
