package build

import (
	"fmt"
	"regexp"
	"strings"

	"github.com/pelletier/go-toml/v2/unstable"

	"scalepair/data/fault"
)

// walker builds the tree of a file in one pass over its expressions. After a
// line that is no TOML it goes on with the next key or header, so that one
// slip does not hide the others.
type walker struct {
	*lineIndex
	parser  unstable.Parser
	base    int // offset in the file where the parser was last started
	faults  *fault.List
	root    *table
	current *table
	// broken: something could not be read, so that a missing key may be one
	// that stands in an unreadable line.
	broken bool
	// unsure: keys or headers have parts, or add to a list that may be closed.
	// Only the referee tells which of these clash; single names that clash are
	// seen here.
	unsure bool
}

// mostFaults is from where the rest of a file is not looked at, since nobody
// reads more.
const mostFaults = 100

// walk reads src, which must be free of a byte order mark.
func walk(file string, src []byte, faults *fault.List) *walker {
	w := &walker{lineIndex: newLineIndex(file, src[:len(src):len(src)]), faults: faults, root: &table{}}
	w.current = w.root
	for start := 0; start >= 0 && len(*faults) < mostFaults; {
		start = w.run(start)
	}
	return w
}

// run reads from the offset to the end or to the first line that is no TOML,
// and gives where to go on, or -1.
func (w *walker) run(start int) int {
	w.base = start
	w.parser.Reset(w.src[start:])
	for w.parser.NextExpression() {
		w.expression(w.parser.Expression())
		if len(*w.faults) >= mostFaults {
			w.broken = true
			return -1
		}
	}
	err := w.parser.Error()
	if err == nil {
		return -1
	}
	w.broken = true
	offset := start
	if e, ok := err.(*unstable.ParserError); ok {
		offset = w.offset(w.parser.Range(e.Highlight))
	}
	w.syntaxFault(offset, err.Error())
	if line := w.lineText(w.line(offset)); strings.HasPrefix(strings.TrimSpace(line), "[") {
		w.current = &table{} // where a header is wrong its keys go nowhere
	}
	return w.resume(start, w.behindBraces(offset))
}

func (w *walker) lineText(line int) string { return string(w.src[w.starts[line]:w.end(line)]) }

// behindBraces gives the offset of the brace that closes one left open in the
// line before a fault, up to ten lines below; else the fault's own offset.
func (w *walker) behindBraces(offset int) int {
	first := w.line(offset)
	if first == 0 || strings.Count(w.lineText(first-1), "{") <= strings.Count(w.lineText(first-1), "}") {
		return offset
	}
	for line := first; line < min(first+10, len(w.starts)); line++ {
		if i := strings.IndexByte(w.lineText(line), '}'); i >= 0 {
			return w.starts[line] + i
		}
	}
	return offset
}

func (w *walker) offset(r unstable.Range) int { return w.base + int(r.Offset) }

// statement is the beginning of a line that can only be a key or a header.
var statement = regexp.MustCompile(`^[ \t]*(\[\[?[ \t]*["'A-Za-z0-9_-]|["'A-Za-z0-9_.-]+[ \t]*=)`)

// resume gives the offset of the line to go on with after a fault at offset.
// The fault's own line serves where the fault is that a list before it was
// never closed.
func (w *walker) resume(start, offset int) int {
	first := w.line(offset)
	if w.starts[first] <= start || strings.TrimSpace(string(w.src[w.starts[first]:offset])) != "" {
		first++
	}
	for line := first; line < len(w.starts); line++ {
		if statement.Match(w.src[w.starts[line]:w.end(line)]) {
			return w.starts[line]
		}
	}
	return -1
}

func (w *walker) expression(e *unstable.Node) {
	switch e.Kind {
	case unstable.Table:
		w.header(e)
	case unstable.ArrayTable:
		w.arrayHeader(e)
	case unstable.KeyValue:
		w.keyValue(w.current, e)
	}
}

// header makes [a.b] the current table.
func (w *walker) header(e *unstable.Node) {
	parent, last := w.descend(w.root, e)
	w.current = &table{} // where the header is wrong its keys go nowhere
	if parent == nil {
		return
	}
	n := parent.get(last.name)
	switch {
	case n == nil:
		n = newTable(last)
		parent.add(n)
	case n.kind != kindTable:
		w.clash(last, n)
		return
	case n.table.opened:
		w.twice(last, n)
	}
	n.table.opened = true
	w.current = n.table
}

// arrayHeader makes a new entry of [[a.b]] the current table.
func (w *walker) arrayHeader(e *unstable.Node) {
	parent, last := w.descend(w.root, e)
	w.current = &table{}
	if parent == nil {
		return
	}
	list := parent.get(last.name)
	if list == nil {
		list = &node{kind: kindList, name: last.name, key: last.at, at: last.at}
		parent.add(list)
	} else if len(list.items) == 0 || list.items[0].key == (spot{}) {
		w.unsure = true // its entries may stand in brackets
	}
	if list.kind != kindList || (len(list.items) > 0 && list.items[0].kind != kindTable) {
		w.clash(last, list)
		return
	}
	entry := &node{kind: kindTable, table: w.current, key: last.at, at: last.at}
	w.current.opened = true
	list.items = append(list.items, entry)
}

// part is one part of a dotted key.
type part struct {
	name string
	at   spot
}

// newTable is a table that a header or a dotted key begins.
func newTable(p part) *node {
	return &node{kind: kindTable, table: &table{}, name: p.name, key: p.at, at: p.at}
}

// descend opens the tables of all but the last part of e's key; nil when one
// of them is no table.
func (w *walker) descend(t *table, e *unstable.Node) (*table, part) {
	var last part
	for it := e.Key(); it.Next(); {
		if last.at != (spot{}) {
			if t = w.within(t, last); t == nil {
				return nil, part{}
			}
		}
		k := it.Node()
		last = part{string(k.Data), w.spot(w.offset(k.Raw))}
	}
	return t, last
}

// within opens a table of t, the last one of a list; nil where it is no table.
func (w *walker) within(t *table, p part) *table {
	w.unsure = true
	n := t.get(p.name)
	if n == nil {
		n = newTable(p)
		t.add(n)
	}
	if n.kind == kindList && len(n.items) > 0 {
		n = n.items[len(n.items)-1]
	}
	if n.kind != kindTable {
		w.clash(p, n)
		return nil
	}
	return n.table
}

func (w *walker) keyValue(t *table, e *unstable.Node) {
	t, last := w.descend(t, e)
	if t == nil {
		return
	}
	n := w.value(e.Value(), w.valueOffset(e))
	n.name, n.key = last.name, last.at
	if before := t.get(last.name); before != nil {
		w.twice(last, before)
		return
	}
	t.add(n)
}

// valueOffset finds where the value of a key begins: behind the equals sign
// that follows the key's last part.
func (w *walker) valueOffset(e *unstable.Node) int {
	i := w.offset(e.Raw)
	for it := e.Key(); it.Next(); {
		raw := it.Node().Raw
		i = w.offset(raw) + int(raw.Length)
	}
	for w.src[i] == ' ' || w.src[i] == '\t' || w.src[i] == '=' {
		i++
	}
	return i
}

// value turns a parsed value into a node. The offset serves where the parser
// keeps none, which is for lists.
func (w *walker) value(v *unstable.Node, offset int) *node {
	if v.Raw.Length > 0 {
		offset = w.offset(v.Raw)
	}
	n := &node{at: w.spot(offset)}
	switch v.Kind {
	case unstable.Array:
		n.kind = kindList
		for it := v.Children(); it.Next(); {
			n.items = append(n.items, w.value(it.Node(), offset))
		}
	case unstable.InlineTable:
		n.kind, n.table = kindTable, &table{}
		for it := v.Children(); it.Next(); {
			w.keyValue(n.table, it.Node())
		}
		n.table.opened = true
	default:
		n.kind, n.text = scalarKind(v.Kind), string(v.Data)
	}
	return n
}

func scalarKind(k unstable.Kind) kind {
	switch k {
	case unstable.String:
		return kindText
	case unstable.Integer, unstable.Float:
		return kindNumber
	case unstable.Bool:
		return kindTruth
	}
	return kindDate
}

func (w *walker) twice(p part, before *node) {
	w.faults.Add(p.at.in(w.file), fmt.Sprintf("%q stands here a second time, first in line %d", p.name, before.key.line),
		"", "keep one of the two")
}

func (w *walker) clash(p part, before *node) {
	w.faults.Add(p.at.in(w.file), fmt.Sprintf("%q is already %s, in line %d", p.name, kindWords[before.kind], before.key.line),
		"", "keep one of the two")
}
