package main

import (
	"github.com/spf13/cobra"

	"scalepair/cmd/scalepair/answer"
	"scalepair/cmd/scalepair/build"
)

// benchOptions are what bench takes beside a build file.
type benchOptions struct {
	output outputFlags
	over   build.Flags
	bench  answer.Bench
	out    string // the sheet
	force  bool
}

func (a *app) benchCommand() *cobra.Command {
	o := &benchOptions{}
	c := &cobra.Command{
		Use:   "bench [build.toml]",
		Short: "The setting-out list: every line, mark, slot and saddle in working order",
		Long: `bench prints what a builder sets out by hand for the chosen pair, in working
order: what to buy, centreline, string lines, nut, marks, the checks before the
first cut, slots with their depth and wire, dots, nut slots, bridge and saddles,
pickups. Marks are rounded to what calipers show: the
resolution that the build file states (caliper_resolution under [measuring] or
[marking]), 0.01 mm or 0.001 in at the finest, in decimals even where lengths go
in fractions.

--out writes the bench sheet instead: two sheets of paper for the choice and what to
buy, six for the bench, with rows to tick; one page of HTML that needs no network.
Templates to print and glue come from draw.`,
		Example: `  scalepair bench
  scalepair bench --calipers 0.05mm
  scalepair bench --calipers 1/64in --only bass-marks,treble-marks
  scalepair bench --out sheet.html --date "3 May"`,
		Args: buildFile,
		RunE: func(_ *cobra.Command, args []string) error { return a.bench(first(args), o) },
	}
	o.output.add(c)
	o.over.Add(c.Flags())
	f := c.Flags()
	o.bench.Flags(f)
	fileVar(f, &o.out, ".html", "out", "write the bench sheet into this HTML `file`")
	f.BoolVar(&o.force, "force", false, "with --out: replace a file that exists")
	return c
}

func (a *app) bench(path string, o *benchOptions) error {
	j, err := a.open(path, &o.over, o.output.units)
	if err != nil {
		return err
	}
	if o.out == "" {
		list, err := j.Bench(o.bench)
		return a.print(&o.output, list, err)
	}
	page, err := j.Sheet(o.bench)
	if err != nil {
		return err
	}
	if err := a.writeFiles([]newFile{{Path: o.out, Text: page}}, o.force); err != nil {
		return err
	}
	a.hint("%s: wrote the bench sheet; open it in a browser, and print it from there", o.out)
	return nil
}
