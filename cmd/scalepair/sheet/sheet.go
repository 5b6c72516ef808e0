// Package sheet composes the bench sheet: one page of HTML that needs nothing
// else, to read on a screen and to print and pin over the bench.
//
// A sheet is a heading with its facts, and sections in reading order that hold
// the blocks of package show and drawings of the fan. Tables of a section that
// is ticked get a box before every row. The page has no script, loads nothing
// and forbids itself to; it carries no date but the one it is given, so that
// the same sheet has the same bytes.
package sheet

import (
	"io"

	"scalepair/cmd/scalepair/show"
)

// Sheet is the whole page.
type Sheet struct {
	Title string
	Lead  string // one line below the title; may be empty
	Date  string // printed as given, and only when given
	// Facts stand in large letters below the title, two or three words each.
	Facts    []Fact
	Sections []Section
}

// Fact is one thing to know before anything else.
type Fact struct{ Name, Value string }

// Section is one heading with what stands under it.
type Section struct {
	// Part is a heading over this section and those that follow, such as "At
	// the bench"; a part begins on a new page of paper. Empty for none.
	Part  string
	Title string
	// Blocks are those of a report, its headings left out.
	Blocks []show.Block
	// Tick gives every row of the section's tables a box to tick.
	Tick bool
	// Small sets what is looked up rather than worked by in smaller letters.
	Small bool
	// Room heads an empty last column to write in; empty for none.
	Room string
	// Drawing is shown below the blocks; nil for none.
	Drawing *Drawing
}

// Split gives the sections of a report: one for each heading, and one without
// a title for what stands before the first.
func Split(r *show.Report) []Section {
	var out []Section
	for _, b := range r.Blocks {
		if h, ok := b.(show.Heading); ok {
			out = append(out, Section{Title: h.Text})
			continue
		}
		if len(out) == 0 {
			out = append(out, Section{})
		}
		last := &out[len(out)-1]
		last.Blocks = append(last.Blocks, b)
	}
	return out
}

// Write writes the page. It fails only when w does.
func Write(w io.Writer, s Sheet) error {
	text, err := render(s)
	if err != nil {
		return err
	}
	_, err = w.Write(text)
	return err
}
