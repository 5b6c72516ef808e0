package csvtable

import (
	"strings"
	"unicode"
	"unicode/utf8"

	"scalepair/data/fault"
)

// splitter cuts lines into cells.
type splitter struct {
	coming int    // cells of the lines to come, at most
	spare  []cell // room for some of them
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

// split cuts one line into cells: bare ones, and ones between quotation marks,
// in which two of them stand for one (RFC 4180, section 2). A quotation mark
// inside a bare cell is an inch mark and kept; one left open is a fault, with
// the column in its place.
func (s *splitter) split(line string) ([]cell, *fault.Fault) {
	if strings.IndexByte(line, '"') < 0 {
		return s.splitBare(line), nil
	}
	cells, wrong := s.splitQuoted(line, false)
	if wrong.inch {
		cells, wrong = s.splitQuoted(line, true)
	}
	if wrong.open {
		return nil, &fault.Fault{
			Place:  fault.Place{Column: runeColumn(line, openQuote(line, wrong.at+1))},
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

// misquoted says what is wrong with the quotation marks of a line: one inside a
// bare cell, or one at the byte at that is left open.
type misquoted struct {
	inch, open bool
	at         int
}

// splitQuoted cuts a line with quotation marks. With inches, one that neither
// begins nor ends a cell is kept as it is and none is left open.
func (s *splitter) splitQuoted(line string, inches bool) ([]cell, misquoted) {
	cells := s.room(strings.Count(line, ",") + 1)
	column, at := 1, 0
	for n := 0; ; n++ {
		rest := strings.TrimLeftFunc(line[at:], unicode.IsSpace)
		start := len(line) - len(rest)
		column += utf8.RuneCountInString(line[at:start])
		text, end, wrong := cutCell(rest, inches)
		if wrong.inch || wrong.open {
			wrong.at += start
			return nil, wrong
		}
		cells[n] = cell{strings.TrimSpace(text), column}
		if end == len(rest) {
			return s.keep(n + 1), misquoted{}
		}
		column += utf8.RuneCountInString(rest[:end]) + 1
		at = start + end + 1
	}
}

// cutCell cuts the first cell off a line, whose comma, if any, stands at the
// byte end.
func cutCell(line string, inches bool) (text string, end int, wrong misquoted) {
	if strings.HasPrefix(line, `"`) {
		return cutQuoted(line, inches)
	}
	text, _, _ = strings.Cut(line, ",")
	return text, len(text), misquoted{inch: !inches && strings.IndexByte(text, '"') >= 0}
}

// cutQuoted does the same for a cell that begins with a quotation mark.
func cutQuoted(line string, inches bool) (text string, end int, wrong misquoted) {
	var before strings.Builder // the pieces up to a quotation mark that is kept
	for from := 1; ; {
		i := strings.IndexByte(line[from:], '"')
		if i < 0 {
			before.WriteString(line[from:])
			return before.String(), len(line), misquoted{open: !inches, at: len(line)}
		}
		mark := from + i
		switch behind := line[mark+1:]; {
		case behind == "" || behind[0] == ',':
			if before.Len() == 0 { // nearly every cell, without a copy
				return line[from:mark], mark + 1, misquoted{}
			}
			before.WriteString(line[from:mark])
			return before.String(), mark + 1, misquoted{}
		case behind[0] == '"':
			from = mark + 2
		case inches:
			from = mark + 1
		default:
			return "", 0, misquoted{open: true, at: mark}
		}
		before.WriteString(line[mark-i : mark+1])
	}
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
