package gauges

import (
	"math"
	"strconv"

	"scalepair/data/unit"
)

// slip is a value that may have been meant, and what would have happened then.
type slip struct {
	rank  int // likeliest first
	value float64
	text  string // the value with its unit
	what  string
}

// Ranks of slips; judgement.
const (
	rankSwap = iota
	rankPoint
	rankRuler
	rankCount
	rankOctave
	rankInch
	rankDigit
)

// slips lists the values that a slip may have turned into this one, as far as
// they may count.
func (e entered) slips(counts func(value float64) bool) []slip {
	var out []slip
	add := func(rank int, value float64, what string) {
		if value > 0 && value != e.x && counts(value) {
			out = append(out, slip{rank, value, e.show(value), what})
		}
	}
	switch e.name {
	case "pieces":
		add(rankCount, e.x+1, "pieces miscounted?")
		add(rankCount, e.x-1, "pieces miscounted?")
		return out
	case "pitch":
		add(rankOctave, e.x*2, "an octave too low?")
		add(rankOctave, e.x/2, "an octave too high?")
		add(rankOctave, e.x*math.Pow(2, 1.0/12), "a semitone too low?")
		add(rankOctave, e.x/math.Pow(2, 1.0/12), "a semitone too high?")
		return out
	}
	whole, part := e.digits()
	for _, v := range swaps(whole) {
		add(rankSwap, v+part, "digits swapped?")
	}
	if e.form.Over == 0 {
		add(rankPoint, e.x*10, "decimal point one place off?")
		add(rankPoint, e.x/10, "decimal point one place off?")
	}
	for _, v := range changes(whole) {
		add(rankDigit, v+part, "one digit misread?")
	}
	if e.ruler {
		out = append(out, e.rulerSlips(counts)...)
	}
	for _, s := range e.otherUnits() {
		if value := e.x * s.factor; counts(value) {
			out = append(out, slip{rankInch, value, e.reckoned(value), s.what})
		}
	}
	return out
}

// digits are the digits in which a slip of the pen shows: all of a decimal,
// and the whole part of a fraction, whose fraction is kept apart.
func (e entered) digits() (text string, part float64) {
	if e.form.Over > 0 {
		return unit.Fixed(math.Floor(e.x), 0), e.x - math.Floor(e.x)
	}
	return e.form.Number(e.x), 0
}

// ruled is a step by which a ruler is easily misread: from one numbered line
// to the next, or between two lines of nearly one length.
type ruled struct {
	step float64 // in the ruler's unit
	text string
}

// ruler gives the steps of a ruler of that unit. Judgement: the numbered lines of
// metric and inch rulers, and the lines of an inch down to eighths.
func ruler(unitName string) []ruled {
	switch unitName {
	case "mm":
		return []ruled{{10, "10"}, {100, "100"}}
	case "cm":
		return []ruled{{1, "1"}, {10, "10"}}
	case "m":
		return []ruled{{0.01, "0.01"}, {0.1, "0.1"}}
	case "in":
		return []ruled{{1, "1"}, {10, "10"}, {0.5, "1/2"}, {0.25, "1/4"}, {0.125, "1/8"}}
	}
	return nil
}

// rulerSlips lists the misreadings of a ruler. A step that the number could not
// have been written with is left out: nobody who writes 22.7 in reads eighths.
func (e entered) rulerSlips(counts func(value float64) bool) []slip {
	var out []slip
	for _, r := range ruler(e.form.Unit) {
		if e.form.Over == 0 && e.form.Decimals < places(r.step) {
			continue
		}
		for _, value := range []float64{e.x + r.step, e.x - r.step} {
			if value > 0 && counts(value) {
				text := withUnit(e.form.Finer(e.form.SI(r.step)).Number(value), e.form.Unit)
				out = append(out, slip{rankRuler, value, text, "ruler misread by " + r.text + " " + e.form.Unit + "?"})
			}
		}
	}
	return out
}

// unitSwap is a number read in another unit than it was written in: factor
// makes it one of the unit that was written.
type unitSwap struct {
	factor float64
	what   string
}

// otherUnits lists the units that may have been read in place of this one.
func (e entered) otherUnits() []unitSwap {
	switch {
	case e.name == "hung mass" && e.form.Unit == "kg":
		return []unitSwap{{unit.Pound, "read in pounds?"}}
	case e.name == "hung mass" && e.form.Unit == "lb":
		return []unitSwap{{1 / unit.Pound, "read in kilograms?"}}
	case e.ruler && e.form.Unit == "mm":
		return []unitSwap{{25.4, "read in inches?"}, {10, "read in centimetres?"}}
	case e.ruler && e.form.Unit == "in":
		return []unitSwap{{1 / 25.4, "read in millimetres?"}, {1 / 2.54, "read in centimetres?"}}
	}
	return nil
}

// swaps gives the values with two neighbouring digits swapped, over the
// decimal point too.
func swaps(text string) []float64 {
	var out []float64
	at := digitsOf(text)
	for i := 1; i < len(at); i++ {
		b := []byte(text)
		b[at[i-1]], b[at[i]] = b[at[i]], b[at[i-1]]
		out = appendNumber(out, b)
	}
	return out
}

// changes gives the values with one digit changed.
func changes(text string) []float64 {
	var out []float64
	for _, i := range digitsOf(text) {
		for c := byte('0'); c <= '9'; c++ {
			if c != text[i] {
				b := []byte(text)
				b[i] = c
				out = appendNumber(out, b)
			}
		}
	}
	return out
}

func digitsOf(text string) []int {
	var at []int
	for i := range len(text) {
		if text[i] >= '0' && text[i] <= '9' {
			at = append(at, i)
		}
	}
	return at
}

func appendNumber(out []float64, b []byte) []float64 {
	x, err := strconv.ParseFloat(string(b), 64)
	if err != nil {
		return out
	}
	return append(out, x)
}
