package csvtable

import (
	"encoding/csv"
	"fmt"
	"maps"
	"slices"
	"strings"
	"unicode/utf8"

	"scalepair/data/fault"
)

// Sheet is a table as it is written, for a page that shows its cells and changes
// them: what is not changed keeps every byte.
type Sheet struct {
	lines []string // with their ends
	head  int      // index of the heading row; -1 where there is none yet
	names []string // its headings, folded: "outer_mm"
}

// SheetRow is one row as written; cells stand under their headings.
type SheetRow struct {
	Line  int               `json:"line"`
	Cells map[string]string `json:"cells"`
}

// OpenSheet reads a text, whatever is wrong with it.
func OpenSheet(text string) *Sheet {
	s := &Sheet{lines: slices.Collect(strings.Lines(text)), head: -1}
	for i := range s.lines {
		if cells, _ := s.cells(i); cells != nil {
			s.head = i
			for _, c := range cells {
				s.names = append(s.names, fold(c))
			}
			break
		}
	}
	return s
}

// Text gives the text back.
func (s *Sheet) Text() string { return strings.Join(s.lines, "") }

// Names are the headings, as the cells of rows stand under them.
func (s *Sheet) Names() []string { return s.names }

// Rows gives the rows below the heading row, without remarks and empty lines.
func (s *Sheet) Rows() []SheetRow {
	out := []SheetRow{}
	for i := s.head + 1; i < len(s.lines); i++ {
		cells, _ := s.cells(i)
		if cells == nil {
			continue
		}
		row := SheetRow{i + 1, map[string]string{}}
		for k, c := range cells {
			if k < len(s.names) {
				row.Cells[s.names[k]] = c
			}
		}
		out = append(out, row)
	}
	return out
}

// cells gives the cells of a line, and the column of each in characters from 1;
// none of a remark or an empty line.
func (s *Sheet) cells(i int) (cells []string, at []int) {
	line := strings.TrimPrefix(strings.TrimRight(s.lines[i], "\r\n"), "\ufeff")
	if strings.Trim(line, ", \t") == "" || strings.HasPrefix(strings.TrimSpace(line), "#") {
		return nil, nil
	}
	r := csv.NewReader(strings.NewReader(line))
	r.LazyQuotes, r.TrimLeadingSpace, r.FieldsPerRecord = true, true, -1
	cells, err := r.Read()
	if err != nil {
		return []string{line}, []int{1}
	}
	for k := range cells {
		_, column := r.FieldPos(k)
		cells[k], at = bare(strings.TrimSpace(cells[k])), append(at, 1+utf8.RuneCountInString(line[:min(column-1, len(line))]))
	}
	return cells, at
}

// ColumnAt gives the heading of the column that a place of the text stands in, ""
// for none.
func ColumnAt(text string, place fault.Place) string {
	s := OpenSheet(text)
	if place.Column == 0 || place.Line > len(s.lines) {
		return ""
	}
	_, at := s.cells(place.Line - 1)
	for k := len(at) - 1; k >= 0; k-- {
		if at[k] <= place.Column && k < len(s.names) {
			return s.names[k]
		}
	}
	return ""
}

// Set changes one cell. A column that the heading row lacks is added to it.
func (s *Sheet) Set(line int, column, text string) error {
	if s.head < 0 || line <= s.head+1 || line > len(s.lines) {
		return fault.Fault{What: "there is no such row", Given: fmt.Sprint(line)}
	}
	s.addColumns(column)
	cells, _ := s.cells(line - 1)
	s.put(line-1, cells, map[string]string{column: text})
	return nil
}

// Remove takes a line away.
func (s *Sheet) Remove(line int) {
	if s.head >= 0 && line > s.head+1 && line <= len(s.lines) {
		s.lines[line-1] = ""
	}
}

// Add adds a row at the end.
func (s *Sheet) Add(cells map[string]string) {
	s.addColumns(slices.Sorted(maps.Keys(cells))...)
	if last := &s.lines[len(s.lines)-1]; !strings.HasSuffix(*last, "\n") {
		*last += "\n"
	}
	s.lines = append(s.lines, s.lines[s.head]) // for its line end
	s.put(len(s.lines)-1, nil, cells)
}

// put writes a line with some of its cells changed.
func (s *Sheet) put(i int, cells []string, change map[string]string) {
	cells = append(cells, make([]string, max(0, len(s.names)-len(cells)))...)
	for name, text := range change {
		cells[slices.Index(s.names, name)] = text
	}
	s.lines[i] = written(cells, s.lines[i])
}

// addColumns adds the headings that the heading row lacks, and one where there is
// none.
func (s *Sheet) addColumns(names ...string) {
	if s.head < 0 {
		s.head, s.lines = 0, slices.Insert(s.lines, 0, "\n")
	}
	cells, _ := s.cells(s.head)
	for _, name := range names {
		if !slices.Contains(s.names, name) {
			s.names, cells = append(s.names, name), append(cells, name)
		}
	}
	s.lines[s.head] = written(cells, s.lines[s.head])
}

// written writes cells as a line with the end of another.
func written(cells []string, was string) string {
	quoted := make([]string, len(cells))
	for i, c := range cells {
		c = Guarded(strings.Join(strings.Fields(c), " "))
		if strings.Contains(c, ",") || strings.HasPrefix(c, `"`) || i == 0 && strings.HasPrefix(c, "#") {
			c = `"` + strings.ReplaceAll(c, `"`, `""`) + `"`
		}
		quoted[i] = c
	}
	end := "\n"
	if strings.HasSuffix(was, "\r\n") {
		end = "\r\n"
	}
	return strings.Join(quoted, ",") + end
}
