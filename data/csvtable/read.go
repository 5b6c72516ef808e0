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
	text, ok := decode(in, file, &faults)
	if !ok {
		return nil, faults
	}
	lines := strings.Split(text, "\n")
	t := table{file: file, columns: columns, known: headingsOf(columns), faults: &faults}
	t.split.coming = len(lines) + strings.Count(text, ",")
	t.lines(lines)
	t.finish(text)
	if t.stop {
		return nil, faults
	}
	return t.rows, faults
}

// The reading of a table ends after so many rows, since no builder has more,
// and after so many faults, since nobody reads more. Judgement.
const (
	mostRows   = 10000
	mostFaults = 100
)

// table is the state of one reading.
type table struct {
	file    string
	columns []Column
	known   []heading
	faults  *fault.List
	split   splitter
	head    *head
	title   *title // a row that stands where the heading row belongs
	rows    []Row
	short   []Row // rows with fewer cells than the heading
	broken  bool  // a row with a fault was left out
	stop    bool  // nothing here can be read
	over    bool  // the rest is not read
}

// title is the first row of a file, which is no heading row.
type title struct {
	line int
	text string
}

func (t *table) place(line, column int) fault.Place {
	return fault.Place{Input: t.file, Line: line, Column: column}
}

func (t *table) lines(lines []string) {
	t.rows = make([]Row, 0, min(len(lines), mostRows))
	for i := 0; i < len(lines); i++ {
		open := t.take(i+1, lines[i])
		switch {
		case t.stop || t.over:
			return
		case len(t.rows) > mostRows:
			t.faults.Add(t.place(i+1, 0), fmt.Sprintf("more than %d rows", mostRows), "", "keep the rows that belong here")
			t.stop = true
			return
		case len(*t.faults) >= mostFaults:
			t.broken = true
			return
		case open:
			i = closing(lines, i)
		}
	}
}

// closing gives the line, up to three below, that closes a quotation mark left
// open in line i; i where none does.
func closing(lines []string, i int) int {
	for j := i + 1; j < len(lines) && j <= i+3; j++ {
		if strings.Count(lines[j], `"`)%2 == 1 {
			return j
		}
	}
	return i
}

// take reads one line of the file, and tells whether it leaves a quotation mark
// open.
func (t *table) take(line int, text string) (open bool) {
	trimmed := strings.TrimSpace(text)
	if trimmed == "" || strings.HasPrefix(trimmed, "#") || strings.HasPrefix(trimmed, `"#`) {
		return false
	}
	cells, f := t.split.split(text)
	if f != nil {
		f.Place = t.place(line, f.Place.Column)
		*t.faults, t.broken = append(*t.faults, *f), true
		return true
	}
	switch {
	case blank(cells):
	case t.head == nil:
		t.takeHead(line, text, cells)
	default:
		t.takeRow(line, text, cells)
	}
	return false
}

// takeHead reads the heading row. A row that is none is kept, since the next
// one may be it.
func (t *table) takeHead(line int, text string, cells []cell) {
	if f := wrongSeparator(text, t.known); f != nil {
		t.refuse(line, *f)
		return
	}
	looks := headingRow(cells, t.known)
	switch {
	case t.title == nil && isSepLine(text): // a spreadsheet's own note of what parts the columns
	case t.title == nil && !looks:
		t.title = &title{line, strings.TrimSpace(text)}
	case t.title != nil && looks:
		t.refuse(t.title.line, fault.Fault{What: fmt.Sprintf("a row stands above the heading row, which is line %d", line), Given: t.title.text,
			Remedy: "take it out, or put # before it, which makes it a remark"})
	case t.title != nil:
		t.refuseTitle()
	default:
		t.head = t.readHead(line, cells)
	}
}

func isSepLine(text string) bool {
	return strings.EqualFold(strings.Trim(strings.TrimSpace(text), `"`), "sep=,")
}

// refuseTitle reports a file without a heading row.
func (t *table) refuseTitle() {
	t.refuse(t.title.line, fault.Fault{What: "this is no heading row", Given: t.title.text,
		Remedy: "the first row names the columns: " + strings.Join(named(t.columns), ", ")})
}

func (t *table) refuse(line int, f fault.Fault) {
	f.Place = t.place(line, 0)
	*t.faults, t.stop = append(*t.faults, f), true
}

func (t *table) takeRow(line int, text string, cells []cell) {
	row := Row{head: t.head, line: line, cells: cells}
	before := len(*t.faults)
	if f := otherSeparator(text, len(t.head.cells)); f != nil {
		f.Place = t.place(line, 0)
		*t.faults = append(*t.faults, *f)
	} else if t.unitsRow(cells) {
		t.faults.Add(t.place(line, 0), "a row of units", strings.TrimSpace(text), "put each unit into its heading, as in outer_mm, or behind every number")
	} else if t.headingAgain(cells) {
		t.faults.Add(t.place(line, 0), "a heading row in the middle of the table", strings.TrimSpace(text), "one table to a file: put what stands below it under the columns above, or into a file of its own")
		t.over = true
	} else {
		t.cells(&row, text)
	}
	if len(*t.faults) > before {
		t.broken = true
		return
	}
	t.rows = append(t.rows, row)
	if len(cells) < len(t.head.cells) {
		t.short = append(t.short, row)
	}
}

// cells looks at the shape of a row.
func (t *table) cells(row *Row, text string) {
	t.extraCells(row, text)
	for _, c := range t.columns {
		if c.Required && row.Has(c.Name) && row.Get(c.Name) == "" {
			t.faults.Add(row.Place(c.Name), c.Name+" is empty", "", "write it in every row")
		}
	}
}

// finish reports what only the whole file shows.
func (t *table) finish(text string) {
	sound := !t.broken && len(*t.faults) == 0
	switch {
	case t.head == nil && t.title != nil && !t.stop:
		t.refuseTitle()
	case t.head == nil && sound && strings.TrimSpace(text) != "":
		t.faults.Add(t.place(0, 0), "there is nothing in the file but remarks and empty rows", "", "it needs a heading row and a row for each entry")
	case t.head == nil && sound:
		t.faults.Add(t.place(0, 0), "the file is empty", "", "it needs a heading row and a row for each entry")
	case t.head != nil && sound && len(t.rows) == 0:
		t.faults.Add(t.place(t.head.line, 0), "the file has a heading row only", "", "add a row for each entry")
	case t.head != nil && sound && t.tornOff(text):
		last := t.rows[len(t.rows)-1]
		t.faults.Add(t.place(last.line, 0), "the file ends in the middle of this row", text[strings.LastIndexByte(text, '\n')+1:],
			"copy the file anew, or fill the row's cells up")
		t.rows = t.rows[:len(t.rows)-1]
	}
}

// tornOff tells whether the file seems to be cut off: it ends without a line
// end, in a row that lacks cells where no other row does.
func (t *table) tornOff(text string) bool {
	return len(t.rows) > 1 && len(t.short) == 1 && !strings.HasSuffix(text, "\n") &&
		t.short[0].line == t.rows[len(t.rows)-1].line
}
