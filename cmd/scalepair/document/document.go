// Package document holds what a command has to say, in reading order, and
// writes it as text for a terminal, Markdown, CSV or a page of HTML.
//
// In reading order: document.go has the document, write.go the formats, text.go
// and html.go the writers that need more than a few lines, clean.go what makes
// foreign text fit to print, page.html and style.css the page.
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

// Block is a Heading, Paragraph, List, Checklist, Cautions, Figure, Break or
// *table.Table.
type Block any

// Heading opens a section (Level 2) or a part of one (Level 3).
type Heading struct {
	Level int
	Text  string
}

// Paragraph is wrapped by the writers.
type Paragraph struct{ Text string }

// List is a list of short points.
type List struct{ Items []string }

// Checklist is a list of steps to tick.
type Checklist struct{ Items []string }

// Cautions are points that must not be overlooked.
type Cautions struct{ Items []string }

// Figure is a drawing: one complete svg element. Only the page shows it; other
// formats print nothing. Alt says what it shows to those who cannot see it.
type Figure struct {
	Caption, Alt, SVG string
}

// Break begins a new sheet of paper.
type Break struct{}

// Heading adds a section's heading, formatted as by fmt.Sprintf.
func (d *Document) Heading(format string, args ...any) {
	d.Add(Heading{2, fmt.Sprintf(format, args...)})
}

// Subheading adds the heading of a part of a section.
func (d *Document) Subheading(format string, args ...any) {
	d.Add(Heading{3, fmt.Sprintf(format, args...)})
}

// Para adds a paragraph, formatted as by fmt.Sprintf; an empty one is left out.
func (d *Document) Para(format string, args ...any) {
	if text := fmt.Sprintf(format, args...); text != "" {
		d.Add(Paragraph{text})
	}
}

// List adds a list of points; without items it adds nothing.
func (d *Document) List(items ...string) {
	if len(items) > 0 {
		d.Add(List{items})
	}
}

// Checklist adds steps to tick; without items it adds nothing.
func (d *Document) Checklist(items ...string) {
	if len(items) > 0 {
		d.Add(Checklist{items})
	}
}

// Cautions adds cautions; without items it adds nothing.
func (d *Document) Cautions(items ...string) {
	if len(items) > 0 {
		d.Add(Cautions{items})
	}
}

// Table adds a table; a nil one is left out.
func (d *Document) Table(t *table.Table) {
	if t != nil {
		d.Add(t)
	}
}

// Add adds blocks as they are.
func (d *Document) Add(blocks ...Block) { d.Blocks = append(d.Blocks, blocks...) }

// Append adds another document's blocks under its title as a heading, and its
// headings one level below.
func (d *Document) Append(other *Document) {
	d.Heading("%s", other.Title)
	for _, b := range other.Blocks {
		if h, ok := b.(Heading); ok {
			b = Heading{3, h.Text}
		}
		d.Add(b)
	}
}

// tables gives the tables in reading order.
func (d *Document) tables() []*table.Table {
	var out []*table.Table
	for _, b := range d.Blocks {
		if t, ok := b.(*table.Table); ok {
			out = append(out, t)
		}
	}
	return out
}

// mapText gives a copy with f applied to every text that people see.
func (d *Document) mapText(f func(string) string) *Document {
	all := func(in []string) []string {
		out := make([]string, len(in))
		for i, s := range in {
			out[i] = f(s)
		}
		return out
	}
	out := &Document{Title: f(d.Title)}
	for _, b := range d.Blocks {
		switch b := b.(type) {
		case Heading:
			out.Add(Heading{b.Level, f(b.Text)})
		case Paragraph:
			out.Add(Paragraph{f(b.Text)})
		case List:
			out.Add(List{all(b.Items)})
		case Checklist:
			out.Add(Checklist{all(b.Items)})
		case Cautions:
			out.Add(Cautions{all(b.Items)})
		case Figure:
			out.Add(Figure{f(b.Caption), f(b.Alt), b.SVG})
		case *table.Table:
			out.Add(b.Map(f))
		default:
			out.Add(b)
		}
	}
	return out
}
