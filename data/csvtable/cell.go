package csvtable

import (
	"errors"
	"math"
	"strings"

	"scalepair/data/fault"
	"scalepair/data/unit"
)

// Cell is one cell of a row, or a cell that a row lacks.
type Cell struct {
	row *Row
	i   int // -1: the table has no such column
}

// Name gives the name of the column, "" where the table has none.
func (c Cell) Name() string {
	if !c.headed() {
		return ""
	}
	return c.row.head.cells[c.i].name
}

// Unit gives the unit in the column's heading, as Row.Unit does.
func (c Cell) Unit() string {
	if !c.headed() {
		return ""
	}
	return c.row.head.cells[c.i].unit
}

// Text gives the trimmed cell, "" where there is none.
func (c Cell) Text() string {
	if !c.written() {
		return ""
	}
	return c.row.cells[c.i].text
}

// Place gives file, line and column of the cell, or of its row where there is
// none.
func (c Cell) Place() fault.Place {
	switch {
	case c.row.head == nil:
		return fault.Place{}
	case !c.written():
		return fault.Place{Input: c.row.head.file, Line: c.row.line}
	}
	return fault.Place{Input: c.row.head.file, Line: c.row.line, Column: c.row.cells[c.i].column}
}

// headed and written tell whether the cell stands under a column of the heading
// row, and whether the row is long enough to have it.
func (c Cell) headed() bool  { return c.i >= 0 && c.i < len(c.row.head.cells) }
func (c Cell) written() bool { return c.i >= 0 && c.i < len(c.row.cells) }

// DecimalComma tells whether the cell and the one right after it look like a
// number that a decimal comma has cut in two: bare digits in both, and nothing
// but the comma between. It gives the number with a point, and the second half,
// which may stand under no heading. So do a whole number and a whole number; the
// reader of the cells must judge.
func (c Cell) DecimalComma() (number string, next Cell, ok bool) {
	next = Cell{c.row, c.i + 1}
	if c.written() && next.written() {
		number, ok = cut(&c.row.cells[c.i], &c.row.cells[next.i])
	}
	return number, next, ok
}

// Length reads a cell as a length, with the unit of the cell or else of the
// heading. It gives false for an empty cell, without a fault, and for a cell
// that does not read or whose unit contradicts the heading, with a fault at
// its place.
func (c Cell) Length(faults *fault.List) (unit.Length, bool) {
	return read(c, faults, unit.ParseLengthIn)
}

// Mass reads a cell as a mass, under the rules of Length.
func (c Cell) Mass(faults *fault.List) (unit.Mass, bool) { return read(c, faults, unit.ParseMassIn) }

// Number reads a cell as a plain finite decimal; false for an empty cell, and
// with a fault for one that does not read.
func (c Cell) Number(faults *fault.List) (float64, bool) {
	return read(c, faults, func(text, _ string) (float64, error) { return unit.ParseNumber(text) })
}

// Whole reads a cell as a whole number within +-1e9, under the rules of Number.
func (c Cell) Whole(faults *fault.List) (int, bool) {
	return read(c, faults, func(text, _ string) (int, error) {
		x, err := unit.ParseNumber(text)
		switch {
		case err != nil:
			return 0, inDigits(err)
		case x != math.Trunc(x) || math.Abs(x) > 1e9:
			return 0, fault.Fault{What: "not a whole number", Given: text, Remedy: wholeRemedy}
		}
		return int(x), nil
	})
}

const wholeRemedy = "write a whole number in digits, such as 3"

// inDigits puts the remedy of a whole number for a number's, unless that says
// already what to write.
func inDigits(err error) error {
	var f fault.Fault
	if errors.As(err, &f) && f.What == "not read as a number" && !strings.HasPrefix(f.Remedy, "write \"") {
		f.Remedy = wholeRemedy
		return f
	}
	return err
}

// read parses a cell that may carry its own unit or take the heading's, and puts
// a fault at its place.
func read[T any](c Cell, faults *fault.List, parse func(text, unit string) (T, error)) (T, bool) {
	var none T
	text := c.Text()
	if text == "" {
		return none, false
	}
	x, err := parse(text, c.Unit())
	if err != nil {
		faults.Include(c.Place(), fault.About(c.Name(), err))
		return none, false
	}
	return x, true
}
