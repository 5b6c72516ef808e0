package csvtable

import (
	"errors"
	"math"
	"strings"

	"scalepair/data/fault"
	"scalepair/data/unit"
)

// cell is one trimmed cell and the column of its first character, from 1.
type cell struct {
	text   string
	column int
}

// placer makes the place of a line and column of the file being read.
type placer func(line, column int) fault.Place

// Row is one row of a table. Its cells are reached by the column's name.
type Row struct {
	head  *head
	place placer
	line  int
	cells []cell
}

// Get gives the trimmed cell, "" when the column is absent or the cell empty.
func (r Row) Get(name string) string {
	c, _ := r.find(name)
	return c.text
}

// Has tells whether the table has the column.
func (r Row) Has(name string) bool {
	if r.head == nil {
		return false
	}
	_, ok := r.head.at[name]
	return ok
}

// Unit gives the unit in the column's heading ("mm" of "outer_mm"), "" when
// the heading has none or the column is absent.
func (r Row) Unit(name string) string {
	if r.head == nil {
		return ""
	}
	if i, ok := r.head.at[name]; ok {
		return r.head.cells[i].unit
	}
	return ""
}

// Place gives file, line and column of the cell, or of the row when the column
// is absent or the row too short.
func (r Row) Place(name string) fault.Place {
	if r.place == nil {
		return fault.Place{}
	}
	c, _ := r.find(name)
	return r.place(r.line, c.column)
}

// Line gives the line of the file, from 1.
func (r Row) Line() int { return r.line }

func (r Row) find(name string) (cell, bool) {
	if r.head == nil {
		return cell{}, false
	}
	i, ok := r.head.at[name]
	if !ok || i >= len(r.cells) {
		return cell{}, false
	}
	return r.cells[i], true
}

// DecimalComma tells whether the cell and the one right after it look like a
// number that a decimal comma has cut in two: bare digits in both, and nothing
// but the comma between. It gives the number with a point, and the name of the
// column that the second half stands under ("" for one without a heading). So
// do a whole number and a whole number; the reader of the cells must judge.
func (r Row) DecimalComma(name string) (number, next string, ok bool) {
	if r.head == nil {
		return "", "", false
	}
	i, found := r.head.at[name]
	if !found || i+1 >= len(r.cells) {
		return "", "", false
	}
	if i+1 < len(r.head.cells) {
		next = r.head.cells[i+1].name
	}
	number, ok = cut(r.cells[i], r.cells[i+1])
	return number, next, ok
}

// Length reads a cell as a length, with the unit of the cell or else of the
// heading. It gives false for an empty cell, without a fault, and for a cell
// that does not read or whose unit contradicts the heading, with a fault at
// its place.
func (r Row) Length(name string, faults *fault.List) (unit.Length, bool) {
	return quantity(r, name, faults, unit.ParseLengthIn)
}

// Mass reads a cell as a mass, under the rules of Length.
func (r Row) Mass(name string, faults *fault.List) (unit.Mass, bool) {
	return quantity(r, name, faults, unit.ParseMassIn)
}

// Force reads a cell as a force, under the rules of Length.
func (r Row) Force(name string, faults *fault.List) (unit.Force, bool) {
	return quantity(r, name, faults, unit.ParseForceIn)
}

// UnitWeight reads a cell as a unit weight, under the rules of Length.
func (r Row) UnitWeight(name string, faults *fault.List) (unit.UnitWeight, bool) {
	return quantity(r, name, faults, unit.ParseUnitWeightIn)
}

// Number reads a cell as a plain finite decimal; false for an empty cell, and
// with a fault for one that does not read.
func (r Row) Number(name string, faults *fault.List) (float64, bool) {
	return read(r, name, faults, unit.ParseNumber)
}

// Whole reads a cell as a whole number within +-1e9, under the rules of Number.
func (r Row) Whole(name string, faults *fault.List) (int, bool) {
	return read(r, name, faults, func(text string) (int, error) {
		x, err := unit.ParseNumber(text)
		if err == nil && (x != math.Trunc(x) || math.Abs(x) > 1e9) {
			return 0, fault.Fault{What: "not a whole number", Given: text, Remedy: wholeRemedy}
		}
		var f fault.Fault
		if errors.As(err, &f) && f.What == "not read as a number" && !strings.HasPrefix(f.Remedy, "write \"") {
			f.Remedy = wholeRemedy
			return 0, f
		}
		return int(x), err
	})
}

const wholeRemedy = "write a whole number in digits, such as 3"

// quantity reads a cell that may carry its own unit or take the heading's.
func quantity[T ~float64](r Row, name string, faults *fault.List, parse func(s, unit string) (T, error)) (T, bool) {
	return read(r, name, faults, func(s string) (T, error) { return parse(s, r.Unit(name)) })
}

// read parses a cell and puts a fault at its place.
func read[T any](r Row, name string, faults *fault.List, parse func(string) (T, error)) (T, bool) {
	var none T
	text := r.Get(name)
	if text == "" {
		return none, false
	}
	x, err := parse(text)
	if err != nil {
		faults.Include(r.Place(name), fault.About(name, err))
		return none, false
	}
	return x, true
}
