package answer

import (
	"slices"
	"strings"

	"github.com/spf13/pflag"

	"scalepair/data/fault"
	"scalepair/data/suggest"
	"scalepair/data/unit"
	"scalepair/fan/draw"
	"scalepair/fan/draw/tile"
)

// Drawing asks for drawings of a fan.
type Drawing struct {
	sheets  tile.Options
	onePage bool
	show    draw.Layers
	words   draw.Options // as far as flags say it
	set     *pflag.FlagSet
}

// Flags defines the flags.
func (o *Drawing) Flags(f *pflag.FlagSet) {
	o.set, o.sheets = f, tile.DefaultOptions()
	const mm = unit.Millimetre
	TextVar(f, &o.sheets.Paper, "paper", "`paper` of a PDF: "+strings.Join(tile.PaperNames(), ", ")+", or a roll with its width, such as \"roll 610mm\" (default: A4)")
	f.BoolVar(&o.onePage, "one-page", false, "one page as large as the whole drawing, for a print shop")
	f.BoolVar(&o.sheets.Strips, "strips", false, "least paper: strips below one another on a sheet, to be cut apart")
	BoundedVar(f, &o.sheets.Margin, 3*mm, 40*mm, "margin", "`width` that the printer leaves white on every side (default: 10mm)")
	BoundedVar(f, &o.sheets.Overlap, 5*mm, 40*mm, "overlap", "`length` that a sheet goes on beyond its join (default: 12mm)")
	BoundedVar(f, &o.sheets.BarAcross, 90*mm, 50000*mm, "bar-across", "`length` that the level bar measured, of a print with the same flags but for this one")
	BoundedVar(f, &o.sheets.BarUp, 90*mm, 50000*mm, "bar-up", "`length` that the upright bar of that print measured")
	BoundedVar(f, &o.words.Overrun, 0, 50*mm, "overrun", "`length` that the outlines of the slots run on beyond the board's edges, for a router (default: 0mm)")
	TextVar(f, &o.show, "show", "draw these `parts` only: "+strings.Join(draw.ContentLayers().Names(), ", "))
	TextVar(f, &o.words.Hide, "hide", "leave these `parts` out")
	f.BoolVar(&o.words.LeftHanded, "left-handed", false, "bass side above, as the face of a left-handed board lies")
	f.StringVar(&o.words.Remarks, "remark", "", "`words` to print under the title")
	f.StringVar(&o.words.Date, "date", "", "`date` to print, in your own words (default: none)")
}

// Settle settles the hidden parts, and refuses flags that contradict one another or
// that no file of the kinds wanted heeds.
func (o *Drawing) Settle(kinds []DrawKind) error {
	var faults fault.List
	if o.set.Changed("show") {
		o.words.Hide = o.show.Others()
	}
	wanted := func(some ...DrawKind) bool {
		return len(kinds) == 0 || slices.ContainsFunc(kinds, func(k DrawKind) bool { return slices.Contains(some, k) })
	}
	for _, c := range []struct {
		when         bool
		flags        []string
		what, remedy string
	}{
		{o.set.Changed("show"), []string{"hide"}, "what to draw is said twice", "say --show or --hide"},
		{slices.Contains(o.words.Hide, draw.LayerTitle), []string{"date", "remark"}, "it stands under the title, which is left out", "leave it out too, or draw the title"},
		{!wanted(PDF), []string{"paper", "one-page", "strips", "margin", "overlap"}, "only a PDF is laid on paper", "name a file that ends in .pdf, or leave it out"},
		{!wanted(PDF, SVG), []string{"bar-across", "bar-up"}, "a DXF is not printed, and not corrected for a printer", "name a file that ends in .pdf or .svg, or leave it out"},
		{o.onePage, []string{"paper", "strips", "overlap"}, "one page is as large as the drawing, and not divided", "leave it out, or --one-page"},
	} {
		for _, flag := range c.flags {
			if c.when && o.set.Changed(flag) {
				faults.Add(fault.Place{Input: "--" + flag}, c.what, "", c.remedy)
			}
		}
	}
	return faults.Err()
}

// DrawKind is a kind of drawing; its word is the ending of its files.
type DrawKind string

// The kinds.
const (
	PDF DrawKind = "pdf"
	SVG DrawKind = "svg"
	DXF DrawKind = "dxf"
)

// DrawKinds are the words of all kinds.
var DrawKinds = []string{string(PDF), string(SVG), string(DXF)}

// UnmarshalText reads one of DrawKinds.
func (k *DrawKind) UnmarshalText(text []byte) error {
	kind := strings.ToLower(string(text))
	if !slices.Contains(DrawKinds, kind) {
		remedy := "take pdf, svg or dxf"
		if meant := suggest.Nearest(kind, DrawKinds); meant != "" {
			remedy = "did you mean " + meant + "?"
		}
		return fault.Fault{What: "there is no such kind of drawing", Given: string(text), Remedy: remedy}
	}
	*k = DrawKind(kind)
	return nil
}
