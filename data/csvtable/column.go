package csvtable

import (
	"fmt"
	"slices"
	"strings"
	"unicode"

	"scalepair/data/fault"
	"scalepair/data/suggest"
)

// Column is a column that a table may have.
//
// Name is the heading, in lower case with underscores. Units lists the suffixes
// that the heading may carry: Name "outer" with Units {"mm", "in"} reads the
// headings "outer", "outer_mm" and "outer_in". With Required the column must be
// there, and no row may leave it empty. Words are likely in its cells, to offer.
type Column struct {
	Name     string
	Required bool
	Units    []string
	Words    []string
}

// heading is a column as the file has it; without a name it is a column that
// the file leaves unnamed, or whose heading is a fault already.
type heading struct {
	name, unit        string
	measured, refused bool // measured: the column may have a unit
}

func (h heading) text() string {
	if h.unit == "" {
		return h.name
	}
	return h.name + "_" + h.unit
}

// headings lists every spelling of a column's heading.
func (c Column) headings() []heading {
	out := []heading{{name: c.Name, measured: len(c.Units) > 0}}
	for _, u := range c.Units {
		out = append(out, heading{name: c.Name, unit: u, measured: true})
	}
	return out
}

// Headings gives one heading for each of some columns: the one that a sheet has, else
// the one in a unit, or in the column's first where it has not that unit.
func (s *Sheet) Headings(columns []Column, unit string) []string {
	var out []string
	for _, c := range columns {
		all := c.headings()
		i := slices.IndexFunc(all, func(h heading) bool { return slices.Contains(s.names, h.text()) })
		if i < 0 {
			i = min(1+max(0, slices.Index(c.Units, unit)), len(c.Units))
		}
		out = append(out, all[i].text())
	}
	return out
}

// headings are those of a new file.
func headings(columns []Column) []string { return new(Sheet).Headings(columns, "") }

// head is the heading row of a file.
type head struct {
	place fault.Place
	cells []heading
}

// find returns the index of a column, -1 where the file does not have it.
func (h *head) find(name string) int {
	return slices.IndexFunc(h.cells, func(c heading) bool { return name != "" && c.name == name })
}

// fold makes "Outer (mm)", "outer mm" and "OUTER_MM" the same heading.
func fold(s string) string {
	words := strings.FieldsFunc(strings.ToLower(s), func(r rune) bool {
		return strings.ContainsRune("()[]-_", r) || unicode.IsSpace(r)
	})
	return strings.Join(words, "_")
}

// takeHead reads the heading row; false ends the reading, since without it no
// row can be read.
func (t *table) takeHead(line fault.Place, cells []cell) bool {
	var known []heading
	var words []string
	names := headings(t.columns)
	for _, c := range t.columns {
		known = append(known, c.headings()...)
	}
	for _, h := range known {
		words = append(words, h.text())
	}
	given := strings.TrimSpace(t.lines[line.Line-1])
	switch {
	case len(cells) == 1 && strings.ContainsAny(given, ";\t|"):
		sign := given[strings.IndexAny(given, ";\t|")]
		t.faults.Add(line, fmt.Sprintf("the columns are separated by %q, not by commas", sign), given, "use commas, and write decimals with a point")
		return false
	case !headingRow(cells, words):
		t.faults.Add(line, "this is no heading row", given, "put # before a remark; the first row names the columns: "+strings.Join(names, ", "))
		return false
	}
	t.head = &head{place: line}
	var meant []string // columns that a misspelt heading stands for
	for _, c := range cells {
		i := slices.Index(words, fold(c.text))
		switch {
		case len(t.faults) >= mostFaults:
			return false
		case c.text == "":
			t.head.cells = append(t.head.cells, heading{})
			continue
		case i >= 0 && t.head.find(known[i].name) < 0:
			t.head.cells = append(t.head.cells, known[i])
			continue
		case i >= 0:
			t.faults.Add(c.place, fmt.Sprintf("the column %q stands here twice", known[i].name), c.text, "keep one of them")
		default:
			remedy := "the columns are " + strings.Join(names, ", ")
			if best := suggest.Nearest(fold(c.text), words); best != "" {
				remedy = fmt.Sprintf("did you mean %q?", best)
				meant = append(meant, known[slices.Index(words, best)].name)
			}
			t.faults.Add(c.place, "no column of this table", c.text, remedy)
		}
		t.head.cells = append(t.head.cells, heading{refused: true})
	}
	for i, c := range t.columns {
		if c.Required && t.head.find(c.Name) < 0 && !slices.Contains(meant, c.Name) {
			t.faults.Add(line, fmt.Sprintf("the column %q is missing", c.Name), "", fmt.Sprintf("add %q to the heading row", names[i]))
		}
	}
	return true
}

// headingRow reports whether a row may be the heading row: a third of its cells
// or more are headings that the table may have, or nearly so (judgement).
func headingRow(cells []cell, words []string) bool {
	like, filled := 0, 0
	for _, c := range cells {
		if c.text != "" {
			filled++
		}
		if text := fold(c.text); len(text) < 60 && slices.ContainsFunc(words, func(w string) bool { return suggest.Distance(text, w) <= len(w)/4 }) {
			like++
		}
	}
	return like*3 >= filled
}
