package show

import (
	"encoding/json"
	"errors"
	"io"

	"scalepair/data/fault"
)

// Format is a way to write a report.
type Format int

// The formats. JSONFormat is for the commands' own use: Write refuses it, and
// they write their own values with JSON.
const (
	TableFormat Format = iota
	Markdown
	CSV
	HTML
	JSONFormat
)

var formatWords = []string{"table", "markdown", "csv", "html", "json"}

// ParseFormat reads "table", "markdown", "csv", "html" or "json".
func ParseFormat(s string) (Format, error) {
	return 0, errors.ErrUnsupported
}

// String gives the word that ParseFormat reads.
func (f Format) String() string { return formatWords[f] }

// Options say how a report is written.
type Options struct {
	Format Format
	// Width is the greatest line length of the table format in terminal
	// cells; 0 is no limit.
	Width int
	// Only holds the names of the tables to write, everything else left
	// out; empty for the whole report.
	Only []string
	// ASCII replaces what a console of another code page cannot show.
	ASCII bool
	// Color lets the table format use bold and colour.
	Color bool
}

// Write writes r whole to w. An unknown name in o.Only is a fault with the
// nearest name.
func Write(w io.Writer, r *Report, o Options) error {
	return fault.List{}.Err()
}

// JSON writes v indented by two blanks, without HTML escaping, with a line
// end.
func JSON(w io.Writer, v any) error {
	e := json.NewEncoder(w)
	e.SetEscapeHTML(false)
	e.SetIndent("", "  ")
	return e.Encode(v)
}
