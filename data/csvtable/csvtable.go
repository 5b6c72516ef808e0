// Package csvtable reads tables of comma-separated values with a heading row
// and keeps the place of every cell, so that a builder sees the line and column
// of each fault, all at once.
//
// Lines beginning with # are comments; empty lines and rows of empty cells are
// passed over. A byte order mark and any line ends are taken. A bare quotation
// mark inside a cell is an inch mark. Every cell stands on one line.
//
// column.go has the columns and the heading row, row.go the cells as
// quantities, unitless.go the columns that name no unit, guard.go the cells that a
// spreadsheet would calculate; sheet.go has a table whose cells are changed one by
// one, paste.go the rows that are pasted into it.
package csvtable

import (
	"bytes"
	"encoding/csv"
	"fmt"
	"io"
	"slices"
	"strconv"
	"strings"
	"unicode/utf8"

	"scalepair/data/fault"
)

// Bounds of a table: a larger one is another file. Judgement.
const (
	mostBytes  = 4 << 20
	mostRows   = 10000
	mostCells  = 1000
	mostFaults = 100
)

const saveAsCSV = `save the sheet as "CSV UTF-8", with commas and decimal points`

// Read reads a table with a heading row. file is the name for places. The rows
// that could be read come with every fault of the file's shape, so that the reader
// of their cells can add its own; rows with a fault are left out.
func Read(in io.Reader, file string, columns []Column) ([]Row, fault.List) {
	t := table{file: file, columns: columns}
	text, ok := t.decode(in)
	if !ok {
		return nil, t.faults
	}
	t.lines = strings.Split(text, "\n")
	records := csv.NewReader(strings.NewReader(text))
	records.Comment, records.LazyQuotes, records.TrimLeadingSpace, records.FieldsPerRecord = '#', true, true, -1
	for len(t.rows) <= mostRows && len(t.faults) < mostFaults {
		fields, err := records.Read()
		if err == io.EOF {
			break
		}
		if err != nil { // lazy quotes leave none that is known
			t.faults.Include(fault.Place{Input: file}, err)
			break
		}
		if len(fields) > mostCells {
			line, _ := records.FieldPos(0)
			t.faults.Add(fault.Place{Input: file, Line: line}, fmt.Sprintf("a row of %d cells", len(fields)), "", "name the right file")
			return nil, t.faults
		}
		if !t.take(t.cells(records, fields)) {
			return nil, t.faults
		}
	}
	t.finish()
	return t.rows, t.faults
}

// table is the state of one reading.
type table struct {
	file    string
	columns []Column
	lines   []string
	head    *head
	rows    []Row
	faults  fault.List
}

// decode reads the whole input as text with \n as line end.
func (t *table) decode(in io.Reader) (text string, ok bool) {
	at := fault.Place{Input: t.file}
	raw, err := io.ReadAll(io.LimitReader(in, mostBytes+1))
	switch {
	case err != nil:
		t.faults.Add(at, "cannot be read: "+err.Error(), "", "copy the file anew")
	case len(raw) > mostBytes:
		t.faults.Add(at, fmt.Sprintf("the file is larger than %d MB, which no table of this kind is", mostBytes>>20), "", "name the right file")
	case !utf8.Valid(raw) || bytes.IndexByte(raw, 0) >= 0:
		t.faults.Add(at, "the file is not UTF-8 text", "", saveAsCSV)
	}
	text = strings.TrimPrefix(string(raw), "\ufeff") + "\n" // so that an open quotation mark shows on the last line too
	return strings.NewReplacer("\r\n", "\n", "\r", "\n").Replace(text), len(t.faults) == 0
}

// cells returns the trimmed cells of a record with their places.
func (t *table) cells(records *csv.Reader, fields []string) []cell {
	out := make([]cell, len(fields))
	for i, f := range fields {
		line, column := records.FieldPos(i)
		before := t.lines[line-1][:min(column-1, len(t.lines[line-1]))]
		if !strings.Contains(f, "\n") { // a line end inside is a fault, also at the end
			f = strings.TrimSpace(f)
		}
		out[i] = cell{bare(f), fault.Place{Input: t.file, Line: line, Column: utf8.RuneCountInString(before) + 1}}
	}
	return out
}

// take takes one record; false ends the reading.
func (t *table) take(cells []cell) bool {
	blank := !slices.ContainsFunc(cells, func(c cell) bool { return c.text != "" })
	switch line := lineOf(cells); {
	case blank || strings.HasPrefix(cells[0].text, "#"):
	case slices.ContainsFunc(cells, func(c cell) bool { return strings.Contains(c.text, "\n") }):
		i := slices.IndexFunc(cells, func(c cell) bool { return strings.Contains(c.text, "\n") })
		t.faults.Add(cells[i].place, "a quotation mark is left open on this line", "", "close it, and keep every cell on one line")
	case t.head == nil:
		return t.takeHead(line, cells)
	case t.otherSeparator(cells):
		t.faults.Add(line, "the cells of this row are not separated by commas", cells[0].text, "use commas, and write decimals with a point")
	default:
		t.takeRow(line, cells)
	}
	return true
}

func lineOf(cells []cell) fault.Place {
	return fault.Place{Input: cells[0].place.Input, Line: cells[0].place.Line}
}

// otherSeparator reports whether all of a row stands in one cell.
func (t *table) otherSeparator(cells []cell) bool {
	return len(cells) == 1 && len(t.head.cells) > 1 && strings.ContainsAny(cells[0].text, ";\t")
}

func (t *table) takeRow(line fault.Place, cells []cell) {
	row := Row{head: t.head, place: line, cells: cells}
	before := len(t.faults)
	t.extraCells(&row)
	for _, c := range t.columns {
		if c.Required && row.Has(c.Name) && row.Get(c.Name) == "" {
			t.faults.Add(row.Place(c.Name), c.Name+" is empty", "", "write it in every row")
		}
	}
	if len(t.faults) == before {
		t.rows = append(t.rows, row)
	}
}

// extraCells reports a cell without a heading, and a row that is too long where
// a decimal comma may have made two cells of one.
func (t *table) extraCells(row *Row) {
	extra, numbers := -1, []string(nil)
	for i := range row.cells {
		c := Cell{row, i}
		if extra < 0 && c.Text() != "" && c.Name() == "" && !c.heading().refused {
			extra = i
		}
		if n, _, cut := c.DecimalComma(); cut && c.heading().measured {
			numbers = append(numbers, strconv.Quote(n))
		}
	}
	switch {
	case numbers != nil && len(row.cells) > len(t.head.cells):
		t.faults.Add(row.place, "more cells than the heading has", fmt.Sprintf("%d for %d", len(row.cells), len(t.head.cells)),
			"a decimal comma? write "+strings.Join(numbers, " or "))
	case extra >= 0:
		t.faults.Add(row.cells[extra].place, "a cell without a heading", row.cells[extra].text,
			"put a cell that holds a comma between quotation marks, or name its column in the heading row")
	}
}

// finish reports what only the whole file shows.
func (t *table) finish() {
	at := fault.Place{Input: t.file}
	switch {
	case len(t.rows) > mostRows:
		t.faults.Add(at, fmt.Sprintf("more than %d rows", mostRows), "", "name the right file")
		t.rows = nil
	case len(t.faults) > 0:
	case t.head == nil:
		t.faults.Add(at, "the file is empty", "", "it needs a heading row and a row for each entry")
	case len(t.rows) == 0:
		t.faults.Add(t.head.place, "the file has a heading row only", "", "add a row for each entry")
	}
}
