package show

import (
	"bytes"
	"fmt"
	"io"
	"slices"
	"strings"

	"scalepair/data/fault"
	"scalepair/data/suggest"
)

// Format is a way to write a report.
type Format int

// The formats. JSONFormat is for the commands' own use: Write panics on it,
// and they write their own values with JSON.
const (
	TableFormat Format = iota
	Markdown
	CSV
	HTML
	JSONFormat
)

var formatWords = []string{"table", "markdown", "csv", "html", "json"}

// FormatWords gives the words that ParseFormat reads, for help and completion.
func FormatWords() []string { return slices.Clone(formatWords) }

// ParseFormat reads "table", "markdown", "csv", "html" or "json".
func ParseFormat(s string) (Format, error) {
	if i := slices.Index(formatWords, strings.ToLower(strings.TrimSpace(s))); i >= 0 {
		return Format(i), nil
	}
	return 0, fault.Fault{What: "no such format", Given: s,
		Remedy: guess(s, formatWords) + "use " + strings.Join(formatWords, ", ")}
}

// guess gives "did you mean ...? " where a known word is near.
func guess(word string, known []string) string {
	if n := suggest.Nearest(word, known); n != "" {
		return fmt.Sprintf("did you mean %q? ", n)
	}
	return ""
}

// String gives the word that ParseFormat reads.
func (f Format) String() string { return formatWords[f] }

// Options say how a report is written.
type Options struct {
	Format Format
	// Width is the greatest line length of the table format in terminal
	// cells; 0 is no limit, and less than 20 counts as 20.
	Width int
	// Only holds the names of the tables to write, everything else left
	// out; empty for the whole report.
	Only []string
	// ASCII replaces what a console of another code page cannot show.
	ASCII bool
	// Color lets the table format use bold and colour.
	Color bool
}

// Write writes r whole to w, in one call, or nothing. An unknown name in
// o.Only is a fault with the nearest name; so is CSV of a report without a
// table.
func Write(w io.Writer, r *Report, o Options) error {
	r, err := r.only(o.Only)
	if err != nil {
		return err
	}
	r = r.mapText(clean)
	if o.ASCII && o.Format != HTML {
		r = r.mapText(ToASCII)
	}
	var b bytes.Buffer
	switch o.Format {
	case TableFormat:
		b.Grow(usualLength)
		err = writeText(&b, r, o)
	case Markdown:
		writeMarkdown(&b, r)
	case CSV:
		err = writeCSV(&b, r)
	case HTML:
		err = writeHTML(&b, r, o.ASCII)
	default:
		panic("show: Write cannot write " + o.Format.String())
	}
	if err != nil {
		return err
	}
	_, err = w.Write(b.Bytes())
	return err
}

// usualLength is about how long the table of one command is.
const usualLength = 4 << 10

// only gives the report itself without names, else one with the named tables
// alone, in the report's order.
func (r *Report) only(names []string) (*Report, error) {
	if len(names) == 0 {
		return r, nil
	}
	known := r.TableNames()
	var faults fault.List
	for _, n := range names {
		if !slices.Contains(known, n) {
			faults.Add(fault.Place{Input: "--only"}, "no table of that name here", n, tablesHere(n, known))
		}
	}
	out := &Report{}
	for _, t := range r.tables() {
		if slices.Contains(names, t.Name) {
			out.Blocks = append(out.Blocks, t)
		}
	}
	return out, faults.Err()
}

func tablesHere(name string, known []string) string {
	if len(known) == 0 {
		return "this report has no tables"
	}
	return guess(name, known) + "the tables are " + strings.Join(known, ", ")
}

func (r *Report) tables() []*Table {
	var out []*Table
	for _, b := range r.Blocks {
		if t, ok := b.(*Table); ok {
			out = append(out, t)
		}
	}
	return out
}

// TableNames gives the tables' names in reading order, each once.
func (r *Report) TableNames() []string {
	var out []string
	for _, t := range r.tables() {
		if !slices.Contains(out, t.Name) {
			out = append(out, t.Name)
		}
	}
	return out
}
