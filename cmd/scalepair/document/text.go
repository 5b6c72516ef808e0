package document

import (
	"bytes"
	"strings"

	"github.com/olekukonko/tablewriter/pkg/twwidth"

	"scalepair/cmd/scalepair/table"
)

// The colours of a terminal.
const (
	bold    = "\x1b[1m"
	caution = "\x1b[1;33m"
	normal  = "\x1b[0m"
)

// leastWidth is the narrowest line that text is written for.
const leastWidth = 20

// writeText writes lines for a terminal.
func (d *Document) writeText(b *bytes.Buffer, o Options) {
	width := o.Width
	if width > 0 {
		width = max(width, leastWidth)
	}
	paint := func(colour, text string) string {
		if !o.Colour {
			return text
		}
		return colour + text + normal
	}
	lines := func(text, first, rest string) {
		for i, l := range table.Wrap(text, max(0, width-twwidth.Width(rest))) {
			if i == 0 {
				l = first + l
			} else {
				l = rest + l
			}
			b.WriteString(strings.TrimRight(l, " ") + "\n")
		}
	}
	underlined := func(text, rule string) {
		widest := 0
		for _, l := range table.Wrap(text, width) {
			b.WriteString(paint(bold, l) + "\n")
			widest = max(widest, twwidth.Width(l))
		}
		b.WriteString(strings.Repeat(rule, widest) + "\n")
	}
	items := func(first string, list []string) {
		for _, item := range list {
			lines(item, first, strings.Repeat(" ", 2))
		}
	}
	if d.Title != "" {
		underlined(d.Title, "=")
	}
	for _, block := range d.Blocks {
		if block.Kind == Figure || block.Kind == Break {
			continue
		}
		if b.Len() > 0 {
			b.WriteByte('\n')
		}
		switch block.Kind {
		case Heading:
			if block.Level > 2 {
				b.WriteString(paint(bold, block.Text) + "\n")
			} else {
				underlined(block.Text, "-")
			}
		case Paragraph:
			lines(block.Text, "", "")
		case List:
			items("- ", block.Items)
		case Cautions:
			items(paint(caution, "!")+" ", block.Items)
		}
		for i, t := range block.Tables {
			if i > 0 {
				b.WriteByte('\n')
			}
			if t.Title != "" {
				for _, l := range table.Wrap(t.Title, width) {
					b.WriteString(paint(bold, l) + "\n")
				}
			}
			b.WriteString(t.Text(width, o.ASCII))
			if len(t.Notes()) > 0 {
				b.WriteByte('\n')
			}
			for _, n := range t.Notes() {
				lines(n, "", "")
			}
		}
	}
}
