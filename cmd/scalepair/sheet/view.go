package sheet

import (
	"bytes"
	_ "embed"
	"fmt"
	"html/template"
	"strings"
	"sync"

	"scalepair/cmd/scalepair/show"
	"scalepair/fan/draw"
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

func render(s Sheet) ([]byte, error) {
	var b bytes.Buffer
	if err := page().Execute(&b, viewSheet(s)); err != nil {
		return nil, fmt.Errorf("sheet: %w", err)
	}
	return b.Bytes(), nil
}

// pageView is what the template sees.
type pageView struct {
	Sheet
	Sections []sectionView
	Foot     template.CSS // at the foot of every printed page, as a CSS string
}

type sectionView struct {
	ID, Part, Title, Class string
	Blocks                 []blockView
}

// blockView has one field set.
type blockView struct {
	Para              string
	Bullets, Cautions []string
	Figure            *figureView
	Table             *tableView
	Drawing           *Drawing
}

type figureView struct {
	SVG     template.HTML
	Caption string
}

type tableView struct {
	Caption, Label, Class string
	Tick                  bool
	Room                  string
	Columns               int
	Heads                 []cellView
	Parts                 []partView // two stand side by side
	Notes                 []string
}

// partView is the upper or the lower half of a long slim table, or all of
// another.
type partView struct {
	Rows [][]cellView
	Foot []cellView
}

type cellView struct {
	Head, Text string
	Class      string // n: figures; s: short words; w: words that may wrap
}

func viewSheet(s Sheet) pageView {
	s.Title, s.Lead, s.Date = draw.OneLine(s.Title), draw.OneLine(s.Lead), draw.OneLine(s.Date)
	s.Facts = cleanFacts(s.Facts)
	v := pageView{Sheet: s, Foot: cssString(foot(s))}
	for i, sec := range s.Sections {
		sec = sec.clean()
		view := sectionView{ID: fmt.Sprintf("s%d", i+1), Part: sec.Part, Title: sec.Title}
		for _, b := range sec.Blocks {
			view.Blocks = append(view.Blocks, sec.view(b))
		}
		if sec.Drawing != nil {
			view.Blocks = append(view.Blocks, blockView{Drawing: sec.Drawing})
		}
		switch {
		case sec.Part != "":
			view.Class = "begins"
		case sec.Small:
			view.Class = "small"
		}
		v.Sections = append(v.Sections, view)
	}
	return v
}

// clean gives the section with words that a page can hold, whatever a user
// wrote: names and remarks may have any bytes.
func (s Section) clean() Section {
	s.Part, s.Title, s.Room = show.Clean(s.Part), show.Clean(s.Title), show.Clean(s.Room)
	blocks := make([]show.Block, len(s.Blocks))
	for i, b := range s.Blocks {
		blocks[i] = show.CleanBlock(b)
	}
	s.Blocks = blocks
	if s.Drawing != nil {
		drawing := *s.Drawing // whose strips are clean as they come
		drawing.Caption = show.Clean(drawing.Caption)
		s.Drawing = &drawing
	}
	return s
}

func cleanFacts(facts []Fact) []Fact {
	out := make([]Fact, len(facts))
	for i, f := range facts {
		out[i] = Fact{show.Clean(f.Name), show.Clean(f.Value)}
	}
	return out
}

func (s Section) view(b show.Block) blockView {
	switch b := b.(type) {
	case show.Para:
		return blockView{Para: b.Text}
	case show.Bullets:
		return blockView{Bullets: b.Items}
	case show.Cautions:
		return blockView{Cautions: b.Items}
	case show.Figure:
		// Drawings come from package chart, which escapes its texts.
		return blockView{Figure: &figureView{template.HTML(b.SVG), b.Caption}}
	case *show.Table:
		return blockView{Table: s.viewTable(b)}
	}
	return blockView{}
}

func (s Section) viewTable(t *show.Table) *tableView {
	v := &tableView{Caption: t.Caption, Label: t.Caption, Tick: s.Tick, Room: s.Room, Columns: len(t.Columns), Notes: t.Notes}
	if v.Label == "" {
		v.Label = t.Name
	}
	if s.Tick {
		v.Columns++
	}
	if s.Room != "" {
		v.Columns++
	}
	v.Parts, v.Class = s.parts(t), s.classes(t)
	for i, c := range t.Columns {
		v.Heads = append(v.Heads, cellView{Text: c.Head, Class: classOf(t, i)})
	}
	return v
}

// classes say how a table may be laid out; see fit.go.
func (s Section) classes(t *show.Table) string {
	var classes []string
	if lettersAcross(t, s) > slim {
		classes = append(classes, "wide")
	}
	if s.Tick && len(t.Rows) <= wholeRows || len(t.Rows) <= fewRows {
		classes = append(classes, "whole")
	}
	return strings.Join(classes, " ")
}

// parts divides a long slim table in two halves.
func (s Section) parts(t *show.Table) []partView {
	all := partView{}
	for _, row := range t.Rows {
		all.Rows = append(all.Rows, viewRow(t, row))
	}
	if t.Foot != nil {
		all.Foot = viewRow(t, t.Foot)
	}
	if !s.halved(t) {
		return []partView{all}
	}
	half := (len(all.Rows) + 1) / 2
	return []partView{{Rows: all.Rows[:half]}, {all.Rows[half:], all.Foot}}
}

func classOf(t *show.Table, i int) string {
	switch {
	case t.Columns[i].Align == show.Right:
		return "n"
	case unbrokenColumn(t, i):
		return "s"
	}
	return "w"
}

func viewRow(t *show.Table, row []string) []cellView {
	out := make([]cellView, len(row))
	for i, c := range row {
		out[i] = cellView{t.Columns[i].Head, c, classOf(t, i)}
	}
	return out
}
