// Package table describes a table once: each column says what it is called for
// people, what for programs, and where its value comes from. Text for a
// terminal, Markdown, CSV, HTML and JSON are made from that description.
//
// In reading order: table.go has the finished table, column.go the columns to
// build it from, units.go how quantities are printed, text.go with grid.go and
// markup.go the writers; JSON is in table.go.
package table

import (
	"bytes"
	"encoding/json"
	"slices"
)

// Table is a finished table. Rows hold one cell a column.
type Table struct {
	// Name is a short word without blanks, by which a user asks for the table.
	Name string
	// Title stands above the table; it may be empty.
	Title string
	// Tick asks a page for a box to tick beside each row, Room for an empty last
	// column under that heading, to write in.
	Tick  bool
	Room  string
	heads []head
	rows  [][]cell
	foot  []string
	notes []string
}

// head is what one column is called: text for people, empty where the column
// is for programs only; keys for programs, none where it is for people only.
type head struct {
	text  string
	key   string
	right bool
	keys  []string
	parts []string // headings of the CSV columns, one a value
}

// cell is one column of one row. Values are as many as the head's keys.
type cell struct {
	text   string
	parts  []string // texts of the CSV columns
	values []any    // nil: not known
}

// unknown stands where there is no value.
const unknown = "–"

// Of builds a table of rows.
func Of[T any](name, title string, rows []T, columns ...Column[T]) *Table {
	t := &Table{Name: name, Title: title}
	columns = slices.DeleteFunc(slices.Clone(columns), func(c Column[T]) bool { return c.off })
	for _, c := range columns {
		t.heads = append(t.heads, c.head)
	}
	for _, row := range rows {
		cells := make([]cell, len(columns))
		for i, c := range columns {
			cells[i] = c.at(row)
		}
		t.rows = append(t.rows, cells)
	}
	return t
}

// Total sets a row of totals below the table: texts by the key of the column,
// without its unit.
func (t *Table) Total(texts map[string]string) *Table {
	t.foot = make([]string, len(t.heads))
	for i, h := range t.heads {
		t.foot[i] = texts[h.key]
	}
	return t
}

// Note adds notes that stand below the table, a line each; empty ones are left
// out.
func (t *Table) Note(notes ...string) *Table {
	for _, n := range notes {
		if n != "" {
			t.notes = append(t.notes, n)
		}
	}
	return t
}

// Len is the number of rows.
func (t *Table) Len() int { return len(t.rows) }

// Notes gives the notes below the table.
func (t *Table) Notes() []string { return t.notes }

// headed gives the places of the columns that have a heading.
func (t *Table) headed() []int {
	var out []int
	for i, h := range t.heads {
		if h.text != "" {
			out = append(out, i)
		}
	}
	return out
}

// shown gives the places of the columns that people see: those with a heading that
// are known in any row.
func (t *Table) shown() []int {
	return slices.DeleteFunc(t.headed(), func(i int) bool {
		return len(t.rows) > 0 && !slices.ContainsFunc(t.rows, func(row []cell) bool { return row[i].text != unknown })
	})
}

// Map gives a copy with f applied to every text that people see.
func (t *Table) Map(f func(string) string) *Table {
	all := func(in []string) []string {
		out := slices.Clone(in)
		for i := range out {
			out[i] = f(out[i])
		}
		return out
	}
	out := *t
	out.Title, out.foot, out.notes = f(t.Title), all(t.foot), all(t.notes)
	out.heads, out.rows = slices.Clone(t.heads), make([][]cell, len(t.rows))
	for i, h := range out.heads {
		out.heads[i].text, out.heads[i].parts = f(h.text), all(h.parts)
	}
	for i, row := range t.rows {
		out.rows[i] = slices.Clone(row)
		for k, c := range row {
			out.rows[i][k].text, out.rows[i][k].parts = f(c.text), all(c.parts)
		}
	}
	return &out
}

// MarshalJSON gives a list of objects, one a row, with the columns' keys in
// their order. What is not known is null.
func (t *Table) MarshalJSON() ([]byte, error) {
	var b bytes.Buffer
	b.WriteByte('[')
	for i, row := range t.rows {
		if i > 0 {
			b.WriteByte(',')
		}
		if err := t.object(&b, row); err != nil {
			return nil, err
		}
	}
	b.WriteByte(']')
	return b.Bytes(), nil
}

func (t *Table) object(b *bytes.Buffer, row []cell) error {
	comma := ""
	b.WriteByte('{')
	for i, h := range t.heads {
		for k, key := range h.keys {
			value, err := json.Marshal(row[i].values[k])
			if err != nil {
				return err
			}
			b.WriteString(comma + `"` + key + `":`)
			b.Write(value)
			comma = ","
		}
	}
	b.WriteByte('}')
	return nil
}
