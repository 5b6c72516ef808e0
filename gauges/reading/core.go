package reading

import (
	"math"

	"scalepair/data/unit"
)

// Shape is the cross-section of a core wire.
type Shape int

// The shapes. ShapeAssumed is an unknown shape, taken as round and marked
// 'core shape assumed'.
const (
	ShapeAssumed Shape = iota
	Round
	Hex
)

// Area is the cross-section of a core, m2.
//
//	round: A = pi/4 d^2      hex: A = sqrt(3)/2 d^2 = 0.8660 d^2
//
// d: diameter, or width across flats. An assumed shape is taken as round.
// Source: geometry of the circle and the regular hexagon.
func (s Shape) Area(diameter unit.Length) float64 {
	d := diameter.M()
	if s == Hex {
		return math.Sqrt(3) / 2 * d * d
	}
	return math.Pi / 4 * d * d
}

// SecondMoment is what resists bending in a core's cross-section, m4; a regular
// hexagon's is the same about every axis.
//
//	round: I = pi/64 d^4     hex: I = 5 sqrt(3)/144 d^4 = 0.06014 d^4
//
// d: diameter, or width across flats. Source: geometry; the hexagon of side a
// has 5 sqrt(3)/16 a^4, and d = sqrt(3) a.
func (s Shape) SecondMoment(diameter unit.Length) float64 {
	d := diameter.M()
	if s == Hex {
		return 5 * math.Sqrt(3) / 144 * math.Pow(d, 4)
	}
	return math.Pi / 64 * math.Pow(d, 4)
}

// Bed is the diameter that the first wrap lies on: a hex core carries it on
// its corners, 2/sqrt(3) = 1.1547 of the width across flats.
func (s Shape) Bed(d unit.Length) unit.Length {
	if s == Hex {
		return d * unit.Length(2/math.Sqrt(3))
	}
	return d
}
