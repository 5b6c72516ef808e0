package table

import (
	"encoding/csv"
	"html/template"
	"io"
	"strings"

	"github.com/olekukonko/tablewriter/renderer"
	"github.com/olekukonko/tablewriter/tw"

	"scalepair/data/csvtable"
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

var markdownSigns = strings.NewReplacer(`\`, `\\`, "|", `\|`, "*", `\*`, "_", `\_`, "<", `\<`, "`", "\\`", "[", `\[`)

// EscapeMarkdown gives text that Markdown shows as it is.
func EscapeMarkdown(s string) string { return markdownSigns.Replace(s) }

// WriteCSV writes the headings and the rows; an uncertainty stands in a column
// of its own. No label can become a spreadsheet's formula.
func (t *Table) WriteCSV(w io.Writer) error {
	out := csv.NewWriter(w)
	columns := t.shown()
	var heads []string
	for _, c := range columns {
		heads = append(heads, t.heads[c].parts...)
	}
	records := [][]string{heads}
	for _, row := range t.rows {
		var record []string
		for _, c := range columns {
			record = append(record, row[c].parts...)
		}
		records = append(records, record)
	}
	for _, record := range records {
		for i, text := range record {
			record[i] = csvtable.Guarded(text)
		}
		if err := out.Write(record); err != nil {
			return err
		}
	}
	out.Flush()
	return out.Error()
}

var page = template.Must(template.New("table").Parse(`<div class="table" role="region" tabindex="0" aria-label="{{.Label}}">
<table{{if .Tick}} class="tick"{{end}}>
{{- if .Title}}
<caption>{{.Title}}</caption>
{{- end}}
<thead>
<tr>{{if .Tick}}<th scope="col" class="box">done</th>{{end}}{{range .Heads}}<th scope="col"{{if .Right}} class="n"{{end}}>{{.Text}}</th>{{end}}{{if .Room}}<th scope="col" class="room">{{.Room}}</th>{{end}}</tr>
</thead>
<tbody>
{{- range $row := .Rows}}
<tr>{{if $.Tick}}<td class="box"><label><input type="checkbox" aria-label="{{$.Label}}, {{(index $.Heads 0).Text}} {{(index $row 0).Text}}: done"/></label></td>{{end}}{{range $i, $c := $row}}{{if $i}}<td{{if $c.Right}} class="n"{{end}}>{{$c.Text}}</td>{{else}}<th scope="row"{{if $c.Right}} class="n"{{end}}>{{$c.Text}}</th>{{end}}{{end}}{{if $.Room}}<td class="room"></td>{{end}}</tr>
{{- else}}
<tr><td>(none)</td></tr>
{{- end}}
</tbody>
{{- if .Foot}}
<tfoot>
<tr>{{if .Tick}}<td class="box"></td>{{end}}{{range .Foot}}<td{{if .Right}} class="n"{{end}}>{{.Text}}</td>{{end}}{{if .Room}}<td class="room"></td>{{end}}</tr>
</tfoot>
{{- end}}
</table>
</div>
{{- if .Notes}}
<ul class="notes">
{{- range .Notes}}
<li>{{.}}</li>
{{- end}}
</ul>
{{- end}}
`))

// htmlCell is a cell as the template shows it.
type htmlCell struct {
	Text  string
	Right bool
}

// HTML gives the table as an element with its title as the caption, and its
// notes. Texts are escaped.
func (t *Table) HTML() (template.HTML, error) {
	columns := t.shown()
	line := func(text func(int) string) []htmlCell {
		out := make([]htmlCell, len(columns))
		for i, c := range columns {
			out[i] = htmlCell{text(c), t.heads[c].right}
		}
		return out
	}
	view := struct {
		Title, Label string
		Tick         bool
		Room         string
		Heads, Foot  []htmlCell
		Rows         [][]htmlCell
		Notes        []string
	}{Title: t.Title, Label: t.Title, Tick: t.Tick, Room: t.Room, Notes: t.notes, Heads: line(func(c int) string { return t.heads[c].text })}
	if view.Label == "" {
		view.Label = t.Name
	}
	for _, row := range t.rows {
		view.Rows = append(view.Rows, line(func(c int) string { return row[c].text }))
	}
	if t.foot != nil {
		view.Foot = line(func(c int) string { return t.foot[c] })
	}
	var b strings.Builder
	err := page.Execute(&b, view)
	return template.HTML(b.String()), err
}
