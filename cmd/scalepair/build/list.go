package build

import (
	"encoding"
	"fmt"
	"reflect"
	"slices"
	"strings"

	"scalepair/data/fault"
	"scalepair/data/unit"
	"scalepair/tension/choice"
)

// PerString is a list over strings: in file and flags low string first, or one
// value for all strings; once settled string 1 first, one for each.
type PerString[T any] []T

// UnmarshalText reads one value for all strings; of labels, a flag's list of
// them.
func (p *PerString[T]) UnmarshalText(text []byte) error {
	if labels, ok := any(p).(*PerString[string]); ok {
		*labels = strings.FieldsFunc(string(text), func(r rune) bool { return strings.ContainsRune(", ;\t", r) })
		return nil
	}
	*p = make(PerString[T], 1)
	if one, ok := any(&(*p)[0]).(encoding.TextUnmarshaler); ok {
		return one.UnmarshalText(text)
	}
	return fault.Fault{What: "this must be a list", Given: string(text), Remedy: "give one for each string, low string first"}
}

// settle turns the list round, and gives every one of n strings its own value.
func (p *PerString[T]) settle(n int) error {
	switch _, labels := any(p).(*PerString[string]); {
	case *p == nil || n == 0:
		return nil
	case len(*p) == 1 && !labels:
		*p = slices.Repeat(*p, n)
	case len(*p) != n:
		return fault.Fault{What: fmt.Sprintf("this lists %d, the tuning has %d strings", len(*p), n),
			Remedy: "give one for each string, low string first"}
	}
	slices.Reverse(*p)
	return nil
}

// settleAll settles every PerString in a value, and reports at each key's place
// what does not fit the number of strings.
func (b *Build) settleAll(v any, path string, strings int, faults *fault.List) {
	rv := reflect.ValueOf(v).Elem()
	for _, f := range keyFields(rv.Type()) {
		key := path + "." + tag(f)
		if s, ok := rv.FieldByIndex(f.Index).Addr().Interface().(interface{ settle(int) error }); ok {
			faults.Include(b.Place(key), b.about(key, s.settle(strings)))
		}
	}
}

// Lengths are the scale lengths to try, rising.
type Lengths []unit.Length

// mostPoints bounds one range of lengths (judgement: a finer grid than a builder
// can see).
const mostPoints = 100_000

// defaultStep is the step of a range without one (judgement).
const defaultStep = 5 * unit.Millimetre

// UnmarshalText reads one length, "686 mm", or a range, "660 mm to 720 mm by 5
// mm". Both ends are points; where the step does not meet the end, the last one
// is shorter.
func (l *Lengths) UnmarshalText(text []byte) error {
	from, rest, isRange := strings.Cut(string(text), " to ")
	to, by, hasStep := strings.Cut(rest, " by ")
	first, err := unit.ParseLength(from)
	if err != nil || !isRange {
		*l = Lengths{first}
		return err
	}
	last, err := unit.ParseLength(to)
	if err != nil {
		return err
	}
	step := unit.Length(defaultStep)
	if hasStep {
		if step, err = unit.ParseLength(by); err != nil {
			return err
		}
	}
	switch count := float64((last - first) / step); {
	case first > last:
		return fault.Fault{What: "the range is empty: it begins above its end", Given: string(text), Remedy: "exchange its ends"}
	case step < unit.Length(unit.Millimetre)/1000 || count > mostPoints:
		return fault.Fault{What: "the step is too small", Given: string(text), Remedy: fmt.Sprintf("take a larger one; up to %d lengths are tried", mostPoints)}
	}
	*l = choice.Lengths(first, last, step)
	return nil
}
