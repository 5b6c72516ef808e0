package document

import (
	"bytes"
	_ "embed"
	"fmt"
	"html/template"

	"scalepair/cmd/scalepair/table"
)

//go:embed page.html
var pageText string

//go:embed style.css
var style string

var page = template.Must(template.New("page").Parse(pageText))

// view is a block as the page shows it: exactly one field is set.
type view struct {
	Heading   *heading
	Paragraph string
	List      []string
	Checklist []string
	Cautions  []string
	Figure    *figure
	Break     bool
	Table     template.HTML
}

type heading struct {
	Level int
	Text  string
	ID    string
}

type figure struct {
	Caption, Alt string
	SVG          template.HTML
}

// writeHTML writes one page that needs nothing from outside.
func (d *Document) writeHTML(b *bytes.Buffer) error {
	p := struct {
		Title    string
		Foot     string // of every printed page
		Style    template.CSS
		Contents []heading
		Blocks   []view
	}{Title: d.Title, Foot: foot(d.Title), Style: template.CSS(style)}
	for i, block := range d.Blocks {
		v := view{}
		switch block := block.(type) {
		case Heading:
			v.Heading = &heading{block.Level, block.Text, fmt.Sprintf("part-%d", i)}
			if block.Level == 2 {
				p.Contents = append(p.Contents, *v.Heading)
			}
		case Paragraph:
			v.Paragraph = block.Text
		case List:
			v.List = block.Items
		case Checklist:
			v.Checklist = block.Items
		case Cautions:
			v.Cautions = block.Items
		case Figure:
			// The drawing is this program's own, with its texts escaped.
			v.Figure = &figure{block.Caption, block.Alt, template.HTML(block.SVG)}
		case Break:
			v.Break = true
		case *table.Table:
			html, err := block.HTML()
			if err != nil {
				return err
			}
			v.Table = html
		}
		p.Blocks = append(p.Blocks, v)
	}
	return page.Execute(b, p)
}

// foot is the title as far as it fits beside the page's number.
func foot(title string) string {
	const most = 70
	if letters := []rune(title); len(letters) > most {
		return string(letters[:most-1]) + "…"
	}
	return title
}
