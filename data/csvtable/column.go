package csvtable

import (
	"fmt"
	"slices"
	"strings"
	"unicode"

	"scalepair/data/suggest"
)

// Column is a column that a table may have.
//
// Name is the heading, in lower case with underscores. Units lists the suffixes
// that the heading may carry: Name "outer" with Units {"mm", "in"} reads the
// headings "outer", "outer_mm" and "outer_in". With Required the column must be
// there, and no row may leave it empty.
type Column struct {
	Name     string
	Required bool
	Units    []string
}

// headings adds every spelling of the heading with the unit it stands for.
func (c Column) headings(to []heading) []heading {
	to = append(to, heading{c.Name, ""})
	for _, u := range c.Units {
		to = append(to, heading{c.Name, u})
	}
	return to
}

// heading is one spelling of a column's heading: its name, or name and unit.
type heading struct{ name, unit string }

func (h heading) text() string {
	if h.unit == "" {
		return h.name
	}
	return h.name + "_" + h.unit
}

// is tells whether a folded cell is the heading.
func (h heading) is(folded string) bool {
	if h.unit == "" {
		return folded == h.name
	}
	n := len(h.name)
	return len(folded) == n+1+len(h.unit) && folded[:n] == h.name && folded[n] == '_' && folded[n+1:] == h.unit
}

// fold makes "Outer (mm)", "outer mm" and "OUTER_MM" the same heading.
func fold(s string) string {
	if folded(s) {
		return s
	}
	words := strings.FieldsFunc(strings.ToLower(s), func(r rune) bool {
		return strings.ContainsRune("()[]-_", r) || unicode.IsSpace(r)
	})
	return strings.Join(words, "_")
}

// folded tells whether a heading is written as fold would write it.
func folded(s string) bool {
	before := byte('_')
	for i := range len(s) {
		c := s[i]
		if (c < 'a' || c > 'z') && (c < '0' || c > '9') && (c != '_' || before == '_') {
			return false
		}
		before = c
	}
	return before != '_'
}

// head is what the heading row says: for every column of the file its name and
// unit (name "" where no heading stands).
type head struct {
	file  string
	line  int
	cells []heading
	// refused marks columns whose heading is a fault already; measured those,
	// and the ones whose heading may carry a unit.
	refused, measured []bool
}

// find gives the cell in which a name stands, -1 where it does not. Names are
// compared in turn, which for the columns that files have is as fast as a map.
func (h *head) find(name string) int {
	return slices.IndexFunc(h.cells, func(c heading) bool { return c.name == name && name != "" })
}

// headingsOf gives every heading that the columns may have.
func headingsOf(columns []Column) []heading {
	n := 0
	for _, c := range columns {
		n += 1 + len(c.Units)
	}
	out := make([]heading, 0, n)
	for _, c := range columns {
		out = c.headings(out)
	}
	return out
}

// named gives one heading of each column, with its first unit.
func named(columns []Column) []string {
	out := make([]string, len(columns))
	for i, c := range columns {
		out[i] = c.Name
		if len(c.Units) > 1 || len(c.Units) == 1 && c.Units[0] != "hz" {
			out[i] += "_" + c.Units[0]
		}
	}
	return out
}

// readHead matches a heading row with the columns that the table may have.
func (t *table) readHead(line int, cells []cell) *head {
	h := &head{file: t.file, line: line, cells: make([]heading, 0, len(cells)),
		refused: make([]bool, len(cells)), measured: make([]bool, len(cells))}
	var meant []string // columns that a misspelt heading stands for
	for i, c := range cells {
		h.cells = append(h.cells, t.match(h, i, c, &meant))
	}
	for _, c := range t.columns {
		if i := h.find(c.Name); i >= 0 {
			h.measured[i] = len(c.Units) > 0
		} else if c.Required && !slices.Contains(meant, c.Name) {
			t.faults.Add(t.place(line, 0), fmt.Sprintf("the column %q is missing", c.Name), "",
				"add it to the heading row as "+spellings(c))
		}
	}
	return h
}

// match finds the heading that a cell of the heading row is.
func (t *table) match(h *head, i int, c cell, meant *[]string) heading {
	text := fold(c.text)
	if text == "" {
		return heading{}
	}
	refuse := func(what, remedy string) heading {
		t.faults.Add(t.place(h.line, c.column), what, c.text, remedy)
		h.refused[i], h.measured[i] = true, true
		return heading{}
	}
	k := slices.IndexFunc(t.known, func(k heading) bool { return k.is(text) })
	if k < 0 {
		remedy, column := suggestion(text, t.columns, t.known)
		*meant = append(*meant, column)
		return refuse("no column of this table", remedy)
	}
	if h.find(t.known[k].name) >= 0 {
		return refuse(fmt.Sprintf("the column %q stands here twice", t.known[k].name), "keep one of them")
	}
	return t.known[k]
}

// suggestion says what an unknown heading may have meant, and gives the column
// that it names then, "" for none.
func suggestion(text string, columns []Column, known []heading) (remedy, column string) {
	words := make([]string, len(known))
	for i, k := range known {
		words[i] = k.text()
	}
	if best := suggest.Nearest(text, words); best != "" {
		return fmt.Sprintf("did you mean %q?", best), known[slices.Index(words, best)].name
	}
	return "the columns are " + strings.Join(named(columns), ", "), ""
}

func spellings(c Column) string {
	words := []string{}
	for _, h := range c.headings(nil) {
		words = append(words, fmt.Sprintf("%q", h.text()))
	}
	return strings.Join(words, " or ")
}
