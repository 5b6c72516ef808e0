package unit

import (
	"math"
	"strconv"
	"strings"
)

// Quantity is what can be written in several units.
type Quantity interface {
	Length | Mass | Force | LinearDensity
}

// Written is how a quantity was written down, so that messages can speak of it
// in the builder's own unit and no finer than the builder did. The zero value
// is not known.
type Written struct {
	Unit     string // as messages call it: "mm", "in", "lb"; "" not known
	Decimals int    // digits behind the point
	Over     int    // of a fraction: 16 in "25 3/16 in"; 0 for a decimal
	size     float64
}

// mostDecimals bounds what is printed; nobody measures finer in any unit here.
const mostDecimals = 6

// Form returns how a text that reads as a T was written. headed is the unit of
// its heading, "" for none; an empty text stands for the heading's unit alone.
// Text that does not read gives the zero value.
func Form[T Quantity](given, headed string) Written {
	if given == "" {
		given = "0 " + headed
	}
	_, form, _ := kindOf[T]().parse(given, headed)
	return form
}

func kindOf[T Quantity]() kind {
	switch any(*new(T)).(type) {
	case Mass:
		return masses
	case Force:
		return forces
	case LinearDensity:
		return linearDensities
	}
	return lengths
}

// decimalsOf counts the digits behind the point of "25.50", with an exponent
// such as "e-3" or "" for none.
func decimalsOf(digits, exponent string) int {
	_, behind, _ := strings.Cut(digits, ".")
	shift := 0
	if exponent != "" {
		shift, _ = strconv.Atoi(exponent[1:])
	}
	return min(max(0, len(behind)-shift), mostDecimals)
}

// Known reports whether there is a unit to speak in.
func (w Written) Known() bool { return w.Unit != "" }

// Value returns a quantity in SI as a number of the unit; SI does the reverse.
func (w Written) Value(si float64) float64 { return si / w.size }

// SI returns a number of the unit in SI.
func (w Written) SI(x float64) float64 { return x * w.size }

// Text prints a quantity in SI with its unit, as finely as it was written:
// "25 1/2 in", "22.70 in". A value that was worked out gets a step, in SI, as
// fine as it is known: it may then take more digits. A step of 0 adds none.
func (w Written) Text(si, step float64) string {
	return w.Finer(step).Number(w.Value(si)) + " " + w.Unit
}

// Finer is the same form with as many digits as a step in SI needs: 0.5 needs
// one decimal, 0.03 two. A fraction goes down to halves of halves, 1/64 at
// most.
func (w Written) Finer(step float64) Written {
	if step <= 0 {
		return w
	}
	if w.Over > 0 {
		for w.Over < 64 && float64(w.Over)*step < w.size*(1-1e-9) {
			w.Over *= 2
		}
		return w
	}
	needed := math.Ceil(-math.Log10(w.Value(step)) - 1e-9)
	w.Decimals = max(w.Decimals, int(min(needed, mostDecimals)))
	return w
}

// Number prints a number of the unit, without the unit.
func (w Written) Number(x float64) string {
	if w.Over > 0 {
		return Fraction(x, w.Over)
	}
	return Fixed(x, w.Decimals)
}

// Range prints two bounds in SI with their unit, "7.874 in to 78.74 in".
func (w Written) Range(low, high float64) string {
	return w.About(low, 4) + " to " + w.About(high, 4)
}

// About prints a quantity in SI with its unit, to that many significant figures.
func (w Written) About(si float64, figures int) string {
	x, _ := strconv.ParseFloat(strconv.FormatFloat(w.Value(si), 'g', figures, 64), 64)
	return strconv.FormatFloat(x, 'f', -1, 64) + " " + w.Unit
}
