package tile

import (
	"math"
	"strings"

	"scalepair/data/fault"
	"scalepair/data/unit"
	"scalepair/fan/draw"
)

// What every sheet carries besides its pieces, in mm.
const (
	columnMM  = 11.0 // at the left: the upright check bar and its words
	uprightMM = 8.0  // of the upright bar in that column
	foundMM   = 3.0  // of the level bar above the foot's lower edge
	overMM    = 7.0  // of the upright bar's foot over that edge
	firstMM   = 11.5 // of the lowest line of instruction
	lineMM    = 4.1  // from line to line of instruction
	smallMM   = 2.6  // capitals of the instruction
	headMM    = 4.0  // capitals of the foot's title
	mapMM     = 58.0 // width of the key map
	mostLines = 24   // of instruction and notes; more are cut
	airMM     = 3.0  // white between foot and drawing, and beside the key map
)

// format is the paper in millimetres of the drawing. Where a printer makes
// 1/sx mm of each millimetre along x, a sheet W wide holds W/sx of the drawing.
type format struct {
	o      Options
	sx, sy float64
	drawn  draw.Drawing // whose words stand at the foot
	fixed  string       // what a correction says
	mapped bool         // the foot has a key map
	fitted bool         // the sheet is to be just as large as the drawing needs
}

func newFormat(d draw.Drawing, o Options) format {
	return format{o: o, sx: 1, sy: 1, drawn: d, mapped: !o.Paper.IsRoll()}
}

// correct gives the format for the printer that made of p's bars what was
// measured.
func (f format) correct(p Plan) (format, error) {
	words := "CORRECTED for a printer that made "
	one := func(input string, bar, measured unit.Length, way string) (float64, error) {
		if measured == 0 {
			measured = bar
		}
		if off := measured.MM() / bar.MM(); !(off >= 0.9 && off <= 1.1) {
			return 0, fault.Fault{Place: fault.Place{Input: input}, What: "this is no measure of that bar", Given: f.o.length(measured, 1),
				Remedy: "give what the bar of " + f.o.length(bar, 0) + " measured on a print of the same paper"}
		}
		words += f.o.length(measured, 2) + " of the bar of " + f.o.length(bar, 0) + " " + way
		return bar.MM() / measured.MM(), nil
	}
	var err error
	if f.sx, err = one("bar-across", p.Across, f.o.BarAcross, "across and "); err != nil {
		return f, err
	}
	if f.sy, err = one("bar-up", p.Up, f.o.BarUp, "up."); err != nil {
		return f, err
	}
	f.fixed = words
	return f, nil
}

// inside is the area within the white margins of a sheet of that size, in
// millimetres of the drawing.
func (f format) inside(width, height float64) draw.Rect {
	margin := f.o.Margin.MM()
	return draw.Rect{
		Min: draw.Point{X: margin / f.sx, Y: margin / f.sy},
		Max: draw.Point{X: (width - margin) / f.sx, Y: (height - margin) / f.sy},
	}
}

// content is the area for pieces on a sheet of that size.
func (f format) content(width, height float64) draw.Rect {
	area := f.inside(width, height)
	area.Min.Y += f.footHeight(area.Width(), true, false)
	area.Min.X += columnMM
	return area
}

// lines is the foot's text under the heading: the plan's number beside the key
// map, then what the whole width has room for. The first sheet has what the title
// says; first and last have what to measure on the whole drawing. No sheet has
// more than a first one that is not the last.
func (f format) lines(insideWidth float64, first, last bool) []string {
	d, room := f.drawn, f.besideMap(insideWidth)
	plan := draw.Wrap(d.PlanLine, smallMM, room, 2)
	var words []string
	if first {
		alone := "Print at full size, not fitted to the page, on one side of the paper."
		if f.mapped && !last {
			alone = "Print this one alone, " + strings.TrimPrefix(alone, "Print ") + " Measure both bars from end to end, then print the rest."
		}
		words = append(words, alone+" If a bar is not as long as it says, print again with what both measured (--bar-across, --bar-up).", f.fixed)
		if strings.HasSuffix((draw.Text{Height: headMM, Room: room, Body: "Sheet 10 of 10 · " + d.Title}).Shown(), "…") {
			words = append(words, d.Title)
		}
		if !f.fitted {
			words = append(words, d.Notes...)
		}
	} else {
		words = append(words, f.fixed)
	}
	common := "Measure both bars."
	if f.mapped {
		common = "Measure both bars of every sheet. Cut one sheet along the dotted join, lay it on its neighbour so that the diamonds meet, and tape it."
	}
	words = append(words, common+" The paper shows and checks; the marks decide where the saw goes.")
	if (first || last) && !f.fitted {
		words = append(words, d.Checks...)
	}
	return append(plan, draw.Wrap(strings.Join(words, "\n"), smallMM, insideWidth-columnMM, mostLines)...)
}

// besideMap is the room for words beside the key map.
func (f format) besideMap(insideWidth float64) float64 {
	if f.mapped {
		return insideWidth - columnMM - mapMM - airMM
	}
	return insideWidth - columnMM
}

func (f format) footHeight(insideWidth float64, first, last bool) float64 {
	return firstMM + lineMM*float64(len(f.lines(insideWidth, first, last))) + headMM + airMM
}

// fit is a sheet just large enough for a strip; a width or a height above 0 is
// settled already.
func (f format) fit(s strip, width, height float64) way {
	const leastMM = 100 // of either bar
	margin := f.o.Margin.MM()
	if width == 0 {
		width = math.Max(s.room.Width()+columnMM, leastMM)*f.sx + 2*margin
	}
	foot := f.footHeight(f.inside(width, 1).Width(), true, false)
	if height == 0 {
		height = (math.Max(s.room.Height(), leastMM)+foot)*f.sy + 2*margin
	}
	w := way{width: width, height: height, content: f.content(width, height), perSheet: 1}
	// What was fitted must not fail to fit by a rounding.
	const roundingMM = 1e-6
	if w.content.Height()+roundingMM < s.room.Height() {
		w.perSheet = 0
	}
	w.content.Max.X += roundingMM
	return w
}

// rollWays lie along the roll and across it.
func (f format) rollWays(s strip) []way {
	return []way{f.fit(s, 0, f.o.Paper.Width.MM()), f.fit(s, f.o.Paper.Width.MM(), 0)}
}
