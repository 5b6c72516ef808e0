package build

import "reflect"

var (
	KeyFields = keyFields
	ParsePair = parsePair
)

// ValueAt gives the value of a key.
func ValueAt(b *Build, key string) any {
	return valueAt(reflect.ValueOf(b).Elem(), key).Interface()
}
