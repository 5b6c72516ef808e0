//go:build !js

package table

import (
	"bytes"
	"slices"
	"strings"

	"github.com/olekukonko/tablewriter"
	"github.com/olekukonko/tablewriter/renderer"
	"github.com/olekukonko/tablewriter/tw"
)

// Markdown gives the table as GitHub-flavoured Markdown, columns padded so that
// the source reads well too, without title and notes.
func (t *Table) Markdown() string {
	text := t.grid(renderer.NewMarkdown(), tw.Padding{Left: " ", Right: " ", Overwrite: true}, t.shown(), func(_ int, s string) string { return EscapeMarkdown(s) })
	if len(t.rows) == 0 {
		text += "\n" + NoRows + "\n"
	}
	return text
}

// grid writes columns by a renderer; text makes what stands in a column, by its place
// among them, of what is to stand there.
func (t *Table) grid(look tw.Renderer, pad tw.Padding, columns []int, text func(i int, s string) string) string {
	align := make([]tw.Align, len(columns))
	line := func(of func(int) string) []string {
		out := make([]string, len(columns))
		for i, c := range columns {
			out[i] = text(i, of(c))
		}
		return out
	}
	for i, c := range columns {
		align[i] = tw.AlignLeft
		if t.heads[c].right {
			align[i] = tw.AlignRight
		}
	}
	// Texts are kept as they are: units in headings are not to be changed.
	part := tw.CellConfig{
		Formatting: tw.CellFormatting{AutoWrap: tw.WrapNone, AutoFormat: tw.Off},
		Alignment:  tw.CellAlignment{PerColumn: align},
		Padding:    tw.CellPadding{Global: pad},
	}
	var b bytes.Buffer
	out := tablewriter.NewTable(&b, tablewriter.WithRenderer(look),
		tablewriter.WithConfig(tablewriter.Config{Header: part, Row: part, Footer: part, Behavior: tw.Behavior{TrimSpace: tw.Off, TrimLine: tw.Off}}))
	heads := line(func(c int) string { return t.heads[c].text })
	most := 0
	for _, h := range heads {
		most = max(most, strings.Count(h, "\n"))
	}
	for i, h := range heads { // of few lines beside the last lines of the others
		heads[i] = strings.Repeat("\n", most-strings.Count(h, "\n")) + h
	}
	out.Header(heads)
	for _, row := range t.rows {
		// Writing to a buffer cannot fail.
		_ = out.Append(line(func(c int) string { return row[c].text }))
	}
	if t.foot != nil && slices.ContainsFunc(columns[1:], func(c int) bool { return t.foot[c] != "" }) {
		out.Footer(line(func(c int) string { return t.foot[c] }))
	}
	if err := out.Render(); err != nil {
		panic("table: " + err.Error())
	}
	return b.String()
}

// plain writes columns at their widths for a terminal: no frame, a line under the
// headings and over the totals.
func (t *Table) plain(columns, widths []int, ascii bool) string {
	style := tw.StyleLight
	if ascii {
		style = tw.StyleASCII
	}
	look := renderer.NewBlueprint(tw.Rendition{
		Borders: tw.BorderNone,
		Symbols: tw.NewSymbols(style),
		Settings: tw.Settings{
			Separators: tw.Separators{BetweenColumns: tw.Off, BetweenRows: tw.Off, ShowHeader: tw.On, ShowFooter: tw.On},
			Lines:      tw.Lines{ShowTop: tw.Off, ShowBottom: tw.Off, ShowHeaderLine: tw.On, ShowFooterLine: tw.On},
		},
	})
	text := t.grid(look, tw.Padding{Right: strings.Repeat(" ", gap), Overwrite: true}, columns, func(i int, s string) string { return strings.Join(Wrap(s, widths[i]), "\n") })
	lines := strings.Split(strings.TrimRight(text, "\n"), "\n")
	for i, l := range lines {
		if strings.Trim(l, "─-") == "" { // goes on beyond the last column
			l = string([]rune(l)[:len([]rune(l))-gap])
		}
		lines[i] = strings.TrimRight(l, " ")
	}
	return strings.Join(lines, "\n") + "\n"
}
