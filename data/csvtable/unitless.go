package csvtable

import (
	"fmt"
	"slices"

	"scalepair/data/fault"
	"scalepair/data/unit"
)

// Unitless is the columns of a table whose unit neither the heading nor any cell
// names: what is to be mended is the heading, once, not every cell.
type Unitless struct {
	columns []Column
	rows    []Row
}

// WithoutUnits finds them among the columns that may have several units.
func WithoutUnits(rows []Row, columns []Column) Unitless {
	out := Unitless{rows: rows}
	for _, c := range columns {
		if len(c.Units) > 1 && out.first(c.Name) >= 0 && !slices.ContainsFunc(rows, func(r Row) bool {
			return r.Unit(c.Name) != "" || r.Get(c.Name) != "" && !unit.Bare(r.Get(c.Name))
		}) {
			out.columns = append(out.columns, c)
		}
	}
	return out
}

// first returns the first row with a cell in a column, -1 where there is none.
func (u Unitless) first(name string) int {
	return slices.IndexFunc(u.rows, func(r Row) bool { return r.Get(name) != "" })
}

// Report adds one fault a column, at its first cell.
func (u Unitless) Report(faults *fault.List) {
	for _, c := range u.columns {
		cell := u.rows[u.first(c.Name)].Cell(c.Name)
		headings := c.Name + "_" + c.Units[0]
		if slices.Contains(c.Units[1:], "in") {
			headings += " or " + c.Name + "_in"
		}
		faults.Add(cell.Place(), c.Name+" has no unit, in its heading or in its cells", cell.Text(),
			fmt.Sprintf("name the column %s, or write a unit in every cell", headings))
	}
}

// At reports whether a cell is among them.
func (u Unitless) At(row *Row, name string) bool {
	return row.Get(name) != "" && slices.ContainsFunc(u.columns, func(c Column) bool { return c.Name == name })
}

// InRow reports whether any cell of a row is among them.
func (u Unitless) InRow(row *Row) bool {
	return slices.ContainsFunc(u.columns, func(c Column) bool { return u.At(row, c.Name) })
}
