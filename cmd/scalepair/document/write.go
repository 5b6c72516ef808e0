package document

import (
	"bytes"
	"encoding"
	"encoding/json"
	"fmt"
	"io"
	"slices"
	"strings"
	"unicode"
	"unicode/utf16"
	"unicode/utf8"

	"scalepair/cmd/scalepair/table"
	"scalepair/data/fault"
)

// Format is a way to write a result.
type Format int

// The formats.
const (
	Text Format = iota
	Markdown
	CSV
	HTML
	JSON
)

// FormatWords are the words that a Format reads and prints.
var FormatWords = []string{"text", "markdown", "csv", "html", "json"}

var _ encoding.TextUnmarshaler = (*Format)(nil)

// UnmarshalText reads one of FormatWords.
func (f *Format) UnmarshalText(text []byte) error {
	i := slices.Index(FormatWords, strings.ToLower(strings.TrimSpace(string(text))))
	if i < 0 {
		return fault.Fault{What: "no such format", Given: string(text), Remedy: "use " + strings.Join(FormatWords, ", ")}
	}
	*f = Format(i)
	return nil
}

// String gives the word that UnmarshalText reads.
func (f Format) String() string { return FormatWords[f] }

// Options say how a document is written.
type Options struct {
	Format Format
	// Width is the greatest line length of text, in terminal cells; 0 is no
	// limit.
	Width int
	// Only holds the names of the tables to write, everything else left out;
	// empty for the whole document.
	Only []string
	// ASCII replaces what a console of another code page cannot show.
	ASCII bool
	// Colour lets text use bold and colour.
	Colour bool
}

// Result is what a command found. Encoded to JSON it is what programs read;
// its document is what people read.
type Result interface {
	Document() *Document
}

// Write writes a result whole to w, in one call, or nothing.
func Write(w io.Writer, r Result, o Options) error {
	if o.Format == JSON {
		return writeJSON(w, r)
	}
	return r.Document().Write(w, o)
}

// Write writes the document whole to w, in one call, or nothing. An unknown
// name in o.Only is a fault; so is CSV of a document without a table. It panics
// on the format JSON, which is written from the result.
func (d *Document) Write(w io.Writer, o Options) error {
	d, err := d.only(o.Only)
	if err != nil {
		return err
	}
	d = d.mapText(Clean)
	if o.ASCII && o.Format != HTML {
		d = d.mapText(ToASCII)
	}
	var b bytes.Buffer
	switch o.Format {
	case Text:
		d.writeText(&b, o)
	case Markdown:
		d.writeMarkdown(&b)
	case CSV:
		err = d.writeCSV(&b)
	case HTML:
		d.writeHTML(&b)
	default:
		panic("document: Write cannot write " + o.Format.String())
	}
	if err != nil {
		return err
	}
	_, err = w.Write(b.Bytes())
	return err
}

// only gives the document itself without names, else one with the named tables
// alone, in reading order.
func (d *Document) only(names []string) (*Document, error) {
	if len(names) == 0 {
		return d, nil
	}
	out := &Document{}
	var known []string
	for _, t := range d.tables() {
		known = append(known, t.Name)
		if slices.Contains(names, t.Name) {
			out.Table(t)
		}
	}
	var faults fault.List
	for _, n := range names {
		if !slices.Contains(known, n) {
			remedy := "the tables are " + strings.Join(slices.Compact(known), ", ")
			if len(known) == 0 {
				remedy = "this command prints no tables here"
			}
			faults.Add(fault.Place{Input: "--only"}, "no table of that name here", n, remedy)
		}
	}
	return out, faults.Err()
}

// writeJSON writes a result indented by two blanks, without HTML escaping, with
// a line end.
func writeJSON(w io.Writer, r Result) error {
	var b bytes.Buffer
	e := json.NewEncoder(&b)
	e.SetEscapeHTML(false)
	e.SetIndent("", "  ")
	if err := e.Encode(r); err != nil {
		return err
	}
	_, err := w.Write(escaped(b.Bytes()))
	return err
}

// escaped gives JSON with the characters escaped that a terminal would obey and
// the encoder leaves; they stand in texts only.
func escaped(text []byte) []byte {
	var out []byte
	for _, r := range string(text) {
		if r != '\n' && (unicode.IsControl(r) || unicode.Is(unicode.Cf, r)) {
			for _, half := range utf16.Encode([]rune{r}) {
				out = fmt.Appendf(out, `\u%04x`, half)
			}
			continue
		}
		out = utf8.AppendRune(out, r)
	}
	return out
}

func (d *Document) writeMarkdown(b *bytes.Buffer) {
	put := func(lines ...string) {
		if b.Len() > 0 {
			b.WriteByte('\n')
		}
		b.WriteString(strings.TrimRight(strings.Join(lines, "\n"), "\n") + "\n")
	}
	list := func(mark string, items []string) []string {
		out := make([]string, len(items))
		for i, s := range items {
			out[i] = mark + table.EscapeMarkdown(s)
		}
		return out
	}
	if d.Title != "" {
		put("# " + table.EscapeMarkdown(d.Title))
	}
	for _, block := range d.Blocks {
		switch block.Kind {
		case Heading:
			put(strings.Repeat("#", block.Level) + " " + table.EscapeMarkdown(block.Text))
		case Paragraph:
			put(table.EscapeMarkdown(block.Text))
		case List:
			put(list("- ", block.Items)...)
		case Cautions:
			put(append([]string{"> **Cautions**", ">"}, list("> - ", block.Items)...)...)
		}
		for _, t := range block.Tables {
			if t.Title != "" {
				put("**" + table.EscapeMarkdown(t.Title) + "**")
			}
			put(t.Markdown())
			if notes := t.Notes(); len(notes) > 0 {
				put(list("* ", notes)...)
			}
		}
	}
}

// writeCSV writes the tables. Several are set apart by an empty line and headed
// by a comment with their names.
func (d *Document) writeCSV(b *bytes.Buffer) error {
	tables := d.tables()
	if len(tables) == 0 {
		return fault.Fault{Place: fault.Place{Input: "--format"}, What: "there is no table to write", Given: "csv", Remedy: "use text"}
	}
	for i, t := range tables {
		if len(tables) > 1 {
			if i > 0 {
				b.WriteByte('\n')
			}
			fmt.Fprintf(b, "# %s\n", t.Name)
		}
		if err := t.WriteCSV(b); err != nil {
			return err
		}
	}
	return nil
}
