package build

import (
	"bytes"
	"errors"
	"fmt"
	"regexp"
	"slices"
	"strings"

	"github.com/pelletier/go-toml/v2"
)

// Edit sets one key of a build file.
type Edit struct {
	// Key with its section: "chosen.bass". Each part is letters, digits,
	// underscores and hyphens.
	Key string
	// Value as TOML writes it, text in quotes; "" takes the key out with its
	// line.
	Value string
}

var errUneditable = errors.New("the build file is no TOML as it stands; put it right first")

var bareKey = regexp.MustCompile(`^[A-Za-z0-9_-]+(\.[A-Za-z0-9_-]+)*$`)

// SetKeys gives the file with the edits made, one after another, and
// everything else left as it is: comments, layout, order, line ends, a byte
// order mark. Only a comment inside a replaced value goes with it. A key that
// is new goes to the end of its section, a section that is new to the end of
// the file. Keys within lists ([[blanks]]) cannot be set. On an error the file
// is not changed.
func SetKeys(src []byte, edits []Edit) ([]byte, error) {
	text, marked := bytes.CutPrefix(src, byteOrderMark)
	text = bytes.Clone(text)
	for _, e := range edits {
		if err := e.check(); err != nil {
			return nil, err
		}
		var err error
		if text, err = e.apply(text); err != nil {
			return nil, err
		}
	}
	var all map[string]any
	if err := toml.Unmarshal(text, &all); err != nil {
		return nil, fmt.Errorf("the changed build file would be no TOML: %w", err)
	}
	if marked {
		text = append(slices.Clone(byteOrderMark), text...)
	}
	return text, nil
}

// check refuses an edit that cannot mean one key and one value.
func (e Edit) check() error {
	if !bareKey.MatchString(e.Key) {
		return fmt.Errorf("%q is no key of a build file", e.Key)
	}
	if e.Value == "" {
		return nil
	}
	prefix := "key = "
	o, err := outlineOf([]byte(prefix + e.Value))
	if err != nil || len(o.keys) == 0 || o.keys[0].end != len(prefix)+len(e.Value) || strings.Contains(e.Value, "\n") {
		return fmt.Errorf("%s is no TOML value on one line (%q)", e.Key, e.Value)
	}
	return nil
}

func (e Edit) apply(src []byte) ([]byte, error) {
	o, err := outlineOf(src)
	if err != nil {
		return nil, err
	}
	at := o.find(e.Key)
	switch {
	case at != nil && e.Value == "":
		return o.remove(at), nil
	case at != nil:
		return replace(src, at.value, at.end, e.Value), nil
	case o.isSection(e.Key):
		return nil, fmt.Errorf("%s is a section of this build file, not a key", e.Key)
	case e.Value == "":
		return src, nil
	}
	return o.insert(e)
}

// replace puts text in the place of src[from:to].
func replace(src []byte, from, to int, text string) []byte {
	return slices.Concat(src[:from], []byte(text), src[to:])
}

// remove takes a key out: with its lines, or out of its braces.
func (o *outline) remove(k *keyRange) []byte {
	if k.within == nil {
		return replace(o.src, o.lineStart(k.start), o.lineEnd(k.end), "")
	}
	siblings := o.within(k.within)
	i := slices.Index(siblings, k)
	switch {
	case i+1 < len(siblings):
		return replace(o.src, k.start, siblings[i+1].start, "")
	case i > 0:
		return replace(o.src, siblings[i-1].end, k.end, "")
	}
	return replace(o.src, k.start, k.end, "")
}

// insert adds a key that the file does not have.
func (o *outline) insert(e Edit) ([]byte, error) {
	section, name := "", e.Key
	if dot := strings.LastIndexByte(e.Key, '.'); dot >= 0 {
		section, name = e.Key[:dot], e.Key[dot+1:]
	}
	if o.blocked(section) {
		return nil, fmt.Errorf("%s cannot be set: %s is no plain section of this build file", e.Key, section)
	}
	if k := o.find(section); k != nil {
		return o.insertInBraces(k, name+" = "+e.Value), nil
	}
	if h := o.header(section); h != nil {
		return o.insertLine(o.lastLine(h), o.indent(h), name+" = "+e.Value), nil
	}
	if k := o.lastBelow(section); k != nil {
		return o.insertLine(o.lineEnd(k.end), o.indentAt(k.start), k.dottedPrefix(section)+name+" = "+e.Value), nil
	}
	gap := o.newline
	if len(bytes.TrimSpace(o.src)) == 0 {
		gap = ""
	}
	return o.insertLine(len(o.src), "", gap+"["+section+"]"+o.newline+name+" = "+e.Value), nil
}

func (o *outline) insertInBraces(k *keyRange, text string) []byte {
	if len(o.within(k)) > 0 {
		text += ","
	}
	return replace(o.src, k.value+1, k.value+1, " "+text)
}

// insertLine puts a line at an offset where a line begins or the file ends.
func (o *outline) insertLine(at int, indent, line string) []byte {
	if at > 0 && o.src[at-1] != '\n' {
		line = o.newline + indent + line
	} else {
		line = indent + line
	}
	return replace(o.src, at, at, line+o.newline)
}
