package gauges

import (
	"fmt"
	"slices"
	"strings"

	"scalepair/data/csvtable"
	"scalepair/data/fault"
	"scalepair/data/unit"
)

// unitless is the columns whose heading names no unit and whose cells name none
// either, with the cells: what is to be mended is the heading, once, not every
// cell.
type unitless []unitlessColumn

type unitlessColumn struct {
	column csvtable.Column
	cells  []csvtable.Row
}

// unitlessColumns finds the columns in which no cell has a unit.
func unitlessColumns(rows []csvtable.Row) unitless {
	var out unitless
	for _, c := range readingColumns {
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
func withoutUnit(rows []csvtable.Row, name string) []csvtable.Row {
	var out []csvtable.Row
	for _, row := range rows {
		switch text := row.Get(name); {
		case text == "":
		case row.Unit(name) != "" || !unit.Bare(text):
			return nil
		default:
			out = append(out, row)
		}
	}
	return out
}

// report adds one fault a column, at its first cell.
func (b unitless) report(faults *fault.List) {
	for _, c := range b {
		first := c.cells[0]
		more := ""
		switch n := len(c.cells) - 1; {
		case n == 1:
			more = ", here and in 1 more row"
		case n > 1:
			more = fmt.Sprintf(", here and in %d more rows", n)
		}
		named := make([]string, 0, 2)
		for _, u := range likelyUnits(c.column.Units) {
			named = append(named, c.column.Name+"_"+u)
		}
		faults.Add(first.Place(c.column.Name), fmt.Sprintf("%s has no unit, in its heading or in its cells%s", c.column.Name, more),
			first.Get(c.column.Name), fmt.Sprintf("name the column %s, or write a unit in every cell", strings.Join(named, " or ")))
	}
}

// likelyUnits are the two that a builder most likely means.
func likelyUnits(units []string) []string {
	if slices.Contains(units, "in") {
		return []string{"mm", "in"}
	}
	return units[:1]
}

// at tells whether a cell is among them.
func (b unitless) at(row csvtable.Row, name string) bool {
	return row.Get(name) != "" && slices.ContainsFunc(b, func(c unitlessColumn) bool { return c.column.Name == name })
}

// inRow tells whether any cell of a row is among them.
func (b unitless) inRow(row csvtable.Row) bool {
	return slices.ContainsFunc(b, func(c unitlessColumn) bool { return b.at(row, c.column.Name) })
}

// oneHeadingOneFault leaves only the heading's own fault where a misspelt
// heading is also missed as a column, and tells whether all headings are
// sound: else no row may be told that it lacks what stands under one of them.
func oneHeadingOneFault(faults *fault.List) (sound bool) {
	sound = true
	meant := map[string]bool{} // by remedy
	for _, f := range *faults {
		if f.What == noColumn {
			meant[f.Remedy], sound = true, false
		}
	}
	*faults = slices.DeleteFunc(*faults, func(f fault.Fault) bool {
		i := slices.IndexFunc(readingColumns, func(c csvtable.Column) bool { return f.What == fmt.Sprintf("the column %q is missing", c.Name) })
		sound = sound && i < 0
		return i >= 0 && meant[fmt.Sprintf("did you mean %q?", readingColumns[i].Name)]
	})
	return sound
}

// noColumn is how csvtable calls a heading that no column has.
const noColumn = "no column of this table"
