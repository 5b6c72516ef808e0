package table

import (
	"cmp"
	"encoding/csv"
	"fmt"
	"html"
	"io"
	"strings"

	"scalepair/data/csvtable"
)

var markdownSigns = strings.NewReplacer(`\`, `\\`, "|", `\|`, "*", `\*`, "_", `\_`, "<", `\<`, "`", "\\`", "[", `\[`)

// EscapeMarkdown gives text that Markdown shows as it is.
func EscapeMarkdown(s string) string { return markdownSigns.Replace(s) }

// WriteCSV writes the headings and the rows; an uncertainty stands in a column
// of its own. No label can become a spreadsheet's formula.
func (t *Table) WriteCSV(w io.Writer) error {
	out := csv.NewWriter(w)
	columns := t.headed()
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

// HTML gives the table as an element with its title as the caption, and its
// notes. Texts are escaped.
func (t *Table) HTML() string {
	columns := t.shown()
	var b strings.Builder
	put := func(format string, texts ...string) {
		escaped := make([]any, len(texts))
		for i, text := range texts {
			escaped[i] = html.EscapeString(text)
		}
		fmt.Fprintf(&b, format, escaped...)
	}
	line := func(tick, room string, cell func(i, c int, class string)) {
		put("<tr>")
		if t.Tick {
			b.WriteString(tick)
		}
		for i, c := range columns {
			class := ""
			if t.heads[c].right {
				class = ` class="n"`
			}
			cell(i, c, class)
		}
		if t.Room != "" {
			b.WriteString(room)
		}
		put("</tr>\n")
	}
	put("<div class=\"table\" role=\"region\" tabindex=\"0\" aria-label=\"%s\">\n<table", cmp.Or(t.Title, t.Name))
	if t.Tick {
		put(` class="tick"`)
	}
	put(">\n")
	if t.Title != "" {
		put("<caption>%s</caption>\n", t.Title)
	}
	put("<thead>\n")
	line(`<th scope="col" class="box">done</th>`, `<th scope="col" class="room">`+html.EscapeString(t.Room)+`</th>`, func(_, c int, class string) {
		put(`<th scope="col"`+class+`>%s</th>`, t.heads[c].text)
	})
	put("</thead>\n<tbody>\n")
	for _, row := range t.rows {
		what := fmt.Sprintf("%s, %s %s: done", cmp.Or(t.Title, t.Name), t.heads[columns[0]].text, row[columns[0]].text)
		tick := `<td class="box"><label><input type="checkbox" aria-label="` + html.EscapeString(what) + `"/></label></td>`
		line(tick, `<td class="room"></td>`, func(i, c int, class string) {
			if i == 0 {
				put(`<th scope="row"`+class+`>%s</th>`, row[c].text)
			} else {
				put(`<td`+class+`>%s</td>`, row[c].text)
			}
		})
	}
	if len(t.rows) == 0 {
		put("<tr><td>%s</td></tr>\n", NoRows)
	}
	put("</tbody>\n")
	if t.foot != nil {
		put("<tfoot>\n")
		line(`<td class="box"></td>`, `<td class="room"></td>`, func(_, c int, class string) { put(`<td`+class+`>%s</td>`, t.foot[c]) })
		put("</tfoot>\n")
	}
	put("</table>\n</div>")
	if len(t.notes) > 0 {
		put("\n<ul class=\"notes\">\n")
		for _, note := range t.notes {
			put("<li>%s</li>\n", note)
		}
		put("</ul>")
	}
	put("\n")
	return b.String()
}
