// Package tile lays a drawing in true size out on sheets that a printer can
// take, ready to be joined again to a tenth of a millimetre.
//
// A long drawing is divided into pieces along its own joins: lines that lie in
// the gap between two slots and lean as those do, so that no cut of the paper
// crosses a slot or runs along one. Neighbouring pieces overlap; both carry the
// join itself, crop marks at its ends and two registration crosses on it.
//
// Every sheet carries a check bar of 100 mm along both of its axes with the
// words to measure it, its number, and a key map. A printer that is off is
// corrected from what its bars measured.
//
// Numbers without a unit are millimetres on the printed paper.
//
// In reading order: paper.go and options.go have what is asked, tile.go the plan,
// format.go what a sheet has room for, pieces.go where the drawing is divided,
// arrange.go how pieces share sheets, sheet.go, marks.go and keymap.go what is
// drawn on one.
package tile

import (
	"fmt"

	"scalepair/data/fault"
	"scalepair/data/unit"
	"scalepair/fan/draw"
)

// edgeMM is left around the drawing on a piece, for crop marks and crosses.
const edgeMM = 8

// Plan is a drawing laid out on sheets.
type Plan struct {
	Sheets []draw.Sheet
	Pieces []Piece
	Turn   float64 // of the pieces on their sheets, radians; not 0 on a diagonal only
	// NoKey says that the drawing's key was left out.
	NoKey bool
}

// Lay divides the drawing onto sheets of the paper asked for. Check bars of the
// drawing's own are left out, since every sheet has its own; key and title are
// left out of strips and where they would cost a sheet, the key first. What a
// title says that is left out stands at the foot of every sheet. The error is a
// fault with the input "paper", which is too small for the board, or a plain
// error where the drawing is not sound.
func Lay(d draw.Drawing, o Options) (Plan, error) {
	if err := d.Sound(); err != nil {
		return Plan{}, fmt.Errorf("tile: %w", err)
	}
	d = d.Without(draw.LayerBars)
	bare := d.Without(draw.LayerTitle, draw.LayerKey)
	f := newFormat(o).with(d.Title, d.Notes)
	plan, ok := lay(bare, f, o)
	if !ok {
		return Plan{}, tooSmall(bare, f, o)
	}
	plan.NoKey = len(d.Layer(draw.LayerKey).Elements) > 0
	if o.Strips {
		return plan, nil
	}
	for _, fuller := range []draw.Drawing{d, d.Without(draw.LayerKey)} {
		if full, ok := lay(fuller, newFormat(o), o); ok && len(full.Sheets) <= len(plan.Sheets) {
			full.NoKey = plan.NoKey && len(fuller.Layer(draw.LayerKey).Elements) == 0
			return full, nil
		}
	}
	return plan, nil
}

// One puts the whole drawing on one sheet just large enough for it, with the
// same check bars and words. The paper in o is not read.
func One(d draw.Drawing, o Options) (Plan, error) {
	if err := d.Sound(); err != nil {
		return Plan{}, fmt.Errorf("tile: %w", err)
	}
	o.Paper = Roll(1000 * unit.Millimetre) // a roll's words
	f := newFormat(o)
	f.fitted = true
	p, ok := lay(d.Without(draw.LayerBars), f, o)
	if !ok {
		panic("tile.One: a sheet made to fit does not")
	}
	return p, nil
}

func lay(d draw.Drawing, f format, o Options) (Plan, bool) {
	s := newStrip(d, edgeMM, o.Overlap.MM())
	w, ok := best(s, f, o.Strips)
	if !ok {
		return Plan{}, false
	}
	p := Plan{Pieces: w.place(s.pieces(w.joins)), Turn: w.turn}
	for i := range w.sheets() {
		p.Sheets = append(p.Sheets, layout{drawing: d, format: f, way: w, pieces: p.Pieces}.sheet(i))
	}
	return p, true
}

// tooSmall says what paper the drawing needs.
func tooSmall(d draw.Drawing, f format, o Options) error {
	need := f.fit(newStrip(d, edgeMM, o.Overlap.MM()), 0, 0)
	remedy := "take larger paper"
	if o.Paper.IsRoll() {
		remedy = "take a roll at least " + o.length(unit.MM(need.height+1), 0) + " wide"
	}
	return fault.Fault{
		Place: fault.Place{Input: "paper"}, What: "the board is too wide for this paper",
		Given: o.Paper.Name + ", " + o.length(o.Paper.Width, 1) + " wide", Remedy: remedy + ", or hide layers that stand beside the board",
	}
}
