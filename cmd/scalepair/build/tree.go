package build

import (
	"sort"
	"unicode/utf8"

	"scalepair/data/fault"
)

// kind says what a value in the file is.
type kind int

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

// node is one value of the file with its places.
type node struct {
	kind kind
	// text is a text's content, or a number's, truth's or date's spelling.
	text  string
	items []*node
	table *table
	// key is where the key stands, at where the value does. Entries of a list
	// have no key of their own and share the list's.
	key, at fault.Place
}

// table is a set of keys.
type table struct {
	keys  map[string]*node
	order []string
	// opened: a header or an inline table has stated it, so that it cannot be
	// stated again.
	opened bool
}

func newTable() *table { return &table{keys: map[string]*node{}} }

func (t *table) add(key string, n *node) {
	t.keys[key] = n
	t.order = append(t.order, key)
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
	x := &lineIndex{file: file, src: src, starts: []int{0}}
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

func (x *lineIndex) place(offset int) fault.Place {
	line := x.line(offset)
	from, column := x.starts[line], 1
	if line == x.lastLine && offset >= x.lastOffset && x.lastOffset > from {
		from, column = x.lastOffset, x.lastColumn
	}
	column += utf8.RuneCount(x.src[from:offset])
	x.lastOffset, x.lastLine, x.lastColumn = offset, line, column
	return fault.Place{Input: x.file, Line: line + 1, Column: column}
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
