package build

import (
	"encoding"
	"reflect"
)

var (
	KeyFields = keyFields
	ParsePair = parsePair
	WithUnit  = withUnit
	Root      = reflect.TypeFor[Build]()
)

// ValueAt gives the value of a key.
func ValueAt(b *Build, key string) any {
	v, _, _ := reach(reflect.ValueOf(b).Elem(), key)
	return v.Interface()
}

// RangeOf gives the range of a key, and whether its values are lists that have
// no text.
func RangeOf(key string) (rng string, list bool) {
	v, rng, _ := reach(reflect.ValueOf(new(Build)).Elem(), key)
	_, reads := v.Addr().Interface().(encoding.TextUnmarshaler)
	return rng, v.Kind() == reflect.Slice && (!reads || v.Type().Elem().Kind() == reflect.Int)
}
