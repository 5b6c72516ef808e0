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
			if beside := beside(block.Tables, width, o.ASCII); beside != "" {
				b.WriteString(beside)
				break
			}
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

// beside sets two tables without notes side by side, under their titles; "" where
// the width does not hold both.
func beside(tables []*table.Table, width int, ascii bool) string {
	if len(tables) != 2 || len(tables[0].Notes())+len(tables[1].Notes()) > 0 {
		return ""
	}
	const gap = 4
	var columns [2][]string
	for i, t := range tables {
		columns[i] = strings.Split(t.Title+"\n"+t.Text(max(0, width-gap)/2, ascii), "\n")
	}
	left, right, first := columns[0], columns[1], 0
	for _, l := range left {
		first = max(first, twwidth.Width(l))
	}
	var b strings.Builder
	for i := range max(len(left), len(right)) - 1 { // the last is empty
		var l, r string
		if i < len(left) {
			l = left[i]
		}
		if i < len(right) {
			r = right[i]
		}
		line := strings.TrimRight(l+strings.Repeat(" ", first+gap-twwidth.Width(l))+r, " ")
		if width > 0 && twwidth.Width(line) > width {
			return ""
		}
		b.WriteString(line + "\n")
	}
	return b.String()
}
