package gauges

import (
	"slices"
	"strconv"
	"strings"

	"scalepair/data/fault"
	"scalepair/data/suggest"
	"scalepair/gauges/reading"
)

// Lookup finds a gauge by its label, blanks and letter case aside. The error
// names the nearest labels.
func Lookup(list []Gauge, label string) (Gauge, error) {
	key := reading.Key(label)
	if i := slices.IndexFunc(list, func(g Gauge) bool { return reading.Key(g.Label) == key }); i >= 0 {
		return list[i], nil
	}
	return Gauge{}, fault.Fault{What: "this gauge is not in stock", Given: label, Remedy: nearLabels(label, list)}
}

// nearLabels says which gauges may have been meant: those with the same letters
// and the next numbers, else the one that is spelt most alike.
func nearLabels(label string, list []Gauge) string {
	if len(list) == 0 {
		return "no gauges are in stock; " + addIt
	}
	known := make([]string, len(list))
	for i, g := range list {
		known[i] = g.Label
	}
	if meant := nextNumbers(label, known); meant != nil {
		return didYouMean(meant)
	}
	if best := suggest.Nearest(label, known); best != "" {
		return didYouMean([]string{best})
	}
	return "in stock are " + strings.Join(known, ", ") + "; else " + addIt
}

const addIt = "weigh it, or add a row of kind listed"

func didYouMean(labels []string) string {
	for i, l := range labels {
		labels[i] = strconv.Quote(l)
	}
	return "did you mean " + strings.Join(labels, " or ") + "? if not, " + addIt
}

// nextNumbers gives the labels with the same letters and the next smaller and
// larger number, within a quarter of it.
func nextNumbers(label string, known []string) (out []string) {
	letters, x := cutLabel(label)
	below, above := 0.75*x, 1.25*x
	lower, upper := "", ""
	for _, k := range known {
		switch l, y := cutLabel(k); {
		case l != letters || y == 0:
		case y <= x && y > below:
			below, lower = y, k
		case y > x && y < above:
			above, upper = y, k
		}
	}
	for _, l := range []string{lower, upper} {
		if l != "" {
			out = append(out, l)
		}
	}
	return out
}

// cutLabel cuts a label into letters and a number, 0 for none: "w46", "p 10".
func cutLabel(label string) (letters string, number float64) {
	digit := func(r rune) bool { return r >= '0' && r <= '9' || r == '.' }
	key := strings.ReplaceAll(reading.Key(label), " ", "")
	letters = strings.Map(func(r rune) rune {
		if digit(r) {
			return -1
		}
		return r
	}, key)
	number, _ = strconv.ParseFloat(strings.TrimFunc(key, func(r rune) bool { return !digit(r) }), 64)
	return letters, number
}
