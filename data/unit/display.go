package unit

import (
	"fmt"
	"math"
	"strconv"
	"strings"
)

// LengthUnit is a unit that lengths are printed in.
type LengthUnit int

// The units of printed lengths. InchFractions are inches in fractions down to
// 1/64.
const (
	Millimetres LengthUnit = iota
	DecimalInches
	InchFractions
)

// ForceUnit is a unit that forces are printed in.
type ForceUnit int

// The units of printed forces.
const (
	Newtons ForceUnit = iota
	PoundsForce
	KilogramsForce
)

var (
	lengthUnitWords = []string{"mm", "in", "in64"}
	forceUnitWords  = []string{"N", "lbf", "kgf"}
)

// ParseLengthUnit reads "mm", "in" or "in64", and the first two under every
// name that a length may be given with, such as "inches".
func ParseLengthUnit(s string) (LengthUnit, error) {
	i, err := pick("length", s, lengths, lengthUnitWords)
	return LengthUnit(i), err
}

// ParseForceUnit reads "N", "lbf" or "kgf", under every name that a force may
// be given with, such as "lb".
func ParseForceUnit(s string) (ForceUnit, error) {
	i, err := pick("force", s, forces, forceUnitWords)
	return ForceUnit(i), err
}

func pick(what, s string, k kind, words []string) (int, error) {
	word := strings.ToLower(strings.Join(strings.Fields(s), ""))
	if u, ok := k.find(word); ok {
		word = strings.ToLower(u.names[0])
	}
	for i, w := range words {
		if word == strings.ToLower(w) {
			return i, nil
		}
	}
	return 0, refuse("no unit for printing a "+what, s, "use "+strings.Join(words, ", "))
}

// String returns the word that ParseLengthUnit reads.
func (u LengthUnit) String() string { return lengthUnitWords[u] }

// String returns the word that ParseForceUnit reads.
func (u ForceUnit) String() string { return forceUnitWords[u] }

// Symbol returns "mm" or "in".
func (u LengthUnit) Symbol() string {
	if u == Millimetres {
		return "mm"
	}
	return "in"
}

// Symbol returns "N", "lbf" or "kgf".
func (u ForceUnit) Symbol() string { return u.String() }

// Value returns the length as a number of this unit.
func (u LengthUnit) Value(l Length) float64 {
	if u == Millimetres {
		return l.MM()
	}
	return l.Inches()
}

// Value returns the force as a number of this unit.
func (u ForceUnit) Value(f Force) float64 {
	switch u {
	case PoundsForce:
		return f.Lbf()
	case KilogramsForce:
		return f.Kgf()
	}
	return f.N()
}

// Format prints the number alone, with decimalsMM decimals in millimetres.
// Decimal inches get two more, so that they are never the coarser figure
// (0.01 in is 0.25 mm, 0.1 in would be 2.5 mm). Fractions go to the nearest
// 1/64, reduced: "25 1/2". It panics on NaN and infinities.
func (u LengthUnit) Format(l Length, decimalsMM int) string {
	switch u {
	case DecimalInches:
		return Fixed(l.Inches(), decimalsMM+2)
	case InchFractions:
		return Fraction(l.Inches(), 64)
	}
	return Fixed(l.MM(), decimalsMM)
}

// Format prints the number alone. decimalsN holds for newtons; pounds-force
// and kilograms-force get one more, being 4 and 10 times as large. It panics
// on NaN and infinities.
func (u ForceUnit) Format(f Force, decimalsN int) string {
	if u == Newtons {
		return Fixed(f.N(), decimalsN)
	}
	return Fixed(u.Value(f), decimalsN+1)
}

// Fraction writes x as whole and reduced fraction, to the nearest 1/over, halves
// away from zero: "25 1/2". It panics on NaN and infinities, and on an over
// below 1.
func Fraction(x float64, over int) string {
	mustBeFinite(x)
	if over < 1 {
		panic("unit: a fraction over nothing")
	}
	n, den := math.Round(math.Abs(x)*float64(over)), float64(over)
	whole := math.Floor(n / den)
	n -= whole * den
	for a, b := n, den; b > 0; a, b = b, math.Mod(a, b) {
		if math.Mod(a, b) == 0 { // b is the greatest common divisor
			n, den = n/b, den/b
			break
		}
	}
	var out string
	switch {
	case n == 0:
		out = Fixed(whole, 0)
	case whole == 0:
		out = fmt.Sprintf("%.0f/%.0f", n, den)
	default:
		out = fmt.Sprintf("%.0f %.0f/%.0f", whole, n, den)
	}
	if x < 0 && out != "0" {
		return "-" + out
	}
	return out
}

// Fixed prints x with that many decimals, ties away from zero, and zero never as
// "-0". It panics on NaN and infinities, which are no output, and on negative
// decimals.
func Fixed(x float64, decimals int) string {
	mustBeFinite(x)
	if decimals < 0 {
		panic("unit: negative number of decimals")
	}
	const tie = 1 + 0x1p-50 // 12.8125 that arithmetic left at 12.812499999999998 is one; FormatFloat takes an exact one to the even digit
	s := strconv.FormatFloat(x*tie, 'f', decimals, 64)
	if strings.Trim(s, "-0.") == "" {
		return strings.TrimPrefix(s, "-")
	}
	return s
}

func mustBeFinite(x float64) {
	if math.IsNaN(x) || math.IsInf(x, 0) {
		panic(fmt.Sprintf("unit: cannot print %v", x))
	}
}
