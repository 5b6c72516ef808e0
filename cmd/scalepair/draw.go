package main

import (
	"path/filepath"
	"slices"
	"strings"

	"github.com/spf13/cobra"

	"scalepair/cmd/scalepair/answer"
	"scalepair/cmd/scalepair/build"
	"scalepair/data/fault"
)

// drawOptions are what draw takes beside a build file.
type drawOptions struct {
	over    build.Flags
	units   answer.Units // only that of lengths is asked for
	drawing answer.Drawing
	out     []string
	as      answer.DrawKind
	force   bool
}

func (a *app) drawCommand() *cobra.Command {
	o := &drawOptions{}
	c := &cobra.Command{
		Use:   "draw [build.toml]",
		Short: "The fan at full size, as PDF to print, SVG, or DXF for a router",
		Long: `draw writes the chosen fan in true size: blank, board, centreline, string lines
with notes and gauges, slots with numbers and end points, nut, saddle points,
the square line and dots. A PDF is divided onto sheets that your printer takes,
with joins that no slot crosses; SVG is one sheet; DXF is a plain drawing in mm.
SVG and DXF have a layer and a colour for every operation, and the outlines of
the slots as wide as your saw's cut, where the build has its kerf.

Print the first sheet alone, at full size, not fitted to the page, and measure
its two bars with a steel rule; then print the rest. Where they are off, give
what they measured with --bar-across and --bar-up, and print again. The paper
shows and checks; the marks decide where the saw goes.`,
		Example: `  scalepair draw --out fan.pdf
  scalepair draw --out fan.svg --out fan.dxf --hide dots,key
  scalepair draw --out strips.pdf --paper Letter --strips --hide saddles
  scalepair draw --out router.dxf --overrun 3mm --left-handed
  scalepair draw --out again.pdf --bar-across 268.4mm --bar-up 180.5mm`,
		Args: buildFile,
		RunE: func(c *cobra.Command, args []string) error {
			kinds, faults := o.kinds()
			faults.Include(fault.Place{}, o.drawing.Settle(kinds))
			if err := faults.Err(); err != nil {
				return err
			}
			return a.draw(first(args), o, kinds)
		},
	}
	o.over.Add(c.Flags())
	f := c.Flags()
	o.units.LengthFlag(f)
	f.StringArrayVar(&o.out, "out", nil, "`file` to write, ending in .pdf, .svg or .dxf; may be said several times")
	answer.TextVar(f, &o.as, "as", "`kind` of files whose ending does not say it: pdf, svg or dxf")
	f.BoolVar(&o.force, "force", false, "replace files that exist")
	o.drawing.Flags(f)
	return c
}

// kinds settles the kind of every file.
func (o *drawOptions) kinds() (kinds []answer.DrawKind, faults fault.List) {
	refuse := func(flag, what, given, remedy string) {
		faults.Add(fault.Place{Input: "--" + flag}, what, given, remedy)
	}
	if len(o.out) == 0 {
		refuse("out", "no file is named", "", "say where the drawing goes: --out fan.pdf")
	}
	seen := map[string]bool{}
	for _, path := range o.out {
		kind := answer.DrawKind(strings.TrimPrefix(strings.ToLower(filepath.Ext(path)), "."))
		known := slices.Contains(answer.DrawKinds, string(kind))
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
		kinds = append(kinds, kind)
	}
	return kinds, faults
}

// draw draws the fan of a build into the files asked for.
func (a *app) draw(path string, o *drawOptions, kinds []answer.DrawKind) error {
	j, err := a.open(path, &o.over, o.units)
	if err != nil {
		return err
	}
	drawn, err := j.Draw(o.drawing, kinds)
	if err != nil {
		return err
	}
	files := make([]newFile, len(drawn))
	for i, d := range drawn {
		files[i] = newFile{o.out[i], d.Text}
	}
	if err := a.writeFiles(files, o.force); err != nil {
		return err
	}
	for i, d := range drawn {
		a.hint("%s: wrote %s", o.out[i], d.What)
	}
	a.hint("print the first sheet alone at full size and measure its bars, then the rest; the paper shows and checks, the marks decide")
	return nil
}
