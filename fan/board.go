package fan

// Board is the fretboard's outline.
type Board struct {
	// Corners go round: nut end bass, heel end bass, heel end treble, nut end
	// treble. The sides are straight.
	Corners [4]Point
	NutEnd  Across // the end behind the nut: parallel to the nut line, the nut seat behind it
	HeelEnd Across // the end behind the last fret
}

// Board gives the outline.
func (l *Layout) Board() Board { return Board{} }

// Blank is the smallest rectangle along the centreline that holds the board
// with the saw allowance on every side.
type Blank struct {
	LengthMM, WidthMM      float64
	MinX, MaxX, MinY, MaxY float64 // the rectangle in the layout's axes
}

// Blank gives the smallest blank.
func (l *Layout) Blank() Blank { return Blank{} }

// Offer is a blank that can be had.
type Offer struct {
	Name                           string
	LengthMM, WidthMM, ThicknessMM float64 // thickness 0: not stated
}

// Serves says whether an offered blank holds a board, and how it must lie. The
// blank's length runs along the centreline.
type Serves struct {
	Offer         Offer
	OK            bool
	SpareLengthMM float64 // left over in length; negative: what is missing
	SpareWidthMM  float64 // left over in width; negative: what is missing
	// NutCrossFromEndMM is from the blank's nut end to the point where the nut
	// line crosses the centreline, CentreFromBassEdgeMM from the blank's bass
	// edge to the centreline, with what is spare shared equally.
	NutCrossFromEndMM, CentreFromBassEdgeMM float64
}

// Serve judges every offer, in the order given.
func (b Blank) Serve(offers []Offer) []Serves { return nil }
