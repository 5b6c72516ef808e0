// Package show holds the plain report that every command fills, and writes it
// as text for a terminal, Markdown, CSV or a page of HTML.
//
// A report is a title and blocks in reading order: headings, paragraphs,
// bullets, cautions, tables and figures. Cells are finished text; Units
// formats numbers for them. Writers never drop a column: a table too wide for
// the terminal gets headings of several lines, then is printed in parts that
// repeat the first column.
package show

import (
	"fmt"
	"slices"
)

// Report is what one command has to say, in reading order.
type Report struct {
	Title  string
	Blocks []Block
}

// Block is a Heading, Para, Bullets, Cautions, Figure or *Table.
type Block interface{ block() }

// Heading opens a section.
type Heading struct{ Text string }

// Para is one paragraph; writers wrap it.
type Para struct{ Text string }

// Bullets is a list of short points.
type Bullets struct{ Items []string }

// Cautions are points that must not be overlooked; every writer sets them
// apart. Markdown and HTML head them "Cautions" unless a Heading stands right
// before.
type Cautions struct{ Items []string }

// Figure is a drawing. SVG is one complete svg element, as package chart
// writes it. Only the HTML page shows it; other formats leave it out.
type Figure struct{ Caption, SVG string }

// Table is one table of finished text. Rows and Foot hold one cell a column;
// missing cells are empty.
type Table struct {
	// Name is a short word without blanks, for choosing the table ("strings").
	Name string
	// Caption stands above the table; may be empty.
	Caption string
	Columns []Column
	Rows    [][]string
	// Foot is a totals row under a rule; nil for none.
	Foot []string
	// Notes stand below the table, one a line.
	Notes []string
}

// Align says on which side of a column its cells stand.
type Align int

// The sides. Words stand left, figures right.
const (
	Left Align = iota
	Right
)

// Column is the head of one column. Priority 0 keeps it in the first part of
// a table that is too wide for the terminal; of the others the highest number
// is the first to move to a later part.
type Column struct {
	Head     string
	Align    Align
	Priority int
}

// Words gives a left-aligned column that stays in the first part.
func Words(head string) Column { return Column{Head: head} }

// Figures gives a right-aligned column that stays in the first part.
func Figures(head string) Column { return Column{Head: head, Align: Right} }

// Later gives the column with another priority.
func (c Column) Later(priority int) Column {
	c.Priority = priority
	return c
}

func (Heading) block()  {}
func (Para) block()     {}
func (Bullets) block()  {}
func (Cautions) block() {}
func (Figure) block()   {}
func (*Table) block()   {}

// Heading adds a section heading, formatted as by fmt.Sprintf.
func (r *Report) Heading(format string, args ...any) {
	r.Blocks = append(r.Blocks, Heading{fmt.Sprintf(format, args...)})
}

// Para adds a paragraph, formatted as by fmt.Sprintf.
func (r *Report) Para(format string, args ...any) {
	r.Text(fmt.Sprintf(format, args...))
}

// Text adds a paragraph as it stands.
func (r *Report) Text(text string) { r.Blocks = append(r.Blocks, Para{text}) }

// Bullets adds a list; without items it adds nothing.
func (r *Report) Bullets(items ...string) {
	if len(items) > 0 {
		r.Blocks = append(r.Blocks, Bullets{items})
	}
}

// Cautions adds cautions; without items it adds nothing.
func (r *Report) Cautions(items ...string) {
	if len(items) > 0 {
		r.Blocks = append(r.Blocks, Cautions{items})
	}
}

// Figure adds a drawing; see the type.
func (r *Report) Figure(caption, svg string) {
	r.Blocks = append(r.Blocks, Figure{caption, svg})
}

// Table adds an empty table and gives it, to be filled row by row.
func (r *Report) Table(name, caption string, columns ...Column) *Table {
	t := &Table{Name: name, Caption: caption, Columns: columns}
	r.Blocks = append(r.Blocks, t)
	return t
}

// Row adds one row. It panics on more cells than columns.
func (t *Table) Row(cells ...string) { t.Rows = append(t.Rows, slices.Clone(t.fill(cells))) }

// Total sets the totals row. It panics on more cells than columns.
func (t *Table) Total(cells ...string) { t.Foot = slices.Clone(t.fill(cells)) }

// Note adds a note below the table, formatted as by fmt.Sprintf.
func (t *Table) Note(format string, args ...any) {
	t.Notes = append(t.Notes, fmt.Sprintf(format, args...))
}

// fill gives exactly one cell a column: the cells themselves where none lacks.
func (t *Table) fill(cells []string) []string {
	if len(cells) > len(t.Columns) {
		panic(fmt.Sprintf("show: table %q: %d cells for %d columns", t.Name, len(cells), len(t.Columns)))
	}
	if len(cells) == len(t.Columns) {
		return cells
	}
	row := make([]string, len(t.Columns))
	copy(row, cells)
	return row
}
