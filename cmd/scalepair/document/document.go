// Package document holds what a command has to say, in reading order, and
// writes it as text for a terminal, Markdown, CSV or a page of HTML.
//
// In reading order: document.go has the document, write.go the formats, text.go
// and html.go the writers that need more than a few lines, clean.go and ascii.go
// what makes foreign text fit to print, style.css the page.
package document

import (
	"fmt"

	"scalepair/cmd/scalepair/table"
)

// Document is a title and blocks in reading order.
type Document struct {
	Title  string
	Blocks []Block
}

// Kind says what a block is.
type Kind string

// The kinds of blocks. A Break begins a new sheet of paper.
const (
	Heading   Kind = "heading"
	Paragraph Kind = "paragraph"
	List      Kind = "list"
	Cautions  Kind = "cautions"
	Figure    Kind = "figure"
	Tables    Kind = "tables"
	Break     Kind = "break"
)

// Block is one part of a document; its kind says which fields it uses.
type Block struct {
	Kind   Kind
	Level  int            // of a Heading: 2 for a section, 3 for a part of one
	Text   string         // of a Heading or a Paragraph; the name of a Figure
	Items  []string       // of a List or of Cautions
	SVG    string         // of a Figure: one svg element, which says itself what it shows; only the page has it
	Tables []*table.Table // one, or several that stand side by side where there is room
}

// Add adds blocks as they are.
func (d *Document) Add(blocks ...Block) { d.Blocks = append(d.Blocks, blocks...) }

// Heading adds a section's heading, formatted as by fmt.Sprintf.
func (d *Document) Heading(format string, args ...any) {
	d.Add(Block{Kind: Heading, Level: 2, Text: fmt.Sprintf(format, args...)})
}

// Para adds a paragraph, formatted as by fmt.Sprintf; an empty one is left out.
func (d *Document) Para(format string, args ...any) {
	if text := fmt.Sprintf(format, args...); text != "" {
		d.Add(Block{Kind: Paragraph, Text: text})
	}
}

// List adds a list of points; without items it adds nothing.
func (d *Document) List(items ...string) { d.items(List, items) }

// Cautions adds points that must not be overlooked; without items it adds nothing.
func (d *Document) Cautions(items ...string) { d.items(Cautions, items) }

func (d *Document) items(kind Kind, items []string) {
	if len(items) > 0 {
		d.Add(Block{Kind: kind, Items: items})
	}
}

// Figure adds a picture under its name, where there is one.
func (d *Document) Figure(name, svg string) {
	if svg != "" {
		d.Add(Block{Kind: Figure, Text: name, SVG: svg})
	}
}

// Table adds tables that belong side by side; nil ones are left out.
func (d *Document) Table(tables ...*table.Table) {
	var out []*table.Table
	for _, t := range tables {
		if t != nil {
			out = append(out, t)
		}
	}
	if out != nil {
		d.Add(Block{Kind: Tables, Tables: out})
	}
}

// Append adds another document's blocks under its title as a heading, and its
// headings one level below.
func (d *Document) Append(other *Document) {
	d.Heading("%s", other.Title)
	for _, b := range other.Blocks {
		b.Level++
		d.Add(b)
	}
}

// tables gives the tables in reading order.
func (d *Document) tables() []*table.Table {
	var out []*table.Table
	for _, b := range d.Blocks {
		out = append(out, b.Tables...)
	}
	return out
}

// mapText gives a copy with f applied to every text that people see.
func (d *Document) mapText(f func(string) string) *Document {
	out := &Document{Title: f(d.Title)}
	for _, b := range d.Blocks {
		b.Text = f(b.Text)
		b.Items = mapped(b.Items, f)
		b.Tables = mapped(b.Tables, func(t *table.Table) *table.Table { return t.Map(f) })
		out.Add(b)
	}
	return out
}

func mapped[T any](in []T, f func(T) T) []T {
	var out []T
	for _, x := range in {
		out = append(out, f(x))
	}
	return out
}
