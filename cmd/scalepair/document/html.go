package document

import (
	"bytes"
	_ "embed"
	"html/template"
)

//go:embed page.html
var pageText string

//go:embed style.css
var style string

// A drawing is this program's own, with its texts escaped.
var page = template.Must(template.New("page").Funcs(template.FuncMap{
	"svg": func(text string) template.HTML { return template.HTML(text) },
}).Parse(pageText))

// writeHTML writes one page that needs nothing from outside.
func (d *Document) writeHTML(b *bytes.Buffer) error {
	headings := 0
	for _, block := range d.Blocks {
		if block.Kind == Heading {
			headings++
		}
	}
	return page.Execute(b, struct {
		*Document
		Headings int
		Foot     string // of every printed page
		Style    template.CSS
	}{d, headings, foot(d.Title), template.CSS(style)})
}

// foot is the title as far as it fits beside the page's number.
func foot(title string) string {
	const most = 70
	if letters := []rune(title); len(letters) > most {
		return string(letters[:most-1]) + "…"
	}
	return title
}
