package show

import (
	"bytes"
	"strings"
)

// leastWidth is the narrowest line that the table format is written for.
const leastWidth = 20

// text writes blocks as lines for a terminal.
type text struct {
	out    *bytes.Buffer
	limit  int
	ascii  bool
	colour bool
}

func writeText(b *bytes.Buffer, r *Report, o Options) error {
	t := text{out: b, limit: o.Width, ascii: o.ASCII, colour: o.Color}
	if t.limit > 0 {
		t.limit = max(t.limit, leastWidth)
	}
	if r.Title != "" {
		t.underlined(r.Title, "=")
	}
	for _, block := range r.Blocks {
		if err := t.block(block); err != nil {
			return err
		}
	}
	return nil
}

func (t text) block(b Block) error {
	switch b := b.(type) {
	case Heading:
		t.gap()
		t.underlined(b.Text, "-")
	case Para:
		t.gap()
		t.lines(wrap(b.Text, t.limit)...)
	case Bullets:
		t.gap()
		t.items("- ", plainStyle, b.Items)
	case Cautions:
		t.gap()
		t.items("! ", cautionStyle, b.Items)
	case *Table:
		return t.table(b)
	}
	return nil
}

// gap sets a block apart from what stands before it.
func (t text) gap() {
	if t.out.Len() > 0 {
		t.out.WriteByte('\n')
	}
}

func (t text) lines(lines ...string) {
	for _, l := range lines {
		t.out.WriteString(strings.TrimRight(l, " "))
		t.out.WriteByte('\n')
	}
}

func (t text) underlined(s, rule string) {
	widest := 0
	for _, l := range wrap(s, t.limit) {
		t.lines(t.paint(boldStyle, l))
		widest = max(widest, cells(l))
	}
	t.lines(strings.Repeat(rule, widest))
}

// items writes points with a mark and hanging lines.
func (t text) items(mark string, s style, items []string) {
	room := 0
	if t.limit > 0 {
		room = t.limit - len(mark)
	}
	for _, item := range items {
		for i, l := range wrap(item, room) {
			if i == 0 {
				t.lines(t.paint(s, mark) + l)
				continue
			}
			t.lines(strings.Repeat(" ", len(mark)) + l)
		}
	}
}

// table writes the caption, the parts and the notes.
func (t text) table(tb *Table) error {
	if len(tb.Columns) == 0 {
		return nil
	}
	t.gap()
	if tb.Caption != "" {
		for _, l := range wrap(tb.Caption, t.limit) {
			t.lines(t.paint(boldStyle, l))
		}
	}
	for i, p := range fit(tb, t.limit) {
		if i > 0 {
			t.continued(tb)
		}
		grid(t.out, tb, p, t.ascii)
	}
	if len(tb.Rows) == 0 {
		t.lines(noRows)
	}
	if len(tb.Notes) > 0 {
		t.gap()
	}
	for _, n := range tb.Notes {
		t.lines(wrap(n, t.limit)...)
	}
	return nil
}

// noRows stands where a table has no rows, so that none looks forgotten.
const noRows = "(none)"

// continued heads a later part of a table with its caption, or with its name
// made one.
func (t text) continued(tb *Table) {
	what := tb.Caption
	if what == "" && tb.Name != "" {
		what = strings.ToUpper(tb.Name[:1]) + strings.ReplaceAll(tb.Name[1:], "-", " ")
	}
	t.gap()
	for _, l := range wrap(what+" (continued)", t.limit) {
		t.lines(t.paint(boldStyle, l))
	}
}

// style is a way to paint text on a terminal with colour.
type style string

const (
	plainStyle   style = ""
	boldStyle    style = "\x1b[1m"
	cautionStyle style = "\x1b[1;33m"
)

func (t text) paint(s style, text string) string {
	if !t.colour || s == plainStyle || text == "" {
		return text
	}
	return string(s) + text + "\x1b[0m"
}
