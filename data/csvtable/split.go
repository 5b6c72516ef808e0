package csvtable

import (
	"bufio"
	"encoding/csv"
	"errors"
	"strings"
	"sync"
	"unicode/utf8"

	"scalepair/data/fault"
)

// split cuts one line into cells. A quotation mark inside a bare cell is an
// inch mark and kept; one left open is a fault, with the column in its place.
func split(line string) ([]cell, *fault.Fault) {
	fields, columns, err := splitQuoted(line, false)
	if errors.Is(err, csv.ErrBareQuote) {
		fields, columns, err = splitQuoted(line, true)
	}
	var at *csv.ParseError
	if errors.As(err, &at) {
		return nil, &fault.Fault{
			Place:  fault.Place{Column: runeColumn(line, openQuote(line, at.Column))},
			What:   "a quotation mark is left open on this line",
			Remedy: "close it, and keep every cell on one line",
		}
	}
	cells := make([]cell, len(fields))
	// Columns rise, so each is counted on from the one before: a line may hold
	// thousands of cells.
	from, column := 0, 1
	for i, f := range fields {
		to := min(max(columns[i]-1, from), len(line))
		column += utf8.RuneCountInString(line[from:to])
		from, cells[i] = to, cell{strings.TrimSpace(f), column}
	}
	return cells, nil
}

// lineReaders are buffers of a size that the csv package takes as they are, so
// that not every line needs its own.
var lineReaders = sync.Pool{New: func() any { return bufio.NewReader(nil) }}

// openQuote gives the byte column, from 1, of the quotation mark that begins a
// cell and is never closed; otherwise where the reader gave up.
func openQuote(line string, otherwise int) int {
	open, start := -1, true // start: a cell may begin here
	for i := 0; i < len(line); i++ {
		switch c := line[i]; {
		case open >= 0 && strings.HasPrefix(line[i:], `""`):
			i++
		case open >= 0 && c == '"':
			open = -1
		case open < 0 && start && c == '"':
			open = i
		}
		start = open < 0 && (line[i] == ',' || start && line[i] == ' ')
	}
	if open < 0 {
		return otherwise
	}
	return open + 1
}

// splitQuoted gives the fields and the byte column, from 1, of each.
func splitQuoted(line string, lazy bool) ([]string, []int, error) {
	if !strings.Contains(line, `"`) {
		return splitBare(line)
	}
	buf := lineReaders.Get().(*bufio.Reader)
	defer lineReaders.Put(buf)
	buf.Reset(strings.NewReader(line))
	r := csv.NewReader(buf)
	r.LazyQuotes, r.TrimLeadingSpace = lazy, true
	fields, err := r.Read()
	if err != nil {
		return nil, nil, err
	}
	columns := make([]int, len(fields))
	for i := range fields {
		_, columns[i] = r.FieldPos(i)
	}
	return fields, columns, nil
}

// splitBare does the same for a line without quotation marks.
func splitBare(line string) ([]string, []int, error) {
	fields := strings.Split(line, ",")
	columns := make([]int, len(fields))
	at := 1
	for i, f := range fields {
		columns[i] = at + len(f) - len(strings.TrimLeft(f, " \t"))
		at += len(f) + 1
	}
	return fields, columns, nil
}

// runeColumn turns a byte column into the character column that editors show.
func runeColumn(line string, column int) int {
	return utf8.RuneCountInString(line[:min(max(column-1, 0), len(line))]) + 1
}
