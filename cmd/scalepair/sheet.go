package main

import (
	"bytes"
	"path/filepath"
	"strings"

	"github.com/spf13/cobra"

	"scalepair/cmd/scalepair/job"
	"scalepair/cmd/scalepair/report"
	"scalepair/cmd/scalepair/sheet"
	"scalepair/data/fault"
)

// sheetOptions are what sheet takes beside a build file. What concerns the
// bench is that of setout.
type sheetOptions struct {
	bench     setoutOptions
	out, date string
	force     bool
}

func (a *app) sheetCommand() *cobra.Command {
	o := &sheetOptions{}
	c := &cobra.Command{
		Use:   "sheet [build.toml]",
		Short: "The bench sheet: choice, strings, fan and setting-out list as one HTML page",
		Long: `sheet writes one HTML page to read on a screen and to print, on some 13 to 20
sheets of paper, the work at the bench from a new sheet on:
what was asked, the ranking and its trade-off as a picture, tension, bending force and
travel of every string, the fan, what to buy, the setting-out list with boxes to
tick, slot depths, nut and saddles, cautions and sources. The page needs no
network. Print it from any browser; templates in true size come from draw.`,
		Example: `  scalepair sheet --out bench.html
  scalepair sheet --out shop.html --lengths in64 --forces lbf --date "3 May"
  scalepair sheet --bass "690 mm" --treble "650 mm" --calipers 0.05mm --out other.html`,
		Args: buildFile,
		RunE: func(_ *cobra.Command, args []string) error { return a.sheet(first(args), o) },
	}
	o.bench.over.Add(c.Flags())
	o.bench.output.addUnits(c)
	f := c.Flags()
	f.StringVar(&o.out, "out", "", "`file` to write, ending in .html or .htm")
	f.BoolVar(&o.force, "force", false, "replace a file that exists")
	f.StringVar(&o.date, "date", "", "`date` to print, in your own words (default: none)")
	o.bench.benchFlags(c)
	_ = c.RegisterFlagCompletionFunc("date", cobra.NoFileCompletions) // fails for an unknown flag only
	return c
}

// check reads the flags of sheet, before any file is opened.
func (o *sheetOptions) check() error {
	var faults fault.List
	switch kind := strings.ToLower(filepath.Ext(o.out)); {
	case o.out == "":
		flagFault(&faults, "out", "no file is named", "", "say where the sheet goes: --out bench.html")
	case kind != ".html" && kind != ".htm":
		flagFault(&faults, "out", "a sheet is a page of HTML", o.out, "end the file's name with .html or .htm")
	}
	_, err := o.bench.parse()
	faults.Include(fault.Place{}, err)
	return faults.Err()
}

func (a *app) sheet(path string, o *sheetOptions) error {
	if err := o.check(); err != nil {
		return err
	}
	in, err := a.ready(path, &o.bench.over, &o.bench.output)
	if err != nil {
		return err
	}
	f, err := a.sheetFor(in, o)
	if err != nil {
		return err
	}
	page, err := report.Sheet(in, f)
	if err != nil {
		return err
	}
	var b bytes.Buffer
	if err := sheet.Write(&b, page); err != nil {
		return err
	}
	if err := a.writeFiles([]newFile{{Path: o.out, Text: b.Bytes()}}, o.force); err != nil {
		return err
	}
	a.hint("%s: wrote the bench sheet; open it in a browser, and print it from there", o.out)
	return nil
}

// sheetFor settles the pair and works out all that its sheet shows.
func (a *app) sheetFor(in *report.Input, o *sheetOptions) (*report.SheetFor, error) {
	resolution, err := o.bench.resolution(in)
	if err != nil {
		return nil, err
	}
	l, d, err := a.fretted(in)
	if err != nil {
		return nil, err
	}
	f := &report.SheetFor{Date: o.date}
	f.SetOut, err = in.Job.SetOut(l, d, job.SetOutOptions{Resolution: resolution, Blank: o.bench.blank, RadiusFirst: o.bench.radiusFirst})
	if err != nil {
		return nil, err
	}
	if f.Advice, err = a.findAdvice(in); err != nil {
		return nil, err
	}
	return f, nil
}

// benchFlags are the flags of the bench that setout and sheet share.
func (o *setoutOptions) benchFlags(c *cobra.Command) {
	f := c.Flags()
	f.StringVar(&o.calipers, "calipers", "", "least `difference` your calipers show, such as 0.05mm, 0.001in or 1/64in (default: the build file's)")
	f.StringVar(&o.blank, "blank", "", "`name` of the blank on offer to work with (default: the first that serves)")
	f.BoolVar(&o.radiusFirst, "radius-first", false, "the board is radiused before it is slotted")
}

func flagFault(faults *fault.List, flag, what, given, remedy string) {
	faults.Add(fault.Place{Input: "--" + flag}, what, given, remedy)
}
