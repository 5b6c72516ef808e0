package build

import (
	"encoding"
	"reflect"
)

var (
	KeyFields = keyFields
	ParsePair = parsePair
)

// ValueAt gives the value of a key.
func ValueAt(b *Build, key string) any {
	return valueAt(reflect.ValueOf(b).Elem(), key).Interface()
}

// RangeOf gives the range of a key, and whether its values are lists that have
// no text.
func RangeOf(key string) (rng string, list bool) {
	f, _ := fieldOf(reflect.TypeFor[Build](), key)
	_, reads := reflect.New(f.typ).Interface().(encoding.TextUnmarshaler)
	return f.rng, f.typ.Kind() == reflect.Slice && (!reads || f.typ.Elem().Kind() == reflect.Int)
}
