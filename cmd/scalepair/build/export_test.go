package build

import "reflect"

var (
	ParsePair = parsePair
	WithUnit  = withUnit
)

// ValueAt gives the value of a key.
func ValueAt(b *Build, key string) any {
	v, _, _ := reach(reflect.ValueOf(b).Elem(), key)
	return v.Interface()
}
