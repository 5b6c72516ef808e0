package show

import (
	"bytes"
	"fmt"
	"strings"
	"sync"
)

// writeMarkdown writes the report as GitHub-flavoured Markdown, table columns
// padded so that the source reads well too. Drawings are left out.
func writeMarkdown(b *bytes.Buffer, r *Report) {
	if r.Title != "" {
		fmt.Fprintf(b, "# %s\n", escapeMD(r.Title))
	}
	for i, block := range r.Blocks {
		var lines []string
		switch block := block.(type) {
		case Heading:
			lines = []string{"## " + escapeMD(block.Text)}
		case Para:
			lines = []string{paragraphMD(block.Text)}
		case Bullets:
			lines = listMD("- ", block.Items)
		case Cautions:
			lines = cautionsMD(block, r.headed(i))
		case *Table:
			lines = tableMD(block)
		}
		if len(lines) > 0 && b.Len() > 0 {
			b.WriteByte('\n')
		}
		for _, l := range lines {
			b.WriteString(l + "\n")
		}
	}
}

// cautionsMD gives a quotation, with a heading of its own unless one stands
// above it.
func cautionsMD(c Cautions, headed bool) []string {
	lines := listMD("> - ", c.Items)
	if headed {
		return lines
	}
	return append([]string{"> **Cautions**", ">"}, lines...)
}

func listMD(mark string, items []string) []string {
	lines := make([]string, len(items))
	for i, item := range items {
		lines[i] = mark + paragraphMD(item)
	}
	return lines
}

func tableMD(t *Table) []string {
	if len(t.Columns) == 0 {
		return nil
	}
	var lines []string
	if t.Caption != "" {
		lines = append(lines, "**"+escapeMD(t.Caption)+"**", "")
	}
	lines = append(lines, rowsMD(t)...)
	if len(t.Rows) == 0 {
		lines = append(lines, "", noRows)
	}
	if len(t.Notes) > 0 { // another mark than a list that may follow
		lines = append(append(lines, ""), listMD("* ", t.Notes)...)
	}
	return lines
}

// rowsMD gives the head, the line of alignments, the rows, and the totals in
// bold.
func rowsMD(t *Table) []string {
	rows := [][]string{make([]string, len(t.Columns))}
	for i, c := range t.Columns {
		rows[0][i] = escapeMD(c.Head)
	}
	for _, r := range t.Rows {
		rows = append(rows, mapAll(r, escapeMD))
	}
	if t.Foot != nil {
		rows = append(rows, mapAll(t.Foot, boldMD))
	}
	widths := make([]int, len(t.Columns))
	for _, r := range rows {
		for i, c := range r {
			widths[i] = max(widths[i], cells(c), 3)
		}
	}
	lines := []string{lineMD(t, rows[0], widths), rulesMD(t, widths)}
	for _, r := range rows[1:] {
		lines = append(lines, lineMD(t, r, widths))
	}
	return lines
}

func boldMD(s string) string {
	if s == "" {
		return ""
	}
	return "**" + escapeMD(s) + "**"
}

func lineMD(t *Table, row []string, widths []int) string {
	var b strings.Builder
	for i, c := range row {
		pad := strings.Repeat(" ", widths[i]-cells(c))
		if t.Columns[i].Align == Right {
			b.WriteString("| " + pad + c + " ")
			continue
		}
		b.WriteString("| " + c + pad + " ")
	}
	return b.String() + "|"
}

func rulesMD(t *Table, widths []int) string {
	var b strings.Builder
	for i, w := range widths {
		if t.Columns[i].Align == Right {
			b.WriteString("| " + strings.Repeat("-", w-1) + ": ")
			continue
		}
		b.WriteString("| " + strings.Repeat("-", w) + " ")
	}
	return b.String() + "|"
}

// marksMD puts a backslash before the marks of emphasis, code, links, tags,
// entities, formulas and cells.
var marksMD = sync.OnceValue(func() *strings.Replacer {
	return strings.NewReplacer(`\`, `\\`, "`", "\\`", `*`, `\*`, `_`, `\_`, `[`, `\[`, `]`, `\]`,
		`<`, `\<`, `&`, `\&`, `|`, `\|`, `~`, `\~`, `$`, `\$`)
})

// escapeMD lets text mean itself within a line.
func escapeMD(s string) string { return marksMD().Replace(soften(s)) }

// paragraphMD also escapes what would open a heading, a quotation, a rule or
// a list at the start of a line.
func paragraphMD(s string) string {
	s = escapeMD(s)
	mark := strings.TrimLeft(s, "0123456789")
	if mark == "" {
		return s
	}
	number := len(s) - len(mark)
	opens := "#>+-="
	if number > 0 {
		opens = ".)"
	}
	next := strings.TrimPrefix(mark, mark[:1])
	if strings.Contains(opens, mark[:1]) && (next == "" || next[0] == ' ' || next[0] == mark[0]) {
		return s[:number] + `\` + mark
	}
	return s
}
