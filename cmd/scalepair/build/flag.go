package build

import (
	"reflect"
	"strings"

	"scalepair/data/unit"
)

// Flag is a flag that takes what a key of the build file takes, and checks it
// as the key is checked. It is a pflag.Value.
type Flag struct{ name, key, text string }

// NewFlag makes a flag of the name for a key, "strings.capo_fret".
func NewFlag(name, key string) *Flag { return &Flag{name: name, key: key} }

// String gives the text that was set.
func (f *Flag) String() string { return f.text }

// Type is what help shows where the usage names no value.
func (f *Flag) Type() string { return "value" }

// Set checks the text.
func (f *Flag) Set(text string) error {
	f.text = text
	if f.shift() {
		_, err := unit.ParseLength(text)
		return err
	}
	return f.into(new(Build))
}

// into puts the value into a build.
func (f *Flag) into(b *Build) error {
	v, rng, ok := reach(reflect.ValueOf(b).Elem(), f.key)
	if !ok {
		panic("build: no key " + f.key)
	}
	if err := setText(v, f.text); err != nil {
		return err
	}
	return inRange(v, f.key, rng, f.text)
}

// over puts the value into a build, where it stands from then on for the key's
// own. A flag that was not given leaves the build as it is.
func (f *Flag) over(b *Build) error {
	if f.text == "" {
		return nil
	}
	b.places.say(f.key, f.name, f.text)
	return f.into(b)
}

// oneTuning drops the further tunings, and what puts them together: whoever
// names one tuning wants that one.
func (b *Build) oneTuning() {
	b.Tunings = nil
	b.places.drop(func(path string) bool { return strings.HasPrefix(path, "tunings") })
}
