package build

import (
	"fmt"
	"strings"

	"scalepair/data/fault"
)

// place is where a key and its value stand.
type place struct{ key, value fault.Place }

// collect notes the places of all keys below t. A key within a section is
// named with the section's name and a dot, an entry of a list with its number
// from 0, as written: "neck.frets", "blanks[1].width".
func collect(into map[string]place, prefix string, t *table) {
	for _, key := range t.order {
		collectNode(into, prefix+key, t.keys[key])
	}
}

func collectNode(into map[string]place, path string, n *node) {
	into[path] = place{n.key, n.at}
	if n.table != nil {
		collect(into, path+".", n.table)
	}
	for i, item := range n.items {
		collectNode(into, fmt.Sprintf("%s[%d]", path, i), item)
	}
}

// Place gives where the key's value stands in the file: Place("scales.bass"),
// Place("blanks[1].width"), where entries of a list are counted from 0 as
// written. A section gives its header. A key that the file does not have gives
// what would hold it: its list, its section, or the file without a line.
func (b *Build) Place(key string) fault.Place {
	for key != "" {
		if p, ok := b.places[key]; ok {
			return p.value
		}
		key = key[:max(strings.LastIndexAny(key, ".["), 0)]
	}
	return fault.Place{Input: b.File}
}

// PlaceOfString gives the place of one string's entry in a list, string 1
// being the last written: PlaceOfString("strings.gauges", 1). A single value
// for all strings gives its own place.
func (b *Build) PlaceOfString(key string, number int) fault.Place {
	entries := 0
	for ; b.Given(fmt.Sprintf("%s[%d]", key, entries)); entries++ {
	}
	return b.Place(fmt.Sprintf("%s[%d]", key, entries-number))
}

// KeyPlace gives where the key itself stands, under the rules of Place.
func (b *Build) KeyPlace(key string) fault.Place {
	if p, ok := b.places[key]; ok && p.key.Line > 0 {
		return p.key
	}
	return b.Place(key)
}

// Given tells whether the file states the key or section.
func (b *Build) Given(key string) bool {
	_, ok := b.places[key]
	return ok
}
