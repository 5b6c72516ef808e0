package build

import (
	"reflect"

	"github.com/spf13/pflag"
)

var (
	ParsePair = parsePair
	WithUnit  = withUnit
)

// ValueAt gives the value of a key.
func ValueAt(b *Build, key string) any {
	v, _, _ := reach(reflect.ValueOf(b).Elem(), key)
	return v.Interface()
}

// FlagsOf gives the flags of a command line that has no others.
func FlagsOf(args ...string) (*Flags, error) {
	var f Flags
	set := pflag.NewFlagSet("", pflag.ContinueOnError)
	f.Add(set)
	f.Add(set, "trials", "seed")
	return &f, set.Parse(args)
}
