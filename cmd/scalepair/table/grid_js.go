package table

// Markdown and plain are for the command line: without the library that draws them
// the page in a browser is a tenth smaller.
func (t *Table) Markdown() string { panic("table: Markdown in a browser") }

func (t *Table) plain(columns, widths []int, ascii bool) string {
	panic("table: text for a terminal in a browser")
}
