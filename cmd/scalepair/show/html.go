package show

import (
	"bytes"
	_ "embed"
	"fmt"
	"html/template"
	"sync"
)

//go:embed page.html
var pageSource string

//go:embed style.css
var styleSource string

// page is the template of the whole page, parsed when first used. It closes
// every element, so that the page is well-formed XML too.
var page = sync.OnceValue(func() *template.Template {
	t := template.Must(template.New("page").Parse(pageSource))
	template.Must(t.New("style.css").Parse(styleSource))
	return t
})

// pageView is what the template sees. One field of a block is set; Headed says
// that a heading stands right above it.
type pageView struct {
	Title, Heading string
	Blocks         []blockView
}

type blockView struct {
	Headed            bool
	Heading, Para     string
	Bullets, Cautions []string
	Figure            *figureView
	Table             *tableView
}

type figureView struct {
	SVG     template.HTML
	Caption string
}

type tableView struct {
	Caption, Label string
	Heads, Foot    []cellView
	Rows           [][]cellView
	Notes          []string
}

type cellView struct {
	Text  string
	Right bool
}

// writeHTML writes one page that needs nothing else. With ascii every other
// character is written by number, which loses nothing.
func writeHTML(b *bytes.Buffer, r *Report, ascii bool) error {
	view := pageView{Title: r.Title, Heading: r.Title}
	if view.Title == "" {
		view.Title = "scalepair"
	}
	for i, block := range r.Blocks {
		v := viewBlock(block)
		v.Headed = r.headed(i)
		view.Blocks = append(view.Blocks, v)
	}
	if !ascii {
		return page().Execute(b, view)
	}
	var utf8 bytes.Buffer
	if err := page().Execute(&utf8, view); err != nil {
		return err
	}
	for _, c := range utf8.String() {
		if c < 0x80 {
			b.WriteRune(c)
			continue
		}
		fmt.Fprintf(b, "&#%d;", c)
	}
	return nil
}

func viewBlock(b Block) blockView {
	switch b := b.(type) {
	case Heading:
		return blockView{Heading: b.Text}
	case Para:
		return blockView{Para: b.Text}
	case Bullets:
		return blockView{Bullets: b.Items}
	case Cautions:
		return blockView{Cautions: b.Items}
	case Figure:
		// Drawings come from package chart, which escapes its texts.
		return blockView{Figure: &figureView{template.HTML(b.SVG), b.Caption}}
	case *Table:
		return blockView{Table: viewTable(b)}
	}
	return blockView{}
}

func viewTable(t *Table) *tableView {
	if len(t.Columns) == 0 {
		return nil
	}
	v := &tableView{Caption: t.Caption, Label: t.Caption, Notes: t.Notes}
	if v.Label == "" {
		v.Label = t.Name
	}
	for _, c := range t.Columns {
		v.Heads = append(v.Heads, cellView{c.Head, c.Align == Right})
	}
	for _, row := range t.Rows {
		v.Rows = append(v.Rows, viewRow(t, row))
	}
	if t.Foot != nil {
		v.Foot = viewRow(t, t.Foot)
	}
	return v
}

func viewRow(t *Table, row []string) []cellView {
	out := make([]cellView, len(row))
	for i, c := range row {
		out[i] = cellView{c, t.Columns[i].Align == Right}
	}
	return out
}
