package testutil

import (
	"math"
	"reflect"
	"slices"
	"strings"

	"github.com/stretchr/testify/require"

	"scalepair/data/fault"
)

// CheckFaults fails unless err is a list of faults of which each stands in the input
// of that name, on a line that text has, and says what is wrong.
func CheckFaults(t require.TestingT, err error, input, text string) {
	list, ok := err.(fault.List)
	require.True(t, ok, "%v", err)
	require.NotEmpty(t, list)
	lines := strings.Count(text, "\n") + strings.Count(text, "\r") + 1
	for _, one := range list {
		require.Equal(t, input, one.Place.Input, "%v", one)
		require.LessOrEqual(t, one.Place.Line, lines, "%v", one)
		require.NotEmpty(t, one.What)
	}
}

// CheckFinite walks all exported fields of v and fails on a number that is not finite
// or a zero with a sign. Fields named in except are passed over.
func CheckFinite(t require.TestingT, v any, except ...string) { walk(t, reflect.ValueOf(v), except) }

func walk(t require.TestingT, v reflect.Value, except []string) {
	switch v.Kind() {
	case reflect.Float64:
		x := v.Float()
		require.False(t, math.IsNaN(x) || math.IsInf(x, 0), "%v", x)
		require.False(t, x == 0 && math.Signbit(x), "-0")
	case reflect.Pointer:
		if !v.IsNil() {
			walk(t, v.Elem(), except)
		}
	case reflect.Slice, reflect.Array:
		for i := range v.Len() {
			walk(t, v.Index(i), except)
		}
	case reflect.Struct:
		for i := range v.NumField() {
			if f := v.Type().Field(i); f.IsExported() && !slices.Contains(except, f.Name) {
				walk(t, v.Field(i), except)
			}
		}
	}
}
