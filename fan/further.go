package fan

// Seat is where one string crosses a line: a nut slot, a saddle, a pickup's
// pole. Distances "along" follow the slanted line, distances "square" are
// square to the centreline (what a rule laid square across shows).
type Seat struct {
	String           int
	At               Point
	AlongFromBassMM  float64 // from the bass outer string, along the line
	AlongFromEdgeMM  float64 // from the board's bass edge (the nut blank's bass end), along the line
	SquareFromBassMM float64 // from the bass outer string, square to the centreline
	SpacingAlongMM   float64 // to the next string on the bass side, along the line; 0 at the bass string
	SpacingSquareMM  float64 // the same square to the centreline
	FromNutMM        float64 // along the string, from its nut end
}

// LineAt gives the straight line across the strings that crosses the
// centreline at x = crossMM with its own slant in radians (a pickup).
// The error is a fault.List when a number is not finite, the slant is steeper
// than 60 degrees, or the line lies where the outer strings have met.
func (l *Layout) LineAt(crossMM, slantRad float64) (Across, error) { return Across{}, nil }

// LineBehind is LineAt for a line that crosses the centreline distanceMM
// behind (towards the bridge from) the place where a fret crosses it.
func (l *Layout) LineBehind(fret, distanceMM, slantRad float64) (Across, error) {
	return Across{}, nil
}

// StringsAt gives every string's place on a line, string 1 first.
func (l *Layout) StringsAt(line Across) []Seat { return nil }
