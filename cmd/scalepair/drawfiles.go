package main

import (
	"bytes"
	"fmt"
	"path/filepath"
	"slices"
	"strings"

	"scalepair/data/fault"
	"scalepair/data/suggest"
	"scalepair/data/unit"
	"scalepair/fan/draw"
	"scalepair/fan/draw/dxf"
	"scalepair/fan/draw/pdf"
	"scalepair/fan/draw/svg"
	"scalepair/fan/draw/tile"
)

// drawnFile is one file that draw is to write.
type drawnFile struct {
	path, kind string
	text       []byte
	what       string // what was written, in words
}

// drawKinds are the kinds of file, as an ending and as --as names them.
var drawKinds = []string{"pdf", "svg", "dxf"}

// check reads every flag of draw, before any file is opened.
func (o *drawOptions) check() error {
	var faults fault.List
	o.checkFiles(&faults)
	o.checkParts(&faults)
	o.checkPaper(&faults)
	return faults.Err()
}

// checkFiles settles the kind of every file.
func (o *drawOptions) checkFiles(faults *fault.List) {
	o.files = nil
	if len(o.out) == 0 {
		flagFault(faults, "out", "no file is named", "", "say where the drawing goes: --out fan.pdf")
	}
	o.as = strings.ToLower(o.as)
	if o.as != "" && !slices.Contains(drawKinds, o.as) {
		flagFault(faults, "as", "there is no such kind of drawing", o.as, meantKind(o.as))
		return
	}
	seen := map[string]bool{}
	for _, path := range o.out {
		kind := strings.TrimPrefix(strings.ToLower(filepath.Ext(path)), ".")
		known := slices.Contains(drawKinds, kind)
		switch {
		case seen[filepath.Clean(path)]:
			flagFault(faults, "out", "the same file twice", path, "name every file once")
		case !known && o.as == "":
			flagFault(faults, "out", "the ending does not say which kind of drawing", path, "end it with .pdf, .svg or .dxf, or say --as pdf")
		case known && o.as != "" && kind != o.as:
			flagFault(faults, "as", "the ending says another kind than --as "+o.as, path, "leave --as out, or change the ending")
		}
		seen[filepath.Clean(path)] = true
		if !known {
			kind = o.as
		}
		o.files = append(o.files, drawnFile{path: path, kind: kind})
	}
}

func meantKind(given string) string {
	if meant := suggest.Nearest(given, drawKinds); meant != "" {
		return "did you mean " + meant + "?"
	}
	return "take pdf, svg or dxf"
}

// checkParts settles which parts are left out.
func (o *drawOptions) checkParts(faults *fault.List) {
	read := func(flag, words string) []draw.LayerName {
		layers, err := draw.ParseLayers(words)
		faults.Include(fault.Place{}, flagPlaces(err, map[string]string{"layers": "--" + flag}))
		return layers
	}
	if o.show != "" && o.hide != "" {
		flagFault(faults, "hide", "what to draw is said twice", "", "say --show or --hide")
	}
	o.hidden = read("hide", o.hide)
	if o.show != "" {
		shown := read("show", o.show)
		o.hidden = slices.DeleteFunc(draw.ContentLayers(), func(n draw.LayerName) bool { return slices.Contains(shown, n) })
	}
	if !slices.Contains(o.hidden, draw.LayerTitle) {
		return
	}
	for _, said := range []struct{ flag, words string }{{"date", o.date}, {"remark", o.remark}} {
		if said.words != "" {
			flagFault(faults, said.flag, "it stands under the title, which is left out", said.words, "leave it out too, or draw the title")
		}
	}
}

// checkPaper settles paper and printer, and refuses flags that no file heeds.
func (o *drawOptions) checkPaper(faults *fault.List) {
	o.asked = tile.DefaultOptions()
	var err error
	if o.asked.Paper, err = tile.ParsePaper(o.paper); err != nil {
		faults.Include(fault.Place{}, flagPlaces(listOf(err), tileFlags()))
	}
	if o.strips {
		o.asked.Arrange = tile.Strips
	}
	for _, l := range []struct {
		flag, text string
		mm         *float64
	}{
		{"margin", o.margin, &o.asked.MarginMM}, {"overlap", o.overlap, &o.asked.OverlapMM},
		{"bar-across", o.barAcross, &o.asked.BarAcrossMM}, {"bar-up", o.barUp, &o.asked.BarUpMM},
	} {
		if !o.changed(l.flag) {
			continue
		}
		length, err := unit.ParseLength(l.text)
		faults.Include(fault.Place{Input: "--" + l.flag}, err)
		*l.mm = length.MM()
		if err == nil && length <= 0 {
			flagFault(faults, l.flag, "the length is not above 0", l.text, "measure it with a steel rule")
		}
	}
	o.checkHeeded(faults)
}

// checkHeeded refuses flags that contradict one another or that no file of
// the kinds asked for heeds.
func (o *drawOptions) checkHeeded(faults *fault.List) {
	var kinds []string
	for _, f := range o.files {
		kinds = append(kinds, f.kind)
	}
	if len(kinds) == 0 {
		return
	}
	for _, flag := range []string{"paper", "one-page", "strips", "margin", "overlap"} {
		if o.changed(flag) && !slices.Contains(kinds, "pdf") {
			flagFault(faults, flag, "only a PDF is laid on paper", "", "name a file that ends in .pdf, or leave it out")
		}
	}
	for _, flag := range []string{"bar-across", "bar-up"} {
		if o.changed(flag) && !slices.Contains(kinds, "pdf") && !slices.Contains(kinds, "svg") {
			flagFault(faults, flag, "a DXF is not printed, and not corrected for a printer", "", "name a file that ends in .pdf or .svg, or leave it out")
		}
	}
	for _, flag := range []string{"paper", "strips", "overlap"} {
		if o.onePage && o.changed(flag) {
			flagFault(faults, flag, "one page is as large as the drawing, and not divided", "", "say --one-page or --"+flag)
		}
	}
}

// listOf makes a list of one fault, for flagPlaces.
func listOf(err error) error {
	var faults fault.List
	faults.Include(fault.Place{}, err)
	return faults.Err()
}

// fill writes the drawing into the file's text.
func (f *drawnFile) fill(d draw.Drawing, o *drawOptions) error {
	var b bytes.Buffer
	var err error
	switch f.kind {
	case "pdf":
		err = f.fillPDF(&b, d, o)
	case "svg":
		f.what = "one sheet in true size"
		var plan tile.Plan
		if plan, err = tile.One(d, o.asked); err == nil {
			err = svg.Write(&b, plan.Sheets[0], svg.Options{})
		}
	case "dxf":
		f.what = "a drawing in mm"
		err = dxf.Write(&b, d)
	}
	f.text = b.Bytes()
	return err
}

func (f *drawnFile) fillPDF(b *bytes.Buffer, d draw.Drawing, o *drawOptions) error {
	lay := tile.Lay
	if o.onePage {
		lay = tile.One
	}
	plan, err := lay(d, o.asked)
	if err != nil {
		return err
	}
	f.what = sheetWords(plan, o)
	if plan.NoKey && !o.strips {
		f.what += ", without the key, which would cost more; --one-page has it"
	}
	return pdf.Write(b, d.Title, plan.Sheets)
}

// sheetWords says how many sheets of which paper a PDF has.
func sheetWords(plan tile.Plan, o *drawOptions) string {
	first := plan.Sheets[0]
	switch n := len(plan.Sheets); {
	case o.onePage:
		u := o.asked.Unit
		return fmt.Sprintf("one page of %s x %s %s", u.Format(unit.MM(first.WidthMM), 0), u.Format(unit.MM(first.HeightMM), 0), u.Symbol())
	case o.asked.Paper.IsRoll():
		long := first.WidthMM
		if long == o.asked.Paper.WidthMM {
			long = first.HeightMM
		}
		u := o.asked.Unit
		return u.Format(unit.MM(long), 0) + " " + u.Symbol() + " of a roll"
	case n == 1:
		return "1 sheet of " + o.asked.Paper.Name
	default:
		return fmt.Sprintf("%d sheets of %s", n, o.asked.Paper.Name)
	}
}
