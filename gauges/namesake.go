package gauges

import (
	"fmt"
	"strings"

	"scalepair/data/suggest"
)

// kindCount is one kind of string by name, with its rows in the file.
type kindCount struct {
	name string
	rows int
}

// kinds counts the rows of every kind, in order of first appearance; a gauge
// without a reading counts as one.
func kinds(all []Gauge) []kindCount {
	var out []kindCount
	at := map[string]int{}
	for _, g := range all {
		key := labelKey(g.Family)
		i, known := at[key]
		if !known {
			i, out = len(out), append(out, kindCount{name: g.Family})
			at[key] = i
		}
		out[i].rows += max(1, g.Readings)
	}
	return out
}

// farFewer is how many times more rows the well-known kind of two has, for the
// other to be taken for a slip of the pen. Judgement.
const farFewer = 3

// namesake finds the kind that a name was probably meant to be: one of almost
// the same name and far more rows, or one as common that differs as by a slip
// of the keyboard only; "" where there is none.
func namesake(k kindCount, all []kindCount) kindCount {
	for _, other := range all {
		if other.rows >= farFewer*k.rows && almostSame(k.name, other.name) || other.rows >= k.rows && writtenAlike(k.name, other.name) {
			return other
		}
	}
	return kindCount{}
}

// almostSame tells whether two names differ by one letter, or by two where
// they are long. Kinds that are told apart by a number or a single letter,
// such as "set 1" and "set 2", are meant to differ.
func almostSame(a, b string) bool {
	a, b = labelKey(a), labelKey(b)
	allowed := 1
	if min(len(a), len(b)) >= 8 {
		allowed = 2
	}
	d := suggest.Distance(a, b)
	return d > 0 && d <= allowed && min(len(a), len(b)) > 3 && !numberedApart(a, b)
}

// numberedApart tells whether the digits or single letters of two names
// differ.
func numberedApart(a, b string) bool {
	return marksOf(a) != marksOf(b)
}

func marksOf(name string) string {
	var out strings.Builder
	for _, word := range strings.Fields(name) {
		if len(word) == 1 || strings.ContainsAny(word, "0123456789") {
			out.WriteString(word + " ")
		}
	}
	return out.String()
}

// noteNamesakes notes every gauge whose kind is probably misspelt: it is
// fitted apart from the gauges that it belongs to.
func noteNamesakes(all []Gauge) {
	counts := kinds(all)
	for _, k := range counts {
		other := namesake(k, counts)
		if other.name == "" {
			continue
		}
		for i := range all {
			if labelKey(all[i].Family) == labelKey(k.name) {
				all[i].note(fmt.Sprintf("two kinds with almost the same name, %q in %s and %q in %s: they are fitted apart; write one name if they are one kind",
					k.name, rowsText(k.rows), other.name, rowsText(other.rows)))
			}
		}
	}
}

func rowsText(n int) string {
	if n == 1 {
		return "1 row"
	}
	return fmt.Sprintf("%d rows", n)
}

// orMeant adds to a remedy the kind that was probably meant.
func orMeant(remedy, family string, all []Gauge) string {
	counts := kinds(all)
	for _, k := range counts {
		if other := namesake(k, counts); labelKey(k.name) == labelKey(family) && other.name != "" {
			return fmt.Sprintf("did you mean the kind %q? else %s", other.name, remedy)
		}
	}
	return remedy
}
