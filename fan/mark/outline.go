package mark

import (
	"math"

	"scalepair/fan"
)

// boardEdges gives the board's outline on the blank: its edges by where they
// cross the base lines, its ends from nut line and last slot.
func (d desk) boardEdges() Task {
	spec, board := d.l.Spec, d.l.Board()
	bass := d.l.Strings[len(d.l.Strings)-1]
	edge := func(name string, x, margin float64) Figure { return d.length(name, lineAt(bass, x)+margin) }
	t := Task{
		Title: "Board edges and ends",
		Do: "On both base lines mark the board's edges, outside the string lines, and join them. Carry the nut line on to both edges. " +
			d.endsText() + " Leave the blank square until the slots are sawn; then saw it to this outline.",
	}
	marginBass, marginTreble := spec.Margins()
	if marginBass == marginTreble {
		t.Figures = append(t.Figures,
			edge("either edge, out from the centreline on the nut end's base line", d.blank.MinX.MM(), marginBass.MM()),
			edge("either edge, out from the centreline on the body end's base line", d.blank.MaxX.MM(), marginBass.MM()))
	} else {
		t.Figures = append(t.Figures,
			edge("bass edge, out from the centreline on the nut end's base line", d.blank.MinX.MM(), marginBass.MM()),
			edge("bass edge, out from the centreline on the body end's base line", d.blank.MaxX.MM(), marginBass.MM()),
			edge("treble edge, out from the centreline on the nut end's base line", d.blank.MinX.MM(), marginTreble.MM()),
			edge("treble edge, out from the centreline on the body end's base line", d.blank.MaxX.MM(), marginTreble.MM()))
	}
	if spec.NutShelf.MM() > 0 {
		t.Figures = append(t.Figures, d.length("nut end behind the nut line, square to it", spec.NutShelf.MM()))
	}
	last := d.l.Frets[spec.Frets].Slot
	return d.bodyEndFigures(t, math.Hypot(board.Corners[1].X.MM()-last.Bass.X.MM(), board.Corners[1].Y.MM()-last.Bass.Y.MM()),
		math.Hypot(board.Corners[2].X.MM()-last.Treble.X.MM(), board.Corners[2].Y.MM()-last.Treble.Y.MM()))
}

func (d desk) bodyEndFigures(t Task, bass, treble float64) Task {
	outer, last := d.l.Strings[len(d.l.Strings)-1], d.l.Frets[len(d.l.Frets)-1].Line
	bassMargin, trebleMargin := d.l.Spec.Margins()
	margins := (bassMargin + trebleMargin).MM()
	t.Figures = append(t.Figures,
		d.length("along the bass edge from the last slot to the body end", bass),
		d.length("along the treble edge from the last slot to the body end", treble),
		d.length("check: the board's width, square across, where the nut line crosses the centreline", 2*lineAt(outer, 0)+margins),
		d.length("check: the same where the last fret crosses it", 2*lineAt(outer, last.Cross.MM())+margins))
	return t
}

// endsText says how nut end and body end run.
func (d desk) endsText() string {
	nut := "The nut line is the board's end."
	switch {
	case d.l.Spec.ZeroFret:
		nut = "The zero fret stands on the nut line. The board goes on behind it, its nut end parallel to the nut line; " +
			"the nut stands there, clear of the fret, and only spaces the strings."
	case d.l.Spec.NutShelf.MM() > 0:
		nut = "The nut end runs parallel to the nut line, behind it by the nut shelf."
	}
	if d.l.Spec.BodyEnd == fan.SquareEnd {
		return nut + " The body end stands square to the centreline."
	}
	return nut + " The body end runs parallel to the last fret."
}
