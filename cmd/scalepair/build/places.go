package build

import (
	"bytes"
	"fmt"
	"maps"
	"slices"
	"strings"
	"unicode/utf8"

	"github.com/pelletier/go-toml/v2/unstable"

	"scalepair/data/fault"
)

// spot is one key, section or entry of a list: where it stands in the file, in
// bytes, and how its value is written.
type spot struct {
	path       string // "neck.frets", "blanks[1].width", entries counted from 0 as written
	key, value int
	end        int           // of the value; of a [section], of its last key's; 0 for what is only implied
	kind       unstable.Kind // of the value; Table and ArrayTable for headers
	text       string        // of one value, without its quotes
	flag       string        // that says it instead of the file, "--bass"
}

// places holds the spots of a file in its order.
type places struct {
	file    string
	src     []byte
	section string         // the path of the last header
	entries map[string]int // how many [[headers]] a list has had so far
	spots   []*spot
	byPath  map[string]*spot
	faults  fault.List // keys and sections that are stated twice
}

// findPlaces walks a file once. The error is the parser's, at its place.
func findPlaces(file string, src []byte) (*places, error) {
	p := &places{file: file, src: src, entries: map[string]int{}, byPath: map[string]*spot{}}
	var parser unstable.Parser
	parser.Reset(src)
	for parser.NextExpression() {
		switch e := parser.Expression(); e.Kind {
		case unstable.KeyValue:
			p.keyValue(p.section, e)
			if s := p.byPath[p.section]; s != nil {
				s.end = int(e.Raw.Offset + e.Raw.Length)
			}
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
	s := p.join("", e)
	if e.Kind == unstable.ArrayTable {
		list := *s
		list.path, _, _ = strings.Cut(strings.TrimSuffix(s.path, "]"), "[")
		list.kind, list.end = unstable.Array, 0
		p.add(&list)
		s.path = fmt.Sprintf("%s[%d]", list.path, p.entries[list.path])
		p.entries[list.path]++
	}
	s.kind, p.section = unstable.Table, s.path
	p.add(s)
}

// join makes the spot of a key within a section, and adds those of the sections
// that the key names before itself.
func (p *places) join(section string, e *unstable.Node) *spot {
	s := &spot{path: section}
	for it := e.Key(); it.Next(); {
		if n := p.entries[s.path]; n > 0 {
			s.path = fmt.Sprintf("%s[%d]", s.path, n-1)
		}
		at := it.Node().Raw
		s.path = strings.TrimPrefix(s.path+"."+string(it.Node().Data), ".")
		s.key, s.value, s.end = int(at.Offset), int(at.Offset), int(at.Offset+at.Length)
		if !it.IsLast() {
			p.add(&spot{path: s.path, key: s.key, value: s.key, kind: unstable.Table})
		}
	}
	return s
}

func (p *places) keyValue(section string, e *unstable.Node) {
	s := p.join(section, e)
	for s.value = s.end; strings.IndexByte(" \t=", p.src[s.value]) >= 0; {
		s.value++ // the value begins behind the equals sign
	}
	s.end = int(e.Raw.Offset + e.Raw.Length)
	p.value(s, e.Value())
}

// value adds a value and what stands in it.
func (p *places) value(s *spot, v *unstable.Node) {
	s.kind = v.Kind
	p.add(s)
	switch v.Kind {
	case unstable.Array:
		i := 0
		for it := v.Children(); it.Next(); {
			if n := it.Node(); n.Kind != unstable.Comment {
				entry := spot{path: fmt.Sprintf("%s[%d]", s.path, i), key: s.key, value: s.value, end: s.end}
				if n.Raw.Length > 0 { // the parser keeps none of a list
					entry.value, entry.end = int(n.Raw.Offset), int(n.Raw.Offset+n.Raw.Length)
				}
				p.value(&entry, n)
				i++
			}
		}
	case unstable.InlineTable:
		for it := v.Children(); it.Next(); {
			p.keyValue(s.path, it.Node())
		}
	default:
		s.text = string(v.Data)
	}
}

// add adds a spot. One that is implied may be there already.
func (p *places) add(s *spot) {
	if old := p.byPath[s.path]; old == nil {
		p.byPath[s.path] = s
		p.spots = append(p.spots, s)
	} else if old.end > 0 && s.end > 0 && len(p.faults) < mostFaults {
		p.faults.Add(p.place(s.key), "this is stated twice", lastKey(s.path), fmt.Sprintf("keep one of the two; the other is on line %d", p.place(old.key).Line))
	} else if s.end > 0 {
		old.end = s.end
	}
}

// say makes a flag the place of a key, whose entries go.
func (p *places) say(key, flag, text string) {
	p.drop(func(path string) bool { return path == key || strings.HasPrefix(path, key+"[") })
	p.add(&spot{path: key, text: text, kind: unstable.String, flag: "--" + flag})
}

// drop takes spots away, as if the file did not have them.
func (p *places) drop(gone func(path string) bool) {
	p.spots = slices.DeleteFunc(p.spots, func(s *spot) bool { return gone(s.path) })
	maps.DeleteFunc(p.byPath, func(path string, _ *spot) bool { return gone(path) })
}

// clone gives places of their own for other flags.
func (p *places) clone() *places {
	out := *p
	out.spots, out.byPath = slices.Clone(p.spots), maps.Clone(p.byPath)
	return &out
}

// of is where a spot's value stands.
func (p *places) of(s *spot) fault.Place {
	if s.flag != "" {
		return fault.Place{Input: s.flag}
	}
	return p.place(s.value)
}

// place turns a byte offset into line and column; columns count characters, as
// an editor does.
func (p *places) place(offset int) fault.Place {
	before := p.src[:offset]
	return fault.Place{Input: p.file, Line: 1 + bytes.Count(before, []byte("\n")), Column: 1 + utf8.RuneCount(before[bytes.LastIndexByte(before, '\n')+1:])}
}

// Place gives where the key's value stands in the file: Place("scales.bass"),
// Place("blanks[1].width"), where entries of a list are counted from 0 as
// written. A section gives its header, and a key that a flag has set the flag. A
// key that the file does not have gives what would hold it: its list, its
// section, or the file without a line.
func (b *Build) Place(key string) fault.Place {
	for key != "" {
		if s := b.places.byPath[key]; s != nil {
			return b.places.of(s)
		}
		key = key[:max(strings.LastIndexAny(key, ".["), 0)]
	}
	return fault.Place{Input: b.File}
}

// PlaceOfString gives the place of one string's entry in a list, string 1
// being the last written: PlaceOfString("strings.gauges", 1). A single value
// for all strings gives its own place.
func (b *Build) PlaceOfString(key string, number int) fault.Place {
	return b.Place(fmt.Sprintf("%s[%d]", key, len(b.places.list(key))-number))
}

// list gives the entries of a list.
func (p *places) list(key string) (entries []*spot) {
	for {
		s := p.byPath[fmt.Sprintf("%s[%d]", key, len(entries))]
		if s == nil {
			return entries
		}
		entries = append(entries, s)
	}
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
