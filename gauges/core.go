package gauges

import (
	"math"

	"scalepair/data"
	"scalepair/data/unit"
)

// area is the cross-section of a core.
//
//	round: A = pi/4 d^2      hex: A = sqrt(3)/2 d^2 = 0.8660 d^2
//
// d: diameter, or width across flats, m; A in m2. An assumed shape is reckoned
// as round. Source: geometry of the circle and the regular hexagon.
func (s Shape) area(d float64) float64 {
	if s == Hex {
		return math.Sqrt(3) / 2 * d * d
	}
	return math.Pi / 4 * d * d
}

// secondMoment is what resists bending in a core's cross-section; a regular
// hexagon's is the same about every axis.
//
//	round: I = pi/64 d^4     hex: I = 5 sqrt(3)/144 d^4 = 0.06014 d^4
//
// d: diameter, or width across flats, m; I in m4. Source: geometry; the
// hexagon of side a has 5 sqrt(3)/16 a^4, and d = sqrt(3) a.
func (s Shape) secondMoment(d float64) float64 {
	if s == Hex {
		return 5 * math.Sqrt(3) / 144 * math.Pow(d, 4)
	}
	return math.Pi / 64 * math.Pow(d, 4)
}

// seat is the diameter that the first wrap lies on: a hex core carries it on
// its corners, 2/sqrt(3) = 1.1547 of the width across flats.
func (s Shape) seat(d float64) float64 {
	if s == Hex {
		return 2 / math.Sqrt(3) * d
	}
	return d
}

// stiffen fills in what follows from the core: area, EA, EI and the
// material's values. Where core or modulus is unknown the stiffness stays 0
// and a note says what that costs.
func (g *Gauge) stiffen(m data.Material) {
	g.DensityKgM3, g.StrengthPa = m.DensityKgM3, m.StrengthPa
	if g.Core == 0 {
		g.note("core unknown: no bend, compensation, inharmonicity or breaking share")
		return
	}
	g.AreaM2 = g.Shape.area(float64(g.Core))
	if g.Family != Plain && g.Shape == ShapeAssumed {
		g.note("core shape assumed round; a hex core of this width has 10 % more steel")
	}
	g.YoungsPa = m.YoungsPa
	if g.YoungsPa == 0 {
		g.note("no modulus for " + g.Material + ": no bend and no compensation")
		return
	}
	g.EA = unit.Force(g.YoungsPa * g.AreaM2)
	g.EI = g.YoungsPa * g.Shape.secondMoment(float64(g.Core))
}

func (g *Gauge) note(text string) { g.Notes = append(g.Notes, text) }
