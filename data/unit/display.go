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

// ParseLengthUnit reads "mm", "in" or "in64".
func ParseLengthUnit(s string) (LengthUnit, error) {
	i, err := pick("length", s, lengthUnitWords)
	return LengthUnit(i), err
}

// ParseForceUnit reads "N", "lbf" or "kgf".
func ParseForceUnit(s string) (ForceUnit, error) {
	i, err := pick("force", s, forceUnitWords)
	return ForceUnit(i), err
}

func pick(what, s string, words []string) (int, error) {
	for i, w := range words {
		if strings.EqualFold(strings.TrimSpace(s), w) {
			return i, nil
		}
	}
	return 0, refuse("no unit for printing a "+what, s, "use "+strings.Join(words, ", "))
}

// String gives the word that ParseLengthUnit reads.
func (u LengthUnit) String() string { return lengthUnitWords[u] }

// String gives the word that ParseForceUnit reads.
func (u ForceUnit) String() string { return forceUnitWords[u] }

// Symbol gives "mm" or "in".
func (u LengthUnit) Symbol() string {
	if u == Millimetres {
		return "mm"
	}
	return "in"
}

// Symbol gives "N", "lbf" or "kgf".
func (u ForceUnit) Symbol() string { return u.String() }

// Value gives the length as a number of this unit.
func (u LengthUnit) Value(l Length) float64 {
	if u == Millimetres {
		return l.MM()
	}
	return l.Inches()
}

// Value gives the force as a number of this unit.
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
		return sixtyFourths(l.Inches())
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

// sixtyFourths writes x inches as whole and reduced fraction, halves away
// from zero.
func sixtyFourths(x float64) string {
	mustBeFinite(x)
	n, den := math.Round(math.Abs(x)*64), 64.0
	whole := math.Floor(n / 64)
	n -= whole * 64
	for n > 0 && math.Mod(n, 2) == 0 {
		n, den = n/2, den/2
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

// Fixed prints x with that many decimals, and zero never as "-0". It panics on
// NaN and infinities, which are no output, and on negative decimals.
func Fixed(x float64, decimals int) string {
	mustBeFinite(x)
	if decimals < 0 {
		panic("unit: negative number of decimals")
	}
	s := strconv.FormatFloat(x, 'f', decimals, 64)
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
