package build

import (
	"bytes"
	"fmt"
	"reflect"
	"slices"
	"strconv"
	"strings"

	"github.com/pelletier/go-toml/v2/unstable"

	"scalepair/data/fault"
)

// Edit is one change of a build file: a key gets a text or a list of texts, which are
// written without quotes, or is removed; so is a section.
type Edit struct {
	Key    string // "neck.frets", "blanks[1].width"; an entry that is not there yet is begun
	Text   string
	List   []string
	Remove bool
}

// Change makes changes in a build file, one after another, and leaves every other
// byte as it is. Whether the file reads afterwards is another matter.
func Change(src []byte, edits ...Edit) ([]byte, error) {
	return changed(src, DefaultFile, edits)
}

func changed(src []byte, file string, edits []Edit) ([]byte, error) {
	for _, e := range edits {
		text := bytesOf(src)
		p, err := findPlaces(file, text)
		if err != nil {
			return nil, err
		}
		from, to, put, err := p.change(e)
		if err != nil {
			return nil, err
		}
		if bytes.Contains(text, []byte("\r\n")) {
			put = strings.ReplaceAll(put, "\n", "\r\n")
		}
		src = slices.Concat(src[:len(src)-len(text)], text[:from], []byte(put), text[to:])
	}
	return src, nil
}

// bytesOf is a text without its byte order mark.
func bytesOf(src []byte) []byte { return bytes.TrimPrefix(src, byteOrderMark) }

// change says which bytes a change replaces by what.
func (p *places) change(e Edit) (from, to int, put string, err error) {
	s := p.byPath[e.Key]
	switch {
	case s == nil && e.Remove:
		return 0, 0, "", nil
	case s != nil && s.end == 0:
		return 0, 0, "", fault.Fault{Place: fault.Place{Input: p.file}, What: "this is no section or key of its own", Given: e.Key, Remedy: "change it in the file"}
	}
	if e.Remove {
		return p.lineOf(s.key), p.lineEnd(s.end), "", nil
	}
	value, err := e.value()
	if err != nil {
		return 0, 0, "", err
	}
	if s != nil {
		return s.value, s.end, value, nil
	}
	section, name := inSection(e.Key)
	line := name + " = " + value + "\n"
	at := p.lastOf(section)
	switch in := p.byPath[section]; {
	case section != "" && in == nil:
		return len(p.src), len(p.src), p.newLine(len(p.src)) + "\n" + header(section) + "\n" + line, nil
	case section != "" && (in.kind != unstable.Table || in.end == 0):
		return 0, 0, "", fault.Fault{Place: p.place(in.key), What: section + " is no section of its own", Remedy: "begin it with " + header(section) + " on a line of its own"}
	}
	return at, at, p.newLine(at) + line, nil
}

// lastOf is where the next key of a section goes: below its last one, and at the top
// of the file where it has none.
func (p *places) lastOf(section string) int {
	if s := p.byPath[section]; section != "" && s != nil {
		return p.lineEnd(s.end)
	}
	end := 0
	for _, s := range p.spots {
		if s.kind == unstable.Table || s.kind == unstable.Array && s.end == 0 {
			break
		}
		end = p.lineEnd(s.end)
	}
	return end
}

func (p *places) lineOf(offset int) int { return bytes.LastIndexByte(p.src[:offset], '\n') + 1 }

// lineEnd is behind the end of the line on which something ends.
func (p *places) lineEnd(offset int) int {
	if i := bytes.IndexByte(p.src[offset:], '\n'); i >= 0 {
		return offset + i + 1
	}
	return len(p.src)
}

// newLine ends the line before an offset where that is open.
func (p *places) newLine(offset int) string {
	if offset > 0 && p.src[offset-1] != '\n' {
		return "\n"
	}
	return ""
}

// value writes the new value as the file has it.
func (e Edit) value() (string, error) {
	v, _, ok := reach(reflect.ValueOf(new(Build)).Elem(), index.ReplaceAllString(e.Key, "[0]"))
	if !ok {
		return "", fault.Fault{What: "there is no such key", Given: e.Key}
	}
	as := v
	if e.List != nil && v.Kind() == reflect.Slice {
		as = reflect.New(v.Type().Elem()).Elem()
	}
	_, kinds := form(as)
	one := func(text string) string {
		text = strings.TrimSpace(text)
		_, err := strconv.ParseFloat(text, 64)
		if err == nil && slices.Contains(kinds, unstable.Integer) || slices.Contains(kinds, unstable.Bool) && (text == "true" || text == "false") {
			return text
		}
		return quote(text)
	}
	switch {
	case v.Kind() == reflect.Slice && v.Type().Elem().Kind() == reflect.Struct && len(keyFields(v.Type())) > 0:
		return e.Text, nil // as TOML writes it
	case e.List != nil:
		list := make([]string, len(e.List))
		for i, text := range e.List {
			list[i] = one(text)
		}
		return fmt.Sprintf("[%s]", strings.Join(list, ", ")), nil
	}
	return one(e.Text), nil
}

// KeyAt gives the key that stands at a place of a build file, or whose value does;
// "" for none.
func KeyAt(src []byte, at fault.Place) string {
	places, _ := findPlaces(at.Input, bytesOf(src))
	if places == nil || at.Line == 0 {
		return ""
	}
	found := ""
	for _, s := range places.spots {
		if places.place(s.value) == at || places.place(s.key) == at {
			found = s.path // of a list and its first entry the entry
		}
	}
	return found
}
