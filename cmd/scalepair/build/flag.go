package build

import (
	"reflect"
	"strings"

	"github.com/pelletier/go-toml/v2/unstable"

	"scalepair/data/fault"
	"scalepair/data/unit"
)

// Flag is a flag that takes what a key of the build file takes, and checks it
// as the key is checked. It is a pflag.Value.
type Flag struct {
	name, key string
	field     field
	text      string
}

// NewFlag makes a flag of the name for a key, "strings.capo_fret".
func NewFlag(name, key string) *Flag {
	f, ok := fieldOf(reflect.TypeFor[Build](), key)
	if !ok {
		panic("build: no key " + key)
	}
	return &Flag{name: name, key: key, field: f}
}

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
	_, err := f.value()
	return err
}

// value reads the text as the key's.
func (f *Flag) value() (reflect.Value, error) {
	t := f.field.typ
	if t.Kind() == reflect.Pointer {
		t = t.Elem()
	}
	v := reflect.New(t).Elem()
	text := withUnit(f.key, f.text)
	if err := setText(v, text); err != nil {
		return v, err
	}
	return v, inRange(v, f.key, f.field.rng, f.text)
}

// over puts the value into a build, where it stands from then on for the key's
// own. A flag that was not given leaves the build as it is.
func (f *Flag) over(b *Build) error {
	if f.text == "" {
		return nil
	}
	v, err := f.value()
	if err == nil {
		to := valueAt(reflect.ValueOf(b).Elem(), f.key)
		to.Set(v)
		b.state(f.key, f.name, f.text)
	}
	return err
}

// oneTuning drops the further tunings, and what puts them together: whoever
// names one tuning wants that one.
func (b *Build) oneTuning() {
	b.Tunings = nil
	for path := range b.places.byPath {
		if strings.HasPrefix(path, "tunings") {
			delete(b.places.byPath, path)
		}
	}
}

// state makes a flag the place of a key, and takes its list's entries away.
func (b *Build) state(key, flag, text string) {
	for path := range b.places.byPath {
		if strings.HasPrefix(path, key+"[") {
			delete(b.places.byPath, path)
		}
	}
	b.places.byPath[key] = &spot{path: key, text: text, kind: unstable.String, value: fault.Place{Input: "--" + flag}}
}
