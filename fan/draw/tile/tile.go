package tile

import (
	"fmt"

	"scalepair/data/fault"
	"scalepair/fan/draw"
)

// edgeMM is left around the drawing on a piece, for crop marks and crosses.
const edgeMM = 8

// Plan is a drawing laid out on sheets.
type Plan struct {
	Sheets []draw.Sheet
	Pieces []Piece
	Turn   float64 // of the pieces on their sheets, radians; not 0 on a diagonal only
	Used   float64 // share of the paper that the pieces cover, 0 to 1
	// NoKey says that the drawing's key was left out.
	NoKey bool
}

// Lay divides the drawing onto sheets of the paper asked for. Check bars of the
// drawing's own are left out, since every sheet has its own; key and title are
// left out of strips and where they would cost a sheet, the key first. What a
// title says that is left out stands at the foot of every sheet. The error is a
// fault.List: an option out of range, or paper too small for the board; or a
// plain error where the drawing is not sound.
func Lay(d draw.Drawing, o Options) (Plan, error) {
	if err := o.check(); err != nil {
		return Plan{}, err
	}
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
	if o.Arrange == Strips {
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
	o.Paper = Roll(1000) // any that passes the check
	if err := o.check(); err != nil {
		return Plan{}, err
	}
	if err := d.Sound(); err != nil {
		return Plan{}, fmt.Errorf("tile: %w", err)
	}
	f := newFormat(o)
	f.fitted = true
	p, ok := lay(d.Without(draw.LayerBars), f, o)
	if !ok {
		panic("tile.One: a sheet made to fit does not")
	}
	return p, nil
}

func lay(d draw.Drawing, f format, o Options) (Plan, bool) {
	s := newStrip(d, edgeMM, o.OverlapMM)
	w, ok := best(s, f, o)
	if !ok {
		return Plan{}, false
	}
	pieces := w.place(s.pieces(w.joins))
	p := Plan{Pieces: pieces, Turn: w.turn}
	for i := range w.sheets() {
		p.Sheets = append(p.Sheets, job{drawing: d, format: f, way: w, pieces: pieces}.sheet(i))
	}
	for _, piece := range pieces {
		p.Used += piece.Window.Width() * piece.Window.Height() * f.sx * f.sy / w.area()
	}
	return p, true
}

// tooSmall says what paper the drawing needs.
func tooSmall(d draw.Drawing, f format, o Options) error {
	var faults fault.List
	need := f.fit(newStrip(d, edgeMM, o.OverlapMM), 0, 0)
	remedy := "take larger paper"
	if o.Paper.IsRoll() {
		remedy = "take a roll at least " + o.length(need.height+1, 0) + " wide"
	}
	faults.Add(fault.Place{Input: "paper"}, "the board is too wide for this paper",
		o.Paper.Name+", "+o.length(o.Paper.WidthMM, 1)+" wide", remedy+", or hide layers that stand beside the board")
	return faults.Err()
}
