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

// Form tells how a text that reads as a T was written. headed is the unit of
// its heading, "" for none; an empty text gives the heading's unit alone. Text
// that does not read gives the zero value.
func Form[T Quantity](given, headed string) Written {
	if len(given) > longestText {
		return Written{}
	}
	if w, ok := kindOf[T]().quickForm(strings.TrimSpace(given), headed); ok {
		return w
	}
	s := strings.TrimSpace(plain().Replace(given))
	x, name := splitNumber(s)
	if x == nil && s != "" {
		return Written{}
	}
	if name == "" {
		name = headed
	}
	u, ok := kindOf[T]().find(name)
	if !ok {
		return Written{}
	}
	w := Written{Unit: u.names[0], size: float64(u.num) / float64(u.den)}
	if m := fractionForm.FindStringSubmatch(s); m != nil {
		w.Over, _ = strconv.Atoi(m[4])
	} else if m := decimalForm.FindStringSubmatch(s); m != nil {
		w.Decimals = decimalsOf(m[1], m[2])
	}
	return w
}

// quickForm is Form for the usual case, a plain decimal; false leaves the text
// to the full grammar.
func (k kind) quickForm(s, headed string) (Written, bool) {
	n := 0
	for n < len(s) && (s[n] == '.' || s[n] >= '0' && s[n] <= '9') {
		n++
	}
	name := strings.TrimSpace(s[n:])
	if name == "" {
		name = headed
	}
	u, ok := k.find(name)
	if _, err := strconv.ParseFloat(s[:n], 64); err != nil || !ok {
		return Written{}, false
	}
	_, behind, _ := strings.Cut(s[:n], ".")
	return Written{Unit: u.names[0], Decimals: min(len(behind), mostDecimals), size: float64(u.num) / float64(u.den)}, true
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

// mostDecimals bounds what is printed; nobody measures finer in any unit here.
const mostDecimals = 6

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

// Known tells whether there is a unit to speak in.
func (w Written) Known() bool { return w.Unit != "" }

// Value gives a quantity in SI as a number of the unit; SI does the reverse.
func (w Written) Value(si float64) float64 { return si / w.size }

// SI gives a number of the unit in SI.
func (w Written) SI(x float64) float64 { return x * w.size }

// Text prints a quantity in SI with its unit, as finely as it was written:
// "25 1/2 in", "22.70 in". A value that was reckoned gets a step, in SI, as
// fine as it is known: it may then take more digits. A step of 0 adds none.
func (w Written) Text(si, step float64) string {
	return w.Finer(step).Number(w.Value(si)) + " " + w.Unit
}

// Short prints a quantity of another origin, known to a step in SI, without
// noughts behind: "27.5 in".
func (w Written) Short(si, step float64) string {
	w = w.Finer(step)
	text := w.Number(w.Value(si))
	if strings.Contains(text, ".") {
		text = strings.TrimRight(strings.TrimRight(text, "0"), ".")
	}
	return text + " " + w.Unit
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

// Range prints two bounds in SI with their unit, "7.9 in to 78 in". A bound
// that is no short number in the unit is rounded inwards to two figures, so
// that what is printed will do.
func (w Written) Range(low, high float64) string {
	return short(w.Value(low), math.Ceil) + " " + w.Unit + " to " + short(w.Value(high), math.Floor) + " " + w.Unit
}

// short prints x as it is where four figures do, else rounded to two.
func short(x float64, round func(float64) float64) string {
	if x == 0 {
		return "0"
	}
	y := figures(x, 4)
	if math.Abs(x-y) > 1e-9*math.Abs(x) { // more than a conversion's rounding
		unit := math.Pow(10, math.Floor(math.Log10(math.Abs(x)))-1)
		y = figures(round(x/unit)*unit, 2)
	}
	return strconv.FormatFloat(y, 'f', -1, 64)
}

// figures gives x to n significant figures.
func figures(x float64, n int) float64 {
	y, _ := strconv.ParseFloat(strconv.FormatFloat(x, 'g', n, 64), 64)
	return y
}

// About prints a quantity in SI with its unit to two figures, as an example to
// follow: 300 mm is "12 in".
func (w Written) About(si float64) string {
	return strconv.FormatFloat(figures(w.Value(si), 2), 'f', -1, 64) + " " + w.Unit
}
