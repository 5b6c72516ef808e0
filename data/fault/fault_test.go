package fault_test

import (
	"errors"
	"fmt"
	"strings"
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

func TestAboutKeepsFaultsWhole(t *testing.T) {
	at := fault.Place{Input: "r.csv", Line: 2}
	bad := fault.Fault{Place: at, What: "a length needs a unit", Given: "5", Remedy: "write 5 mm"}
	require.NoError(t, fault.About("outer", nil))
	var one fault.Fault
	require.ErrorAs(t, fault.About("outer", bad), &one)
	assert.Equal(t, fault.Fault{Place: at, What: "outer: a length needs a unit", Given: "5", Remedy: "write 5 mm"}, one)
	list := fault.List{bad, bad}
	assert.EqualError(t, fault.About("outer", list), one.Error()+"\n"+one.Error())
	assert.Equal(t, "a length needs a unit", list[0].What, "the list given is not changed")
	assert.EqualError(t, fault.About("outer", errors.New("torn")), "outer: torn")
}

// One slip in every row is one message; a few stay apart, so that each has its
// place.
func TestOneSlipInManyPlacesIsOneMessage(t *testing.T) {
	rows := func(n int) fault.List {
		var l fault.List
		for i := range n {
			l.Add(fault.Place{Input: "m.csv", Line: 3 + i, Column: 6}, "no such line", fmt.Sprint("x", i), "use bass or treble")
		}
		return l
	}
	assert.EqualError(t, rows(3).Err(), `m.csv:3:6: no such line ("x0"); use bass or treble
m.csv:4:6: no such line ("x1"); use bass or treble
m.csv:5:6: no such line ("x2"); use bass or treble`)
	mixed := append(rows(50), fault.Fault{Place: fault.Place{Input: "m.csv", Line: 4}, What: "another"})
	assert.EqualError(t, mixed.Err(), `m.csv:3:6: no such line, here and in 49 more places down to line 52 ("x0"); use bass or treble
m.csv:4: another`)
}

// Remedies that differ in their numbers only say the same.
func TestRemediesThatDifferInNumbersAreOne(t *testing.T) {
	var l fault.List
	for i := range 5 {
		l.Add(fault.Place{Input: "r.csv", Line: 2 + i, Column: 4}, "outer: a comma", fmt.Sprintf("0,%d", 25+i), fmt.Sprintf(`write "0.%d"`, 25+i))
	}
	for i, word := range []string{"frets", "radius", "string_spread_at_nut", "kerf"} {
		l.Add(fault.Place{Input: "r.csv", Line: 20 + i}, "no such key", "x", "did you mean "+word)
	}
	assert.EqualError(t, l.Err(), `r.csv:2:4: outer: a comma, here and in 4 more places down to line 6 ("0,25"); write "0.25"
r.csv:20: no such key ("x"); did you mean frets
r.csv:21: no such key ("x"); did you mean radius
r.csv:22: no such key ("x"); did you mean string_spread_at_nut
r.csv:23: no such key ("x"); did you mean kerf`)
}

// Unlike faults are printed up to a number that can be read, and the rest are
// counted; one line more is not saved by counting one.
func TestManyFaultsAreCounted(t *testing.T) {
	unlike := func(n int) error {
		var l fault.List
		for i := range n {
			l.Add(fault.Place{Input: "b.toml", Line: i + 1}, fmt.Sprint("fault ", i+1), "", "")
		}
		return l.Err()
	}
	assert.Len(t, strings.Split(unlike(21).Error(), "\n"), 21)
	lines := strings.Split(unlike(333).Error(), "\n")
	require.Len(t, lines, 21)
	assert.Equal(t, "b.toml:20: fault 20", lines[19])
	assert.Equal(t, "b.toml: 313 more faults, down to line 333; put those above right first, and run again", lines[20])
}

// Faults of a flag have no lines, and each stays.
func TestFaultsWithoutLinesStayApart(t *testing.T) {
	var l fault.List
	for i := range 6 {
		l.Add(fault.Place{Input: "--gauges"}, "not in stock", fmt.Sprint("p", i), "")
	}
	assert.Len(t, strings.Split(l.Err().Error(), "\n"), 6)
}

// A label may hold anything; a terminal must not obey it.
func TestNoCharacterIsObeyed(t *testing.T) {
	f := fault.Fault{Place: fault.Place{Input: "a\tb.csv"}, What: "gauge \x1b[31m is\u202e twice", Given: "x\x07", Remedy: "one\ntwo ½"}
	assert.Equal(t, `a\tb.csv: gauge \x1b[31m is\u202e twice ("x\a"); one\ntwo ½`, f.Error())
}
