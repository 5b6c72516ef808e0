package build

import (
	"bytes"
	"sort"
	"unicode/utf8"

	"scalepair/data/fault"
)

// kind says what a value in the file is.
type kind int8

const (
	kindText kind = iota
	kindNumber
	kindTruth
	kindDate
	kindList
	kindTable
)

// words name each kind in messages.
var kindWords = [...]string{"text", "a number", "true or false", "a date", "a list", "a table"}

// spot is a place in the file: line and column, both from 1. The zero value is
// none.
type spot struct{ line, column int32 }

// in gives the spot's place for messages about the file.
func (s spot) in(file string) fault.Place {
	return fault.Place{Input: file, Line: int(s.line), Column: int(s.column)}
}

// node is one value of the file with its places.
type node struct {
	// name is the key's; entries of a list have none.
	name string
	// text is a text's content, or a number's, truth's or date's spelling.
	text  string
	items []*node
	table *table
	// key is where the key stands, at where the value does. Entries of a list
	// have no key of their own.
	key, at spot
	kind    kind
}

// table is a set of keys.
type table struct {
	// nodes stand in the order of the file.
	nodes []*node
	// byName serves tables of more keys than are quickly looked through.
	byName map[string]*node
	// opened: a header or an inline table has stated it, so that it cannot be
	// stated again.
	opened bool
}

// get gives the key's node, nil when the table does not have it.
func (t *table) get(key string) *node {
	if t.byName != nil {
		return t.byName[key]
	}
	for _, n := range t.nodes {
		if n.name == key {
			return n
		}
	}
	return nil
}

// quicklyLookedThrough is more keys than any section has.
const quicklyLookedThrough = 32

func (t *table) add(n *node) {
	if t.nodes == nil {
		t.nodes = make([]*node, 0, 8)
	}
	t.nodes = append(t.nodes, n)
	switch {
	case t.byName != nil:
		t.byName[n.name] = n
	case len(t.nodes) > quicklyLookedThrough:
		t.byName = make(map[string]*node, 2*len(t.nodes))
		for _, n := range t.nodes {
			t.byName[n.name] = n
		}
	}
}

// lineIndex turns byte offsets into lines and columns, both from 1; columns
// count characters, as an editor does.
type lineIndex struct {
	file   string
	src    []byte
	starts []int
	// The place found last: offsets mostly come in order, and a line may hold
	// thousands of values.
	lastOffset, lastLine, lastColumn int
}

func newLineIndex(file string, src []byte) *lineIndex {
	x := &lineIndex{file: file, src: src, starts: make([]int, 1, 1+bytes.Count(src, []byte("\n")))}
	for i, c := range src {
		if c == '\n' {
			x.starts = append(x.starts, i+1)
		}
	}
	return x
}

// line gives the index of the line that holds the offset.
func (x *lineIndex) line(offset int) int {
	return sort.SearchInts(x.starts, offset+1) - 1
}

func (x *lineIndex) place(offset int) fault.Place { return x.spot(offset).in(x.file) }

func (x *lineIndex) spot(offset int) spot {
	line := x.line(offset)
	from, column := x.starts[line], 1
	if line == x.lastLine && offset >= x.lastOffset && x.lastOffset > from {
		from, column = x.lastOffset, x.lastColumn
	}
	column += utf8.RuneCount(x.src[from:offset])
	x.lastOffset, x.lastLine, x.lastColumn = offset, line, column
	return spot{int32(line + 1), int32(column)}
}

// end gives the offset of the line's end, without its line break.
func (x *lineIndex) end(line int) int {
	end := len(x.src)
	if line+1 < len(x.starts) {
		end = x.starts[line+1] - 1
	}
	if end > x.starts[line] && x.src[end-1] == '\r' {
		end--
	}
	return end
}
