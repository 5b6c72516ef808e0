package tuning

import (
	"bytes"
	"fmt"
	"slices"
	"strings"
	"sync"

	"scalepair/data"
	"scalepair/data/csvtable"
	"scalepair/data/suggest"
)

// entry is a row of the embedded list: its tuning, and all its names.
type entry struct {
	Tuning
	names []string
}

// list reads the embedded list once. A fault in it is a bug and panics.
var list = sync.OnceValue(func() []entry {
	rows, faults := csvtable.Read(bytes.NewReader(data.Tunings()), "tunings.csv", []csvtable.Column{
		{Name: "name", Required: true}, {Name: "also"}, {Name: "notes", Required: true},
	})
	if len(faults) > 0 {
		panic(faults)
	}
	out := make([]entry, len(rows))
	for i, r := range rows {
		t, err := parseNotes(wordsOf(r.Get("notes")))
		if err != nil {
			panic(fmt.Sprintf("tunings.csv: %s: %v", r.Get("name"), err))
		}
		t.Name = r.Get("name")
		out[i] = entry{t, []string{t.Name}}
		for _, n := range strings.Split(r.Get("also"), ";") {
			if n = strings.TrimSpace(n); n != "" {
				out[i].names = append(out[i].names, n)
			}
		}
	}
	return out
})

func (e entry) tuning() Tuning { return Tuning{e.Name, slices.Clone(e.Notes)} }

// Named returns the tunings that have a name, in the order of the list: guitars
// of six strings, baritones, guitars of seven, eight and nine, basses.
func Named() []Tuning {
	out := make([]Tuning, len(list()))
	for i, e := range list() {
		out[i] = e.tuning()
	}
	return out
}

// Lookup finds a tuning by name. Case, blanks, hyphens and the order of the
// words do not count: "8 string F sharp" is "eight-string F#". The error
// suggests the nearest name.
func Lookup(name string) (Tuning, error) {
	wanted := fold(name)
	var folded, names []string
	for _, e := range list() {
		for _, n := range e.names {
			if fold(n) == wanted {
				return e.tuning(), nil
			}
			folded, names = append(folded, fold(n)), append(names, n)
		}
	}
	best := suggest.Nearest(wanted, folded)
	if best == "" {
		return Tuning{}, refuse("no tuning of that name", name, `write its notes, low string first, such as "E2 A2 D3 G3 B3 E4"`)
	}
	return Tuning{}, refuse("no tuning of that name", name,
		fmt.Sprintf("did you mean %q? or write its notes, low string first", names[slices.Index(folded, best)]))
}

// spoken writes in one way what players say in several.
var spoken = strings.NewReplacer(
	" sharp", "#", "-sharp", "#", " flat", "b", "-flat", "b", "-", " ", "dropped", "drop",
	"4", "four", "5", "five", "6", "six", "7", "seven", "8", "eight", "9", "nine",
)

// fold makes names that players take for the same one text, with its words in
// the order of the alphabet.
func fold(name string) string {
	words := strings.Fields(spoken.Replace(strings.ToLower(signs.Replace(name))))
	slices.Sort(words)
	return strings.Join(words, " ")
}
