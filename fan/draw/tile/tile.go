// Package tile lays a drawing in true size out on sheets that a printer can
// take, ready to be joined again to a tenth of a millimetre.
//
// A long drawing is divided into pieces along its own joins: lines that lie in
// the gap between two slots and lean as those do, so that no cut of the paper
// crosses a slot or runs along one. Neighbouring pieces overlap; both carry the
// join itself, crop marks at its ends, and join marks at its quarter points, where
// tape over the ends does not hide them.
//
// Every sheet carries the longest check bar that it takes along both of its axes
// with the words to measure it, its number, the plan's number and a key map. The
// first asks to be printed alone, the last says what to measure on the whole. A
// printer that is off is corrected from what its bars measured.
//
// Numbers without a unit are millimetres on the printed paper.
//
// In reading order: paper.go and options.go have what is asked, tile.go the plan,
// format.go what a sheet has room for, pieces.go where the drawing is divided,
// arrange.go how pieces share sheets, sheet.go, part.go, marks.go and keymap.go
// what is drawn on one.
package tile

import (
	"fmt"

	"scalepair/data/fault"
	"scalepair/data/unit"
	"scalepair/fan/draw"
)

// edgeMM is left around the drawing on a piece, for crop marks and the sides' names.
const edgeMM = 6.5

// Plan is a drawing laid out on sheets.
type Plan struct {
	Sheets []draw.Sheet
	Pieces []Piece
	// NoKey says that no sheet had room for the drawing's key.
	NoKey bool
	// Across and Up are what the check bars measure on paper.
	Across, Up unit.Length
}

// Lay divides the drawing onto sheets of the paper asked for. Check bars of the
// drawing's own are left out, since every sheet has its own; what its title says
// stands at the foot of the first sheet, and its key on the first sheet that has
// room. The error is a fault with the input "paper", which is too small for the
// board, or "bar-across" or "bar-up", which is no measure of a bar, or a plain
// error where the drawing is not sound.
func Lay(d draw.Drawing, o Options) (Plan, error) {
	return corrected(d, newFormat(d, o))
}

// One puts the whole drawing on one sheet just large enough for it, with the
// same check bars and words. The paper in o is not read.
func One(d draw.Drawing, o Options) (Plan, error) {
	o.Paper = Roll(1000 * unit.Millimetre) // a roll's words
	f := newFormat(d, o)
	f.fitted = true
	return corrected(d, f)
}

// corrected lays a drawing out for a printer that is true, and again for the
// builder's where its bars are known.
func corrected(d draw.Drawing, f format) (Plan, error) {
	if err := d.Sound(); err != nil {
		return Plan{}, fmt.Errorf("tile: %w", err)
	}
	p, err := lay(d, f)
	if err == nil && (f.o.BarAcross != 0 || f.o.BarUp != 0) {
		if f, err = f.correct(p); err == nil {
			p, err = lay(d, f)
		}
	}
	if err != nil {
		return Plan{}, err
	}
	return p, nil
}

func lay(d draw.Drawing, f format) (Plan, error) {
	board := d.Without(draw.LayerBars)
	if !f.fitted {
		board = d.Without(draw.LayerBars, draw.LayerTitle, draw.LayerKey)
	}
	s := newStrip(board, edgeMM, f.o.Overlap.MM())
	w, ok := best(s, f)
	if !ok {
		return Plan{}, tooSmall(s, f)
	}
	l := layout{drawing: board, format: f, way: w, pieces: w.place(s.pieces(w.joins))}
	if !f.fitted {
		l.key = d.Layer(draw.LayerKey)
		l.keyOn, l.keyAt = l.roomForKey()
	}
	area := f.inside(w.width, w.height)
	p := Plan{Pieces: l.pieces, NoKey: len(l.key.Elements) > 0 && l.keyOn < 0,
		Across: unit.MM(f.o.level(area)), Up: unit.MM(f.o.upright(area))}
	for i := range w.sheets() {
		p.Sheets = append(p.Sheets, l.sheet(i))
	}
	return p, nil
}

// tooSmall says what paper the drawing needs.
func tooSmall(s strip, f format) error {
	remedy := "take larger paper"
	if f.o.Paper.IsRoll() {
		remedy = "take a roll at least " + f.o.length(unit.MM(f.fit(s, 0, 0).height+1), 0) + " wide"
	}
	return fault.Fault{
		Place: fault.Place{Input: "paper"}, What: "the board is too wide for this paper",
		Given: f.o.Paper.Name + ", " + f.o.length(f.o.Paper.Width, 1) + " wide", Remedy: remedy + ", or hide layers that stand beside the board",
	}
}
