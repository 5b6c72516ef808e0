package csvtable

import (
	"iter"

	"scalepair/data/fault"
	"scalepair/data/unit"
)

// cell is one trimmed cell and the column of its first character, from 1.
type cell struct {
	text   string
	column int
}

// Row is one row of a table. Its cells are reached by the column's name, or in
// turn.
type Row struct {
	head  *head
	line  int
	cells []cell
}

// Get gives the trimmed cell, "" when the column is absent or the cell empty.
func (r *Row) Get(name string) string {
	if i := r.find(name); i >= 0 && i < len(r.cells) {
		return r.cells[i].text
	}
	return ""
}

// Has tells whether the table has the column.
func (r *Row) Has(name string) bool { return r.find(name) >= 0 }

// Unit gives the unit in the column's heading ("mm" of "outer_mm"), "" when
// the heading has none or the column is absent.
func (r *Row) Unit(name string) string {
	if i := r.find(name); i >= 0 {
		return r.head.cells[i].unit
	}
	return ""
}

// Place gives file, line and column of the cell, or of the row when the column
// is absent or the row too short.
func (r *Row) Place(name string) fault.Place { return r.Cell(name).Place() }

// Line gives the line of the file, from 1.
func (r *Row) Line() int { return r.line }

func (r *Row) find(name string) int {
	if r.head == nil {
		return -1
	}
	return r.head.find(name)
}

// Cells gives the cells that hold something and stand under a heading, from left
// to right.
func (r *Row) Cells() iter.Seq[Cell] {
	return func(yield func(Cell) bool) {
		for i := range r.cells {
			if r.cells[i].text != "" && i < len(r.head.cells) && r.head.cells[i].name != "" && !yield(Cell{r, i}) {
				return
			}
		}
	}
}

// Cell gives the cell under a name, which is without text where the table has no
// such column or the row is too short.
func (r *Row) Cell(name string) Cell { return Cell{r, r.find(name)} }

// Length reads a cell as Cell.Length does.
func (r *Row) Length(name string, faults *fault.List) (unit.Length, bool) {
	return r.Cell(name).Length(faults)
}

// Mass reads a cell as Cell.Mass does.
func (r *Row) Mass(name string, faults *fault.List) (unit.Mass, bool) {
	return r.Cell(name).Mass(faults)
}

// Force reads a cell as a force, under the rules of Length.
func (r *Row) Force(name string, faults *fault.List) (unit.Force, bool) {
	return read(r.Cell(name), faults, unit.ParseForceIn)
}

// LinearDensity reads a cell as a linear density, under the rules of Length.
func (r *Row) LinearDensity(name string, faults *fault.List) (unit.LinearDensity, bool) {
	return read(r.Cell(name), faults, unit.ParseLinearDensityIn)
}

// Number reads a cell as Cell.Number does.
func (r *Row) Number(name string, faults *fault.List) (float64, bool) {
	return r.Cell(name).Number(faults)
}

// Whole reads a cell as Cell.Whole does.
func (r *Row) Whole(name string, faults *fault.List) (int, bool) { return r.Cell(name).Whole(faults) }
