package csvtable

import (
	"iter"
	"math"
	"strings"

	"scalepair/data/fault"
	"scalepair/data/unit"
)

// cell is one trimmed cell and the place of its first character.
type cell struct {
	text  string
	place fault.Place
}

// Row is one row of a table. Its cells are reached by the column's name, or in
// turn.
type Row struct {
	head  *head
	place fault.Place
	cells []cell
}

// Get returns the trimmed cell, "" when the column is absent or the cell empty.
func (r *Row) Get(name string) string { return r.Cell(name).Text() }

// Has reports whether the table has the column.
func (r *Row) Has(name string) bool { return r.head.find(name) >= 0 }

// Unit returns the unit in the column's heading ("mm" of "outer_mm"), "" when
// the heading has none or the column is absent.
func (r *Row) Unit(name string) string { return r.Cell(name).Unit() }

// Place returns file, line and column of the cell, or of the row when the
// column is absent or the row too short.
func (r *Row) Place(name string) fault.Place { return r.Cell(name).Place() }

// Cells yields the cells that hold something and stand under a heading, from
// left to right.
func (r *Row) Cells() iter.Seq[Cell] {
	return func(yield func(Cell) bool) {
		for i := range r.cells {
			if c := (Cell{r, i}); c.Text() != "" && c.Name() != "" && !yield(c) {
				return
			}
		}
	}
}

// Cell returns the cell under a name, which is without text where the table has
// no such column or the row is too short.
func (r *Row) Cell(name string) Cell { return Cell{r, r.head.find(name)} }

// Length reads a cell as Cell.Length does.
func (r *Row) Length(name string, faults *fault.List) (unit.Length, bool) {
	return r.Cell(name).Length(faults)
}

// Number reads a cell as Cell.Number does.
func (r *Row) Number(name string, faults *fault.List) (float64, bool) {
	return r.Cell(name).Number(faults)
}

// Whole reads a cell as Cell.Whole does.
func (r *Row) Whole(name string, faults *fault.List) (int, bool) { return r.Cell(name).Whole(faults) }

// Cell is one cell of a row, or a cell that a row lacks.
type Cell struct {
	row *Row
	i   int // -1: the table has no such column
}

func (c Cell) heading() heading {
	if c.i < 0 || c.i >= len(c.row.head.cells) {
		return heading{}
	}
	return c.row.head.cells[c.i]
}

// Name returns the name of the column, "" where the table has none.
func (c Cell) Name() string { return c.heading().name }

// Unit returns the unit in the column's heading, as Row.Unit does.
func (c Cell) Unit() string { return c.heading().unit }

// Text returns the trimmed cell, "" where there is none.
func (c Cell) Text() string {
	if c.i < 0 || c.i >= len(c.row.cells) {
		return ""
	}
	return c.row.cells[c.i].text
}

// Place returns file, line and column of the cell, or the line of its row where
// there is none.
func (c Cell) Place() fault.Place {
	if c.i < 0 || c.i >= len(c.row.cells) {
		return c.row.place
	}
	return c.row.cells[c.i].place
}

// DecimalComma reports whether the cell and the one right after it look like a
// number that a decimal comma has cut in two: bare digits in both, and nothing
// but the comma between. It returns the number with a point, and the second
// half, which may stand under no heading. Two whole numbers look the same; the
// reader of the cells must judge.
func (c Cell) DecimalComma() (number string, next Cell, ok bool) {
	next = Cell{c.row, c.i + 1}
	left, right := c.Text(), next.Text()
	if c.i < 0 || !digits(strings.TrimLeft(left, "+-")) || !digits(right) || next.Place().Column != c.Place().Column+len(left)+1 {
		return "", next, false
	}
	return left + "." + right, next, true
}

func digits(s string) bool { return s != "" && strings.Trim(s, "0123456789") == "" }

// Length reads a cell as a length, with the unit of the cell or else of the
// heading. It returns false for an empty cell, without a fault, and for a cell
// that does not read or whose unit contradicts the heading, with a fault at its
// place.
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
		if err != nil || x != math.Trunc(x) || math.Abs(x) > 1e9 {
			err = fault.Fault{What: "not a whole number", Given: text, Remedy: "write a whole number in digits, such as 3"}
		}
		return int(x), err
	})
}

// read parses a cell that may carry its own unit or take the heading's, and puts
// a fault at its place.
func read[T any](c Cell, faults *fault.List, parse func(text, unit string) (T, error)) (T, bool) {
	var none T
	if c.Text() == "" {
		return none, false
	}
	x, err := parse(c.Text(), c.Unit())
	if err != nil {
		faults.Include(c.Place(), fault.About(c.Name(), err))
		return none, false
	}
	return x, true
}
