package build

import (
	"encoding"
	"fmt"
	"reflect"
	"strings"

	"github.com/pelletier/go-toml/v2/unstable"

	"scalepair/data/fault"
	"scalepair/data/suggest"
	"scalepair/data/unit"
)

// decode reads every key of the file into a build: a field must have the key, the
// value be of its kind and in its range. It reports all faults.
func (p *places) decode(into *Build, faults *fault.List) {
	*faults = append(*faults, p.faults...)
	root := reflect.ValueOf(into).Elem()
	for _, s := range p.spots {
		if v, rng, ok := reach(root, s.path); !ok {
			p.unknown(root, s, faults)
		} else if err := s.set(v, rng); err != nil {
			faults.Include(p.of(s), fault.About(lastKey(s.path), err))
		}
		if len(*faults) >= mostFaults {
			return
		}
	}
}

// set reads what is written into a field.
func (s *spot) set(v reflect.Value, rng string) error {
	_, reads := v.Addr().Interface().(encoding.TextUnmarshaler)
	fits := false
	switch k := v.Kind(); s.kind {
	case unstable.Table, unstable.InlineTable:
		fits = k == reflect.Struct && !reads
	case unstable.Array:
		fits = k == reflect.Slice
	case unstable.Bool:
		fits = k == reflect.Bool
	case unstable.String:
		fits = reads || k == reflect.String
	case unstable.Integer:
		fits = reads || k == reflect.Int || k == reflect.Float64
	case unstable.Float:
		fits = reads || k == reflect.Float64
	}
	text := s.text
	switch {
	case !fits:
		return fault.Fault{What: "this must be " + strings.Replace(wanted(v.Type()), "[name]", "["+lastKey(s.path)+"]", 1), Given: text}
	case s.kind == unstable.Table || s.kind == unstable.InlineTable:
		return nil // its keys follow
	case s.kind == unstable.Array:
		v.Set(reflect.MakeSlice(v.Type(), 0, 0)) // its entries follow
		return nil
	case s.kind == unstable.Bool:
		v.SetBool(text == "true")
		return nil
	case s.kind != unstable.String:
		text = withUnit(s.path, strings.ReplaceAll(text, "_", ""))
	}
	if err := setText(v, text); err != nil {
		return err
	}
	return inRange(v, s.path, rng, s.text)
}

// unitsOfKeys are the units of numbers by the ends of their keys.
var unitsOfKeys = map[string]string{"_deg": "deg", "_percent": "%", "_cents": "cents", "_hz": "Hz"}

// withUnit gives a bare number the unit that its key's name ends in.
func withUnit(key, text string) string {
	if i := strings.LastIndexByte(key, '_'); i >= 0 && unitsOfKeys[key[i:]] != "" {
		if _, err := unit.ParseNumber(text); err == nil {
			return text + " " + unitsOfKeys[key[i:]]
		}
	}
	return text
}

// wanted says what a value of a type looks like.
func wanted(t reflect.Type) string {
	_, reads := reflect.New(t).Interface().(encoding.TextUnmarshaler)
	switch k := t.Kind(); {
	case k == reflect.Slice && t.Elem().Kind() == reflect.Struct && !reads:
		return "one or several sections, each begun with [[name]] on a line of its own"
	case k == reflect.Slice && t.Elem().Kind() == reflect.Int:
		return "a list of whole numbers, such as [5, 12]"
	case k == reflect.Slice && !reads:
		return `a list of texts, such as ["w46", "w36"]`
	case reads:
		return "text in quotes"
	case k == reflect.Struct:
		return "a section, begun with [name] on a line of its own"
	case k == reflect.Bool:
		return "true or false without quotes"
	case k == reflect.Int:
		return "a whole number without quotes"
	case k == reflect.Float64:
		return "a number without quotes"
	}
	return "text in quotes"
}

// unknown reports a key that no field has, with the key that was probably meant,
// or the section that has it. What stands within an unknown section is not
// looked at.
func (p *places) unknown(root reflect.Value, s *spot, faults *fault.List) {
	section, key := "", s.path
	if i := strings.LastIndexByte(s.path, '.'); i >= 0 {
		section, key = s.path[:i], s.path[i+1:]
	}
	in, ok := root, true
	if section != "" {
		in, _, ok = reach(root, section)
	}
	if !ok || in.Kind() != reflect.Struct || strings.HasSuffix(key, "]") {
		return // its section is reported
	}
	var known []string
	for _, f := range keyFields(in.Type()) {
		known = append(known, tag(f))
	}
	what, remedy := "there is no such key in "+header(section), "the keys are "+strings.Join(known, ", ")
	switch {
	case section == "" && (s.kind == unstable.Table || s.kind == unstable.Array):
		what = "there is no such section"
	case section == "":
		what = "there is no such key above the first section"
	}
	if best := suggest.Nearest(key, known); best != "" {
		remedy = fmt.Sprintf("did you mean %q?", best)
	} else if owner := owner(root.Type(), key); owner != "" {
		remedy = "it belongs in " + owner
	}
	faults.Add(p.place(s.key), what, key, remedy)
}

// owner names the section that has the key, "" when none does. A section of its
// own stands before those that take after it, such as [chosen] after [neck].
func owner(root reflect.Type, key string) (name string) {
	for _, f := range keyFields(root) {
		_, has := keyed(f.Type, key)
		switch {
		case tag(f) == key:
			return "the top of the file, above the first section"
		case has && f.Type.Kind() == reflect.Struct:
			return "[" + tag(f) + "]"
		case has && name == "":
			name = "[" + tag(f) + "]"
		}
	}
	return name
}
