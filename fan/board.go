package fan

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
	LengthMM, WidthMM      float64
	MinX, MaxX, MinY, MaxY float64 // the rectangle in the layout's axes
}

// Blank gives the smallest blank.
func (l *Layout) Blank() Blank {
	return blankAround(l.Frame.corners(), l.Spec.SawAllowanceMM)
}

// Offer is a blank that can be had.
type Offer struct {
	Name                           string
	LengthMM, WidthMM, ThicknessMM float64 // thickness 0: not stated
}

// Serves says whether an offered blank holds a board, and how it must lie. The
// blank's length runs along the centreline, and so does the grain.
type Serves struct {
	Offer         Offer
	OK            bool
	SpareLengthMM float64 // left over in length; negative: what is missing
	SpareWidthMM  float64 // left over in width; negative: what is missing
	// NutCrossFromEndMM is from the blank's nut end to the point where the nut
	// line crosses the centreline, CentreFromBassEdgeMM from the blank's bass
	// edge to the centreline, with what is spare shared equally. Both 0 when
	// the blank does not serve.
	NutCrossFromEndMM, CentreFromBassEdgeMM float64
}

// fits is the slack with which an offered size counts as enough: far below a
// saw's, far above rounding, so that a blank of just the stated size serves.
const fits = 1e-6

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
	if !(finite(o.LengthMM) && finite(o.WidthMM) && o.LengthMM > 0 && o.WidthMM > 0) {
		return s
	}
	s.SpareLengthMM, s.SpareWidthMM = plain(o.LengthMM-b.LengthMM), plain(o.WidthMM-b.WidthMM)
	if s.OK = s.SpareLengthMM >= -fits && s.SpareWidthMM >= -fits; s.OK {
		s.NutCrossFromEndMM = plain(s.SpareLengthMM/2 - b.MinX)
		s.CentreFromBassEdgeMM = plain(s.SpareWidthMM/2 + b.MaxY)
	}
	return s
}
