package show

import (
	"slices"
	"strings"
	"unicode"
	"unicode/utf8"

	"github.com/clipperhouse/displaywidth"
)

// Clean makes text fit for one line of print or of a page: without line ends,
// control characters, invisible ones, and bytes that are no UTF-8. A no-break
// blank stays.
func Clean(s string) string { return clean(s) }

// CleanBlock gives a copy of the block with every text cleaned.
func CleanBlock(b Block) Block { return mapBlock(b, clean) }

const hardBlank = '\u00a0'

// clean makes text fit for one line of print: line ends, tabs and other
// control characters become blanks, invisible format characters (direction
// marks, joiners) go, and runs of blanks become one. A no-break blank stays,
// so that a figure can be held to its unit.
func clean(s string) string {
	if isClean(s) {
		return s
	}
	var b strings.Builder
	blank := false
	for _, r := range s {
		switch {
		case asBlank(r):
			blank = b.Len() > 0
			continue
		case unseen(r):
			continue
		}
		if blank {
			b.WriteByte(' ')
			blank = false
		}
		b.WriteRune(r)
	}
	return b.String()
}

// isClean tells whether clean leaves a text as it is.
func isClean(s string) bool {
	blank := true // as none may stand at the beginning
	for _, r := range s {
		switch {
		case r == ' ' && !blank:
			blank = true
			continue
		case r > ' ' && r <= '~':
		case r == utf8.RuneError || asBlank(r) || unseen(r):
			return false
		}
		blank = false
	}
	return !blank || s == ""
}

// asBlank tells whether a character becomes a blank.
func asBlank(r rune) bool { return r != hardBlank && (unicode.IsSpace(r) || unicode.IsControl(r)) }

// unseen tells whether a character goes; the last two no page may hold.
func unseen(r rune) bool { return unicode.Is(unicode.Cf, r) || r == '\ufffe' || r == '\uffff' }

// cells gives the number of terminal cells that s takes, letter by letter: 2
// for wide letters, 0 for combining marks. Letters of ambiguous width are
// narrow on every machine.
func cells(s string) int {
	n := 0
	for _, r := range s {
		if r >= ' ' && r <= '~' {
			n++
			continue
		}
		n += displaywidth.Rune(r)
	}
	return n
}

// mapText gives a copy of the report with f applied to every text but the
// tables' names and the drawings.
func (r *Report) mapText(f func(string) string) *Report {
	out := &Report{Title: f(r.Title), Blocks: make([]Block, len(r.Blocks))}
	for i, b := range r.Blocks {
		out.Blocks[i] = mapBlock(b, f)
	}
	return out
}

func mapBlock(b Block, f func(string) string) Block {
	switch b := b.(type) {
	case Heading:
		return Heading{f(b.Text)}
	case Para:
		return Para{f(b.Text)}
	case Bullets:
		return Bullets{mapAll(b.Items, f)}
	case Cautions:
		return Cautions{mapAll(b.Items, f)}
	case Figure:
		return Figure{f(b.Caption), b.SVG}
	case *Table:
		return b.mapText(f)
	}
	return b
}

func (t *Table) mapText(f func(string) string) *Table {
	out := &Table{Name: t.Name, Caption: f(t.Caption), Columns: slices.Clone(t.Columns), Rows: make([][]string, len(t.Rows)), Notes: mapAll(t.Notes, f)}
	for i := range out.Columns {
		out.Columns[i].Head = f(out.Columns[i].Head)
	}
	for i, row := range t.Rows {
		out.Rows[i] = mapAll(t.fill(row), f)
	}
	if t.Foot != nil {
		out.Foot = mapAll(t.fill(t.Foot), f)
	}
	return out
}

// mapAll gives in itself where f changes nothing.
func mapAll(in []string, f func(string) string) []string {
	for i, s := range in {
		if f(s) != s {
			out := slices.Clone(in)
			for k := i; k < len(in); k++ {
				out[k] = f(in[k])
			}
			return out
		}
	}
	return in
}

// headed tells whether the i-th block stands right under a heading, which
// then says what it is.
func (r *Report) headed(i int) bool {
	if i == 0 {
		return false
	}
	_, ok := r.Blocks[i-1].(Heading)
	return ok
}
