package csvtable

import (
	"bufio"
	"encoding/csv"
	"errors"
	"strings"
	"unicode/utf8"

	"scalepair/data/fault"
)

// splitter cuts lines into cells.
type splitter struct {
	quoted *csv.Reader // made for the first line with a quotation mark
	line   *bufio.Reader
	spare  []cell // room for the cells of coming lines
}

// take gives room for n cells out of a larger piece, since a table has many
// short rows.
func (s *splitter) take(n int) []cell {
	if n > len(s.spare) {
		s.spare = make([]cell, max(n, cellsAtOnce))
	}
	cells := s.spare[:n:n]
	s.spare = s.spare[n:]
	return cells
}

const cellsAtOnce = 256

// split cuts one line into cells. A quotation mark inside a bare cell is an
// inch mark and kept; one left open is a fault, with the column in its place.
func (s *splitter) split(line string) ([]cell, *fault.Fault) {
	if strings.IndexByte(line, '"') < 0 {
		return s.splitBare(line), nil
	}
	fields, columns, err := s.splitQuoted(line, false)
	if errors.Is(err, csv.ErrBareQuote) {
		fields, columns, err = s.splitQuoted(line, true)
	}
	var at *csv.ParseError
	if errors.As(err, &at) {
		return nil, &fault.Fault{
			Place:  fault.Place{Column: runeColumn(line, openQuote(line, at.Column))},
			What:   "a quotation mark is left open on this line",
			Remedy: "close it, and keep every cell on one line",
		}
	}
	cells := s.take(len(fields))
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

// splitBare does the same for a line without quotation marks.
func (s *splitter) splitBare(line string) []cell {
	cells := s.take(strings.Count(line, ",") + 1)
	column := 1
	for i := range cells {
		field, rest, _ := strings.Cut(line, ",")
		blanks := len(field) - len(strings.TrimLeft(field, " \t"))
		cells[i] = cell{strings.TrimSpace(field), column + blanks}
		column += utf8.RuneCountInString(field) + 1
		line = rest
	}
	return cells
}

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

// splitQuoted gives the fields and the byte column, from 1, of each. One reader
// serves all lines, so that not every line needs its buffers.
func (s *splitter) splitQuoted(line string, lazy bool) ([]string, []int, error) {
	if s.quoted == nil {
		s.line = bufio.NewReader(nil)
		s.quoted = csv.NewReader(s.line) // takes the buffer as it is
		s.quoted.TrimLeadingSpace, s.quoted.FieldsPerRecord = true, -1
	}
	s.line.Reset(strings.NewReader(line))
	s.quoted.LazyQuotes = lazy
	fields, err := s.quoted.Read()
	if err != nil {
		return nil, nil, err
	}
	columns := make([]int, len(fields))
	for i := range fields {
		_, columns[i] = s.quoted.FieldPos(i)
	}
	return fields, columns, nil
}

// runeColumn turns a byte column into the character column that editors show.
func runeColumn(line string, column int) int {
	return utf8.RuneCountInString(line[:min(max(column-1, 0), len(line))]) + 1
}
