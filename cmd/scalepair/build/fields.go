package build

import (
	"encoding"
	"reflect"
	"strconv"
	"strings"
	"sync"

	"scalepair/data/fault"
)

// field is the place of a key in the structs that a file is read into: its type,
// and the range that its tag states, "" for none.
type field struct {
	typ reflect.Type
	rng string
}

// fieldOf finds the field of a key, "neck.frets" or "blanks[1].width"; ok is
// false where there is none.
func fieldOf(root reflect.Type, path string) (f field, ok bool) {
	f = field{typ: root}
	for _, part := range strings.Split(path, ".") {
		name, _, entry := strings.Cut(part, "[")
		sf, found := keyed(f.typ, name)
		if !found || entry && sf.Type.Kind() != reflect.Slice {
			return f, false
		}
		f = field{sf.Type, sf.Tag.Get("range")}
		if entry {
			f.typ = f.typ.Elem()
		}
	}
	return f, !strings.Contains(path, "][")
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

var fieldsOf sync.Map // of keyFields, by type: every key asks for them

// keyFields gives the fields of a struct, or of the structs of a list, that have
// a key; those of embedded structs among them, unless a field of the same name
// stands before them.
func keyFields(t reflect.Type) (out []reflect.StructField) {
	if found, ok := fieldsOf.Load(t); ok {
		return found.([]reflect.StructField)
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
		err = fault.Fault{What: "not " + strings.TrimSuffix(wanted(v.Type()), " without quotes"), Given: text}
	}
	return err
}

// valueAt gives the value of a key, the zero Value where it was not reached.
func valueAt(v reflect.Value, path string) reflect.Value {
	for _, part := range strings.Split(path, ".") {
		name, index, entry := strings.Cut(strings.TrimSuffix(part, "]"), "[")
		if v = reflect.Indirect(v); !v.IsValid() {
			return v
		}
		sf, ok := keyed(v.Type(), name)
		if !ok {
			return reflect.Value{}
		}
		v = v.FieldByIndex(sf.Index)
		if i, err := strconv.Atoi(index); entry {
			if err != nil || v.Kind() != reflect.Slice || i >= v.Len() {
				return reflect.Value{}
			}
			v = v.Index(i)
		}
	}
	return v
}
