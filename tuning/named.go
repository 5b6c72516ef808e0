package tuning

import (
	"bytes"
	"fmt"
	"slices"
	"strings"
	"sync"

	"scalepair/data"
	"scalepair/data/csvtable"
	"scalepair/data/near"
)

// entry is a tuning of the embedded list with the other names it goes by.
type entry struct {
	tuning Tuning
	other  []string
}

// list reads the embedded list once. A fault in it is a bug and panics.
var list = sync.OnceValue(func() []entry {
	rows, err := csvtable.Read(bytes.NewReader(data.Tunings()), "tunings.csv", []csvtable.Column{
		{Name: "name", Required: true}, {Name: "also"}, {Name: "notes", Required: true},
	})
	if err != nil {
		panic(err)
	}
	out := make([]entry, len(rows))
	for i, r := range rows {
		t, err := parseNotes(wordsOf(r.Get("notes")))
		if err != nil {
			panic(fmt.Sprintf("%v: %v", r.Place("notes"), err))
		}
		t.Name = r.Get("name")
		out[i] = entry{t, strings.FieldsFunc(r.Get("also"), func(c rune) bool { return c == ';' })}
	}
	return out
})

// Named gives the tunings that have a name, in the order of the list: guitars
// of six, seven, eight and nine strings, baritones, basses.
func Named() []Tuning {
	out := make([]Tuning, len(list()))
	for i, e := range list() {
		out[i] = Tuning{e.tuning.Name, slices.Clone(e.tuning.Notes)}
	}
	return out
}

// Lookup finds a tuning by name. Case, blanks, hyphens and the order of the
// words do not count: "8 string F sharp" is "eight-string F#". The error
// suggests the nearest name.
func Lookup(name string) (Tuning, error) {
	wanted := fold(name)
	for i, e := range list() {
		for _, n := range append([]string{e.tuning.Name}, e.other...) {
			if fold(n) == wanted {
				return Named()[i], nil
			}
		}
	}
	return Tuning{}, refuse("no tuning of that name", name, suggestion(name))
}

func suggestion(name string) string {
	var folded, names []string
	for _, e := range list() {
		for _, n := range append([]string{e.tuning.Name}, e.other...) {
			folded, names = append(folded, fold(n)), append(names, strings.TrimSpace(n))
		}
	}
	best := near.Suggest(name, names)
	if best == "" {
		if i := slices.Index(folded, near.Suggest(fold(name), folded)); i >= 0 {
			best = names[i]
		}
	}
	if best == "" {
		return `write its notes, low string first, such as "E2 A2 D3 G3 B3 E4"`
	}
	return fmt.Sprintf("did you mean %q? or write its notes, low string first", best)
}

// said maps a word of a name to the one it is compared as; "" drops it.
var said = map[string]string{
	"4": "four", "5": "five", "6": "six", "7": "seven", "8": "eight", "9": "nine",
	"strings": "string", "stringed": "string", "dropped": "drop", "drops": "drop",
	"tuning": "", "guitar": "", "the": "", "in": "",
}

// fold makes names that players take for the same one text: lower case, number
// words, "sharp" and "flat" as signs, words in the order of the alphabet.
func fold(name string) string {
	text := strings.ToLower(signs.Replace(name))
	for _, pair := range [][2]string{{" sharp", "#"}, {"-sharp", "#"}, {" flat", "b"}, {"-flat", "b"}} {
		text = strings.ReplaceAll(text, pair[0], pair[1])
	}
	var words []string
	for _, w := range strings.FieldsFunc(text, func(c rune) bool { return strings.ContainsRune(" -_\t\n", c) }) {
		if as, ok := said[w]; ok {
			w = as
		}
		if w != "" {
			words = append(words, w)
		}
	}
	slices.Sort(words)
	return strings.Join(words, " ")
}
