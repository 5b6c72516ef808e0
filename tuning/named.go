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

// entry is a row of the embedded list: the tuning's names, the first of them
// its own, and its notes, which are read where they are asked for.
type entry struct {
	names []string
	notes string
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
		out[i] = entry{[]string{r.Get("name")}, r.Get("notes")}
		for _, n := range strings.Split(r.Get("also"), ";") {
			if n = strings.TrimSpace(n); n != "" {
				out[i].names = append(out[i].names, n)
			}
		}
	}
	return out
})

// tuning reads the entry's notes; a fault in them is a bug and panics.
func (e entry) tuning() Tuning {
	t, err := parseNotes(wordsOf(e.notes))
	if err != nil {
		panic(fmt.Sprintf("tunings.csv: %s: %v", e.names[0], err))
	}
	t.Name = e.names[0]
	return t
}

// Named gives the tunings that have a name, in the order of the list: guitars
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
	for _, e := range list() {
		for _, n := range e.names {
			if fold(n) == wanted {
				return e.tuning(), nil
			}
		}
	}
	return Tuning{}, refuse(noSuchTuning, name, suggestion(name))
}

func suggestion(name string) string {
	var folded, names []string
	for _, e := range list() {
		for _, n := range e.names {
			folded, names = append(folded, fold(n)), append(names, n)
		}
	}
	best := suggest.Nearest(name, names)
	if best == "" {
		if i := slices.Index(folded, suggest.Nearest(fold(name), folded)); i >= 0 {
			best = names[i]
		}
	}
	if best == "" {
		return `write its notes, low string first, such as "E2 A2 D3 G3 B3 E4"`
	}
	return fmt.Sprintf("did you mean %q? or write its notes, low string first", best)
}

// said gives the word that a word of a name is compared as; "" drops it.
func said(word string) string {
	switch word {
	case "4", "5", "6", "7", "8", "9":
		return [...]string{"four", "five", "six", "seven", "eight", "nine"}[word[0]-'4']
	case "strings", "stringed":
		return "string"
	case "dropped", "drops":
		return "drop"
	case "tuning", "guitar", "the", "in":
		return ""
	}
	return word
}

// spoken writes the words for sharp and flat as signs.
var spoken = sync.OnceValue(func() *strings.Replacer {
	return strings.NewReplacer(" sharp", "#", "-sharp", "#", " flat", "b", "-flat", "b")
})

// fold makes names that players take for the same one text: lower case, number
// words, "sharp" and "flat" as signs, words in the order of the alphabet.
func fold(name string) string {
	text := spoken().Replace(strings.ToLower(plainSigns(name)))
	words := strings.FieldsFunc(text, func(c rune) bool { return strings.ContainsRune(" -_\t\n", c) })
	for i, w := range words {
		words[i] = said(w)
	}
	words = slices.DeleteFunc(words, func(w string) bool { return w == "" })
	slices.Sort(words)
	return strings.Join(words, " ")
}
