package fan

import (
	"math"
)

// Position is where one string crosses a line: a nut slot, a saddle, a pickup's
// pole. Distances "along" follow the slanted line, distances "square" are
// square to the centreline (what a rule laid square across shows).
type Position struct {
	String           int
	At               Point
	AlongFromBassMM  float64 // from the bass outer string, along the line
	AlongFromEdgeMM  float64 // from the board's bass edge, run on where need be, along the line: the nut blank's bass end
	SquareFromBassMM float64 // from the bass outer string, square to the centreline
	SpacingAlongMM   float64 // to the next string on the bass side, along the line; 0 at the bass string
	SpacingSquareMM  float64 // the same square to the centreline
	FromNutMM        float64 // along the string, from its nut end; negative behind the nut
}

// LineAt gives the straight line across the strings that crosses the
// centreline at x = crossMM with its own slant in radians (a pickup).
// The error is a fault.List when a number is not finite, the slant is steeper
// than 60 degrees, or the outer strings have met there.
func (l *Layout) LineAt(crossMM, slantRad float64) (Across, error) {
	var f faults
	crossOK := f.finite("line", "the line's place on the centreline", crossMM)
	if f.finite("line", "the line's slant", slantRad) && !(math.Abs(math.Tan(slantRad)) <= maxTan && math.Abs(slantRad) < math.Pi/2) {
		f.add("line", "the line slants more than 60 degrees", number(slantRad*180/math.Pi)+" degrees", "give its slant from square")
	}
	if err := f.list.Err(); err != nil {
		return Across{}, err
	}
	line := l.Frame.lineAt(crossMM, math.Tan(slantRad))
	if crossOK && !(l.Frame.half(line.Bass.X) > 0 && l.Frame.half(line.Treble.X) > 0) {
		f.add("line", "the outer strings have met before this line", number(crossMM)+" mm", "give a place nearer the strings")
		return Across{}, f.list.Err()
	}
	return line, nil
}

// lineAt finds where a line through the centreline meets the outer strings
// y = ±(s/2 + m x).
func (f *Frame) lineAt(cross, t float64) Across {
	half := f.half(cross)
	line := Across{CrossMM: plain(cross), TanSlant: plain(t), SlantRad: plain(math.Atan(t))}
	line.Bass = on(line, half/(1-float64(f.m*t)))
	line.Treble = on(line, -half/(1+float64(f.m*t)))
	return line
}

// LineBehind is LineAt for a line that crosses the centreline distanceMM
// behind (towards the bridge from) the place where a fret crosses it. The fret
// is real, 0 to the last.
func (l *Layout) LineBehind(fret, distanceMM, slantRad float64) (Across, error) {
	var f faults
	if f.finite("line", "the fret", fret) && (fret < 0 || fret > float64(l.Spec.Frets)) {
		f.add("line", "the fret is off the board", number(fret), "from 0 to the last fret")
	}
	if err := f.list.Err(); err != nil {
		return Across{}, err
	}
	return l.LineAt(l.Frame.crossMM(K(fret))+distanceMM, slantRad)
}

// StringsAt gives every string's place on a line, string 1 first.
func (l *Layout) StringsAt(line Across) []Position {
	t := line.TanSlant
	stretch := math.Sqrt(1 + float64(t*t))
	bassEdge, _ := l.Frame.edges(line.CrossMM, t)
	seats := make([]Position, len(l.Strings))
	for i := len(seats) - 1; i >= 0; i-- {
		s, seat := l.Strings[i], &seats[i]
		u := meets(s.Nut, s.Saddle, line.CrossMM, t)
		seat.String, seat.At, seat.FromNutMM = s.Number, s.At(u), plain(u*s.LengthMM)
		bass := seats[len(seats)-1].At.Y
		seat.SquareFromBassMM = plain(bass - seat.At.Y)
		seat.AlongFromBassMM = seat.SquareFromBassMM * stretch
		seat.AlongFromEdgeMM = plain((bassEdge - seat.At.Y) * stretch)
		if i < len(seats)-1 {
			seat.SpacingSquareMM = seats[i+1].At.Y - seat.At.Y
			seat.SpacingAlongMM = seat.SpacingSquareMM * stretch
		}
	}
	return seats
}
