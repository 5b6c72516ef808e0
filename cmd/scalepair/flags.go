package main

import (
	"os"
	"path/filepath"
	"strconv"
	"strings"

	"github.com/spf13/cobra"
	"github.com/spf13/pflag"

	"scalepair/cmd/scalepair/answer"
	"scalepair/cmd/scalepair/document"
	"scalepair/data/fault"
)

// outputFlags say how a result is printed.
type outputFlags struct {
	format document.Format
	units  answer.Units
	only   []string
	width  lineWidth
	ascii  bool
}

func (o *outputFlags) add(c *cobra.Command) {
	f := c.Flags()
	o.units.Flags(f)
	answer.TextVar(f, &o.format, "format", "`kind` of output: text, markdown, csv, html or json (default: text)")
	f.StringSliceVar(&o.only, "only", nil, "print these `tables` only, by name")
	answer.TextVar(f, &o.width, "width", "line width in `letters` (default: the terminal's, 80 when piped)")
	f.BoolVar(&o.ascii, "ascii", false, "write +/- and 1/2 where the console has no ± and ½")
}

// options is how to print, on the console at hand.
func (o *outputFlags) options(a *app) document.Options {
	out := document.Options{Width: pipedWidth}
	if a.file != nil {
		out = console(a.file, os.Getenv)
	}
	if o.width > 0 {
		out.Width = int(o.width)
	}
	out.Format, out.Only, out.ASCII = o.format, o.only, out.ASCII || o.ascii
	return out
}

// lineWidth is a line length that holds a table; 0 where none is given.
type lineWidth int

// UnmarshalText reads a whole number.
func (w *lineWidth) UnmarshalText(text []byte) error {
	n, err := strconv.Atoi(string(text))
	if err != nil {
		return err
	}
	if n < 40 {
		return fault.Fault{What: "the width is too small for a table", Given: string(text), Remedy: "give 40 or more"}
	}
	*w = lineWidth(n)
	return nil
}

// fileVar defines a flag for the path of a file to write, which must end as its
// kind does.
func fileVar(f *pflag.FlagSet, to *string, ending, name, usage string) {
	answer.TextVar(f, namedFile{to, ending}, name, usage)
}

type namedFile struct {
	to     *string
	ending string // ".svg"
}

// UnmarshalText refuses a file that would not be what its name says.
func (f namedFile) UnmarshalText(text []byte) error {
	path := string(text)
	if path == "" {
		return fault.Fault{What: "the file's name is empty", Remedy: "give one that ends in " + f.ending + ", or leave the flag out"}
	}
	if !strings.EqualFold(filepath.Ext(path), f.ending) {
		return fault.Fault{What: "the file's name does not end in " + f.ending, Given: path,
			Remedy: `name it "` + strings.TrimSuffix(path, filepath.Ext(path)) + f.ending + `"; a browser shows it and prints it`}
	}
	*f.to = path
	return nil
}

func first(args []string) string {
	if len(args) == 0 {
		return ""
	}
	return args[0]
}
