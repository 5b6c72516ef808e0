package build

import (
	"bytes"
	"slices"
	"strings"

	"github.com/pelletier/go-toml/v2/unstable"
)

// outline is where the keys and headers of a file stand, in bytes.
type outline struct {
	src     []byte
	newline string
	keys    []*keyRange
	headers []*headerRange // the first, without a name, is the top of the file
	lists   []string       // names of [[lists]]
}

// keyRange is one key with its value.
type keyRange struct {
	path              string // all parts joined by dots; "" under a [[list]]
	written           string // the key as its own line has it, dots included
	start, value, end int    // of the key, of the value, behind the value
	braces            bool   // the value is an inline table
	within            *keyRange
	header            *headerRange
}

// headerRange is a [section] and what stands under it.
type headerRange struct {
	path string
	list bool
	end  int // behind the header's line
}

// outlineOf reads where everything stands; src must be TOML.
func outlineOf(src []byte) (*outline, error) {
	src = src[:len(src):len(src)]
	o := &outline{src: src, newline: "\n", headers: []*headerRange{{}}}
	if i := bytes.IndexByte(src, '\n'); i > 0 && src[i-1] == '\r' {
		o.newline = "\r\n"
	}
	var p unstable.Parser
	p.Reset(src)
	for p.NextExpression() {
		o.expression(p.Expression())
	}
	if p.Error() != nil {
		return nil, errUneditable
	}
	return o, nil
}

func (o *outline) expression(e *unstable.Node) {
	path, last := joinKey(e)
	if e.Kind == unstable.KeyValue {
		o.key(e, o.headers[len(o.headers)-1], nil)
		return
	}
	h := &headerRange{path: path, list: e.Kind == unstable.ArrayTable, end: o.lineEnd(last)}
	if h.list && !slices.Contains(o.lists, path) {
		o.lists = append(o.lists, path)
	}
	o.headers = append(o.headers, h)
}

// joinKey gives a key's parts joined by dots, and where the last one ends. A
// part that itself holds a dot can never be meant by an edit: it is marked so
// that it matches none.
func joinKey(e *unstable.Node) (path string, end int) {
	var parts []string
	for it := e.Key(); it.Next(); {
		k := it.Node()
		part := string(k.Data)
		if strings.Contains(part, ".") || part == "" {
			part = "\x00"
		}
		parts = append(parts, part)
		end = int(k.Raw.Offset + k.Raw.Length)
	}
	return strings.Join(parts, "."), end
}

func (o *outline) key(e *unstable.Node, h *headerRange, within *keyRange) {
	written, keyEnd := joinKey(e)
	k := &keyRange{
		path: join(h.path, written), written: written, header: h, within: within,
		start: int(e.Raw.Offset), end: int(e.Raw.Offset + e.Raw.Length),
		value: keyEnd, braces: e.Value().Kind == unstable.InlineTable,
	}
	if within != nil {
		k.path = join(within.path, written)
	}
	if o.inList(k.path) {
		k.path = "\x00" // one of several of the same name
	}
	for strings.IndexByte(" \t=", o.src[k.value]) >= 0 {
		k.value++
	}
	o.keys = append(o.keys, k)
	if !k.braces {
		return
	}
	for it := e.Value().Children(); it.Next(); {
		o.key(it.Node(), h, k)
	}
}

func join(section, key string) string {
	if section == "" {
		return key
	}
	return section + "." + key
}

// inList tells whether a path lies under a [[list]].
func (o *outline) inList(path string) bool {
	return slices.ContainsFunc(o.lists, func(l string) bool { return path == l || strings.HasPrefix(path, l+".") })
}

func (o *outline) find(path string) *keyRange {
	for _, k := range o.keys {
		if k.path == path {
			return k
		}
	}
	return nil
}

// within gives the keys directly between the braces of k.
func (o *outline) within(k *keyRange) []*keyRange {
	var out []*keyRange
	for _, inner := range o.keys {
		if inner.within == k {
			out = append(out, inner)
		}
	}
	return out
}

// blocked tells whether a section is a list, or part of it is a plain value.
func (o *outline) blocked(section string) bool {
	for path := section; path != ""; path = path[:max(strings.LastIndexByte(path, '.'), 0)] {
		if k := o.find(path); k != nil && (!k.braces || path != section) {
			return true
		}
	}
	return section != "" && o.inList(section)
}

// header gives the header of a section, or the top of the file; nil when the
// file does not have it.
func (o *outline) header(section string) *headerRange {
	for _, h := range o.headers {
		if h.path == section && !h.list {
			return h
		}
	}
	return nil
}

// isSection tells whether headers or dotted keys make a section of the path.
func (o *outline) isSection(path string) bool {
	below := func(p string) bool { return p == path || strings.HasPrefix(p, path+".") }
	return slices.ContainsFunc(o.headers[1:], func(h *headerRange) bool { return below(h.path) }) ||
		slices.ContainsFunc(o.keys, func(k *keyRange) bool { return k.path != path && below(k.path) })
}

// lastBelow gives the last dotted key that opens the section by itself.
func (o *outline) lastBelow(section string) *keyRange {
	var last *keyRange
	for _, k := range o.keys {
		if k.within == nil && strings.HasPrefix(k.path, section+".") && !strings.HasPrefix(k.header.path+".", section+".") {
			last = k
		}
	}
	return last
}

// dottedPrefix is what a neighbour of k in the section begins with.
func (k *keyRange) dottedPrefix(section string) string {
	prefix := strings.TrimPrefix(strings.TrimPrefix(section, k.header.path), ".")
	return prefix + "."
}

// lastLine gives where a new line of the section belongs: behind its last key,
// else behind its header.
func (o *outline) lastLine(h *headerRange) int {
	end := h.end
	for _, k := range o.keys {
		if k.header == h && k.within == nil {
			end = o.lineEnd(k.end)
		}
	}
	return end
}

// indent gives the white space before the section's keys.
func (o *outline) indent(h *headerRange) string {
	for _, k := range o.keys {
		if k.header == h && k.within == nil {
			return o.indentAt(k.start)
		}
	}
	return ""
}

func (o *outline) indentAt(offset int) string { return string(o.src[o.lineStart(offset):offset]) }

func (o *outline) lineStart(offset int) int {
	return bytes.LastIndexByte(o.src[:offset], '\n') + 1
}

// lineEnd gives the offset behind the line's break.
func (o *outline) lineEnd(offset int) int {
	if i := bytes.IndexByte(o.src[offset:], '\n'); i >= 0 {
		return offset + i + 1
	}
	return len(o.src)
}
