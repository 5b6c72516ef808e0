package csvtable

import (
	"fmt"
	"slices"
	"strings"
	"unicode"

	"scalepair/data/fault"
	"scalepair/data/near"
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

// headings gives every spelling of the heading with the unit it stands for.
func (c Column) headings() []heading {
	out := []heading{{c.Name, c.Name, ""}}
	for _, u := range c.Units {
		out = append(out, heading{c.Name + "_" + u, c.Name, u})
	}
	return out
}

// heading is one spelling of a column's heading.
type heading struct{ text, name, unit string }

// fold makes "Outer (mm)", "outer mm" and "OUTER_MM" the same heading.
func fold(s string) string {
	words := strings.FieldsFunc(strings.ToLower(s), func(r rune) bool {
		return strings.ContainsRune("()[]-_", r) || unicode.IsSpace(r)
	})
	return strings.Join(words, "_")
}

// head is what the heading row says: for every column of the file its name and
// unit (name "" where no heading stands), and where each name stands.
type head struct {
	line  int
	cells []heading
	at    map[string]int
	// refused marks columns whose heading is a fault already; measured those,
	// and the ones whose heading may carry a unit.
	refused, measured map[int]bool
}

// readHead matches a heading row with the columns that the table may have.
func readHead(line int, cells []cell, columns []Column, place placer, faults *fault.List) head {
	h := head{line: line, at: map[string]int{}, refused: map[int]bool{}, measured: map[int]bool{}}
	var known []heading
	for _, c := range columns {
		known = append(known, c.headings()...)
	}
	for i, c := range cells {
		h.cells = append(h.cells, h.match(i, c, known, place, faults))
	}
	for _, c := range columns {
		if i, ok := h.at[c.Name]; ok {
			h.measured[i] = len(c.Units) > 0
		} else if c.Required {
			faults.Add(place(line, 0), fmt.Sprintf("the column %q is missing", c.Name), "",
				"add it to the heading row as "+spellings(c))
		}
	}
	return h
}

func (h *head) match(i int, c cell, known []heading, place placer, faults *fault.List) heading {
	text := fold(c.text)
	if text == "" {
		return heading{}
	}
	k := slices.IndexFunc(known, func(k heading) bool { return k.text == text })
	if k < 0 {
		faults.Add(place(h.line, c.column), "no column of this table", c.text, suggestion(text, known))
		h.refused[i], h.measured[i] = true, true
		return heading{}
	}
	if _, twice := h.at[known[k].name]; twice {
		faults.Add(place(h.line, c.column), fmt.Sprintf("the column %q stands here twice", known[k].name), c.text, "keep one of them")
		h.refused[i], h.measured[i] = true, true
		return heading{}
	}
	h.at[known[k].name] = i
	return known[k]
}

func suggestion(text string, known []heading) string {
	words := make([]string, len(known))
	for i, k := range known {
		words[i] = k.text
	}
	if best := near.Suggest(text, words); best != "" {
		return fmt.Sprintf("did you mean %q?", best)
	}
	return "the columns are " + strings.Join(words, ", ")
}

func spellings(c Column) string {
	words := []string{}
	for _, h := range c.headings() {
		words = append(words, fmt.Sprintf("%q", h.text))
	}
	return strings.Join(words, " or ")
}
