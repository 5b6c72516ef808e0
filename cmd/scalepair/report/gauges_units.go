package report

import (
	"slices"
	"strconv"
	"strings"

	"scalepair/cmd/scalepair/show"
	"scalepair/data/unit"
)

// mostWritten is the most decimals of a millimetre that anybody writes down. A
// length with more was given in inches.
const mostWritten = 2

// writtenInInches tells whether a figure in millimetres was read off a scale
// of inches.
func writtenInInches(figure string) bool {
	_, decimals, _ := strings.Cut(figure, ".")
	return len(decimals) > mostWritten
}

// inUnits puts the figures of a sentence into the units of the page: lengths
// that were written in inches are told in inches, and unit weights follow the
// page's.
func (in *Input) inUnits(text string) string {
	words := strings.Split(text, " ")
	for i := 1; i < len(words); i++ {
		name := strings.TrimRight(words[i], ".,;:?)")
		x, err := strconv.ParseFloat(words[i-1], 64)
		switch {
		case err != nil:
		case name == "mm" && writtenInInches(words[i-1]):
			words[i-1] = show.Fixed(unit.MM(x).Inches(), 3)
			words[i] = "in" + words[i][len(name):]
		case name == "g/m" && in.weightUnit() != "g/m":
			words[i-1] = show.Fixed(unit.UnitWeight(x/1000).PoundsPerInch(), 8)
			words[i] = in.weightUnit() + words[i][len(name):]
		}
	}
	return strings.Join(words, " ")
}

// telling leaves out slips that say nothing: those that move next to nothing,
// and swapped digits of millimetres where inches were read.
func telling(slips []string) []string {
	return slices.DeleteFunc(slices.Clone(slips), func(s string) bool {
		if strings.HasSuffix(s, "(0 %)") {
			return true
		}
		words := strings.Fields(s)
		for i, w := range words[1:] {
			if strings.TrimRight(w, ".,;:?)") == "mm" && writtenInInches(words[i]) {
				return true
			}
		}
		return false
	})
}

// others leaves out the note of gauges that nothing checks, which is told in
// other words.
func others(notes []string) []string {
	return slices.DeleteFunc(slices.Clone(notes), func(s string) bool { return strings.HasPrefix(s, "too few of its kind") })
}
