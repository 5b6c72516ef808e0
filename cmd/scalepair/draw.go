package main

import (
	"slices"
	"strconv"
	"strings"

	"github.com/spf13/cobra"

	"scalepair/cmd/scalepair/build"
	"scalepair/cmd/scalepair/report"
	"scalepair/data/fault"
	"scalepair/fan"
	"scalepair/fan/draw"
	"scalepair/fan/draw/tile"
)

// drawOptions are what draw takes beside a build file, as typed.
type drawOptions struct {
	over             build.Flags
	output           outputFlags // only its unit of lengths is asked for
	out              []string
	as               string
	paper            string
	onePage, strips  bool
	margin, overlap  string
	barAcross, barUp string
	show, hide       string
	left             bool
	remark, date     string
	force            bool
	changed          func(flag string) bool
	asked            tile.Options
	hidden           []draw.LayerName
	files            []drawnFile
	backs            []*fan.Compensation // of the saddle points drawn, nil where not known
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
			o.changed = c.Flags().Changed
			return a.draw(first(args), o)
		},
	}
	o.flags(c)
	return c
}

func (o *drawOptions) flags(c *cobra.Command) {
	o.over.Add(c.Flags())
	o.output.addLengths(c)
	f := c.Flags()
	f.StringArrayVar(&o.out, "out", nil, "`file` to write, ending in .pdf, .svg or .dxf; may be said several times")
	f.StringVar(&o.as, "as", "", "`kind` of files whose ending does not say it: pdf, svg or dxf")
	f.BoolVar(&o.force, "force", false, "replace files that exist")
	f.StringVar(&o.paper, "paper", "A4", "`paper` of a PDF: "+strings.Join(paperNames(), ", ")+", or a roll with its width, such as \"roll 610mm\"")
	f.BoolVar(&o.onePage, "one-page", false, "one page as large as the whole drawing, for a print shop")
	f.BoolVar(&o.strips, "strips", false, "least paper: strips below one another or across a sheet, without the key, the title's words at the foot")
	f.StringVar(&o.margin, "margin", "10mm", "`width` that the printer leaves white on every side")
	f.StringVar(&o.overlap, "overlap", "12mm", "`length` that a sheet goes on beyond its join")
	f.StringVar(&o.barAcross, "bar-across", "", "`length` that the level 100 mm bar of an earlier print measured")
	f.StringVar(&o.barUp, "bar-up", "", "`length` that the upright 100 mm bar of an earlier print measured")
	parts := strings.Join(partNames(), ", ")
	f.StringVar(&o.show, "show", "", "draw these `parts` only: "+parts)
	f.StringVar(&o.hide, "hide", "", "leave these `parts` out")
	f.BoolVar(&o.left, "left-handed", false, "bass side above, as the face of a left-handed board lies")
	f.StringVar(&o.remark, "remark", "", "`words` to print under the title")
	f.StringVar(&o.date, "date", "", "`date` to print, in your own words (default: none)")
	for flag, choices := range map[string][]string{
		"paper": append(paperNames(), "roll 610mm"), "as": {"pdf", "svg", "dxf"}, "show": partNames(), "hide": partNames(),
	} {
		_ = c.RegisterFlagCompletionFunc(flag, words(choices...)) // fails for an unknown flag only
	}
	for _, flag := range []string{"margin", "overlap", "bar-across", "bar-up", "remark", "date"} {
		_ = c.RegisterFlagCompletionFunc(flag, cobra.NoFileCompletions)
	}
}

// paperNames are the cut sheets that --paper knows.
func paperNames() []string {
	var out []string
	for _, p := range tile.Papers() {
		out = append(out, p.Name)
	}
	return out
}

// partNames are the parts of a drawing that --show and --hide know.
func partNames() []string {
	var out []string
	for _, n := range draw.ContentLayers() {
		out = append(out, string(n))
	}
	return out
}

func (a *app) draw(path string, o *drawOptions) error {
	if err := o.check(); err != nil {
		return err
	}
	in, err := a.ready(path, &o.over, &o.output)
	if err != nil {
		return err
	}
	drawing, err := a.drawing(in, o)
	if err != nil {
		return err
	}
	o.asked.Unit = in.Units.Length
	for i := range o.files {
		if err := o.files[i].fill(drawing, o); err != nil {
			return flagPlaces(err, o.places(in.Job.Build.File))
		}
	}
	return a.writeDrawn(o)
}

// places says where the options of a laying out stand. A board too wide for the
// paper that is taken where none is named is the build's matter, and no wrong
// command line.
func (o *drawOptions) places(file string) map[string]string {
	places := tileFlags()
	if !o.changed("paper") {
		places["paper"] = file
	}
	return places
}

// drawing settles pair and gauges, and draws their fan.
func (a *app) drawing(in *report.Input, o *drawOptions) (draw.Drawing, error) {
	l, d, err := a.fretted(in)
	if err != nil {
		return draw.Drawing{}, err
	}
	words := in.DrawingWords(l, d)
	words.LeftHanded, words.Hide, words.Date = o.left, o.hidden, o.date
	if o.remark != "" {
		words.Remarks = o.remark
	}
	if !slices.Contains(o.hidden, draw.LayerSaddles) {
		o.backs = words.Compensations
	}
	return draw.Fan(l, words)
}

// hintCompensations tells which strings' saddle points are theoretical.
func (a *app) hintCompensations(backs []*fan.Compensation) {
	var unknown []string
	for i, back := range backs {
		if back == nil {
			unknown = append(unknown, strconv.Itoa(i+1))
		}
	}
	if unknown != nil {
		a.hint("the compensation of string %s is not known: its saddle point is drawn on the theoretical line, as a ring without a cross",
			strings.Join(unknown, ", "))
	}
}

// writeDrawn writes all files, or none, and says what was written.
func (a *app) writeDrawn(o *drawOptions) error {
	var files []newFile
	for _, f := range o.files {
		files = append(files, newFile{Path: f.path, Text: f.text})
	}
	if err := a.writeFiles(files, o.force); err != nil {
		return err
	}
	a.hintCompensations(o.backs)
	for _, f := range o.files {
		a.hint("%s: wrote %s", f.path, f.what)
	}
	a.hint("print at full size, and measure the 100 mm bars of every sheet before you glue or saw")
	return nil
}

// tileFlags name the flags behind the options of package tile.
func tileFlags() map[string]string {
	return map[string]string{
		"paper": "--paper", "margin": "--margin", "overlap": "--overlap", "bar across": "--bar-across", "bar up": "--bar-up",
	}
}

func flagFault(faults *fault.List, flag, what, given, remedy string) {
	faults.Add(fault.Place{Input: "--" + flag}, what, given, remedy)
}
