package build

import (
	"encoding"
	"fmt"
	"math"
	"reflect"
	"strconv"
	"strings"
	"sync"
	"unicode"

	"scalepair/data/fault"
)

// inRange reports a value that is not finite or lies outside a range, which is
// written as its tag is: "0.1 mm, 500 mm". Of a value with parts, a list of
// lengths say, every number must lie in it. given is the value's text.
func inRange(v reflect.Value, key, rng, given string) error {
	switch v.Kind() {
	case reflect.Pointer, reflect.Interface:
		if !v.IsNil() {
			return inRange(v.Elem(), key, rng, given)
		}
	case reflect.Struct:
		for i := range v.NumField() {
			if v.Field(i).IsZero() && strings.IndexAny(given, "0123456789.") != 0 {
				continue // a word stands for it
			}
			if err := inRange(v.Field(i), key, rng, given); err != nil {
				return err
			}
		}
	case reflect.Slice:
		for i := range v.Len() {
			if err := inRange(v.Index(i), key, rng, given); err != nil {
				return err
			}
		}
	case reflect.Float64, reflect.Int:
		if x := number(v); math.IsNaN(x) || math.IsInf(x, 0) {
			return fault.Fault{What: "this must be a finite number", Given: given}
		} else if v.Kind() == reflect.Int && v.Type().Name() != "int" || rng == "" {
			return nil // a word's number
		} else if lo, hi := bounds(v.Type(), key, rng); x < lo || x > hi {
			from, to, _ := strings.Cut(rng, ",")
			return fault.Fault{What: "this is out of range", Given: given,
				Remedy: otherUnit(v.Type(), given, lo, hi) + "it goes from " + from + " to " + strings.TrimSpace(to)}
		}
	}
	return nil
}

func number(v reflect.Value) float64 {
	if v.CanInt() {
		return float64(v.Int())
	}
	return v.Float()
}

// bounds reads the two ends of a range, each as a value of the type.
func bounds(t reflect.Type, key, rng string) (lo, hi float64) {
	type of struct {
		t        reflect.Type
		key, rng string
	}
	if known, ok := boundsOf.Load(of{t, key, rng}); ok {
		ends := known.([2]float64)
		return ends[0], ends[1]
	}
	defer func() { boundsOf.Store(of{t, key, rng}, [2]float64{lo, hi}) }()
	from, to, _ := strings.Cut(rng, ",")
	end := func(text string) float64 {
		v := reflect.New(t).Elem()
		if err := setText(v, withUnit(key, strings.TrimSpace(text))); err != nil {
			panic(fmt.Sprintf("build: range %q of %s: %v", rng, t, err))
		}
		return number(v)
	}
	return end(from), end(to)
}

// boundsOf are the ends of the ranges that were read, for the same reason as fieldsOf.
var boundsOf sync.Map

// otherUnit asks for the units in which a number would be in range, two at most,
// where it is not in its own: `did you mean "25.6 in"? `.
func otherUnit(t reflect.Type, text string, lo, hi float64) string {
	number := strings.TrimRightFunc(text, func(r rune) bool { return !unicode.IsDigit(r) && r != '.' })
	var meant []string
	for _, name := range []string{"mm", "in", "cm", "m", "g", "mg", "kg", "N", "lbf"} {
		v := reflect.New(t)
		u, ok := v.Interface().(encoding.TextUnmarshaler)
		if !ok || v.Elem().Kind() != reflect.Float64 || u.UnmarshalText([]byte(number+" "+name)) != nil {
			continue
		}
		if x := v.Elem().Float(); x >= lo && x <= hi && len(meant) < 2 {
			meant = append(meant, strconv.Quote(number+" "+name))
		}
	}
	if meant == nil {
		return ""
	}
	return "did you mean " + strings.Join(meant, " or ") + "? "
}
