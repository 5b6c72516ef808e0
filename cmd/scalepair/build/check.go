package build

import (
	"encoding"
	"fmt"
	"reflect"
	"slices"
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
	text := s.text
	switch wanted, kinds := form(v); {
	case !slices.Contains(kinds, s.kind):
		return fault.Fault{What: "this must be " + strings.Replace(wanted, "[name]", "["+lastKey(s.path)+"]", 1), Given: text}
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

// form says what a value of a field looks like, and as what a file may write it.
func form(v reflect.Value) (wanted string, kinds []unstable.Kind) {
	_, reads := v.Addr().Interface().(encoding.TextUnmarshaler)
	const texts, list = "text in quotes", unstable.Array
	switch k := v.Kind(); {
	case k == reflect.Slice && v.Type().Elem().Kind() == reflect.Int:
		return "a list of whole numbers, such as [5, 12]", []unstable.Kind{list}
	case k == reflect.Slice && reads:
		return texts, []unstable.Kind{list, unstable.String, unstable.Integer, unstable.Float}
	case k == reflect.Slice && v.Type().Elem().Kind() == reflect.Struct:
		return "one or several sections, each begun with [[name]] on a line of its own", []unstable.Kind{list}
	case k == reflect.Slice:
		return `a list of texts, such as ["w46", "w36"]`, []unstable.Kind{list}
	case reads:
		return texts, []unstable.Kind{unstable.String, unstable.Integer, unstable.Float}
	case k == reflect.Struct:
		return "a section, begun with [name] on a line of its own", []unstable.Kind{unstable.Table, unstable.InlineTable}
	case k == reflect.Bool:
		return "true or false without quotes", []unstable.Kind{unstable.Bool}
	case k == reflect.Int:
		return "a whole number without quotes", []unstable.Kind{unstable.Integer}
	case k == reflect.Float64:
		return "a number without quotes", []unstable.Kind{unstable.Integer, unstable.Float}
	}
	return texts, []unstable.Kind{unstable.String}
}

// unknown reports a key that no field has, with the key that was probably meant,
// or the section that has it. What stands within an unknown section is not
// looked at.
func (p *places) unknown(root reflect.Value, s *spot, faults *fault.List) {
	section, key := inSection(s.path)
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
