// Package trace records the steps of a calculation where the work is to be
// shown. A nil *Trace records nothing, so that a calculation has one form,
// whether anybody watches it or not.
package trace

import "strings"

// Step is one line of the work: a number and where it came from.
type Step struct {
	Symbol  string  // as the formulas of later steps write it; may be empty
	Name    string  // what it is, in plain words; may be empty
	Formula string  // in the symbols of the steps above; empty for a given number
	Value   float64 // in Unit
	Unit    string  // SI, "cents" or "%"; empty for a pure number
	Source  string  // of the formula or of the number
	Digits  int     // significant digits to carry, so that later steps come out
}

// defaultDigits is what a step carries unless the trace says otherwise: a pocket
// calculator then gives later steps to six digits.
const defaultDigits = 7

// Trace gathers steps. The zero value is ready to use.
type Trace struct {
	Steps []Step
	// Digits is what the next steps carry; 0 stands for seven.
	Digits int
}

// Step records a step and gives its value back. symbol is the symbol, a name in
// plain words behind it after a comma and a space: "q, tension if it did not
// stretch"; without a symbol it begins with the comma.
func (t *Trace) Step(symbol, formula string, value float64, unit, source string) float64 {
	if t == nil {
		return value
	}
	short, name, _ := strings.Cut(symbol, ", ")
	digits := t.Digits
	if digits == 0 {
		digits = defaultDigits
	}
	t.Steps = append(t.Steps, Step{short, name, formula, value, unit, source, digits})
	return value
}

// Given records a number that is not computed here, and gives it back.
func (t *Trace) Given(symbol string, value float64, unit, source string) float64 {
	return t.Step(symbol, "", value, unit, source)
}

// Carry sets the digits that the next steps carry; 0 stands for seven.
func (t *Trace) Carry(digits int) {
	if t != nil {
		t.Digits = digits
	}
}
