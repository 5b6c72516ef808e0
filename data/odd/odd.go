// Package odd holds the plausibility watch: values that parse, and can be
// worked with, but are hardly ever right.
//
// A fault stops a run; an odd value does not, and nothing is ever changed
// because of it. It is told with its number and the usual range, since a
// builder who cuts wood by a wrong number was helped by nothing else on the
// page. A package that knows a quantity keeps its usual range in a table of
// its own, each row with the reason for the range, and gives the values that
// fall outside as a List. The table of a package named p is p.Watched.
//
// Ranges are wide: everything that is built on purpose falls inside, and what
// falls outside is a slip of unit, decimal point, column or octave more often
// than an instrument.
package odd

import (
	"cmp"
	"math"
	"slices"

	"scalepair/data/fault"
)

// Measure is what a value is measured in, so that whoever prints it can use
// the builder's own unit.
type Measure int

// The measures. Values stand in the unit of the name; Plain has none, a Share
// is 1 for the whole, and Times is a quotient.
const (
	Plain Measure = iota
	Share
	Times
	Millimetres
	Grams
	Kilograms
	GramsPerCM3
	Newtons
	Radians
	Hertz
	Semitones
	Cents
	Gigapascals
	Megapascals
)

// Usual is a watched quantity with its usual range, one row of a table.
type Usual struct {
	// Quantity names it in the builder's words, without an article: "fret
	// slant".
	Quantity string
	Measure  Measure
	// Low and High bound what is usual, both included. An infinite one leaves
	// its side open.
	Low, High float64
	// Check says what to look at when a value falls outside.
	Check string
	// Source says where the range comes from: a source, "common practice, no
	// source", or "judgement" with its reason.
	Source string
}

// Open leaves the upper side of a range open, or with a minus the lower.
var Open = math.Inf(1)

// Holds tells whether a value is usual. What is no number is not.
func (u *Usual) Holds(x float64) bool { return x >= u.Low && x <= u.High }

// Value is one value outside its usual range.
type Value struct {
	Place fault.Place
	// About says which of several it is, with its preposition: "of string 3".
	// Empty where there is only one.
	About string
	X     float64
	Usual
}

// excess is how far a value lies outside, on a scale where twice the upper and
// half the lower bound are equally far; a bound of 0 or beyond counts in
// widths of the range.
func (v Value) excess() float64 {
	near, far := v.High, v.X
	if v.X < v.Low {
		near, far = v.X, v.Low
	}
	switch width := v.High - v.Low; {
	case near > 0 && far > 0:
		return math.Log(far / near)
	case width > 0 && !math.IsInf(width, 1):
		return (far - near) / width
	}
	return far - near
}

// List collects odd values. The zero value is empty and ready to use.
type List []Value

// Look adds the value if it is outside the usual range.
func (l *List) Look(u *Usual, place fault.Place, about string, x float64) {
	if !u.Holds(x) {
		*l = append(*l, Value{Place: place, About: about, X: x, Usual: *u})
	}
}

// Include adds the values of another list; those without a place of their own
// get this one.
func (l *List) Include(place fault.Place, others List) {
	for _, v := range others {
		if v.Place == (fault.Place{}) {
			v.Place = place
		}
		*l = append(*l, v)
	}
}

// Sorted gives the list by input, line and column, in the order of adding
// where those are equal, and without repeats.
func (l List) Sorted() List {
	sorted := slices.Clone(l)
	slices.SortStableFunc(sorted, func(a, b Value) int {
		return cmp.Or(
			cmp.Compare(a.Place.Input, b.Place.Input),
			cmp.Compare(a.Place.Line, b.Place.Line),
			cmp.Compare(a.Place.Column, b.Place.Column),
		)
	})
	var out List
	for _, v := range sorted {
		if !slices.Contains(out, v) {
			out = append(out, v)
		}
	}
	return out
}

// Group is every odd value of one quantity in one input: one slip repeated in
// every row of a file makes one group.
type Group struct {
	Worst  Value // farthest outside
	Others List  // the rest, in the order of Sorted
}

// Groups puts the values of one quantity and one input together, in the order
// of Sorted.
func (l List) Groups() []Group {
	type key struct{ quantity, input string }
	var order []key
	all := map[key]List{}
	for _, v := range l.Sorted() {
		k := key{v.Quantity, v.Place.Input}
		if all[k] == nil {
			order = append(order, k)
		}
		all[k] = append(all[k], v)
	}
	out := make([]Group, len(order))
	for i, k := range order {
		list := all[k]
		worst := 0
		for j := range list {
			if list[j].excess() > list[worst].excess() {
				worst = j
			}
		}
		out[i].Worst = list[worst]
		out[i].Others = slices.Delete(list, worst, worst+1)
	}
	return out
}
