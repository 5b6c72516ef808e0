package fan

import "scalepair/data/unit"

// Board is the fretboard's outline.
type Board struct {
	// Corners go round: nut end bass, body end bass, body end treble, nut end
	// treble. The sides are straight.
	Corners [4]Point
	BodyEnd Across // the end behind the last fret
}

// Board gives the outline.
func (f *Frame) Board() Board {
	return Board{f.corners(), f.lineAt(f.bodyEnd())}
}

// Blank is a fingerboard blank on offer. Its length runs along the centreline,
// and so does the grain.
type Blank struct {
	Name      string      `toml:"name"`
	Length    unit.Length `toml:"length" range:"100 mm, 3000 mm"`
	Width     unit.Length `toml:"width" range:"20 mm, 1000 mm"`
	Thickness unit.Length `toml:"thickness" range:"1 mm, 100 mm"` // 0: not stated
}

// Rectangle lies along the layout's axes.
type Rectangle struct {
	Length, Width          unit.Length
	MinX, MaxX, MinY, MaxY unit.Length
	// Allowance is the saw allowance that it has on every side of the board.
	Allowance unit.Length
}

// LeastBlank gives the smallest rectangle that holds the board with the saw
// allowance on every side.
func (f *Frame) LeastBlank() Rectangle {
	corners, allowance := f.corners(), f.base.spec.SawAllowance
	r := Rectangle{MinX: corners[0].X, MaxX: corners[0].X, MinY: corners[0].Y, MaxY: corners[0].Y, Allowance: allowance}
	for _, p := range corners[1:] {
		r.MinX, r.MaxX = min(r.MinX, p.X), max(r.MaxX, p.X)
		r.MinY, r.MaxY = min(r.MinY, p.Y), max(r.MaxY, p.Y)
	}
	r.MinX, r.MinY = plain(r.MinX-allowance), r.MinY-allowance
	r.MaxX, r.MaxY = r.MaxX+allowance, r.MaxY+allowance
	r.Length, r.Width = r.MaxX-r.MinX, r.MaxY-r.MinY
	return r
}

// Fit reports whether a blank holds a board, and how it must lie.
type Fit struct {
	Blank Blank
	Fits  bool
	// SpareLength and SpareWidth are left over; negative: what is missing.
	SpareLength, SpareWidth unit.Length
	// Near reports that the blank holds the board, but not all of its saw
	// allowance.
	Near bool
	// NutCrossFromEnd is from the blank's nut end to the point where the nut
	// line crosses the centreline, CentreFromBassEdge from the blank's bass
	// edge to the centreline, with what is spare shared equally. Both 0 when
	// the blank does not fit.
	NutCrossFromEnd, CentreFromBassEdge unit.Length
}

// sizeSlack is the slack with which a size counts as enough: far below a saw's,
// far above rounding, so that a blank of just the stated size fits.
const sizeSlack unit.Length = 1e-6 * unit.Millimetre

// Fit judges every blank, in the order given.
func (r Rectangle) Fit(blanks []Blank) []Fit {
	list := make([]Fit, len(blanks))
	for i, b := range blanks {
		list[i] = r.fit(b)
	}
	return list
}

func (r Rectangle) fit(b Blank) Fit {
	s := Fit{Blank: b, SpareLength: plain(b.Length - r.Length), SpareWidth: plain(b.Width - r.Width)}
	switch spare := min(s.SpareLength, s.SpareWidth); {
	case spare >= -sizeSlack:
		s.Fits = true
		s.NutCrossFromEnd = plain(s.SpareLength/2 - r.MinX)
		s.CentreFromBassEdge = plain(s.SpareWidth/2 + r.MaxY)
	case spare >= -2*r.Allowance-sizeSlack:
		s.Near = true
	}
	return s
}
