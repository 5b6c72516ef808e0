package build

import (
	"fmt"
	"reflect"
	"regexp"
	"slices"
	"strings"

	"github.com/pelletier/go-toml/v2/unstable"

	"scalepair/tuning"
)

// KeySection is a section of the build file as a page shows it: all the keys that it
// may have, each with what the file says.
type KeySection struct {
	Path  string `json:"path"` // "neck", "blanks[0]"; "" for the top of the file
	Name  string `json:"name"` // "neck", "blanks"
	List  bool   `json:"list"` // there may be several: the last is one that is not there yet
	Given bool   `json:"given"`
	Help  string `json:"help"`
	Keys  []Key  `json:"keys"`
}

// Key is one key of the build file.
type Key struct {
	Path  string   `json:"path"` // "neck.frets", "blanks[0].width"
	Name  string   `json:"name"`
	Type  string   `json:"type"`  // of a value, in lower case: "length", "force", "int", "bool", "string"
	List  bool     `json:"list"`  // it may be a list
	Form  string   `json:"form"`  // what a value looks like in the file
	Range string   `json:"range"` // "1 mm, 100 mm"
	Words []string `json:"words"` // that may stand there, as far as the template names them
	// Sample is a value, Default whether it holds without the key, and Help what
	// there is to know, as the template has them.
	Sample  string `json:"sample"`
	Default bool   `json:"sample_is_default"`
	Help    string `json:"help"`

	Given  bool     `json:"given"`
	Text   string   `json:"text"`   // as the file has it, without quotes; of a list as it is written
	Texts  []string `json:"texts"`  // the entries of a list
	Line   int      `json:"line"`   // where the value stands
	Column int      `json:"column"` // in characters
}

// Keys gives every key that a build file may have, with what this one says. The
// error is the parser's.
func Keys(src []byte) ([]KeySection, error) {
	places, err := findPlaces(DefaultFile, bytesOf(src))
	if err != nil {
		return nil, err
	}
	k := keyReader{places, nil}
	if k.lines, err = templateLines(places); err != nil {
		return nil, err
	}
	root := reflect.TypeFor[Build]()
	out := []KeySection{k.section("", "", root, false)}
	for _, f := range keyFields(root) {
		name := tag(f)
		switch t, list, ok := sectionOf(f); {
		case list && ok:
			for i := range places.entries[name] + 1 {
				out = append(out, k.section(fmt.Sprintf("%s[%d]", name, i), name, t, true))
			}
		case ok:
			out = append(out, k.section(name, name, t, false))
		}
	}
	return out, nil
}

// sectionOf gives the type of what a field's keys stand in, and reports whether that
// is a section of its own, or a list of them.
func sectionOf(f reflect.StructField) (t reflect.Type, list, ok bool) {
	if t = f.Type; t.Kind() == reflect.Pointer {
		t = t.Elem()
	}
	if list = t.Kind() == reflect.Slice; list {
		t = t.Elem()
	}
	_, kinds := form(reflect.New(t).Elem())
	return t, list, len(keyFields(t)) > 0 && slices.Contains(kinds, unstable.Table)
}

// keyReader reads the keys of a file beside the lines of the template.
type keyReader struct {
	places *places
	lines  map[string]templateLine
}

func (k *keyReader) section(path, name string, t reflect.Type, list bool) KeySection {
	s := KeySection{Path: path, Name: name, List: list, Given: path == "" || k.places.byPath[path] != nil, Help: k.lines[name].help}
	for _, f := range keyFields(t) {
		if _, _, own := sectionOf(f); path != "" || !own {
			s.Keys = append(s.Keys, k.key(path, name, f))
		}
	}
	return s
}

func (k *keyReader) key(path, section string, f reflect.StructField) Key {
	name := tag(f)
	key := Key{Path: strings.TrimPrefix(path+"."+name, "."), Name: name, Range: f.Tag.Get("range"), Words: []string{}, Texts: []string{}}
	v := made(reflect.New(f.Type).Elem())
	var kinds []unstable.Kind
	key.Form, kinds = form(v)
	key.List = slices.Contains(kinds, unstable.Array)
	t := v.Type()
	if t.Kind() == reflect.Slice {
		t = t.Elem()
	}
	key.Type = strings.ToLower(strings.TrimPrefix(t.Name(), "float"))
	line := k.lines[strings.TrimPrefix(section+"."+name, ".")]
	key.Sample, key.Default, key.Help, key.Words = line.sample, line.isDefault, line.help, line.words()
	if t == reflect.TypeFor[tuning.Tuning]() {
		for _, named := range tuning.Named() {
			key.Words = append(key.Words, named.Name)
		}
	}
	if s := k.places.byPath[key.Path]; s != nil {
		key.Given, key.Text = true, s.text
		if s.kind == unstable.Array || s.kind == unstable.InlineTable {
			key.Text = string(k.places.src[s.value:s.end])
		}
		for _, entry := range k.places.list(key.Path) {
			key.Texts = append(key.Texts, entry.text)
		}
		at := k.places.of(s)
		key.Line, key.Column = at.Line, at.Column
	}
	return key
}

// templateLine is what the template says of a key or a section.
type templateLine struct {
	sample, help string
	isDefault    bool
}

var (
	sectionLine = regexp.MustCompile(`^(?:#\s*)?\[+([a-z_]+)\]+(?:\s*# (.*))?$`)
	keyLine     = regexp.MustCompile(`^#?([a-z_0-9]+) = (.*?)(?:\s+# (.*))?$`)
	quotedWord  = regexp.MustCompile(`"([a-z][^"0-9]*)"`)
)

// templateLines reads the template in the units of a file: what it says of each key
// by "section.key", and of each section by its name.
func templateLines(p *places) (map[string]templateLine, error) {
	var s Start
	if spot := p.byPath["length_unit"]; spot != nil {
		_ = s.Unit.UnmarshalText([]byte(spot.text)) // where it is none, its fault is said elsewhere
	}
	text, _, err := Template(s)
	out := map[string]templateLine{}
	section, remarks := "", []string(nil)
	for line := range strings.Lines(string(text)) {
		line = strings.TrimSpace(line)
		if m := sectionLine.FindStringSubmatch(line); m != nil {
			if section = m[1]; out[section].help == "" {
				out[section] = templateLine{help: strings.TrimSpace(strings.Join(remarks, " ") + " " + m[2])}
			}
		} else if m := keyLine.FindStringSubmatch(line); m != nil {
			key := section + "." + m[1]
			if section == "" || strings.HasPrefix(m[3], "example, at the top of the file") {
				key = m[1]
			}
			if _, stands := out[key]; !stands {
				out[key] = templateLine{m[2], m[3], strings.HasPrefix(m[3], "default")}
			}
		}
		if remark, ok := strings.CutPrefix(line, "# "); ok && !strings.HasPrefix(remark, "[") {
			remarks = append(remarks, remark)
		} else {
			remarks = nil
		}
	}
	return out, err
}

// words are the words that the line names: its sample and those in its remark.
func (l templateLine) words() []string {
	out := []string{}
	for _, m := range quotedWord.FindAllStringSubmatch(l.sample+" "+l.help, -1) {
		if !slices.Contains(out, m[1]) {
			out = append(out, m[1])
		}
	}
	return out
}
