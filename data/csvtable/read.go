// Package csvtable reads tables of comma-separated values with a heading row
// and keeps the place of every cell, so that a builder is told the line and
// column of each fault, all at once.
//
// Lines beginning with # are comments; empty lines and rows of empty cells are
// passed over. A byte order mark, CRLF line ends and a file in the Windows-1252
// character set are read as they are meant. Every row stands on one line.
package csvtable

import (
	"fmt"
	"io"
	"strings"

	"scalepair/data/fault"
)

// Read reads a table with a heading row. file is the name for places. The
// error is a fault.List of every fault of the file's shape; rows are then nil.
// A reader that has faults of its own to add uses Scan.
func Read(in io.Reader, file string, columns []Column) ([]Row, error) {
	rows, faults := Scan(in, file, columns)
	if err := faults.Err(); err != nil {
		return nil, err
	}
	return rows, nil
}

// Scan reads like Read but gives the rows that could be read beside the
// faults, so that the reader of their cells can add its own to the list and
// report all of them at once. Rows with a fault of shape are left out.
func Scan(in io.Reader, file string, columns []Column) ([]Row, fault.List) {
	var faults fault.List
	place := func(line, column int) fault.Place {
		return fault.Place{Input: file, Line: line, Column: column}
	}
	text, ok := decode(in, file, &faults)
	if !ok {
		return nil, faults
	}
	t := table{columns: columns, place: place, faults: &faults}
	for i, line := range strings.Split(text, "\n") {
		t.take(i+1, strings.TrimRight(line, "\r"))
		if t.stop {
			return nil, faults
		}
	}
	t.finish(file)
	return t.rows, faults
}

// table is the state of one reading.
type table struct {
	columns []Column
	place   placer
	faults  *fault.List
	head    *head
	rows    []Row
	broken  bool // a row with a fault was left out
	stop    bool // nothing more can be read
}

// take reads one line of the file.
func (t *table) take(line int, text string) {
	trimmed := strings.TrimSpace(text)
	if trimmed == "" || strings.HasPrefix(trimmed, "#") || strings.HasPrefix(trimmed, `"#`) {
		return
	}
	cells, f := split(text)
	if f != nil {
		f.Place = t.place(line, f.Place.Column)
		*t.faults, t.broken = append(*t.faults, *f), true
		return
	}
	if blank(cells) {
		return
	}
	if t.head == nil {
		t.takeHead(line, text, cells)
		return
	}
	t.takeRow(line, cells)
}

func (t *table) takeHead(line int, text string, cells []cell) {
	if f := wrongSeparator(text); f != nil {
		f.Place = t.place(line, 0)
		*t.faults, t.stop = append(*t.faults, *f), true
		return
	}
	h := readHead(line, cells, t.columns, t.place, t.faults)
	t.head = &h
}

func (t *table) takeRow(line int, cells []cell) {
	row := Row{head: t.head, place: t.place, line: line, cells: cells}
	before := len(*t.faults)
	t.extraCells(row)
	for _, c := range t.columns {
		if _, ok := t.head.at[c.Name]; c.Required && ok && row.Get(c.Name) == "" {
			t.faults.Add(row.Place(c.Name), c.Name+" is empty", "", "every row needs one")
		}
	}
	if len(*t.faults) == before {
		t.rows = append(t.rows, row)
		return
	}
	t.broken = true
}

// extraCells reports cells beyond the headings or under an empty heading, and a
// row that has more cells than the heading where a decimal comma may have made
// one of them: the spare cell of a row filled into a form is empty.
func (t *table) extraCells(row Row) {
	for i, c := range row.cells {
		headed := i < len(t.head.cells)
		if c.text == "" || headed && t.head.cells[i].name != "" || t.head.refused[i] {
			continue
		}
		remedy := "put a cell that holds a comma in quotation marks"
		if left := row.cutNumbers(); left != "" {
			remedy = "a decimal comma? write " + left
		}
		t.faults.Add(t.place(row.line, c.column), "a cell without a heading", c.text, remedy)
		return
	}
	if left := row.cutNumbers(); left != "" && len(row.cells) > len(t.head.cells) {
		t.faults.Add(t.place(row.line, 0), "more cells than the heading has", fmt.Sprintf("%d for %d", len(row.cells), len(t.head.cells)),
			"a decimal comma? write "+left)
	}
}

func (t *table) finish(file string) {
	switch {
	case t.head == nil && len(*t.faults) == 0:
		t.faults.Add(fault.Place{Input: file}, "the file is empty", "", "it needs a heading row and a row for each entry")
	case len(t.rows) == 0 && !t.broken && len(*t.faults) == 0:
		t.faults.Add(fault.Place{Input: file, Line: t.head.line}, "the file has a heading row only", "", "add a row for each entry")
	}
}

func blank(cells []cell) bool {
	for _, c := range cells {
		if c.text != "" {
			return false
		}
	}
	return true
}
