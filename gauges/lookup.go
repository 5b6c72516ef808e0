package gauges

import (
	"fmt"
	"math"
	"slices"
	"strconv"
	"strings"
	"unicode"

	"scalepair/data/fault"
	"scalepair/data/suggest"
	"scalepair/gauges/reading"
)

// Lookup finds a gauge by its label, blanks and letter case aside. The error
// names the nearest label.
func Lookup(list []Gauge, label string) (Gauge, error) {
	key := reading.Key(label)
	if i := slices.IndexFunc(list, func(g Gauge) bool { return reading.Key(g.Label) == key }); i >= 0 {
		return list[i], nil
	}
	return Gauge{}, fault.Fault{What: "this gauge is not in stock", Given: label, Remedy: nearLabel(label, list)}
}

// nearLabel says which gauge may have been meant: that with the same letters and
// the nearest number, within a quarter of it, else the one that is spelt most alike.
func nearLabel(label string, list []Gauge) string {
	const addIt = "weigh it, or add a row of kind listed"
	var known []string
	for _, g := range list {
		known = append(known, g.Label)
	}
	if known == nil {
		return "no gauges are in stock; " + addIt
	}
	letters, x := cutLabel(label)
	meant, apart := suggest.Nearest(label, known), x/4
	for _, k := range known {
		if l, y := cutLabel(k); l == letters && math.Abs(y-x) < apart {
			meant, apart = k, math.Abs(y-x)
		}
	}
	if meant == "" {
		return "in stock are " + strings.Join(known, ", ") + "; else " + addIt
	}
	return fmt.Sprintf("did you mean %q? if not, %s", meant, addIt)
}

// cutLabel cuts a label into letters and a number, 0 for none: "w46", "p 10"; signs
// count for nothing.
func cutLabel(label string) (letters string, number float64) {
	digit := func(r rune) bool { return r >= '0' && r <= '9' || r == '.' }
	key := strings.ReplaceAll(reading.Key(label), " ", "")
	letters = strings.Map(func(r rune) rune {
		if unicode.IsLetter(r) {
			return r
		}
		return -1
	}, key)
	number, _ = strconv.ParseFloat(strings.TrimFunc(key, func(r rune) bool { return !digit(r) }), 64)
	return letters, number
}
