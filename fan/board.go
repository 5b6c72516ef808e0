package fan

import "scalepair/data/unit"

// Board is the fretboard's outline.
type Board struct {
	// Corners go round: nut end bass, body end bass, body end treble, nut end
	// treble. The sides are straight.
	Corners [4]Point
	NutEnd  Across // the end behind the nut: parallel to the nut line, the nut shelf behind it
	BodyEnd Across // the end behind the last fret
}

// Board gives the outline.
func (l *Layout) Board() Board {
	f := &l.Frame
	return Board{
		Corners: f.corners(),
		NutEnd:  f.lineAt(f.nutShelf()),
		BodyEnd: f.lineAt(f.bodyEnd()),
	}
}

// Blank is the smallest rectangle along the centreline that holds the board
// with the saw allowance on every side.
type Blank struct {
	Length, Width          unit.Length
	MinX, MaxX, MinY, MaxY unit.Length // the rectangle in the layout's axes
}

// Blank gives the smallest blank.
func (l *Layout) Blank() Blank {
	return blankAround(l.Frame.corners(), l.Spec.SawAllowance)
}

// Offer is a blank that can be had.
type Offer struct {
	Name                     string
	Length, Width, Thickness unit.Length // thickness 0: not stated
}

// Serves says whether an offered blank holds a board, and how it must lie. The
// blank's length runs along the centreline, and so does the grain.
type Serves struct {
	Offer       Offer
	OK          bool
	SpareLength unit.Length // left over in length; negative: what is missing
	SpareWidth  unit.Length // left over in width; negative: what is missing
	// NutCrossFromEnd is from the blank's nut end to the point where the nut
	// line crosses the centreline, CentreFromBassEdge from the blank's bass
	// edge to the centreline, with what is spare shared equally. Both 0 when
	// the blank does not serve.
	NutCrossFromEnd, CentreFromBassEdge unit.Length
}

// fits is the slack with which an offered size counts as enough: far below a
// saw's, far above rounding, so that a blank of just the stated size serves.
const fits unit.Length = 1e-6 * unit.Millimetre

// Serve judges every offer, in the order given. An offer without a positive
// finite length and width does not serve.
func (b Blank) Serve(offers []Offer) []Serves {
	list := make([]Serves, len(offers))
	for i, o := range offers {
		list[i] = b.serve(o)
	}
	return list
}

func (b Blank) serve(o Offer) Serves {
	s := Serves{Offer: o}
	if !(finite(o.Length.M()) && finite(o.Width.M()) && o.Length > 0 && o.Width > 0) {
		return s
	}
	s.SpareLength, s.SpareWidth = plain(o.Length-b.Length), plain(o.Width-b.Width)
	if s.OK = s.SpareLength >= -fits && s.SpareWidth >= -fits; s.OK {
		s.NutCrossFromEnd = plain(s.SpareLength/2 - b.MinX)
		s.CentreFromBassEdge = plain(s.SpareWidth/2 + b.MaxY)
	}
	return s
}
