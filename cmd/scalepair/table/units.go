package table

import (
	"math"
	"strings"

	"scalepair/data/unit"
)

// Units are the units that a builder wants printed. Methods named ...Text add
// the unit, for sentences; the others give the number alone, for cells under a
// heading that names it. All panic on NaN and infinities, and none gives "-0".
type Units struct {
	Length unit.LengthUnit
	Force  unit.ForceUnit
}

// forceDecimals is the printed step of newtons: 0.1 N is about 0.1 % of a
// string's tension, well below what weighing gives.
const forceDecimals = 1

// Len prints a length. decimals holds for millimetres; see
// unit.LengthUnit.Format.
func (u Units) Len(l unit.Length, decimals int) string { return u.Length.Format(l, decimals) }

// AtLeastText prints a length with its unit, rounded up, so that what is cut to it
// is never short.
func (u Units) AtLeastText(l unit.Length, decimals int) string {
	step := unit.Millimetre * math.Pow10(-decimals)
	switch u.Length {
	case unit.DecimalInches:
		step = unit.Inch * math.Pow10(-decimals-2)
	case unit.InchFractions:
		step = unit.Inch / 64
	}
	steps := math.Ceil(l.M()/step - 1e-6) // less than that is arithmetic
	return u.LenText(unit.Length(steps*step), decimals)
}

// LenText prints a length with its unit.
func (u Units) LenText(l unit.Length, decimals int) string {
	return u.Len(l, decimals) + " " + u.Length.Symbol()
}

// Density prints a linear density: g/m to 0.0001, or lb/in as finely where
// lengths are in inches.
func (u Units) Density(w unit.LinearDensity) string {
	if u.Length == unit.Millimetres {
		return unit.Fixed(w.GramsPerMetre(), 4)
	}
	return unit.Fixed(w.PoundsPerInch(), 8)
}

// DensitySymbol is "g/m" or "lb/in".
func (u Units) DensitySymbol() string {
	if u.Length == unit.Millimetres {
		return "g/m"
	}
	return "lb/in"
}

// DensityText prints a linear density with its unit.
func (u Units) DensityText(w unit.LinearDensity) string {
	return u.Density(w) + " " + u.DensitySymbol()
}

// Decimal is these units with inches in decimals: a diameter or the length of a
// piece is not read in sixty-fourths.
func (u Units) Decimal() Units {
	if u.Length == unit.InchFractions {
		u.Length = unit.DecimalInches
	}
	return u
}

// Newtons prints a force to 0.1 N (0.01 lbf, 0.01 kgf).
func (u Units) Newtons(f unit.Force) string { return u.Force.Format(f, forceDecimals) }

// ForceText prints a force with its unit.
func (u Units) ForceText(f unit.Force) string { return u.Newtons(f) + " " + u.Force.Symbol() }

// ForceUText prints "72.6 ± 0.4 N". An uncertainty below one printed step is
// shown as that step; one of 0 is left out.
func (u Units) ForceUText(f unit.Uncertain[unit.Force]) string {
	if f.U == 0 {
		return u.ForceText(f.Value)
	}
	return pair(u.Newtons(f.Value), u.Newtons(max(f.U, unit.Force(u.leastForce())))) + " " + u.Force.Symbol()
}

// leastForce is one printed step, in newtons.
func (u Units) leastForce() float64 {
	step := math.Pow10(-forceDecimals)
	if u.Force != unit.Newtons {
		step /= 10
	}
	return step / u.Force.Value(1)
}

// Deg prints an angle in degrees to 0.1, without the sign.
func Deg(a unit.Angle) string { return unit.Fixed(a.Degrees(), 1) }

// DegText prints an angle as "6.9°".
func DegText(a unit.Angle) string { return Deg(a) + "°" }

// PercentText prints a ratio as "54 %".
func PercentText(r unit.Ratio, decimals int) string { return unit.Fixed(r.Percent(), decimals) + " %" }

// SignedPercentText prints a change as "+10 %".
func SignedPercentText(r unit.Ratio, decimals int) string { return WithSign(PercentText(r, decimals)) }

// WithSign puts + before a printed number above zero.
func WithSign(s string) string {
	if strings.HasPrefix(s, "-") || strings.Trim(s, "0. %") == "" || s == unknown {
		return s
	}
	return "+" + s
}
