package fault_test

import (
	"errors"
	"fmt"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"scalepair/data/fault"
)

func TestFaultError(t *testing.T) {
	at := fault.Place{Input: "build.toml", Line: 3, Column: 8}
	for _, c := range []struct {
		name, want string
		f          fault.Fault
	}{
		{"all parts", `build.toml:3:8: a length needs a unit ("648"); write "648 mm" or "25.5 in"`,
			fault.Fault{at, "a length needs a unit", "648", `write "648 mm" or "25.5 in"`}},
		{"no text given", "--bass: missing; give one", fault.Fault{fault.Place{Input: "--bass"}, "missing", "", "give one"}},
		{"no remedy", `f:2: odd ("x")`, fault.Fault{fault.Place{Input: "f", Line: 2}, "odd", "x", ""}},
		{"no place", "odd", fault.Fault{What: "odd"}},
	} {
		t.Run(c.name, func(t *testing.T) { assert.Equal(t, c.want, c.f.Error()) })
	}
}

func TestListSortsAndDropsRepeats(t *testing.T) {
	var l fault.List
	require.NoError(t, l.Err())
	l.Add(fault.Place{Input: "b", Line: 9}, "last", "", "")
	l.Add(fault.Place{Input: "b", Line: 2, Column: 4}, "second", "", "")
	l.Add(fault.Place{Input: "b", Line: 2, Column: 1}, "first", "", "")
	l.Add(fault.Place{Input: "b", Line: 2, Column: 1}, "first", "", "")
	assert.EqualError(t, l.Err(), "b:2:1: first\nb:2:4: second\nb:9: last")
}

func TestIncludeUnfoldsLists(t *testing.T) {
	var inner, outer fault.List
	inner.Add(fault.Place{Input: "x", Line: 1}, "one", "", "")
	inner.Add(fault.Place{Input: "x", Line: 2}, "two", "", "")
	outer.Include(fault.Place{Input: "y"}, fmt.Errorf("reading: %w", inner.Err()))
	outer.Include(fault.Place{Input: "y"}, fault.Fault{What: "three"})
	outer.Include(fault.Place{Input: "y"}, errors.New("four"))
	outer.Include(fault.Place{Input: "y"}, nil)
	require.Len(t, outer, 4)
	assert.Equal(t, "x", outer[0].Place.Input)
	assert.Equal(t, fault.Fault{Place: fault.Place{Input: "y"}, What: "three"}, outer[2])
	assert.Equal(t, fault.Fault{Place: fault.Place{Input: "y"}, What: "four"}, outer[3])
}
