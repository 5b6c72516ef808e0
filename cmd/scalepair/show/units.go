package show

import (
	"math"
	"strings"

	"scalepair/data/unit"
)

// Units prints quantities in the units that the builder asked for. Methods
// named Text add the unit, for sentences; the others give the number alone,
// for cells under a head that names it. All panic on NaN and infinities, and
// none gives "-0".
type Units struct {
	Length unit.LengthUnit
	Force  unit.ForceUnit
}

// Len prints a length given in millimetres. decimals holds for millimetres;
// see unit.LengthUnit.Format.
func (u Units) Len(mm float64, decimals int) string {
	return u.Length.Format(unit.MM(mm), decimals)
}

// LenM prints a length given in metres.
func (u Units) LenM(m float64, decimals int) string {
	return u.Length.Format(unit.Length(m), decimals)
}

// LenText prints a length given in millimetres, with its unit.
func (u Units) LenText(mm float64, decimals int) string {
	return u.Len(mm, decimals) + " " + u.Length.Symbol()
}

// ForceN prints a force given in newtons, to 0.1 N (0.01 lbf, 0.01 kgf).
func (u Units) ForceN(n float64) string {
	return u.Force.Format(unit.Force(n), forceDecimals)
}

// ForceU prints a force and its standard uncertainty, both given in newtons:
// "72.6 ± 0.4". An uncertainty below one step is rounded up to it; 0 (none
// known) is left out. It panics on a negative uncertainty.
func (u Units) ForceU(n, uN float64) string {
	return plusMinus(u.ForceN(n), u.Force.Value(unit.Force(uN)), u.forceDecimals())
}

// ForceText prints a force given in newtons, with its unit.
func (u Units) ForceText(n float64) string {
	return u.ForceN(n) + " " + u.Force.Symbol()
}

// ForceTextU prints "72.6 ± 0.4 N" as ForceU does.
func (u Units) ForceTextU(n, uN float64) string {
	return u.ForceU(n, uN) + " " + u.Force.Symbol()
}

// SignedLen prints a difference of lengths given in millimetres.
func (u Units) SignedLen(mm float64, decimals int) string {
	return withSign(u.Len(mm, decimals))
}

// HeadLen gives a column head with the length unit: "own length mm".
func (u Units) HeadLen(head string) string { return head + " " + u.Length.Symbol() }

// HeadForce gives a column head with the force unit: "tension N".
func (u Units) HeadForce(head string) string { return head + " " + u.Force.Symbol() }

// forceDecimals is the printed step of newtons: 0.1 N is about 0.1 % of a
// string's tension, well below what weighing gives.
const forceDecimals = 1

func (u Units) forceDecimals() int {
	if u.Force == unit.Newtons {
		return forceDecimals
	}
	return forceDecimals + 1
}

// WithU prints x ± its standard uncertainty, with the same decimals; see
// ForceU.
func WithU(x, standard float64, decimals int) string {
	return plusMinus(unit.Fixed(x, decimals), standard, decimals)
}

func plusMinus(x string, standard float64, decimals int) string {
	if standard < 0 {
		panic("show: negative uncertainty")
	}
	if standard == 0 {
		return x
	}
	step := math.Pow10(-decimals)
	return x + " ± " + unit.Fixed(math.Max(standard, step), decimals)
}

// Deg prints an angle given in radians as degrees to 0.1, without the sign °.
func Deg(rad float64) string { return unit.Fixed(rad*180/math.Pi, 1) }

// DegText prints an angle given in radians as "6.9°".
func DegText(rad float64) string { return Deg(rad) + "°" }

// Percent prints a share (1 is the whole) in percent, without the sign.
func Percent(share float64, decimals int) string { return unit.Fixed(100*share, decimals) }

// PercentText prints a share as "54 %".
func PercentText(share float64, decimals int) string { return Percent(share, decimals) + " %" }

// SignedPercent prints a change (0.1 is ten percent more) as "+10".
func SignedPercent(change float64, decimals int) string { return Signed(100*change, decimals) }

// Cents prints an interval in cents to 0.1.
func Cents(cents float64) string { return unit.Fixed(cents, 1) }

// SignedCents prints an error in cents to 0.1, positive sharp: "+1.2".
func SignedCents(cents float64) string { return Signed(cents, 1) }

// Fixed prints x with that many decimals; see unit.Fixed.
func Fixed(x float64, decimals int) string { return unit.Fixed(x, decimals) }

// Signed prints x with its sign; what rounds to zero has none.
func Signed(x float64, decimals int) string { return withSign(unit.Fixed(x, decimals)) }

// withSign puts + before a printed number above zero.
func withSign(s string) string {
	if strings.HasPrefix(s, "-") || strings.Trim(s, "0.") == "" {
		return s
	}
	return "+" + s
}
