package build

import (
	"encoding"
	"reflect"
	"strconv"
	"strings"
	"sync"

	"scalepair/data/fault"
)

// reach finds the value of a key, "neck.frets" or "blanks[1].width", in the structs
// that a file is read into, and the range that its tag states, "" for none. What a
// pointer leaves open on the way is made, and a list's next entry is added to it;
// ok is false where no field has the key.
func reach(v reflect.Value, path string) (at reflect.Value, rng string, ok bool) {
	for _, part := range strings.Split(path, ".") {
		name, entry, isEntry := strings.Cut(strings.TrimSuffix(part, "]"), "[")
		f, found := keyed(v.Type(), name)
		if !found || v.Kind() != reflect.Struct {
			return v, "", false
		}
		v, rng = made(v.FieldByIndex(f.Index)), f.Tag.Get("range")
		if i, err := strconv.Atoi(entry); isEntry {
			if err != nil || v.Kind() != reflect.Slice || i > v.Len() {
				return v, "", false
			}
			if i == v.Len() {
				v.Set(reflect.Append(v, reflect.Zero(v.Type().Elem())))
			}
			v = made(v.Index(i))
		}
	}
	return v, rng, true
}

// made gives what a pointer points to, anything else as it is.
func made(v reflect.Value) reflect.Value {
	if v.Kind() != reflect.Pointer {
		return v
	}
	if v.IsNil() {
		v.Set(reflect.New(v.Type().Elem()))
	}
	return v.Elem()
}

// keyed finds the field of one key in a struct.
func keyed(t reflect.Type, key string) (reflect.StructField, bool) {
	for _, f := range keyFields(t) {
		if tag(f) == key {
			return f, true
		}
	}
	return reflect.StructField{}, false
}

// keyFields gives the fields of a struct, or of the structs of a list, that have
// a key; those of embedded structs among them, unless a field of the same name
// stands before them.
func keyFields(t reflect.Type) (out []reflect.StructField) {
	if known, ok := fieldsOf.Load(t); ok {
		return known.([]reflect.StructField)
	}
	defer func(t reflect.Type) { fieldsOf.Store(t, out) }(t)
	for t.Kind() == reflect.Pointer || t.Kind() == reflect.Slice {
		t = t.Elem()
	}
	if t.Kind() != reflect.Struct {
		return nil
	}
	for _, f := range reflect.VisibleFields(t) {
		if tag(f) != "" && tag(f) != "-" {
			out = append(out, f)
		}
	}
	return out
}

// fieldsOf are the fields by type: every key asks for them, and a build is read anew
// for every movement of a slider.
var fieldsOf sync.Map

func tag(f reflect.StructField) string { return f.Tag.Get("toml") }

// setText puts a text into a value as a flag or one value of a file gives it.
func setText(v reflect.Value, text string) error {
	if t, ok := v.Addr().Interface().(encoding.TextUnmarshaler); ok {
		return t.UnmarshalText([]byte(text))
	}
	var err error
	switch v.Kind() {
	case reflect.String:
		if v.SetString(strings.TrimSpace(text)); v.String() == "" {
			err = fault.Fault{What: "this is empty", Remedy: "give it, or leave it out"}
		}
	case reflect.Int:
		var n int64
		n, err = strconv.ParseInt(strings.TrimSpace(text), 0, 32)
		v.SetInt(n)
	case reflect.Float64:
		var x float64
		x, err = strconv.ParseFloat(strings.TrimSpace(text), 64)
		v.SetFloat(x)
	default:
		panic("build: no text for " + v.Type().String())
	}
	if _, ours := err.(fault.Fault); err != nil && !ours {
		wanted, _ := form(v)
		err = fault.Fault{What: "not " + strings.TrimSuffix(wanted, " without quotes"), Given: text}
	}
	return err
}
