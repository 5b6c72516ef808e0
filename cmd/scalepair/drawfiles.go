package main

import (
	"bytes"
	"fmt"
	"path/filepath"
	"slices"
	"strings"

	"github.com/spf13/pflag"

	"scalepair/data/fault"
	"scalepair/data/suggest"
	"scalepair/data/unit"
	"scalepair/fan/draw"
	"scalepair/fan/draw/dxf"
	"scalepair/fan/draw/pdf"
	"scalepair/fan/draw/svg"
	"scalepair/fan/draw/tile"
)

// drawKinds are the kinds of file, as an ending and as --as names them.
var drawKinds = []string{"pdf", "svg", "dxf"}

// drawKind is one of drawKinds, "" for none.
type drawKind string

// UnmarshalText reads one of drawKinds.
func (k *drawKind) UnmarshalText(text []byte) error {
	kind := strings.ToLower(string(text))
	if !slices.Contains(drawKinds, kind) {
		remedy := "take pdf, svg or dxf"
		if meant := suggest.Nearest(kind, drawKinds); meant != "" {
			remedy = "did you mean " + meant + "?"
		}
		return fault.Fault{What: "there is no such kind of drawing", Given: string(text), Remedy: remedy}
	}
	*k = drawKind(kind)
	return nil
}

// settle settles the files and the hidden parts, and refuses flags that
// contradict one another or that no file asked for heeds, before any file is
// opened.
func (o *drawOptions) settle(f *pflag.FlagSet) error {
	var faults fault.List
	refuse := func(flag, what, given, remedy string) {
		faults.Add(fault.Place{Input: "--" + flag}, what, given, remedy)
	}
	o.settleFiles(refuse)
	if f.Changed("show") {
		o.drawing.Hide = o.show.Others()
	}
	wrote := func(kinds ...drawKind) bool {
		return len(o.files) == 0 || slices.ContainsFunc(o.files, func(f drawnFile) bool { return slices.Contains(kinds, f.kind) })
	}
	for _, c := range []struct {
		when         bool
		flags        []string
		what, remedy string
	}{
		{f.Changed("show"), []string{"hide"}, "what to draw is said twice", "say --show or --hide"},
		{slices.Contains(o.drawing.Hide, draw.LayerTitle), []string{"date", "remark"}, "it stands under the title, which is left out", "leave it out too, or draw the title"},
		{!wrote("pdf"), []string{"paper", "one-page", "strips", "margin", "overlap"}, "only a PDF is laid on paper", "name a file that ends in .pdf, or leave it out"},
		{!wrote("pdf", "svg"), []string{"bar-across", "bar-up"}, "a DXF is not printed, and not corrected for a printer", "name a file that ends in .pdf or .svg, or leave it out"},
		{o.onePage, []string{"paper", "strips", "overlap"}, "one page is as large as the drawing, and not divided", "leave it out, or --one-page"},
	} {
		for _, flag := range c.flags {
			if c.when && f.Changed(flag) {
				refuse(flag, c.what, "", c.remedy)
			}
		}
	}
	return faults.Err()
}

// settleFiles settles the kind of every file.
func (o *drawOptions) settleFiles(refuse func(flag, what, given, remedy string)) {
	if len(o.out) == 0 {
		refuse("out", "no file is named", "", "say where the drawing goes: --out fan.pdf")
	}
	seen := map[string]bool{}
	for _, path := range o.out {
		kind := drawKind(strings.TrimPrefix(strings.ToLower(filepath.Ext(path)), "."))
		known := slices.Contains(drawKinds, string(kind))
		switch {
		case seen[filepath.Clean(path)]:
			refuse("out", "the same file twice", path, "name every file once")
		case !known && o.as == "":
			refuse("out", "the ending does not say which kind of drawing", path, "end it with .pdf, .svg or .dxf, or say --as pdf")
		case known && o.as != "" && kind != o.as:
			refuse("as", "the ending says another kind than --as "+string(o.as), path, "leave --as out, or change the ending")
		}
		seen[filepath.Clean(path)] = true
		if !known {
			kind = o.as
		}
		o.files = append(o.files, drawnFile{path: path, kind: kind})
	}
}

// drawnFile is one file that draw is to write.
type drawnFile struct {
	path string
	kind drawKind
	text []byte
	what string // what was written, in words
}

// fill writes the drawing into the file's text.
func (f *drawnFile) fill(d draw.Drawing, o *drawOptions) error {
	var b bytes.Buffer
	lay := tile.Lay
	if o.onePage || f.kind == "svg" {
		lay = tile.One
	}
	var plan tile.Plan
	var err error
	if f.kind != "dxf" {
		if plan, err = lay(d, o.asked); err != nil {
			return err
		}
	}
	switch f.kind {
	case "pdf":
		f.what = o.sheets(plan)
		err = pdf.Write(&b, d.Title, plan.Sheets)
	case "svg":
		f.what = "one sheet in true size"
		err = svg.Write(&b, plan.Sheets[0], svg.Options{})
	case "dxf":
		f.what = "a drawing in mm"
		err = dxf.Write(&b, d)
	}
	f.text = b.Bytes()
	return err
}

// sheets says how many sheets of which paper a PDF has.
func (o *drawOptions) sheets(plan tile.Plan) string {
	u, first := o.asked.Unit, plan.Sheets[0]
	length := func(mm float64) string { return u.Format(unit.MM(mm), 0) }
	var what string
	switch n := len(plan.Sheets); {
	case o.onePage:
		what = fmt.Sprintf("one page of %s x %s %s", length(first.Width), length(first.Height), u.Symbol())
	case o.asked.Paper.IsRoll():
		long := first.Width
		if long == o.asked.Paper.Width.MM() {
			long = first.Height
		}
		what = length(long) + " " + u.Symbol() + " of a roll"
	case n == 1:
		what = "1 sheet of " + o.asked.Paper.Name
	default:
		what = fmt.Sprintf("%d sheets of %s", n, o.asked.Paper.Name)
	}
	if plan.NoKey && !o.asked.Strips {
		what += ", without the key, which would cost more; --one-page has it"
	}
	return what
}
