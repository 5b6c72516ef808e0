package build

import (
	"fmt"
	"strconv"
	"strings"

	"scalepair/data/fault"
)

// lookup gives the node of a key: "neck.frets", "blanks[1].width", where entries
// of a list are counted from 0 as written; nil when the file does not have it.
func (b *Build) lookup(key string) *node {
	t := b.root
	for {
		name, inner, more := strings.Cut(key, ".")
		n := t.entry(name)
		if n == nil || !more {
			return n
		}
		t, key = n.table, inner
	}
}

// entry gives the node of a key, or of an entry of its list: "frets",
// "blanks[1]". A nil table has none.
func (t *table) entry(name string) *node {
	if t == nil {
		return nil
	}
	key, index, ofList := strings.Cut(name, "[")
	n := t.get(key)
	if n == nil || !ofList {
		return n
	}
	i, err := strconv.Atoi(strings.TrimSuffix(index, "]"))
	if err != nil || i < 0 || i >= len(n.items) {
		return nil
	}
	return n.items[i]
}

// Place gives where the key's value stands in the file: Place("scales.bass"),
// Place("blanks[1].width"), where entries of a list are counted from 0 as
// written. A section gives its header. A key that the file does not have gives
// what would hold it: its list, its section, or the file without a line.
func (b *Build) Place(key string) fault.Place {
	for key != "" {
		if n := b.lookup(key); n != nil {
			return n.at.in(b.File)
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
	if n := b.lookup(key); n != nil && n.key != (spot{}) {
		return n.key.in(b.File)
	}
	return b.Place(key)
}

// Given tells whether the file states the key or section.
func (b *Build) Given(key string) bool {
	return b.lookup(key) != nil
}
