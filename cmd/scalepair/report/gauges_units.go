package report

import (
	"slices"
	"strconv"
	"strings"

	"scalepair/cmd/scalepair/show"
	"scalepair/data/unit"
)

// inUnits puts the linear densities of a sentence into the page's unit. Lengths and
// masses in it stand in the unit that they were given in.
func (in *Input) inUnits(text string) string {
	if in.weightUnit() == "g/m" {
		return text
	}
	words := strings.Split(text, " ")
	for i := 1; i < len(words); i++ {
		name := strings.TrimRight(words[i], ".,;:?)")
		if x, err := strconv.ParseFloat(words[i-1], 64); err == nil && name == "g/m" {
			words[i-1] = show.Fixed(unit.LinearDensity(x/1000).PoundsPerInch(), 8)
			words[i] = in.weightUnit() + words[i][len(name):]
		}
	}
	return strings.Join(words, " ")
}

// others leaves out the note of gauges that nothing checks, which is told in
// other words.
func others(notes []string) []string {
	return slices.DeleteFunc(slices.Clone(notes), func(s string) bool { return strings.HasPrefix(s, "too few of its kind") })
}
