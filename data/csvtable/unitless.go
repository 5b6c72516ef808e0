package csvtable

import (
	"fmt"
	"slices"
	"strings"

	"scalepair/data/fault"
	"scalepair/data/unit"
)

// Unitless is the columns whose heading names no unit and whose cells name none
// either, with the cells: what is to be mended is the heading, once, not every
// cell.
type Unitless []unitlessColumn

type unitlessColumn struct {
	column Column
	cells  []*Row
}

// WithoutUnits finds the columns in which no cell has a unit, among those that
// may have several.
func WithoutUnits(rows []Row, columns []Column) Unitless {
	var out Unitless
	for _, c := range columns {
		if len(c.Units) < 2 {
			continue
		}
		if b := (unitlessColumn{c, withoutUnit(rows, c.Name)}); b.cells != nil {
			out = append(out, b)
		}
	}
	return out
}

// withoutUnit gives the rows with a cell in a column; none where a heading or
// a cell states a unit.
func withoutUnit(rows []Row, name string) []*Row {
	if len(rows) == 0 || !rows[0].Has(name) || rows[0].Unit(name) != "" {
		return nil
	}
	var out []*Row
	for i := range rows {
		row := &rows[i]
		switch text := row.Get(name); {
		case text == "":
		case !unit.Bare(text):
			return nil
		default:
			out = append(out, row)
		}
	}
	return out
}

// Report adds one fault a column, at its first cell.
func (b Unitless) Report(faults *fault.List) {
	for _, c := range b {
		first := c.cells[0]
		more := ""
		switch n := len(c.cells) - 1; {
		case n == 1:
			more = ", here and in 1 more row"
		case n > 1:
			more = fmt.Sprintf(", here and in %d more rows", n)
		}
		headings := make([]string, 0, 2)
		for _, u := range likelyUnits(c.column.Units) {
			headings = append(headings, c.column.Name+"_"+u)
		}
		faults.Add(first.Place(c.column.Name), fmt.Sprintf("%s has no unit, in its heading or in its cells%s", c.column.Name, more),
			first.Get(c.column.Name), fmt.Sprintf("name the column %s, or write a unit in every cell", strings.Join(headings, " or ")))
	}
}

// likelyUnits are the two that a builder most likely means.
func likelyUnits(units []string) []string {
	if slices.Contains(units, "in") {
		return []string{"mm", "in"}
	}
	return units[:1]
}

// At tells whether a cell is among them.
func (b Unitless) At(row *Row, name string) bool {
	return slices.ContainsFunc(b, func(c unitlessColumn) bool { return c.column.Name == name }) && row.Get(name) != ""
}

// InRow tells whether any cell of a row is among them.
func (b Unitless) InRow(row *Row) bool {
	return slices.ContainsFunc(b, func(c unitlessColumn) bool { return b.At(row, c.column.Name) })
}
