package main

import (
	"errors"
	"slices"
	"strconv"
	"strings"

	"github.com/spf13/cobra"

	"scalepair/cmd/scalepair/build"
	"scalepair/data/fault"
	"scalepair/data/unit"
	"scalepair/fan"
	"scalepair/fan/draw"
	"scalepair/fan/draw/tile"
)

// drawOptions are what draw takes beside a build file.
type drawOptions struct {
	over    build.Flags
	output  outputFlags // only its unit of lengths is asked for
	files   []drawnFile
	out     []string
	as      drawKind
	onePage bool
	asked   tile.Options
	show    draw.Layers
	drawing draw.Options // as far as flags say it
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
Where key and title would cost a sheet of paper the key is left out, and what
the title says, date and remark with it, stands at the foot of every sheet.

Print at full size, not fitted to the page, and measure the 100 mm bars of every
sheet before you glue or saw. Where they are off, give what they measured with
--bar-across and --bar-up, and print again.`,
		Example: `  scalepair draw --out fan.pdf
  scalepair draw --out fan.svg --out fan.dxf --hide dots,key
  scalepair draw --out strips.pdf --paper Letter --strips --hide saddles
  scalepair draw --out again.pdf --bar-across 99.2mm --bar-up 100.4mm`,
		Args: buildFile,
		RunE: func(c *cobra.Command, args []string) error {
			if err := o.settle(c.Flags()); err != nil {
				return err
			}
			return a.draw(first(args), o, c.Flags().Changed("paper"))
		},
	}
	o.flags(c)
	return c
}

func (o *drawOptions) flags(c *cobra.Command) {
	o.over.Add(c.Flags())
	o.output.addLengths(c)
	o.asked = tile.DefaultOptions()
	const mm = unit.Millimetre
	f := c.Flags()
	f.StringArrayVar(&o.out, "out", nil, "`file` to write, ending in .pdf, .svg or .dxf; may be said several times")
	textVar(f, &o.as, "as", "`kind` of files whose ending does not say it: pdf, svg or dxf")
	f.BoolVar(&o.force, "force", false, "replace files that exist")
	textVar(f, &o.asked.Paper, "paper", "`paper` of a PDF: "+strings.Join(tile.PaperNames(), ", ")+", or a roll with its width, such as \"roll 610mm\" (default: A4)")
	f.BoolVar(&o.onePage, "one-page", false, "one page as large as the whole drawing, for a print shop")
	f.BoolVar(&o.asked.Strips, "strips", false, "least paper: strips below one another or across a sheet, without the key, the title's words at the foot")
	textVar(f, boundedLength{&o.asked.Margin, 3 * mm, 40 * mm}, "margin", "`width` that the printer leaves white on every side (default: 10mm)")
	textVar(f, boundedLength{&o.asked.Overlap, 5 * mm, 40 * mm}, "overlap", "`length` that a sheet goes on beyond its join (default: 12mm)")
	textVar(f, boundedLength{&o.asked.BarAcross, 90 * mm, 110 * mm}, "bar-across", "`length` that the level 100 mm bar of an earlier print measured")
	textVar(f, boundedLength{&o.asked.BarUp, 90 * mm, 110 * mm}, "bar-up", "`length` that the upright 100 mm bar of an earlier print measured")
	parts := draw.ContentLayers().Names()
	textVar(f, &o.show, "show", "draw these `parts` only: "+strings.Join(parts, ", "))
	textVar(f, &o.drawing.Hide, "hide", "leave these `parts` out")
	f.BoolVar(&o.drawing.LeftHanded, "left-handed", false, "bass side above, as the face of a left-handed board lies")
	f.StringVar(&o.drawing.Remarks, "remark", "", "`words` to print under the title")
	f.StringVar(&o.drawing.Date, "date", "", "`date` to print, in your own words (default: none)")
	for flag, choices := range map[string][]string{
		"paper": append(tile.PaperNames(), "roll 610mm"), "as": drawKinds, "show": parts, "hide": parts,
	} {
		_ = c.RegisterFlagCompletionFunc(flag, words(choices...)) // fails for an unknown flag only
	}
	for _, flag := range []string{"margin", "overlap", "bar-across", "bar-up", "remark", "date"} {
		_ = c.RegisterFlagCompletionFunc(flag, cobra.NoFileCompletions)
	}
}

// draw draws the fan of a build into the files asked for. A board too wide for
// the paper that is taken where none is named is the build's matter, and no
// wrong command line.
func (a *app) draw(path string, o *drawOptions, named bool) error {
	in, err := a.ready(path, &o.over, &o.output)
	if err != nil {
		return err
	}
	l, d, err := a.fretted(in)
	if err != nil {
		return err
	}
	words := in.DrawingWords(l, d)
	words.LeftHanded, words.Hide, words.Date, words.Remarks = o.drawing.LeftHanded, o.drawing.Hide, o.drawing.Date, o.drawing.Remarks
	drawing, err := draw.Fan(l, words)
	if err != nil {
		return err
	}
	o.asked.Unit = in.Units.Length
	var files []newFile
	for i := range o.files {
		f := &o.files[i]
		if err := f.fill(drawing, o); err != nil {
			var narrow fault.Fault
			if !errors.As(err, &narrow) {
				return err
			}
			if narrow.Place.Input = "--paper"; !named {
				narrow.Place.Input = in.Run.Build.File
			}
			return narrow
		}
		files = append(files, newFile{Path: f.path, Text: f.text})
	}
	if err := a.writeFiles(files, o.force); err != nil {
		return err
	}
	if !slices.Contains(words.Hide, draw.LayerSaddles) {
		a.hintCompensations(words.Compensations)
	}
	for _, f := range o.files {
		a.hint("%s: wrote %s", f.path, f.what)
	}
	a.hint("print at full size, and measure the 100 mm bars of every sheet before you glue or saw")
	return nil
}

// hintCompensations says which strings' saddle points are theoretical.
func (a *app) hintCompensations(all []*fan.Compensation) {
	var unknown []string
	for i, c := range all {
		if c == nil {
			unknown = append(unknown, strconv.Itoa(i+1))
		}
	}
	if unknown != nil {
		a.hint("the compensation of string %s is not known: its saddle point is drawn on the theoretical line, as a ring without a cross",
			strings.Join(unknown, ", "))
	}
}
