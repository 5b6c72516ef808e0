package tile

import (
	"math"
	"strings"

	"scalepair/data/unit"
	"scalepair/fan/draw"
)

// What every sheet carries besides its pieces, in mm.
const (
	columnMM  = 11.0 // at the left: the upright check bar and its words
	uprightMM = 8.0  // of the upright bar in that column
	foundMM   = 3.0  // of the level bar above the foot's lower edge
	firstMM   = 11.5 // of the lowest line of instruction
	lineMM    = 4.8  // from line to line of instruction
	smallMM   = 3.0  // capitals of the instruction
	headMM    = 4.0  // capitals of the foot's title
	mapMM     = 58.0 // width of the key map
	mostLines = 18   // of instruction and notes; more are cut
	airMM     = 3.0  // white between foot and drawing, and beside the key map
)

// format is the paper in millimetres of the drawing. Where a printer makes
// 1/sx mm of each millimetre along x, a sheet W wide holds W/sx of the drawing.
type format struct {
	paper  Paper
	margin float64
	sx, sy float64
	words  string // the instruction at every sheet's foot, after what a title says
	title  string // stands in the foot whole, where its heading has no room
	mapped bool   // the foot has a key map
	fitted bool   // the sheet is to be just as large as the drawing needs
}

func newFormat(o Options) format {
	sx, sy := o.scale()
	f := format{paper: o.Paper, margin: o.Margin.MM(), sx: sx, sy: sy, mapped: !o.Paper.IsRoll()}
	f.words = instruction(o, f.mapped)
	return f
}

// with gives the format with what a title says at the foot of every sheet.
func (f format) with(title string, notes []string) format {
	if len(notes) > 0 {
		f.title, f.words = title, strings.Join(notes, "\n")+"\n"+f.words
	}
	return f
}

// inside is the area within the white margins of a sheet of that size, in
// millimetres of the drawing.
func (f format) inside(width, height float64) draw.Rect {
	return draw.Rect{
		Min: draw.Point{X: f.margin / f.sx, Y: f.margin / f.sy},
		Max: draw.Point{X: (width - f.margin) / f.sx, Y: (height - f.margin) / f.sy},
	}
}

// content is the area for pieces on a sheet of that size.
func (f format) content(width, height float64) draw.Rect {
	area := f.inside(width, height)
	area.Min.Y += f.footHeight(area.Width())
	area.Min.X += columnMM
	return area
}

// lines breaks the instruction to the room beside the key map.
func (f format) lines(insideWidth float64) []string {
	room, words := f.wordsRoom(insideWidth), f.words
	if strings.HasSuffix((draw.Text{Height: headMM, Room: room, Body: "Sheet 10 of 10 · " + f.title}).Shown(), "…") {
		words = f.title + "\n" + words
	}
	return draw.Wrap(words, smallMM, room, mostLines)
}

func (f format) wordsRoom(insideWidth float64) float64 {
	if f.mapped {
		return insideWidth - mapMM - airMM
	}
	return insideWidth
}

func (f format) footHeight(insideWidth float64) float64 {
	return firstMM + lineMM*float64(len(f.lines(insideWidth))) + headMM + airMM
}

// fit is a sheet just large enough for a strip; along gives its width, or its
// height, when that is settled already (0 when not).
func (f format) fit(s strip, width, height float64) way {
	if width == 0 {
		least := math.Max(s.room.Width()+columnMM, draw.BarLength)
		width = least*f.sx + 2*f.margin
	}
	if height == 0 {
		foot := f.footHeight(f.inside(width, 1).Width())
		least := math.Max(s.room.Height(), draw.BarLength+airMM)
		height = (least+foot)*f.sy + 2*f.margin
	}
	w := way{width: width, height: height, content: f.content(width, height), perSheet: 1}
	// What was fitted must not fail to fit by a rounding.
	const roundingMM = 1e-6
	if w.content.Height()+roundingMM < math.Max(s.room.Height(), draw.BarLength) {
		w.perSheet = 0
	}
	w.content.Max.X += roundingMM
	return w
}

// rollWays lie along the roll and across it.
func (f format) rollWays(s strip) []way {
	return []way{f.fit(s, 0, f.paper.Width.MM()), f.fit(s, f.paper.Width.MM(), 0)}
}

// instruction is what the foot of every sheet says.
func instruction(o Options, several bool) string {
	words := "Print at full size, not fitted to the page. Before you glue or saw, both bars must measure 100 mm; " +
		"if one does not, give both lengths and print again. "
	if several {
		words += "Cut one sheet along the dotted join and lay it on its neighbour so that the crosses meet. "
	}
	if o.BarAcross != 0 || o.BarUp != 0 {
		across, up := o.bars()
		x, y := o.scale()
		two := func(v float64) string { return unit.Fixed(v, 2) }
		words += "CORRECTED for a printer whose bars measured " + two(across) + " mm across and " + two(up) + " mm up: drawn " +
			two(100*x) + " % of x and " + two(100*y) + " % of y."
	}
	return words
}
