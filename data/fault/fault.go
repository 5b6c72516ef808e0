// Package fault collects the faults of one input so that a builder is told
// all of them at once, each with its place, what is wrong, what was given and
// what would do.
//
// A message reads
//
//	place: what is wrong (what was given); what would do
//
// in lower case, without a full stop, with the offending text quoted. The
// place is file:line:column, a flag or a named input.
package fault

import (
	"cmp"
	"errors"
	"fmt"
	"slices"
	"strconv"
	"strings"
	"unicode"
)

// Place says where a fault stands. Line and Column count from 1; 0 leaves
// them out. Input is a file's name, a flag such as "--bass", or a named input.
type Place struct {
	Input        string
	Line, Column int
}

// MarshalText returns what String returns.
func (p Place) MarshalText() ([]byte, error) { return []byte(p.String()), nil }

// String returns "input", "input:line" or "input:line:column".
func (p Place) String() string {
	switch {
	case p.Line == 0:
		return p.Input
	case p.Column == 0:
		return fmt.Sprintf("%s:%d", p.Input, p.Line)
	}
	return fmt.Sprintf("%s:%d:%d", p.Input, p.Line, p.Column)
}

// Fault is one thing that is wrong with an input. What says what is wrong,
// Given what was found there (shown quoted, left out when empty), Remedy what
// would do (left out when empty).
type Fault struct {
	Place  Place
	What   string
	Given  string
	Remedy string
}

// Error returns the whole message on one line. Characters that a terminal would
// obey rather than show, of a label or a file's name say, are written as escapes.
func (f Fault) Error() string {
	var b strings.Builder
	if place := f.Place.String(); place != "" {
		b.WriteString(place)
		b.WriteString(": ")
	}
	b.WriteString(f.What)
	if f.Given != "" {
		fmt.Fprintf(&b, " (%q)", Short(f.Given))
	}
	if f.Remedy != "" {
		b.WriteString("; ")
		b.WriteString(f.Remedy)
	}
	return shown(b.String())
}

// shown writes control characters and invisible ones as Go quotes them.
func shown(s string) string {
	obeyed := func(r rune) bool { return unicode.IsControl(r) || unicode.Is(unicode.Cf, r) }
	if !strings.ContainsFunc(s, obeyed) {
		return s
	}
	var b strings.Builder
	for _, r := range s {
		if obeyed(r) {
			b.WriteString(strings.Trim(strconv.QuoteRune(r), "'"))
			continue
		}
		b.WriteRune(r)
	}
	return b.String()
}

// mostQuoted is how much of a text a message quotes.
const mostQuoted = 100

// Short cuts a text that is to be quoted to a length that can be read.
func Short(text string) string {
	if len(text) <= mostQuoted {
		return text
	}
	if r := []rune(text[:min(len(text), 4*mostQuoted)]); len(r) > mostQuoted {
		return string(r[:mostQuoted-1]) + "…"
	}
	return text
}

// List holds the faults of one run of a reader. The zero value is empty and
// ready to use.
type List []Fault

// Add appends one fault.
func (l *List) Add(place Place, what, given, remedy string) {
	*l = append(*l, Fault{Place: place, What: what, Given: given, Remedy: remedy})
}

// About says of what an error is: the faults of a List or a Fault begin with
// the name, "outer: a length needs a unit", and any other error does too.
func About(name string, err error) error {
	var list List
	var one Fault
	switch {
	case err == nil:
		return nil
	case errors.As(err, &list):
		list = slices.Clone(list)
		for i := range list {
			list[i].What = name + ": " + list[i].What
		}
		return list
	case errors.As(err, &one):
		one.What = name + ": " + one.What
		return one
	}
	return fmt.Errorf("%s: %w", name, err)
}

// Include appends what err holds: the faults of a List or a Fault one by one,
// any other error as a fault at place. A fault that has no place of its own
// gets place too. A nil err adds nothing.
func (l *List) Include(place Place, err error) {
	var list List
	var one Fault
	switch {
	case err == nil:
	case errors.As(err, &list):
	case errors.As(err, &one):
		list = List{one}
	default:
		list = List{{What: err.Error()}}
	}
	for _, f := range list {
		if f.Place == (Place{}) {
			f.Place = place
		}
		*l = append(*l, f)
	}
}

// Err returns nil for an empty list, else the list sorted by input, line and
// column, without repeats.
func (l List) Err() error {
	if len(l) == 0 {
		return nil
	}
	sorted := slices.Clone(l)
	slices.SortStableFunc(sorted, func(a, b Fault) int {
		return cmp.Or(
			cmp.Compare(a.Place.Input, b.Place.Input),
			cmp.Compare(a.Place.Line, b.Place.Line),
			cmp.Compare(a.Place.Column, b.Place.Column),
		)
	})
	return slices.Compact(sorted)
}
