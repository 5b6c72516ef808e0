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
	coming int    // cells of the lines to come, at most
	spare  []cell // room for some of them

	quoted *csv.Reader // made for the first line with a quotation mark
	line   *bufio.Reader
}

// room gives room for at least n cells out of a larger piece, since a table has
// many short rows. The cells that are used are then taken with keep.
func (s *splitter) room(n int) []cell {
	if n > len(s.spare) {
		s.spare = make([]cell, max(n, min(s.coming, cellsAtOnce)))
	}
	return s.spare
}

const cellsAtOnce = 4096

// keep takes the first n cells of the room.
func (s *splitter) keep(n int) []cell {
	cells := s.spare[:n:n]
	s.spare, s.coming = s.spare[n:], s.coming-n
	return cells
}

// split cuts one line into cells. A quotation mark inside a bare cell is an
// inch mark and kept; one left open is a fault, with the column in its place.
func (s *splitter) split(line string) ([]cell, *fault.Fault) {
	if strings.IndexByte(line, '"') < 0 {
		return s.splitBare(line), nil
	}
	cells, err := s.splitQuoted(line, false)
	if errors.Is(err, csv.ErrBareQuote) {
		cells, err = s.splitQuoted(line, true)
	}
	var at *csv.ParseError
	if errors.As(err, &at) {
		return nil, &fault.Fault{
			Place:  fault.Place{Column: runeColumn(line, openQuote(line, at.Column))},
			What:   "a quotation mark is left open on this line",
			Remedy: "close it, and keep every cell on one line",
		}
	}
	return cells, nil
}

// splitBare cuts a line without quotation marks.
func (s *splitter) splitBare(line string) []cell {
	n := strings.Count(line, ",") + 1
	cells := s.room(n)
	column, at := 1, 0
	for i := range n {
		for at < len(line) && (line[at] == ' ' || line[at] == '\t') {
			at++
			column++
		}
		start := at
		cells[i].column = column
		for at < len(line) && line[at] != ',' {
			if utf8.RuneStart(line[at]) {
				column++
			}
			at++
		}
		cells[i].text = strings.TrimSpace(line[start:at])
		at++
		column++
	}
	return s.keep(n)
}

// splitQuoted cuts a line with quotation marks. One reader serves all lines, so
// that not every line needs its buffers.
func (s *splitter) splitQuoted(line string, lazy bool) ([]cell, error) {
	if s.quoted == nil {
		s.line = bufio.NewReader(nil)
		s.quoted = csv.NewReader(s.line) // takes the buffer as it is
		s.quoted.TrimLeadingSpace, s.quoted.ReuseRecord, s.quoted.FieldsPerRecord = true, true, -1
	}
	s.line.Reset(strings.NewReader(line))
	s.quoted.LazyQuotes = lazy
	fields, err := s.quoted.Read()
	if err != nil {
		return nil, err
	}
	cells := s.room(len(fields))
	// Columns rise, so each is counted on from the one before: a line may hold
	// thousands of cells.
	from, column := 0, 1
	for i, f := range fields {
		_, at := s.quoted.FieldPos(i)
		to := min(max(at-1, from), len(line))
		column += utf8.RuneCountInString(line[from:to])
		from, cells[i] = to, cell{strings.TrimSpace(f), column}
	}
	return s.keep(len(fields)), nil
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

// runeColumn turns a byte column into the character column that editors show.
func runeColumn(line string, column int) int {
	return utf8.RuneCountInString(line[:min(max(column-1, 0), len(line))]) + 1
}
