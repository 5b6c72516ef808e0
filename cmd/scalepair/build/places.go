package build

import (
	"bytes"
	"fmt"
	"sort"
	"strings"
	"unicode/utf8"

	"github.com/pelletier/go-toml/v2/unstable"

	"scalepair/data/fault"
)

// spot is one key, section or entry of a list in a file: where it stands, and
// how its value is written.
type spot struct {
	path       string // "neck.frets", "blanks[1].width", entries counted from 0 as written
	key, value fault.Place
	kind       unstable.Kind // of the value; Table and ArrayTable for headers
	text       string        // of one value, without its quotes
}

// places holds the spots of a file in its order.
type places struct {
	file    string
	src     []byte
	section string            // the path of the last header
	entries map[string]int    // how many [[headers]] a list has had so far
	headers map[string]extent // of [sections]
	lines   []int             // where they begin
	spots   []*spot
	byPath  map[string]*spot
}

// extent is where a section begins and its last key's value ends, in bytes.
type extent struct{ start, end int }

// findPlaces walks a file once. The error is the parser's, at its place.
func findPlaces(file string, src []byte) (*places, error) {
	p := &places{file: file, src: src, entries: map[string]int{}, headers: map[string]extent{}, byPath: map[string]*spot{}}
	for begin := 0; ; {
		p.lines = append(p.lines, begin)
		next := bytes.IndexByte(src[begin:], '\n')
		if next < 0 {
			break
		}
		begin += next + 1
	}
	var parser unstable.Parser
	parser.Reset(src)
	for parser.NextExpression() {
		e := parser.Expression()
		switch e.Kind {
		case unstable.KeyValue:
			p.keyValue(p.section, e)
			p.headers[p.section] = extent{p.headers[p.section].start, int(e.Raw.Offset + e.Raw.Length)}
		case unstable.Table, unstable.ArrayTable:
			p.header(e)
		}
	}
	err, ok := parser.Error().(*unstable.ParserError)
	if !ok {
		return p, parser.Error()
	}
	return p, p.syntax(int(parser.Range(err.Highlight).Offset), err.Message)
}

// syntax reports what the parser could not read, in its own words and with the
// line as it stands.
func (p *places) syntax(offset int, message string) error {
	start := bytes.LastIndexByte(p.src[:offset], '\n') + 1
	line, _, _ := strings.Cut(string(p.src[start:]), "\n")
	return fault.List{{Place: p.place(offset), What: message, Given: strings.TrimSpace(line),
		Remedy: "one key a line, numbers with a point, texts and lengths in quotes, # before a remark"}}
}

func (p *places) header(e *unstable.Node) {
	path, key := p.join("", e)
	if e.Kind == unstable.ArrayTable {
		path = strings.TrimSuffix(path, "]")
		path, _, _ = strings.Cut(path, "[")
		p.addOnce(&spot{path: path, key: key, value: key, kind: unstable.Array})
		p.entries[path]++
		path = fmt.Sprintf("%s[%d]", path, p.entries[path]-1)
	}
	p.section = path
	for it := e.Key(); it.Next(); {
		at := it.Node().Raw
		p.headers[path] = extent{int(at.Offset), int(at.Offset + at.Length)}
	}
	p.addOnce(&spot{path: path, key: key, value: key, kind: unstable.Table})
}

// join gives the path of a key within a section, and the place of its last part.
func (p *places) join(section string, e *unstable.Node) (path string, key fault.Place) {
	path = section
	for it := e.Key(); it.Next(); {
		if n := p.entries[path]; n > 0 {
			path = fmt.Sprintf("%s[%d]", path, n-1)
		}
		path = strings.TrimPrefix(path+"."+string(it.Node().Data), ".")
		key = p.place(int(it.Node().Raw.Offset))
		if !it.IsLast() {
			p.addOnce(&spot{path: path, key: key, value: key, kind: unstable.Table})
		}
	}
	return path, key
}

func (p *places) keyValue(section string, e *unstable.Node) {
	path, key := p.join(section, e)
	p.value(path, key, e.Value(), p.valueOffset(e))
}

// valueOffset finds where the value of a key begins: behind the equals sign.
func (p *places) valueOffset(e *unstable.Node) int {
	offset := 0
	for it := e.Key(); it.Next(); {
		offset = int(it.Node().Raw.Offset + it.Node().Raw.Length)
	}
	for strings.IndexByte(" \t=", p.src[offset]) >= 0 {
		offset++
	}
	return offset
}

// value adds a value and what stands in it. The offset serves where the parser
// keeps none, which is for lists.
func (p *places) value(path string, key fault.Place, v *unstable.Node, offset int) {
	if v.Raw.Length > 0 {
		offset = int(v.Raw.Offset)
	}
	s := &spot{path: path, key: key, value: p.place(offset), kind: v.Kind}
	p.addOnce(s)
	switch v.Kind {
	case unstable.Array:
		i := 0
		for it := v.Children(); it.Next(); {
			if it.Node().Kind == unstable.Comment {
				continue
			}
			p.value(fmt.Sprintf("%s[%d]", path, i), key, it.Node(), offset)
			i++
		}
	case unstable.InlineTable:
		for it := v.Children(); it.Next(); {
			p.keyValue(path, it.Node())
		}
	default:
		s.text = string(v.Data)
	}
}

// addOnce adds a spot unless its path has one, which only a header's or a
// dotted key's may.
func (p *places) addOnce(s *spot) {
	if p.byPath[s.path] == nil {
		p.byPath[s.path] = s
		p.spots = append(p.spots, s)
	}
}

// place turns a byte offset into line and column; columns count characters, as
// an editor does.
func (p *places) place(offset int) fault.Place {
	line := sort.SearchInts(p.lines, offset+1)
	return fault.Place{Input: p.file, Line: line, Column: 1 + utf8.RuneCount(p.src[p.lines[line-1]:offset])}
}

// Place gives where the key's value stands in the file: Place("scales.bass"),
// Place("blanks[1].width"), where entries of a list are counted from 0 as
// written. A section gives its header, and a key that a flag has set the flag. A
// key that the file does not have gives what would hold it: its list, its
// section, or the file without a line.
func (b *Build) Place(key string) fault.Place {
	for key != "" {
		if s := b.places.byPath[key]; s != nil {
			return s.value
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

// Given reports whether file or command line state the key or section.
func (b *Build) Given(key string) bool { return b.places.byPath[key] != nil }

// given is the text of a key's value, "" for a list or none.
func (b *Build) given(key string) string {
	if s := b.places.byPath[key]; s != nil {
		return s.text
	}
	return ""
}
